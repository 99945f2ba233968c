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

/// What of a bundle can matter to one zone: its own, and what a frame that touches its own can
/// reach. On a large surface that is little, and it is found once for all rules and levels.
struct Vicinity {
    std::vector<std::size_t> findings;  ///< ascending indices into Bundle::findings
    std::vector<std::size_t> groups;    ///< ascending indices into Grouped::groups
};

Vicinity vicinityOf(const Bundle& bundle, std::size_t member, const Grouped& grouped);

/// One zone of a bundle, seen through its grouping and levels.
class ZoneView {
public:
    ZoneView(const Bundle& ofBundle, std::size_t ofMember, const Grouped& asGrouped,
             const Vicinity& within, const Levels& atLevels)
        : bundle(&ofBundle),
          member(ofMember),
          grouped(&asGrouped),
          vicinity(&within),
          levels(&atLevels),
          sieve_(*ofBundle.table, atLevels),
          relevanceFirst_(groupsAfterRelevance(*ofBundle.table)) {}

    const Bundle* bundle;
    std::size_t member;  ///< index into Bundle::members
    const Grouped* grouped;
    const Vicinity* vicinity;
    const Levels* levels;

    [[nodiscard]] const Examination& examination() const {
        return *bundle->members[member].examination;
    }
    [[nodiscard]] bool isOwn(std::size_t finding) const {
        return bundle->findings[finding].member == member;
    }
    /// Whether the zone's threshold takes it; where relevance came before grouping, it did already.
    [[nodiscard]] bool considers(IndicationClass classified, Length length) const {
        return relevanceFirst_ || sieve_.takes(classified, length);
    }
    /// "7", or "Z2/7" for a finding of another zone.
    [[nodiscard]] std::string nameOf(std::size_t finding) const;

private:
    RelevanceSieve sieve_;
    bool relevanceFirst_;
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

/// Everything in the zone's vicinity that its levels consider, of the classes asked for (empty:
/// all). `ownOnly` leaves out what has no member in the zone.
std::vector<Counted> countedIn(const ZoneView& view, const std::vector<IndicationClass>& classes,
                               Measure measure, bool ownOnly);

}  // namespace model
