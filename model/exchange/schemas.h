// SPDX-License-Identifier: Apache-2.0
// The published JSON Schemas (draft 2020-12) of the documents that the program reads and writes.
// schemas/ holds them without what follows from the lists of fields: entries of registers, terms of
// orders, test conditions.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "exchange/json_value.h"

namespace model {

/// "sheet", "verdict", "what-if", "casting-record", and of every register, whose entry's schema it
/// is (fettlemark-entry/1), the name: "equipment check".
std::vector<std::string> schemaNames();

/// One of them, whole: every definition that it refers to is in it. Input: there is none of that
/// name.
Result<JsonValue> publishedSchema(std::string_view name);

}  // namespace model
