// SPDX-License-Identifier: Apache-2.0
// The ultrasonic indications of a bundle and the groups that they form, with all that rules look
// at.
//
// Grouping never acquits: a member stays in the checks that look at each; in sums a group stands
// for its members with no less than they have together; a count takes indications only.
#pragma once

#include <vector>

#include "judge/grouped.h"
#include "judge/reflector_measures.h"

namespace model {

struct ReflectorItem {
    std::optional<std::size_t> group;   ///< index into Grouped::groups; none: a single one
    std::vector<std::size_t> findings;  ///< its members, or itself
    Certainty considered = Certainty::Yes;
    Extent length;       ///< of a group the greatest distance between its members' points
    Extent lengthSum;    ///< in a sum: of a group at least its members' lengths
    Extent area;         ///< of a group the larger of its members' sum and of their hull
    Extent throughWall;  ///< of a group from the least depth to the greatest
    MeasuredAll measured;
    std::vector<Length> walls;  ///< each once
    bool openShape = false;     ///< may reach further than its capsules
};

struct ReflectorItems {
    std::vector<ClassChoices> classes;  ///< by finding
    std::vector<Certainty> considered;  ///< by finding: its own recording
    std::vector<ReflectorItem> items;   ///< the single ones by finding, then the groups
    std::size_t singles = 0;            ///< how many of them are single
};

ReflectorItems reflectorItemsOf(const Bundle& bundle, const Grouped& grouped);

/// The wall at a finding: stated there, else the zone's thickness.
Length wallAt(const Bundle& bundle, const Finding& finding);

}  // namespace model
