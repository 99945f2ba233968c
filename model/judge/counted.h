// SPDX-License-Identifier: Apache-2.0
// What a rule counts in one zone: single findings and groups, with what each adds.
//
// Grouping never acquits: a member that alone falls under a class or level of the rule stays
// beside its group, unless the table says that the group replaces it or both would be added up in
// one sum. In a count a group is one in its class and its members are one each in theirs; a count
// over all classes takes indications only.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "judge/grouped.h"

namespace model {

/// One zone of a bundle, seen through its grouping and levels.
struct ZoneView {
    const Bundle* bundle = nullptr;
    std::size_t member = 0;  ///< index into Bundle::members
    const Grouped* grouped = nullptr;
    const Levels* levels = nullptr;

    [[nodiscard]] const Examination& examination() const {
        return *bundle->members[member].examination;
    }
    [[nodiscard]] bool isOwn(std::size_t finding) const {
        return bundle->findings[finding].member == member;
    }
    /// "7", or "Z2/7" for a finding of another zone.
    [[nodiscard]] std::string nameOf(std::size_t finding) const;
};

enum class Measure {
    EachLength,  ///< each by itself: of a group its length
    LengthSum,   ///< of a group the larger of its length and its members' sum
    Areas,
    Number
};

struct Counted {
    std::optional<std::size_t> group;    ///< index into Grouped::groups
    std::size_t finding = 0;             ///< of a single one
    Length length;                       ///< typed, or the group's
    std::optional<std::int64_t> weight;  ///< in the measure's millionths; none: unknown area
    bool own = false;

    [[nodiscard]] std::string nameIn(const ZoneView& view) const;
};

/// Everything of the bundle that the zone's levels consider, of the classes asked for (empty: all).
/// `ownOnly` leaves out what has no member in the zone.
std::vector<Counted> countedIn(const ZoneView& view, const std::vector<IndicationClass>& classes,
                               Measure measure, bool ownOnly);

}  // namespace model
