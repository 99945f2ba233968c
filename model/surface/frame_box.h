// SPDX-License-Identifier: Apache-2.0
// A box of frames: all centres in a square and all angles in a sector; and the finest boxes.
#pragma once

#include <cmath>
#include <numbers>

#include "surface/frame_pose.h"

namespace model {

/// Squares and sectors come from halving alone: a square's corners are whole multiples of a power
/// of two mm, a sector is a part 1 / 2^halvings of half a turn. So every centre is exact in a
/// double, and whatever way leads down to a finest box, it is the same box.
struct FrameBox {
    std::int64_t column = 0;  ///< x from column * side to (column + 1) * side
    std::int64_t row = 0;
    std::int64_t sector = 0;  ///< angle from sector * turn to (sector + 1) * turn
    int level = 0;
    int halvings = 0;
    double side = 1;                 ///< 2^level mm
    double turn = std::numbers::pi;  ///< pi / 2^halvings
    double cosine = 0;               ///< of the sector's middle
    double sine = 1;

    [[nodiscard]] double halfSide() const { return side / 2; }
    [[nodiscard]] double halfSector() const { return turn / 2; }
    [[nodiscard]] double angle() const { return (static_cast<double>(sector) + 0.5) * turn; }
    /// The frame in the middle of the box.
    [[nodiscard]] FramePose middle() const {
        return {(static_cast<double>(column) + 0.5) * side, (static_cast<double>(row) + 0.5) * side,
                cosine, sine};
    }
    /// One of the four quarters of the square.
    [[nodiscard]] FrameBox quarter(int number) const {
        FrameBox smaller = *this;
        smaller.level = level - 1;
        smaller.side = side / 2;
        smaller.column = 2 * column + (number & 1);
        smaller.row = 2 * row + (number >> 1);
        return smaller;
    }
    /// One of the 2^times parts of the sector.
    [[nodiscard]] FrameBox part(int times, int number) const {
        FrameBox smaller = *this;
        smaller.halvings = halvings + times;
        smaller.turn = std::ldexp(turn, -times);
        smaller.sector = (sector << times) + number;
        smaller.cosine = std::cos(smaller.angle());
        smaller.sine = std::sin(smaller.angle());
        return smaller;
    }
};

/// Where halving ends. Any frame of a finest box lies within the middle one enlarged by
/// `tolerance`, which is below kFrameToleranceMm.
struct FinestBox {
    int level = -8;
    int halvings = 0;
    double tolerance = 0;  ///< mm

    explicit FinestBox(const FrameSize& size);
};

}  // namespace model
