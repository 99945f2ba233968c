// SPDX-License-Identifier: Apache-2.0
// The yardstick of the frame search: the best place of a frame that is laid square to the edges.
#pragma once

#include <span>

#include "surface/frame.h"

namespace app {

/// The greatest weight that a rectangle with sides along x and y touches, by one plain sweep along
/// x over a tree of sums along y; each item counted by the box around its only part.
double axisSweep(std::span<const model::FrameItem> items, const model::FrameShape& shape);

}  // namespace app
