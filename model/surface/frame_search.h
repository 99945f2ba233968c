// SPDX-License-Identifier: Apache-2.0
// The most unfavourable frame over all positions and all angles.
#pragma once

#include "surface/frame.h"

namespace model {

/// How far, on each side, the reported frame may have to be enlarged to count what is reported.
/// The tolerance acts only against acceptance.
inline constexpr double kFrameToleranceMm = 0.01;

/// A round surface: x and x + period are the same place. No value: the surface is flat.
using Period = std::optional<Length>;

/// The frame with the greatest value among all frames that touch at least one own item; nothing if
/// no item is own. The value is reached by the reported frame enlarged by at most
/// kFrameToleranceMm on each side, and exceeded by no frame of the true size.
std::optional<FoundFrame> worstFrame(std::span<const FrameItem> items, const FrameShape& shape,
                                     Period period = std::nullopt);

/// Whether worstFrame()'s value is above `limit`; agrees with it always and answers sooner.
bool worstFrameExceeds(std::span<const FrameItem> items, const FrameShape& shape,
                       std::int64_t limit, Period period = std::nullopt);

}  // namespace model
