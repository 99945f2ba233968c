// SPDX-License-Identifier: Apache-2.0
// The worst frame of one zone over what a rule counts, and the way back to zone coordinates.
#pragma once

#include <optional>
#include <vector>

#include "judge/counted.h"
#include "judge/verdict.h"
#include "surface/frame_search.h"

namespace model {

/// The worst frame, its value and what it counts (indices into `counted`).
struct WorstFrame {
    std::int64_t value = 0;
    std::vector<std::size_t> counted;
    CheckFrame frame;
};

/// Over all frames that touch something of the zone's own; none where it has nothing of its own.
/// Every weight in `counted` is known.
std::optional<WorstFrame> worstFrameOf(const ZoneView& view, const std::vector<Counted>& counted,
                                       const FrameShape& shape);

/// Whether the worst frame's value is above `limit`; agrees with worstFrameOf().
bool someFrameExceeds(const ZoneView& view, const std::vector<Counted>& counted,
                      const FrameShape& shape, std::int64_t limit);

}  // namespace model
