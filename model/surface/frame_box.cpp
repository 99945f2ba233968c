// SPDX-License-Identifier: Apache-2.0
#include "surface/frame_box.h"

#include <algorithm>

namespace model {

// Within the box a point of the frame moves, along either side, by at most half a diagonal of the
// square plus, as the frame turns by t, reach * sin t: together at most 0.0028 + 0.005 mm.
FinestBox::FinestBox(const FrameSize& size) {
    constexpr double kLargestTurnMm = 0.005;
    constexpr double kRounding = 1e-5;  // far above what doubles lose up to 10^6 mm
    const double fromMoving = std::ldexp(std::numbers::sqrt2 / 2, level);
    double fromTurning = 0;
    if (!size.circle) {
        const auto turning = [&](int count) {
            return size.reach() * std::ldexp(std::numbers::pi / 2, -count);
        };
        while (turning(halvings) > kLargestTurnMm) ++halvings;
        fromTurning = turning(halvings);
    }
    tolerance = fromMoving + fromTurning + kRounding;
}

}  // namespace model
