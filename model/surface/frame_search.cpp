// SPDX-License-Identifier: Apache-2.0
#include "surface/frame_search.h"

#include "surface/frame_descent.h"

namespace model {
namespace {

std::optional<FoundFrame> frameAbove(std::span<const FrameItem> items, const FrameShape& shape,
                                     Period period, std::int64_t floor, bool anyAbove) {
    std::vector<FramePart> parts = flattened(items);
    std::optional<double> periodMm;
    if (period) {
        periodMm = period->approximately();
        parts = unrolled(parts, shape, *periodMm);
    }
    return FrameDescent(parts, FrameSize(shape), periodMm).above(floor, anyAbove);
}

}  // namespace

std::optional<FoundFrame> worstFrame(std::span<const FrameItem> items, const FrameShape& shape,
                                     Period period) {
    constexpr std::int64_t kBelowAnyValue = -1;
    return frameAbove(items, shape, period, kBelowAnyValue, false);
}

bool worstFrameExceeds(std::span<const FrameItem> items, const FrameShape& shape,
                       std::int64_t limit, Period period) {
    return frameAbove(items, shape, period, limit, true).has_value();
}

}  // namespace model
