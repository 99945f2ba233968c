// SPDX-License-Identifier: Apache-2.0
// Indications that a standard counts as one: what rows and joins have in common.
#pragma once

#include <optional>
#include <vector>

#include "surface/capsule.h"

namespace model {

/// When a gap links two capsules: below `gap`, or at most `gap`.
struct GapLimit {
    Length gap;
    bool inclusive = false;

    [[nodiscard]] bool links(Length between) const {
        return inclusive ? between <= gap : between < gap;
    }
};

/// Capsules counted as one. On a round surface `unrolled` holds each member's image that lies
/// next to its neighbours in the group, so that the group is in one piece.
struct SurfaceGroup {
    std::vector<std::size_t>
        members;                    ///< indices; of a row in order along its line, else ascending
    std::vector<Capsule> unrolled;  ///< parallel to `members`
    Length length;                  ///< greatest extent; at least the period if it closes round
};

}  // namespace model
