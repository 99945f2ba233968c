// SPDX-License-Identifier: Apache-2.0
// What the verdict would be if something else had been ordered: for a quotation, or for asking for
// a concession. A what-if says nothing about the casting as ordered and is never stored.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "judge/judge.h"

namespace model {

/// What is supposed to have been ordered.
struct OtherCriteria {
    std::string zone;                           ///< only of this zone; empty: of all
    std::string table;                          ///< id; empty: the table as ordered
    std::map<std::string, std::string> levels;  ///< level key -> level, in place of those ordered
};

/// Stands among the notes of every examination of a what-if that was judged otherwise.
inline constexpr std::string_view kWhatIfNote =
    "what-if: judged by other criteria than those ordered";

struct JudgedAgain {
    Sheet sheet;                       ///< with the other criteria
    Verdict ordered;                   ///< by the criteria as ordered
    Verdict whatIf;                    ///< by the others; its examinations in the same order
    std::vector<std::size_t> changed;  ///< examinations that were judged otherwise, rising
};

/// Judges a sheet as ordered and otherwise. Another table takes the place of those of its own
/// method only, and of the levels ordered those stay that it knows; a class that has no level then
/// is not judged. A level is set where the table has its key. What was said against an examination
/// stays said. Input: nothing is changed, the zone or the table is not there, or the other criteria
/// do not fit; the zone shares its surface with one that would keep its table (an indication is
/// judged with its neighbours); and as judge().
Result<JudgedAgain> judgedAgain(const Sheet& sheet, const TableSet& tables,
                                const OtherCriteria& other);

}  // namespace model
