// SPDX-License-Identifier: Apache-2.0
#include <QCoreApplication>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <vector>

#include "looks/mark.h"
#include "ultrasonic_bench/echo_diagram.h"

namespace app {
namespace {

constexpr double kFarthest = 100;  // near fields
constexpr double kIndicativeUpTo = 1;
constexpr double kLowestDb = -90;
constexpr double kDeepestDb = -120;

QString tr(const char* text) {
    return QCoreApplication::translate("EchoDiagram", text);
}

QColor faded(QColor colour, double opacity) {
    colour.setAlphaF(static_cast<float>(opacity));
    return colour;
}

QString number(double value) {
    return QString::number(value, 'g', value < 10 ? 2 : 4);
}

QString diameter(double value) {
    return QString::number(value, 'g', value < 10 ? 2 : 3);
}

/// 1, 2, 5 x 10^n between two values.
std::vector<double> decades(double from, double to) {
    std::vector<double> steps;
    const int last = static_cast<int>(std::floor(std::log10(to)));
    for (int power = static_cast<int>(std::floor(std::log10(from))); power <= last; ++power) {
        for (const double part : {1.0, 2.0, 5.0}) {
            const double step = part * std::pow(10, power);
            if (step >= from * (1 - 1e-9) && step <= to * (1 + 1e-9)) steps.push_back(step);
        }
    }
    return steps;
}

class Drawing {
public:
    Drawing(QPainter& painter, const EchoDiagram& diagram, const EchoDiagramStyle& style)
        : painter_(painter),
          diagram_(diagram),
          style_(style),
          metrics_(painter.font()),
          paper_(style.palette.color(QPalette::Base)),
          ink_(style.palette.color(QPalette::Text)),
          faint_(style.palette.color(QPalette::PlaceholderText)),
          strong_(readable(style.palette.color(QPalette::Highlight), paper_)) {
        const double line = metrics_.height();
        plot_ = style.area.adjusted(metrics_.horizontalAdvance("−120") + line + 8, 2.4 * line + 6,
                                    -metrics_.horizontalAdvance("88.8") - 12, -2 * line - 12);
        for (const auto* point : {&diagram.flaw, &diagram.reference}) {
            if (*point) lowest_ = std::min(lowest_, std::floor((*point)->echoDb / 10) * 10);
        }
        lowest_ = std::max(lowest_, kDeepestDb);
    }

    void draw() {
        painter_.setRenderHint(QPainter::Antialiasing);
        painter_.fillRect(style_.area, style_.palette.color(QPalette::Window));
        if (diagram_.nearFieldMm <= 0) {
            painter_.setPen(style_.palette.color(QPalette::WindowText));
            painter_.drawText(style_.area.adjusted(16, 8, -16, -8),
                              Qt::AlignCenter | Qt::TextWordWrap, diagram_.message);
            return;
        }
        painter_.fillRect(plot_, paper_);
        drawNearZone();
        drawDistances();
        drawHeights();
        painter_.save();
        painter_.setClipRect(plot_);
        drawCurves();
        painter_.restore();
        drawCurveNames();
        drawPoints();
        drawBackWallName();
        painter_.setPen(QPen(faded(ink_, .6), 1));
        painter_.setBrush(Qt::NoBrush);
        painter_.drawRect(plot_);
        drawTitles();
    }

private:
    [[nodiscard]] double xOf(double a) const {
        const double share =
            std::log(a / model::kSmallestDistance) / std::log(kFarthest / model::kSmallestDistance);
        return plot_.left() + share * plot_.width();
    }
    [[nodiscard]] double yOf(double db) const {
        return plot_.top() + (db - kHighest) / (lowest_ - kHighest) * plot_.height();
    }
    [[nodiscard]] QPointF at(const EchoPoint& point) const {
        return {std::clamp(xOf(point.a), plot_.left(), plot_.right()),
                std::clamp(yOf(point.echoDb), plot_.top(), plot_.bottom())};
    }

    /// From 0.7 to 1 near field a size is only indicative.
    void drawNearZone() {
        const QRectF zone(plot_.left(), plot_.top(), xOf(kIndicativeUpTo) - plot_.left(),
                          plot_.height());
        painter_.fillRect(zone, QBrush(faded(ink_, .22), Qt::BDiagPattern));
    }

