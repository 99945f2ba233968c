// SPDX-License-Identifier: Apache-2.0
// An axis-parallel box round capsules, to rule out early what lies far apart.
#pragma once

#include <algorithm>
#include <limits>

#include "surface/capsule.h"

namespace model {

/// Empty until something is added; an empty box is near nothing.
struct BoundingBox {
    Real left = std::numeric_limits<Real>::max();
    Real right = std::numeric_limits<Real>::lowest();
    Real low = std::numeric_limits<Real>::max();
    Real high = std::numeric_limits<Real>::lowest();

    void add(const Capsule& c) {
        const Real reach = c.half + c.radius;
        left = std::min(left, c.x - reach);
        right = std::max(right, c.x + reach);
        low = std::min(low, c.y - reach);
        high = std::max(high, c.y + reach);
    }
    /// Whether the boxes are at most `within` mm apart in x and in y.
    [[nodiscard]] bool isNear(const BoundingBox& other, Real within) const {
        return other.left <= right + within && other.right >= left - within &&
               other.low <= high + within && other.high >= low - within;
    }
};

}  // namespace model
