// SPDX-License-Identifier: Apache-2.0
#include <QCoreApplication>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "looks/mark.h"
#include "ultrasonic_bench/beam_section.h"

namespace app {
namespace {

constexpr int kSteps = 120;  // in which a curve or a line is followed

QString tr(const char* text) {
    return QCoreApplication::translate("BeamSection", text);
}

QColor faded(QColor colour, double opacity) {
    colour.setAlphaF(static_cast<float>(opacity));
    return colour;
}

QString millimetres(double value) {
    return QStringLiteral("%1 mm").arg(QString::number(value, 'f', value < 100 ? 1 : 0));
}

class Drawing {
public:
    Drawing(QPainter& painter, const BeamSection& section, const BeamSectionStyle& style)
        : painter_(painter),
          section_(section),
          style_(style),
          metrics_(painter.font()),
          paper_(style.palette.color(QPalette::Base)),
          ink_(style.palette.color(QPalette::Text)),
          strong_(readable(style.palette.color(QPalette::Highlight), paper_)) {}

    void draw() {
        painter_.setRenderHint(QPainter::Antialiasing);
        painter_.fillRect(style_.area, paper_);
        if (!section_.part) {
            painter_.setPen(ink_);
            painter_.drawText(style_.area.adjusted(16, 8, -16, -8),
                              Qt::AlignCenter | Qt::TextWordWrap, section_.message);
            return;
        }
        measure();
        drawPart();
        drawProbe();
        drawBeam();
        drawFlaw();
        drawFootnote();
    }

private:
    [[nodiscard]] const model::ScannedPart& part() const { return *section_.part; }

    /// Along the scanned surface, of a point of the cross-section.
    [[nodiscard]] double alongSurface(const model::PathPoint& point, double before) const {
        if (part().surface == model::ScanSurface::Flat) return point.xMm;
        const double radius = *part().radiusMm;
        const double toCentre =
            part().surface == model::ScanSurface::Outer ? radius - point.yMm : radius + point.yMm;
        double angle = std::atan2(point.xMm, toCentre);
        while (angle * radius < before - 1e-6) angle += 2 * std::numbers::pi;
        return angle * radius;
    }

    [[nodiscard]] QPolygonF line(double depth, bool backwards = false) const {
        const int steps = part().surface == model::ScanSurface::Flat ? 1 : kSteps;
        QPolygonF points;
        for (int i = 0; i <= steps; ++i) {
            const double share = static_cast<double>(backwards ? steps - i : i) / steps;
            const auto point = model::inCrossSection(part(), depth, from_ + share * (to_ - from_));
            points << at(point);
        }
        return points;
    }

    [[nodiscard]] QPointF at(const model::PathPoint& point) const {
        return {origin_.x() + point.xMm * scale_, origin_.y() + point.yMm * scale_};
    }

    /// What of the part is shown: probe and path, and a little more on both sides; at the left
    /// enough for the names of the layers.
    void measure() {
        const double more = std::max(part().thicknessMm * .35, section_.probeBackMm * .5);
        measure(more, more);
        const double names = metrics_.horizontalAdvance(tr("core")) * 1.8 / scale_;
        measure(std::max(more, names - section_.probeBackMm), more);
    }

    void measure(double moreBehind, double more) {
        double furthest = 0;
        for (const auto& point : section_.trace.line) {
            furthest = std::max(furthest, alongSurface(point, furthest));
        }
        from_ = -section_.probeBackMm - moreBehind;
        to_ = std::max(furthest, section_.probeFrontMm) + more;
        if (part().surface != model::ScanSurface::Flat) {
            const double half = std::numbers::pi * *part().radiusMm;
            if (to_ - from_ > 2 * half) from_ = to_ - 2 * half;
        }
        scale_ = 1;
        origin_ = {};
        QRectF bounds = line(0).boundingRect() | line(part().thicknessMm).boundingRect();
        bounds |= QRectF(-section_.probeBackMm, -probeHeight(),
                         section_.probeBackMm + section_.probeFrontMm, probeHeight());
        for (const auto& point : section_.trace.line) {
            bounds |= QRectF(point.xMm - .5, point.yMm - .5, 1, 1);
        }
        const double margin = metrics_.height();
        const QRectF room =
            style_.area.adjusted(margin * .6, margin * .6, -margin * .6, -margin * 2.1);
        scale_ = std::min(room.width() / bounds.width(), room.height() / bounds.height());
        origin_ = room.center() - bounds.center() * scale_;
    }

