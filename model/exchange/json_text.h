// SPDX-License-Identifier: Apache-2.0
// Writes a JSON value as text.
#pragma once

#include <string>

#include "exchange/json_value.h"

namespace model {

/// The value as UTF-8 JSON, indented by two blanks, with a line feed at its end; equal values give
/// equal text. Numbers are the shortest exact decimals. An array of strings and numbers only
/// stands on one line. A byte that is no UTF-8 is written as U+FFFD.
std::string writeJson(const JsonValue& value);

}  // namespace model
