// SPDX-License-Identifier: Apache-2.0
// A zone's figure on paper.
#pragma once

#include "certificate/document.h"
#include "pdf/canvas.h"

namespace reports {

/// Draws the figure's window, clipped to it, with its upper left corner at (left, top) mm of the
/// page. Returns how many labels were left out because they would have covered others.
int drawFigure(Canvas& canvas, const Figure& figure, double left, double top);

}  // namespace reports