    void drawDistances() {
        const double near = diagram_.nearFieldMm;
        const double line = metrics_.height();
        double taken = -1e9;
        for (const double path : decades(model::kSmallestDistance * near, kFarthest * near)) {
            const double x = xOf(path / near);
            painter_.setPen(QPen(faded(ink_, .12), 1));
            painter_.drawLine(QPointF(x, plot_.top()), QPointF(x, plot_.bottom()));
            painter_.setPen(style_.palette.color(QPalette::WindowText));
            painter_.drawLine(QPointF(x, plot_.bottom()), QPointF(x, plot_.bottom() + 4));
            const QString text = number(path);
            const double wide = metrics_.horizontalAdvance(text);
            if (x - wide / 2 < taken + 6) continue;
            taken = x + wide / 2;
            painter_.drawText(QRectF(x - 40, plot_.bottom() + 4, 80, line + 2), Qt::AlignCenter,
                              text);
        }
        taken = -1e9;
        for (const double a : decades(model::kSmallestDistance, kFarthest)) {
            const double x = xOf(a);
            painter_.setPen(style_.palette.color(QPalette::WindowText));
            painter_.drawLine(QPointF(x, plot_.top() - 4), QPointF(x, plot_.top()));
            const QString text = number(a);
            const double wide = metrics_.horizontalAdvance(text);
            if (x - wide / 2 < taken + 6) continue;
            taken = x + wide / 2;
            painter_.drawText(QRectF(x - 40, plot_.top() - line - 6, 80, line + 2), Qt::AlignCenter,
                              text);
        }
    }

    void drawHeights() {
        const double line = metrics_.height();
        double step = 10;
        for (const double wider : {20.0, 50.0, 100.0}) {
            if (step * plot_.height() / (kHighest - lowest_) < line) step = wider;
        }
        for (int n = 0; n * step <= -lowest_; ++n) {
            const double db = -n * step;
            const double y = yOf(db);
            painter_.setPen(QPen(faded(ink_, .12), 1));
            painter_.drawLine(QPointF(plot_.left(), y), QPointF(plot_.right(), y));
            painter_.setPen(style_.palette.color(QPalette::WindowText));
            painter_.drawLine(QPointF(plot_.left() - 4, y), QPointF(plot_.left(), y));
            const QString text = db < 0 ? tr("−%1").arg(-db) : QStringLiteral("0");
            painter_.drawText(QRectF(style_.area.left(), y - line / 2,
                                     plot_.left() - 7 - style_.area.left(), line),
                              Qt::AlignRight | Qt::AlignVCenter, text);
        }
    }

    void drawCurve(const std::vector<double>& echoDb) {
        const auto& a = modelDiagram().a;
        QPainterPath path;
        for (std::size_t i = 0; i < a.size(); ++i) {
            const QPointF point(xOf(a[i]), yOf(echoDb[i]));
            if (i == 0) {
                path.moveTo(point);
            } else {
                path.lineTo(point);
            }
        }
        painter_.drawPath(path);
    }

    void drawCurves() {
        painter_.setBrush(Qt::NoBrush);
        painter_.setPen(QPen(faded(ink_, .55), 1));
        for (const auto& curve : modelDiagram().curves) drawCurve(curve.echoDb);
        painter_.setPen(QPen(ink_, 2));
        drawCurve(modelDiagram().backWallDb);
        if (!diagram_.flawFbhMm) return;
        const double g = *diagram_.flawFbhMm / diagram_.diameterMm;
        std::vector<double> own;
        for (const double a : modelDiagram().a) {
            own.push_back(g / a <= 3 ? model::discEchoDb(a, g) : model::backWallEchoDb(a));
        }
        painter_.setPen(QPen(strong_, 2, Qt::DashLine));
        drawCurve(own);
    }

    /// The holes' diameters at the right, as many as there is room for.
    void drawCurveNames() {
        const double line = metrics_.height();
        double taken = -1e9;
        painter_.setPen(style_.palette.color(QPalette::WindowText));
        const auto& curves = modelDiagram().curves;
        const auto name = [&](double db, const QString& text) {
            const double y = yOf(db);
            if (y > plot_.bottom() - line / 2 || y < taken + line * .9) return;
            taken = y;
            painter_.drawText(QRectF(plot_.right() + 5, y - line / 2,
                                     style_.area.right() - plot_.right() - 5, line),
                              Qt::AlignLeft | Qt::AlignVCenter, text);
        };
        for (auto curve = curves.rbegin(); curve != curves.rend(); ++curve) {
            name(curve->echoDb.back(), diameter(curve->g * diagram_.diameterMm));
        }
    }

    /// Above the right end of its curve, unless a point's label stands there.
    void drawBackWallName() {
        const QString text = tr("back wall");
        const double wide = metrics_.horizontalAdvance(text);
        const auto& diagram = modelDiagram();
        const double left = plot_.right() - wide - 6;
        std::size_t at = diagram.a.size() - 1;
        while (at > 0 && xOf(diagram.a[at]) > left) --at;
        const QRectF box(left, yOf(diagram.backWallDb[at]) - metrics_.height() - 3, wide,
                         metrics_.height());
        for (const QRectF& label : labels_) {
            if (label.intersects(box)) return;
        }
        painter_.setPen(ink_);
        painter_.drawText(box, Qt::AlignCenter, text);
    }

