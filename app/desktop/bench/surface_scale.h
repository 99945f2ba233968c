// SPDX-License-Identifier: Apache-2.0
// Between a zone's millimetres (x right, y up) and the pixels of a view (y down).
#pragma once

#include <QPointF>
#include <QRectF>
#include <QString>

#include "quantity/entry.h"

namespace app {

struct SurfaceScale {
    double pixelsPerMm = 1;
    QPointF datum;  ///< where the zone's datum is, pixels

    [[nodiscard]] QPointF toPixels(double x, double y) const {
        return {datum.x() + x * pixelsPerMm, datum.y() - y * pixelsPerMm};
    }
    [[nodiscard]] QPointF toMm(QPointF pixel) const {
        return {(pixel.x() - datum.x()) / pixelsPerMm, (datum.y() - pixel.y()) / pixelsPerMm};
    }
    /// The same picture, enlarged by `factor` about the pixel `still`, which keeps its place.
    [[nodiscard]] SurfaceScale zoomed(double factor, QPointF still) const;
};

/// Shows `mm` (x, y lower left, width, height) as large as it fits into `area`, centred.
SurfaceScale fitted(const QRectF& mm, const QRectF& area);

/// Divisions of a ruler: the smallest of 1, 2, 5 x 10^n mm, or of 1, 2, 5 x 10^n and halves down
/// to 1/16 in, that is at least `leastMm`.
struct RulerStep {
    double mm = 1;
    model::LengthUnit unit = model::LengthUnit::Millimetre;

    /// The number at the n-th division, without its unit.
    [[nodiscard]] QString label(qint64 n) const;
};
RulerStep rulerStep(double leastMm, model::LengthUnit unit);

}  // namespace app
