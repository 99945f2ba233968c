// SPDX-License-Identifier: Apache-2.0
#include "archive/stored_words.h"

namespace model {

SurfaceColumns columnsOf(const std::optional<SurfacePlace>& surface) {
    if (!surface) return {};
    SurfaceColumns columns;
    columns.id = surface->id;
    columns.x = surface->placement.x.millionths();
    columns.y = surface->placement.y.millionths();
    columns.angle = surface->placement.angle.millionths();
    columns.width = surface->width.millionths();
    columns.height = surface->height.millionths();
    if (surface->period) columns.period = surface->period->millionths();
    return columns;
}

std::optional<SurfacePlace> surfaceFrom(const SqlStatement& row, int column) {
    if (row.isNone(column)) return std::nullopt;
    SurfacePlace surface;
    surface.id = row.text(column);
    surface.placement.x = nanometres(row.whole(column + 1));
    surface.placement.y = nanometres(row.whole(column + 2));
    surface.placement.angle = Angle::fromMillionths(row.whole(column + 3));
    surface.width = nanometres(row.whole(column + 4));
    surface.height = nanometres(row.whole(column + 5));
    if (const auto period = row.wholeOrNone(column + 6)) surface.period = nanometres(*period);
    return surface;
}

}  // namespace model
