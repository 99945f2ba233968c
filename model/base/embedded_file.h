// SPDX-License-Identifier: Apache-2.0
// A data file that the build put into the program byte for byte (fettlemark_embed).
#pragma once

#include <string_view>

namespace model {

struct EmbeddedFile {
    std::string_view name;  ///< without its folder
    std::string_view text;
};

}  // namespace model
