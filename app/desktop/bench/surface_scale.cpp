// SPDX-License-Identifier: Apache-2.0
#include "bench/surface_scale.h"

#include <algorithm>
#include <cmath>

namespace app {
namespace {

constexpr double kMmPerInch = 25.4;  // exact: ISO 31-1, the international inch of 1959
constexpr double kLeastPixelsPerMm = 0.005;
constexpr double kMostPixelsPerMm = 400;

double roundStep(double least) {
    const double power = std::pow(10.0, std::floor(std::log10(least)));
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (factor * power >= least * (1 - 1e-9)) return factor * power;
    }
    return 10 * power;
}

}  // namespace

SurfaceScale SurfaceScale::zoomed(double factor, QPointF still) const {
    const double wanted = std::clamp(pixelsPerMm * factor, kLeastPixelsPerMm, kMostPixelsPerMm);
    const double applied = wanted / pixelsPerMm;
    return {wanted, still + (datum - still) * applied};
}

SurfaceScale fitted(const QRectF& mm, const QRectF& area) {
    if (mm.width() <= 0 || mm.height() <= 0 || area.width() <= 0 || area.height() <= 0) {
        return {1, area.bottomLeft()};
    }
    const double scale =
        std::clamp(std::min(area.width() / mm.width(), area.height() / mm.height()),
                   kLeastPixelsPerMm, kMostPixelsPerMm);
    const QPointF middle = mm.center();
    return {scale,
            {area.center().x() - middle.x() * scale, area.center().y() + middle.y() * scale}};
}

RulerStep rulerStep(double leastMm, model::LengthUnit unit) {
    if (unit == model::LengthUnit::Millimetre) {
        return {std::max(roundStep(leastMm), 0.01), unit};
    }
    const double leastInch = leastMm / kMmPerInch;
    for (const double fraction : {1.0 / 16, 1.0 / 8, 1.0 / 4, 1.0 / 2}) {
        if (leastInch <= fraction) return {fraction * kMmPerInch, unit};
    }
    return {roundStep(leastInch) * kMmPerInch, unit};
}

QString RulerStep::label(qint64 n) const {
    const double perUnit = unit == model::LengthUnit::Inch ? kMmPerInch : 1;
    return QString::number(static_cast<double>(n) * mm / perUnit, 'g', 8);
}

}  // namespace app
