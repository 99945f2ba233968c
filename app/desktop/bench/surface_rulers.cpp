// SPDX-License-Identifier: Apache-2.0
#include "bench/surface_rulers.h"

#include <QCoreApplication>
#include <QPainter>
#include <cmath>

#include "looks/text.h"

namespace app {
namespace {

constexpr double kLabelPixels = 62;  // room for one number on a ruler
constexpr int kDatumPixels = 7;

QString tr(const char* text) {
    return QCoreApplication::translate("Surface", text);
}

QColor faded(QColor colour, double opacity) {
    colour.setAlphaF(static_cast<float>(opacity));
    return colour;
}

qint64 firstDivision(double mm, double step) {
    return std::llround(std::ceil(mm / step));
}

QString unitOf(const SurfaceStyle& style) {
    return QString::fromUtf8(model::symbol(style.unit).data());
}

}  // namespace

void paintGrid(QPainter& painter, const SurfaceScale& scale, const SurfaceStyle& style) {
    const RulerStep step = rulerStep(kLabelPixels / scale.pixelsPerMm, style.unit);
    const QRectF sheet = style.sheet();
    const QPointF low = scale.toMm(sheet.bottomLeft());
    const QPointF high = scale.toMm(sheet.topRight());
    painter.setPen(QPen(faded(style.palette.color(QPalette::Text), .10), 1));
    for (qint64 n = firstDivision(low.x(), step.mm); n * step.mm <= high.x(); ++n) {
        const double x = scale.toPixels(n * step.mm, 0).x();
        painter.drawLine(QPointF(x, sheet.top()), QPointF(x, sheet.bottom()));
    }
    for (qint64 n = firstDivision(low.y(), step.mm); n * step.mm <= high.y(); ++n) {
        const double y = scale.toPixels(0, n * step.mm).y();
        painter.drawLine(QPointF(sheet.left(), y), QPointF(sheet.right(), y));
    }
}

void paintRulers(QPainter& painter, const SurfaceScale& scale, const SurfaceStyle& style) {
    const RulerStep step = rulerStep(kLabelPixels / scale.pixelsPerMm, style.unit);
    const QRectF sheet = style.sheet();
    const QPointF low = scale.toMm(sheet.bottomLeft());
    const QPointF high = scale.toMm(sheet.topRight());
    const QColor ink = style.palette.color(QPalette::WindowText);
    painter.setPen(QPen(faded(ink, .5), 1));
    painter.drawLine(sheet.bottomLeft(), sheet.bottomRight());
    painter.drawLine(sheet.topLeft(), sheet.bottomLeft());
    const QFontMetricsF metrics(painter.font());
    const double deep = style.ruler;
    // The unit stands where the two rulers meet; numbers keep clear of it.
    painter.setPen(faded(ink, .8));
    painter.drawText(QRectF(0, sheet.bottom(), sheet.left() - 4, deep),
                     Qt::AlignRight | Qt::AlignVCenter, unitOf(style));
    for (qint64 n = firstDivision(low.x(), step.mm); n * step.mm <= high.x(); ++n) {
        const double x = scale.toPixels(n * step.mm, 0).x();
        painter.drawLine(QPointF(x, sheet.bottom()), QPointF(x, sheet.bottom() + 5));
        const QString label = step.label(n);
        const double half = metrics.horizontalAdvance(label) / 2;
        if (x - half < sheet.left() || x + half > sheet.right()) continue;
        painter.drawText(QRectF(x - 40, sheet.bottom() + 5, 80, deep - 5),
                         Qt::AlignHCenter | Qt::AlignTop, label);
    }
    for (qint64 n = firstDivision(low.y(), step.mm); n * step.mm <= high.y(); ++n) {
        const double y = scale.toPixels(0, n * step.mm).y();
        painter.drawLine(QPointF(sheet.left() - 5, y), QPointF(sheet.left(), y));
        const double half = metrics.height() / 2;
        if (y - half < sheet.top() || y + half > sheet.bottom()) continue;
        painter.drawText(QRectF(0, y - 20, sheet.left() - 8, 40), Qt::AlignRight | Qt::AlignVCenter,
                         step.label(n));
    }
}

void paintDatum(QPainter& painter, const SurfaceScale& scale, const SurfaceStyle& style) {
    const QColor ink = style.palette.color(QPalette::Text);
    const QPointF at = scale.datum;
    constexpr double kArrow = 44;
    painter.setPen(QPen(ink, 1.4));
    for (const QPointF way : {QPointF(1, 0), QPointF(0, -1)}) {
        const QPointF tip = at + way * kArrow;
        const QPointF side(-way.y(), way.x());
        painter.drawLine(at, tip);
        painter.drawLine(tip, tip - way * 7 + side * 3.5);
        painter.drawLine(tip, tip - way * 7 - side * 3.5);
        const QPointF aside = way.x() > 0 ? QPointF(0, 12) : QPointF(-12, 0);
        painter.drawText(QRectF(tip + aside - QPointF(8, 9), QSizeF(16, 18)), Qt::AlignCenter,
                         way.x() > 0 ? tr("x") : tr("y"));
    }
    const QRectF ring(at.x() - kDatumPixels, at.y() - kDatumPixels, 2 * kDatumPixels,
                      2 * kDatumPixels);
    painter.setBrush(style.palette.color(QPalette::Base));
    painter.drawEllipse(ring);
    painter.setBrush(ink);
    painter.setPen(Qt::NoPen);
    painter.drawPie(ring, 0, 90 * 16);
    painter.drawPie(ring, 180 * 16, 90 * 16);
}

void paintScaleBar(QPainter& painter, const SurfaceScale& scale, const SurfaceStyle& style) {
    const RulerStep step = rulerStep(90 / scale.pixelsPerMm, style.unit);
    const double length = step.mm * scale.pixelsPerMm;
    const QRectF sheet = style.sheet();
    const QColor ink = style.palette.color(QPalette::Text);
    const QString label = step.label(1) + QChar(0x202F) + unitOf(style);
    const QFontMetricsF metrics(painter.font());
    const double wide = length + 16 + metrics.horizontalAdvance(label) + 8;
    const QRectF plate(sheet.right() - wide - 10, sheet.bottom() - metrics.height() - 18, wide,
                       metrics.height() + 8);
    painter.setPen(Qt::NoPen);
    painter.setBrush(faded(style.palette.color(QPalette::Base), .85));
    painter.drawRoundedRect(plate, 3, 3);
    const double y = plate.center().y();
    const double x = plate.left() + 8;
    painter.setPen(QPen(ink, 1));
    for (int part = 0; part < 4; ++part) {
        painter.setBrush(part % 2 == 0 ? QBrush(ink) : QBrush(style.palette.color(QPalette::Base)));
        painter.drawRect(QRectF(x + part * length / 4, y - 2.5, length / 4, 5));
    }
    painter.drawText(QRectF(x + length + 8, plate.top(), plate.width(), plate.height()),
                     Qt::AlignLeft | Qt::AlignVCenter, label);
}

}  // namespace app
