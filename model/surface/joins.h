// SPDX-License-Identifier: Apache-2.0
// Joins: neighbouring indications that count as one because the gap between them is small against
// their size. Each indication starts as a set of one; two sets join while the smallest gap between
// them is under the limit, until none joins. Gaps only shrink and sizes only grow as sets join, so
// the result does not depend on the order.
#pragma once

#include <span>

#include "surface/groups.h"

namespace model {

enum class JoinReach {
    LongestMember,  ///< gap < the longest single member of either set
    SmallerSet,     ///< gap < the smaller of the two sets' lengths
    Constant        ///< gap within a fixed limit
};

/// The sets of two or more, each with its members in ascending order, the sets by first member.
/// `singleLengths` are the typed lengths, parallel to `capsules`; `constant` is used with
/// JoinReach::Constant only.
std::vector<SurfaceGroup> joinedSets(std::span<const Capsule> capsules,
                                     std::span<const Length> singleLengths, JoinReach reach,
                                     GapLimit constant, std::optional<Length> period);

}  // namespace model
