// SPDX-License-Identifier: Apache-2.0
// Whether what a file names is in the archive.
#pragma once

#include <vector>

#include "archive/archive.h"
#include "base/field_error.h"
#include "exchange/register_rows.h"

namespace app {

/// Order, part and zone plan of a casting that the archive has not.
std::vector<model::FieldError> unknownIn(const model::Archive& archive,
                                         const model::CastingLine& casting);

/// Notes at each row of orders or zone plans (Line) a limit table that neither the program nor the
/// archive has, one of another method, and levels that it has not. Fails where the tables cannot be
/// read.
template <class Line>
model::Result<void> noteUnknownCriteria(const model::Archive& archive, const model::CsvTable& table,
                                        std::vector<model::ImportProblem>& problems);

}  // namespace app
