// SPDX-License-Identifier: Apache-2.0
// The bytes of tables/*.table, which the build puts into the program: no file is looked for when it
// runs. The .cpp is written by embed_tables.cmake.
#pragma once

#include <span>
#include <string_view>

namespace model {

struct ShippedTable {
    std::string_view file;  ///< its name in tables/
    std::string_view text;
};

/// In the order of their file names.
std::span<const ShippedTable> shippedTables();

}  // namespace model
