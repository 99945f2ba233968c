// SPDX-License-Identifier: Apache-2.0
// Sheets to judge, and folders to keep files in, for the tests of the program.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace app {

using Json = nlohmann::ordered_json;

/// One MT examination by EN 1369:2012 at SM 2, LM 4, AM 4 on a zone of 600 x 400 mm, with nothing
/// found and so stated.
Json cleanSheet();

/// The same with `count` spots of 4 x 3.2 mm, 10 mm2 each, 30 mm apart along x: no row, no join,
/// all within one frame of 105 x 148 mm for up to four of them.
Json spottedSheet(int count);

Json& examinationOf(Json& sheet, std::size_t index = 0);
Json& indicationOf(Json& sheet, std::size_t index = 0);

/// A folder of its own that goes with the object.
class Folder {
public:
    Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder();

    [[nodiscard]] const std::string& path() const { return path_; }
    /// Writes a file; returns its path.
    [[nodiscard]] std::string write(const std::string& name, const std::string& bytes) const;
    /// The names of what is in it, sorted.
    [[nodiscard]] std::vector<std::string> names() const;

private:
    std::string path_;
};

/// A file's bytes.
std::string bytesOf(const std::string& path);

}  // namespace app
