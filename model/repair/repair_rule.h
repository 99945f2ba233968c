// SPDX-License-Identifier: Apache-2.0
// What parts a major from a minor repair, as data: one purchaser's or standard's rule, with a
// source for each of its limits. The files are rules/*.repair, their grammar is rules/FORMAT.md.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "limits/limit_table.h"

namespace model {

/// A repair is major as soon as one of its rule's criteria holds.
struct MajorCriterion {
    enum class Of {
        ShareOfWall,  ///< depth of the cavity in percent of the wall before; `limit` in percent
        Depth,        ///< of the cavity; `limit` in millionths of a mm
        SurfaceArea,  ///< of the cavity, its length times its width; `limit` in millionths of mm2
        Leak,         ///< at the pressure test; no limit
    } of = Of::Depth;
    Comparison comparison = Comparison::More;  ///< major when the cavity's `comparison` limit
    Rational limit;
    std::string written;  ///< "20 % of the wall", "25 mm"
    Source source;
};

/// Whether something follows from a repair's being major.
struct AfterMajor {
    bool mandatory = false;
    Source source;
};

struct RepairRule {
    std::string id;  ///< as ordered (OrderTerms::repairRule)
    std::string standard;
    std::string edition;
    int revision = 1;
    std::string digest;  ///< SHA-256 of the file's bytes, hexadecimal
    std::string file;
    std::vector<std::string> remarks;
    std::vector<MajorCriterion> major;  ///< one at least
    AfterMajor heatTreatment;
    AfterMajor agreement;
};

/// The rule in `text`; `file` names it in errors. Refuses, with "file:line" as place, what is
/// unknown, missing, there twice, or without source.
Result<RepairRule> parseRepairRule(std::string_view text, const std::string& file);

/// The program's own rules, by id.
const std::vector<RepairRule>& builtInRepairRules();
/// Null: there is none of that id.
const RepairRule* repairRule(std::string_view id);

}  // namespace model
