// SPDX-License-Identifier: Apache-2.0
// What makes a drawing readable to scale: grid, rulers, datum with axes, scale bar.
#pragma once

#include "bench/surface_painter.h"

namespace app {

void paintGrid(QPainter& painter, const SurfaceScale& scale, const SurfaceStyle& style);
void paintRulers(QPainter& painter, const SurfaceScale& scale, const SurfaceStyle& style);
void paintDatum(QPainter& painter, const SurfaceScale& scale, const SurfaceStyle& style);
void paintScaleBar(QPainter& painter, const SurfaceScale& scale, const SurfaceStyle& style);

}  // namespace app
