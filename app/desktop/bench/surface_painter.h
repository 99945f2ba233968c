// SPDX-License-Identifier: Apache-2.0
// Draws a surface: grid, zones, datum and axes, indications, groups, the frame of a check, rulers
// and a scale bar. Everything is taken from the palette, so that it reads in light and dark.
#pragma once

#include <QPainterPath>
#include <QPalette>
#include <QRectF>
#include <QString>
#include <optional>
#include <set>

#include "bench/surface_picture.h"
#include "bench/surface_scale.h"
#include "judge/verdict.h"
#include "looks/mark.h"

class QPainter;

namespace app {

/// The check that is pointed out on the surface.
struct ShownCheck {
    Mark mark = Mark::Passes;
    QString label;
    std::optional<model::CheckFrame> frame;
    std::set<int> members;  ///< indices of the picture's indications
};

/// The frame's outline in the zone's millimetres.
QPainterPath framePath(const model::CheckFrame& frame);

struct SurfaceStyle {
    QPalette palette;
    QRectF area;        ///< the whole widget, pixels
    double ruler = 30;  ///< breadth of the rulers at the left and at the bottom, pixels
    model::LengthUnit unit = model::LengthUnit::Millimetre;
    int currentRow = -1;
    bool focused = false;

    /// What the rulers leave.
    [[nodiscard]] QRectF sheet() const { return area.adjusted(ruler * 1.4, 0, 0, -ruler); }
};

void paintSurface(QPainter& painter, const SurfacePicture& picture, const SurfaceScale& scale,
                  const SurfaceStyle& style, const std::optional<ShownCheck>& check);

}  // namespace app
