// SPDX-License-Identifier: Apache-2.0
// The evaluation frame of a standard and the search for its most unfavourable place.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "surface/capsule.h"

namespace model {

/// A rectangle of width x height, or a circle of that diameter. Sizes in mm, > 0, any ratio.
struct FrameShape {
    Length width;
    Length height;
    bool circle = false;  ///< then width == height == the diameter

    friend bool operator==(const FrameShape&, const FrameShape&) = default;
};

/// Something a frame can count: once and in full as soon as any point of any of its parts lies in
/// or on the frame. An indication has one part, a group one for each member.
struct FrameItem {
    std::span<const Capsule> parts;  ///< not empty; owned by the caller for the search's duration
    std::int64_t weight = 1;         ///< what it adds, >= 0: nanometres, 1e-6 mm2, or 1 for a count
    bool own = true;                 ///< only frames that touch at least one own item are judged
};

/// A frame, and what it counts.
struct FoundFrame {
    std::int64_t value = 0;            ///< the sum of the weights of `counted`
    Real x = 0;                        ///< centre, mm
    Real y = 0;                        ///< centre, mm
    Real angleDegrees = 0;             ///< of the frame's width side, [0, 180)
    std::vector<std::size_t> counted;  ///< indices of the items touched, ascending
};

}  // namespace model
