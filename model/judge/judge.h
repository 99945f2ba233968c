// SPDX-License-Identifier: Apache-2.0
// The rule engine: indications + limit table + level -> verdict with all checks. It knows kinds of
// rule, never a standard's name.
#pragma once

#include "base/result.h"
#include "judge/sheet.h"
#include "judge/verdict.h"
#include "limits/table_set.h"

namespace model {

/// Checks what must hold within and between the examinations of a sheet, whoever made it: ids,
/// sizes, classes against ratio, levels and tables known, zones that do not share area ... Fails
/// with ErrorKind::Input and the JSON path ("examinations[2].indications[0].id") as place.
Result<void> validate(const Sheet& sheet, const TableSet& tables);

/// The verdict on a sheet; validates it first. Equal input gives an equal verdict.
Result<Verdict> judge(const Sheet& sheet, const TableSet& tables);

}  // namespace model
