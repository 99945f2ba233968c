// SPDX-License-Identifier: Apache-2.0
#include "certificate/printed_scale.h"

#include <algorithm>
#include <array>

#include "certificate/phrases.h"
#include "certificate/printed_values.h"

namespace reports {

PrintedScale printedScale(double widthMm, double heightMm, double mostWidthMm,
                          double mostHeightMm) {
    const double most = std::min(mostWidthMm / widthMm, mostHeightMm / heightMm);
    if (most >= 2) return {2, filled(phrases::kScaleEnlarged, {"2"})};
    if (most >= 1) return {1, filled(phrases::kScaleReduced, {"1"})};
    constexpr std::array kSteps = {2.0, 2.5, 5.0, 10.0};
    for (double decade = 1;; decade *= 10)
        for (const double step : kSteps)
            if (1 / (decade * step) <= most)
                return {1 / (decade * step),
                        filled(phrases::kScaleReduced, {placeText(decade * step)})};
}

}  // namespace reports