    [[nodiscard]] double probeHeight() const {
        return std::max((section_.probeBackMm + section_.probeFrontMm) * .5,
                        part().thicknessMm * .06);
    }

    void fill(double from, double to, const QBrush& brush) {
        QPolygonF body = line(from);
        for (const QPointF& point : line(to, true)) body << point;
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(brush);
        painter_.drawPolygon(body);
    }

    void drawPart() {
        const double wall = part().thicknessMm;
        fill(0, wall, faded(ink_, .07));
        if (section_.rimMm) {
            const double rim = std::min(*section_.rimMm, wall / 2);
            fill(0, rim, faded(ink_, .10));
            fill(wall - rim, wall, faded(ink_, .10));
            painter_.setBrush(Qt::NoBrush);
            painter_.setPen(QPen(faded(ink_, .6), 1, Qt::DotLine));
            painter_.drawPolyline(line(rim));
            painter_.drawPolyline(line(wall - rim));
            name(tr("rim"), rim / 2, rim);
            name(tr("core"), wall / 2, wall - 2 * rim);
            name(tr("rim"), wall - rim / 2, rim);
        }
        painter_.setBrush(Qt::NoBrush);
        painter_.setPen(QPen(ink_, 2));
        painter_.drawPolyline(line(0));
        painter_.drawPolyline(line(wall));
    }

    /// The name of a layer at the left end of it, where it is high enough.
    void name(const QString& text, double depth, double height) {
        if (height * scale_ < metrics_.height()) return;
        const double wide = metrics_.horizontalAdvance(text) + 8;
        const QPointF point = at(model::inCrossSection(part(), depth, from_ + wide * .7 / scale_));
        painter_.setPen(ink_);
        painter_.drawText(QRectF(point - QPointF(wide / 2, metrics_.height() / 2),
                                 QSizeF(wide, metrics_.height())),
                          Qt::AlignCenter, text);
    }

    void drawProbe() {
        const double high = probeHeight();
        const double back = -section_.probeBackMm;
        const double front = section_.probeFrontMm;
        QPolygonF body;
        if (section_.wedge) {
            body << at({back, 0}) << at({back, -high}) << at({front - high * .45, -high})
                 << at({front, -high * .35}) << at({front, 0});
        } else {
            body << at({back, 0}) << at({back, -high}) << at({front, -high}) << at({front, 0});
        }
        painter_.setPen(QPen(ink_, 1.5));
        painter_.setBrush(paper_);
        painter_.drawPolygon(body);
        painter_.setBrush(faded(ink_, .18));
        painter_.drawPolygon(body);
        painter_.setPen(QPen(strong_, 2));  // the index point
        painter_.drawLine(at({0, 0}), at({0, 0}) - QPointF(0, 7));
    }

    void drawBeam() {
        const auto& points = section_.trace.line;
        for (std::size_t i = 1; i < points.size(); ++i) {
            const QPointF from = at(points[i - 1]);
            const QPointF to = at(points[i]);
            painter_.setPen(QPen(strong_, 2, i % 2 == 1 ? Qt::SolidLine : Qt::DashLine));
            painter_.drawLine(from, to);
            if (points.size() < 3 || QLineF(from, to).length() < 2 * metrics_.height()) continue;
            tag((from + to) / 2, QString::number(i), strong_);
        }
    }

    /// A word on a patch of paper.
    void tag(QPointF centre, const QString& text, const QColor& colour) {
        QRectF box(0, 0, metrics_.horizontalAdvance(text) + 8, metrics_.height());
        box.moveCenter(centre);
        const QRectF room = style_.area.adjusted(2, 2, -2, -2);
        box.moveLeft(
            std::clamp(box.left(), room.left(), std::max(room.left(), room.right() - box.width())));
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(faded(paper_, .88));
        painter_.drawRoundedRect(box, 3, 3);
        painter_.setPen(colour);
        painter_.drawText(box, Qt::AlignCenter, text);
    }

