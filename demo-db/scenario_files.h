// SPDX-License-Identifier: Apache-2.0
// The bytes of scenario/*.json, which the build puts into the program. The .cpp is written by
// embed_scenario.cmake.
#pragma once

#include <span>
#include <string_view>

namespace demo {

struct ScenarioFile {
    std::string_view name;  ///< in scenario/
    std::string_view text;
};

/// In the order of their names.
std::span<const ScenarioFile> scenarioFiles();

}  // namespace demo
