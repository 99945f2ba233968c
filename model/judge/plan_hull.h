// SPDX-License-Identifier: Apache-2.0
// The area of the smallest convex outline round some capsules, bounded from the side that acts
// against acceptance.
#pragma once

#include <span>

#include "surface/capsule.h"

namespace model {

/// Not less than the area of the outline; above it by at most 0.2 %.
Area outerHullArea(std::span<const Capsule> capsules);

/// Not more than the area of the outline; below it by at most 0.2 %.
Area innerHullArea(std::span<const Capsule> capsules);

}  // namespace model
