// SPDX-License-Identifier: Apache-2.0
// What was judged as tables for a spreadsheet: CSV of RFC 4180 in UTF-8, the first line the names
// of the columns, lines that end with CR LF. What is not there is an empty field. Numbers are
// those of the JSON documents.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"

namespace model {

/// Every indication of a sheet (fettlemark-sheet/1) with what its verdict (fettlemark-verdict/1)
/// makes of it. Damaged: they are no such documents, or do not belong together.
Result<std::string> indicationsCsv(std::string_view sheet, std::string_view verdict);

/// Every setting and every reading of a fettlemark-readings/1 document (exporting/readings_json.h),
/// as typed; a reading's line ends with what it gave, its notes one a line. Damaged: as above.
Result<std::string> settingsCsv(std::string_view readings);
Result<std::string> readingsCsv(std::string_view readings);

// Of a fettlemark-casting-record/1 (schemas/casting-record.schema.json). Damaged: it is none.
/// Every signed record: what was examined, by whom, when, with what result.
Result<std::string> recordsCsv(std::string_view record);
/// The test conditions of every record, a line for each text: "part" is "conditions",
/// "measurements", "setting_checks", "scans", "acknowledgements" or "findings"; "number" counts the
/// entries of a list from 1.
Result<std::string> conditionsCsv(std::string_view record);
/// Entries of the registers, a line for each text: those of the casting without a "record", and
/// what was used in each record as it was when it was signed.
Result<std::string> registersCsv(std::string_view record);

/// Every check of a verdict. Damaged: it is no such document.
Result<std::string> checksCsv(std::string_view verdict);

}  // namespace model
