// SPDX-License-Identifier: Apache-2.0
// Other people's programs, in a folder of their own.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace people {

/// A new folder, deleted with all that is in it.
class Folder {
public:
    Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder();

    void write(const std::string& name, std::string_view bytes) const;
    [[nodiscard]] std::string read(const std::string& name) const;
    [[nodiscard]] std::string path(const std::string& name = "") const;

    struct Outcome {
        int code = -1;
        std::string output;  ///< both streams

        [[nodiscard]] bool says(std::string_view text) const {
            return output.find(text) != std::string::npos;
        }
    };
    /// Runs a command of the shell in this folder, in the C.UTF-8 locale.
    [[nodiscard]] Outcome run(const std::string& command) const;

private:
    std::filesystem::path path_;
};

}  // namespace people