    void drawFlaw() {
        const auto& trace = section_.trace;
        if (!trace.end || trace.line.size() < 2) return;
        const QPointF flaw = at(trace.line.back());
        painter_.setPen(QPen(paper_, 1.5));
        painter_.setBrush(strong_);
        painter_.drawPolygon(QPolygonF({flaw + QPointF(0, -8), flaw + QPointF(8, 0),
                                        flaw + QPointF(0, 8), flaw + QPointF(-8, 0)}));
        const QString text = tr("%1 deep").arg(millimetres(trace.end->depthMm));
        tag(clearOfBeam(flaw, metrics_.horizontalAdvance(text) + 8), text, ink_);
    }

    /// Where a word of this width stands beside the flaw without covering the beam: right, left,
    /// below or above.
    [[nodiscard]] QPointF clearOfBeam(QPointF flaw, double wide) const {
        const double high = metrics_.height();
        const QPointF aside(wide / 2 + 12, 0);
        const QPointF below(0, high / 2 + 12);
        const QRectF room = style_.area.adjusted(4, 4, -4, -high - 8);
        for (const QPointF way : {aside, -aside, below, -below, aside + below, aside - below,
                                  below - aside, -below - aside}) {
            QRectF box(0, 0, wide, high);
            box.moveCenter(flaw + way);
            if (room.contains(box) && !coversBeam(box)) return box.center();
        }
        return flaw + below;
    }

    [[nodiscard]] bool coversBeam(const QRectF& box) const {
        const auto& points = section_.trace.line;
        for (std::size_t i = 1; i < points.size(); ++i) {
            const QLineF leg(at(points[i - 1]), at(points[i]));
            for (int n = 0; n <= kSteps; ++n) {
                if (box.contains(leg.pointAt(static_cast<double>(n) / kSteps))) return true;
            }
        }
        return false;
    }

    void drawFootnote() {
        const double line = metrics_.height();
        const QRectF foot(style_.area.left() + 8, style_.area.bottom() - line - 4,
                          style_.area.width() - 16, line);
        painter_.setPen(ink_);
        // A bar to scale: 1, 2 or 5 x 10^n mm, at most a quarter of the width.
        const double most = style_.area.width() / 4 / scale_;
        double bar = std::pow(10, std::floor(std::log10(most)));
        if (bar * 5 <= most) {
            bar *= 5;
        } else if (bar * 2 <= most) {
            bar *= 2;
        }
        const double y = foot.center().y();
        const double right = foot.left() + bar * scale_;
        painter_.setPen(QPen(ink_, 1.5));
        painter_.drawLine(QPointF(foot.left(), y), QPointF(right, y));
        painter_.drawLine(QPointF(foot.left(), y - 4), QPointF(foot.left(), y + 4));
        painter_.drawLine(QPointF(right, y - 4), QPointF(right, y + 4));
        const QString length = QStringLiteral("%1 mm").arg(bar);
        const QRectF beside(right + 8, foot.top(), foot.right() - right - 8, line);
        painter_.drawText(beside, Qt::AlignLeft | Qt::AlignVCenter, length);
        const QString said = section_.message.isEmpty()
                                 ? tr("wall %1").arg(millimetres(part().thicknessMm))
                                 : section_.message;
        const double used = metrics_.horizontalAdvance(length) + 16;
        painter_.drawText(beside.adjusted(used, 0, 0, 0), Qt::AlignRight | Qt::AlignVCenter,
                          metrics_.elidedText(said, Qt::ElideRight, beside.width() - used));
    }

    QPainter& painter_;
    const BeamSection& section_;
    const BeamSectionStyle& style_;
    QFontMetricsF metrics_;
    QColor paper_;
    QColor ink_;
    QColor strong_;
    double from_ = 0;  ///< along the scanned surface, mm
    double to_ = 0;
    double scale_ = 1;
    QPointF origin_;  ///< the index point
};

}  // namespace

void paintBeamSection(QPainter& painter, const BeamSection& section,
                      const BeamSectionStyle& style) {
    Drawing(painter, section, style).draw();
}

}  // namespace app
