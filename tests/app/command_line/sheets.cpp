// SPDX-License-Identifier: Apache-2.0
#include "sheets.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>
#include <stdexcept>
#include <stdlib.h>

namespace app {

Json cleanSheet() {
    return Json::parse(R"({
        "format": "fettlemark-sheet/1",
        "casting": {"serial": "Q-1042", "heat": "7731", "part": "P-88", "drawing": "D-88 rev C",
                    "material": "cast steel"},
        "examinations": [
          {"zone": "Z1", "method": "MT", "stage": "rough machined", "repair_cycle": 0, "repeat": 0,
           "thickness_mm": 40,
           "surface": {"id": "S1", "x_mm": 0, "y_mm": 0, "angle_deg": 0, "width_mm": 600,
                       "height_mm": 400},
           "table": "EN 1369:2012",
           "levels": {"non-linear": "SM 2", "linear": "LM 4", "aligned": "AM 4"},
           "no_indications": true,
           "indications": []}]})");
}

Json spottedSheet(int count) {
    Json sheet = cleanSheet();
    sheet["examinations"][0]["no_indications"] = false;
    for (int i = 0; i < count; ++i)
        sheet["examinations"][0]["indications"].push_back({{"id", std::to_string(i + 1)},
                                                           {"x_mm", 20 + 30 * i},
                                                           {"y_mm", 50},
                                                           {"length_mm", 4},
                                                           {"width_mm", 3.2},
                                                           {"area_mm2", 10}});
    return sheet;
}

Json& examinationOf(Json& sheet, std::size_t index) {
    return sheet["examinations"][index];
}
Json& indicationOf(Json& sheet, std::size_t index) {
    return sheet["examinations"][0]["indications"][index];
}

Folder::Folder() : path_(testing::TempDir() + "fettlemark_XXXXXX") {
    if (::mkdtemp(path_.data()) == nullptr) throw std::runtime_error("no folder for the test");
}

Folder::~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

std::string Folder::write(const std::string& name, const std::string& bytes) const {
    std::string file = path_ + "/" + name;
    std::ofstream(file, std::ios::binary) << bytes;
    return file;
}

std::vector<std::string> Folder::names() const {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(path_))
        names.push_back(entry.path().filename());
    std::ranges::sort(names);
    return names;
}

std::string bytesOf(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace app
