// SPDX-License-Identifier: Apache-2.0
// The scales that a figure can be printed at.
#pragma once

#include <string>

#include "certificate/document.h"

namespace reports {

struct PrintedScale {
    double factor = 1;  ///< paper mm per mm of the casting
    std::string text;
};

/// The greatest scale at which width x height mm fits into so much paper: one of 2:1, 1:1, 1:2,
/// 1:2.5, 1:5, 1:10, 1:20, 1:25, 1:50 ... width and height are more than 0.
PrintedScale printedScale(double widthMm, double heightMm, double mostWidthMm = kFigureWidthMm,
                          double mostHeightMm = kFigureHeightMm);

}  // namespace reports
