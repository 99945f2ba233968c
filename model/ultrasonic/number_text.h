// SPDX-License-Identifier: Apache-2.0
// Numbers in notes and errors, the same in every locale.
#pragma once

#include <string>

namespace model {

/// As given, to 6 decimals at most: "12.5".
std::string plainText(double value);

/// To the nearest tenth.
std::string tenthsText(double value);

}  // namespace model
