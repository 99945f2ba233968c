// SPDX-License-Identifier: Apache-2.0
// The outline drawn around the indications of a group.
#pragma once

#include <vector>

#include "pdf/canvas.h"

namespace reports {

/// The corners of the smallest convex outline around `points`, in order around it.
std::vector<PaperPoint> convexHull(std::vector<PaperPoint> points);

}  // namespace reports
