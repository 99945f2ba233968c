// SPDX-License-Identifier: Apache-2.0
// The smallest gap between two findings of which one lies in the zone.
#pragma once

#include <optional>
#include <vector>

#include "judge/counted.h"

namespace model {

struct ClosestPair {
    Length gap;             ///< rounded down to 0.001 mm
    std::size_t first = 0;  ///< index into Bundle::findings; below `second`
    std::size_t second = 0;
};

/// Among `findings` (indices into Bundle::findings) with their `capsules`, pairs of one group left
/// out; none where there is no pair.
std::optional<ClosestPair> smallestGap(const ZoneView& view,
                                       const std::vector<std::size_t>& findings,
                                       const std::vector<Capsule>& capsules);

}  // namespace model
