// SPDX-License-Identifier: Apache-2.0
#include "columns.h"

namespace app {

std::string lineOf(const std::vector<std::string>& columns) {
    std::string line;
    for (const std::string& column : columns) {
        if (!line.empty()) line += '\t';
        if (column.empty()) line += '-';
        for (const char c : column) line += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
    return line + "\n";
}

}  // namespace app
