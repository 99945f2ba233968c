// SPDX-License-Identifier: Apache-2.0
#include "looks/mark.h"

#include <QPainter>
#include <QPainterPath>
#include <QPixmap>
#include <algorithm>
#include <cmath>

namespace app {
namespace {

double channel(double value) {
    return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

/// Relative luminance as WCAG 2.1 defines it.
double luminance(const QColor& colour) {
    return 0.2126 * channel(colour.redF()) + 0.7152 * channel(colour.greenF()) +
           0.0722 * channel(colour.blueF());
}

QColor wishFor(Mark mark) {
    switch (mark) {
        case Mark::Passes:
            return QColor::fromHsl(186, 200, 90);
        case Mark::Fails:
            return QColor::fromHsl(8, 190, 105);
        case Mark::Open:
            return QColor::fromHsl(42, 210, 95);
        case Mark::NotBegun:
            break;
    }
    return QColor::fromHsl(210, 15, 120);
}

}  // namespace

Mark markOf(model::Word word) {
    switch (word) {
        case model::Word::Acceptable:
            return Mark::Passes;
        case model::Word::NotAcceptable:
            return Mark::Fails;
        case model::Word::NotJudged:
            break;
    }
    return Mark::Open;
}

Mark markOf(const std::optional<bool>& passes) {
    if (!passes) return Mark::Open;
    return *passes ? Mark::Passes : Mark::Fails;
}

double contrast(const QColor& one, const QColor& other) {
    const double a = luminance(one);
    const double b = luminance(other);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

QColor readable(QColor wish, const QColor& background) {
    constexpr double kEnough = 4.5;
    const bool darker = luminance(background) > 0.18;
    for (int step = 0; step < 64 && contrast(wish, background) < kEnough; ++step) {
        const int lightness = std::clamp(wish.lightness() + (darker ? -4 : 4), 0, 255);
        wish = QColor::fromHsl(std::max(wish.hslHue(), 0), wish.hslSaturation(), lightness);
    }
    return wish;
}

QColor colourOf(Mark mark, const QColor& background) {
    return readable(wishFor(mark), background);
}

void paintMark(QPainter& painter, const QRectF& square, Mark mark, const QColor& background) {
    const QColor fill = colourOf(mark, background);
    const double side = square.width();
    const QRectF body = square.adjusted(side * .06, side * .06, -side * .06, -side * .06);
    const auto at = [&](double x, double y) {
        return QPointF(square.left() + x * side, square.top() + y * side);
    };
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(fill);
    QPen stroke(background, side * .12, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    switch (mark) {
        case Mark::Passes: {
            painter.drawEllipse(body);
            painter.setPen(stroke);
            painter.setBrush(Qt::NoBrush);
            painter.drawPolyline(QPolygonF{at(.29, .53), at(.44, .68), at(.72, .35)});
            break;
        }
        case Mark::Fails: {
            painter.drawRoundedRect(body, side * .1, side * .1);
            painter.setPen(stroke);
            painter.drawLine(at(.32, .32), at(.68, .68));
            painter.drawLine(at(.68, .32), at(.32, .68));
            break;
        }
        case Mark::Open: {
            painter.drawPolygon(QPolygonF{at(.5, 0), at(1, .5), at(.5, 1), at(0, .5)});
            painter.setPen(stroke);
            painter.setBrush(Qt::NoBrush);
            QPainterPath hook(at(.38, .40));
            hook.cubicTo(at(.38, .22), at(.64, .22), at(.63, .40));
            hook.cubicTo(at(.62, .50), at(.5, .47), at(.5, .60));
            painter.drawPath(hook);
            painter.drawPoint(at(.5, .77));
            break;
        }
        case Mark::NotBegun: {
            painter.setBrush(Qt::NoBrush);
            painter.setPen(QPen(fill, side * .09));
            painter.drawEllipse(body.adjusted(side * .08, side * .08, -side * .08, -side * .08));
            break;
        }
    }
    painter.restore();
}

QIcon markIcon(Mark mark, const QPalette& palette, int pixels) {
    QIcon icon;
    for (const int factor : {1, 2}) {
        QPixmap pixmap(pixels * factor, pixels * factor);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        paintMark(painter, QRectF(0, 0, pixels * factor, pixels * factor), mark,
                  palette.color(QPalette::Base));
        painter.end();
        pixmap.setDevicePixelRatio(factor);
        icon.addPixmap(pixmap);
    }
    return icon;
}

}  // namespace app
