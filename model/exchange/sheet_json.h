// SPDX-License-Identifier: Apache-2.0
// The sheet to be judged as a JSON document, fettlemark-sheet/1.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "base/result.h"
#include "exchange/json_value.h"
#include "judge/sheet.h"

namespace model {

inline constexpr std::string_view kSheetFormat = "fettlemark-sheet/1";
inline constexpr std::size_t kMostExaminations = 10'000;  ///< of one sheet
inline constexpr std::size_t kMostIndications = 100'000;  ///< of one examination

/// The sheet in a document that was read from `file`. Checks all that concerns one field or one
/// examination: names, types, words and signs, width against length, a class where there is no
/// width, a reason where not relevant, "nothing found" beside a list of findings. What must hold
/// between them, and against the limit table, is validate()'s to check. Fails with the place
/// "file: examinations[2].indications[0].width_mm".
Result<Sheet> sheetFromJson(const JsonValue& document, const std::string& file);

/// {"by": "...", "reason": "..."}
JsonValue objectionToJson(const Objection& objection);

/// The document of a sheet; sheetFromJson() gives the same sheet back.
JsonValue sheetToJson(const Sheet& sheet);

}  // namespace model