    void drawPoints() {
        if (diagram_.flawPathMm > 0) {
            const double a = diagram_.flawPathMm / diagram_.nearFieldMm;
            if (a >= model::kSmallestDistance && a <= kFarthest) {
                painter_.setPen(QPen(strong_, 1, Qt::DotLine));
                painter_.drawLine(QPointF(xOf(a), plot_.top()), QPointF(xOf(a), plot_.bottom()));
            }
        }
        if (diagram_.reference) {
            const QPointF point = at(*diagram_.reference);
            painter_.setPen(QPen(ink_, 2));
            painter_.setBrush(paper_);
            painter_.drawEllipse(point, 5, 5);
            label(point, tr("reference"), ink_, -1);
        }
        if (diagram_.flaw && diagram_.flaw->a >= model::kSmallestDistance) {
            const QPointF point = at(*diagram_.flaw);
            painter_.setPen(QPen(paper_, 1.5));
            painter_.setBrush(strong_);
            painter_.drawPolygon(QPolygonF({point + QPointF(0, -8), point + QPointF(8, 0),
                                            point + QPointF(0, 8), point + QPointF(-8, 0)}));
            label(point, tr("flaw"), strong_, 1);
        }
    }

    /// Beside a point, above it (-1) or below it (1), on a patch of paper.
    void label(QPointF point, const QString& text, const QColor& colour, int side) {
        QRectF box(0, 0, metrics_.horizontalAdvance(text) + 6, metrics_.height());
        box.moveCenter(point + QPointF(box.width() / 2 + 8, side * (box.height() / 2 + 4)));
        if (box.right() > plot_.right()) box.moveRight(point.x() - 10);
        if (box.bottom() > plot_.bottom()) box.moveBottom(point.y() - 6);
        if (box.top() < plot_.top()) box.moveTop(point.y() + 6);
        labels_.push_back(box);
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(faded(paper_, .85));
        painter_.drawRoundedRect(box, 2, 2);
        painter_.setPen(colour);
        painter_.drawText(box, Qt::AlignCenter, text);
    }

    void drawTitles() {
        const double line = metrics_.height();
        painter_.setPen(style_.palette.color(QPalette::WindowText));
        const QString path = tr("sound path, mm");
        QRectF under(0, plot_.bottom() + line + 6, metrics_.horizontalAdvance(path) + 4, line + 2);
        under.moveCenter({plot_.center().x(), under.center().y()});
        painter_.drawText(under, Qt::AlignCenter, path);
        const QRectF over(style_.area.left(), plot_.top() - 2.3 * line - 4, style_.area.width() - 4,
                          line + 2);
        const QString holes = tr("FBH, mm");
        painter_.drawText(over, Qt::AlignRight | Qt::AlignVCenter, holes);
        const QRectF left = over.adjusted(plot_.left() - style_.area.left(), 0,
                                          -metrics_.horizontalAdvance(holes) - 8, 0);
        QString fields = tr("distance in near fields");
        for (const QString& shorter : {tr("in near fields"), tr("near fields")}) {
            if (metrics_.horizontalAdvance(fields) > left.width()) fields = shorter;
        }
        painter_.drawText(left, Qt::AlignLeft | Qt::AlignVCenter, fields);
        painter_.save();
        painter_.translate(style_.area.left() + line / 2 + 2, plot_.center().y());
        painter_.rotate(-90);
        const QString height = tr("echo height, dB");
        const double room = plot_.height() + 3 * line;
        painter_.drawText(QRectF(-room / 2, -line / 2, room, line), Qt::AlignCenter,
                          metrics_.horizontalAdvance(height) < room ? height : tr("dB"));
        painter_.restore();
        if (diagram_.message.isEmpty()) return;
        const QRectF inside = plot_.adjusted(8, 8, -8, -8);
        const QRectF text = painter_.boundingRect(
            inside, Qt::AlignBottom | Qt::AlignLeft | Qt::TextWordWrap, diagram_.message);
        painter_.fillRect(text.adjusted(-4, -2, 4, 2), faded(paper_, .9));
        painter_.setPen(ink_);
        painter_.drawText(inside, Qt::AlignBottom | Qt::AlignLeft | Qt::TextWordWrap,
                          diagram_.message);
    }

    static constexpr double kHighest = 4;  // room above 0 dB

    QPainter& painter_;
    const EchoDiagram& diagram_;
    const EchoDiagramStyle& style_;
    QFontMetricsF metrics_;
    QColor paper_;
    QColor ink_;
    QColor faint_;
    QColor strong_;
    QRectF plot_;
    double lowest_ = kLowestDb;
    std::vector<QRectF> labels_;  ///< where the points' labels stand
};

}  // namespace

void paintEchoDiagram(QPainter& painter, const EchoDiagram& diagram,
                      const EchoDiagramStyle& style) {
    Drawing(painter, diagram, style).draw();
}

}  // namespace app
