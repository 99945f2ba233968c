// SPDX-License-Identifier: Apache-2.0
#include "bench/surface_painter.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "bench/surface_rulers.h"

namespace app {
namespace {

/// More labels than this tell nothing.
constexpr int kMostLabels = 400;
/// An indication shown smaller than this is ringed, pixels.
constexpr double kSmall = 10;

QColor faded(QColor colour, double opacity) {
    colour.setAlphaF(static_cast<float>(opacity));
    return colour;
}

class Drawing {
public:
    Drawing(QPainter& painter, const SurfacePicture& picture, const SurfaceScale& scale,
            const SurfaceStyle& style, const std::optional<ShownCheck>& check)
        : painter_(painter),
          picture_(picture),
          scale_(scale),
          style_(style),
          check_(check),
          paper_(style.palette.color(QPalette::Base)),
          ink_(style.palette.color(QPalette::Text)) {}

    void draw() {
        painter_.setRenderHint(QPainter::Antialiasing);
        painter_.fillRect(style_.area, style_.palette.color(QPalette::Window));
        painter_.save();
        painter_.setClipRect(style_.sheet());
        for (const auto& zone : picture_.neighbours) drawZone(zone, false);
        drawZone(picture_.zone, true);
        paintGrid(painter_, scale_, style_);
        painter_.setPen(QPen(ink_, 1.6));
        painter_.setBrush(Qt::NoBrush);
        painter_.drawPolygon(outline(picture_.zone));
        paintDatum(painter_, scale_, style_);
        drawFrameGround();
        for (const auto& group : picture_.groups) drawGroup(group);
        for (std::size_t i = 0; i < picture_.indications.size(); ++i) drawIndication(i);
        for (const auto& pending : picture_.pending) drawPending(pending);
        drawFrameLine();
        drawLabels();
        drawTag();
        painter_.restore();
        paintRulers(painter_, scale_, style_);
        paintScaleBar(painter_, scale_, style_);
    }

private:
    [[nodiscard]] QPolygonF outline(const PictureZone& zone) const {
        QPolygonF polygon;
        for (const QPointF corner : {QPointF(0, 0), QPointF(zone.width, 0),
                                     QPointF(zone.width, zone.height), QPointF(0, zone.height)}) {
            const QPointF own = zone.toOwn.map(corner);
            polygon << scale_.toPixels(own.x(), own.y());
        }
        return polygon;
    }

    void drawZone(const PictureZone& zone, bool own) {
        const QPolygonF polygon = outline(zone);
        painter_.setPen(own ? QPen(Qt::NoPen) : QPen(faded(ink_, .35), 1, Qt::DashLine));
        painter_.setBrush(own ? paper_ : faded(paper_, .45));
        painter_.drawPolygon(polygon);
        if (own) return;
        const QRectF seen = polygon.boundingRect() & style_.sheet();
        painter_.setPen(faded(ink_, .6));
        painter_.drawText(seen.adjusted(8, 6, -8, -6), Qt::AlignTop | Qt::AlignLeft, zone.name);
    }

    [[nodiscard]] QPointF centre(const model::Capsule& capsule) const {
        return scale_.toPixels(static_cast<double>(capsule.x), static_cast<double>(capsule.y));
    }

    [[nodiscard]] QLineF segment(const model::Capsule& capsule) const {
        const double dx = static_cast<double>(capsule.half * capsule.along.x);
        const double dy = static_cast<double>(capsule.half * capsule.along.y);
        const double x = static_cast<double>(capsule.x);
        const double y = static_cast<double>(capsule.y);
        // A line of no length would not be drawn; a ten-thousandth of a pixel is.
        QLineF line(scale_.toPixels(x - dx, y - dy), scale_.toPixels(x + dx, y + dy));
        if (line.length() < 1e-4) line.setP2(line.p1() + QPointF(1e-4, 0));
        return line;
    }

    [[nodiscard]] double breadth(const model::Capsule& capsule) const {
        return std::max(2 * static_cast<double>(capsule.radius) * scale_.pixelsPerMm, 2.5);
    }

    [[nodiscard]] bool isMember(std::size_t index) const {
        return check_ && check_->members.contains(static_cast<int>(index));
    }

    void drawIndication(std::size_t index) {
        const auto& indication = picture_.indications[index];
        const QLineF line = segment(indication.capsule);
        const double pen = breadth(indication.capsule);
        if (indication.row >= 0 && indication.row == style_.currentRow) {
            const QColor ring = readable(style_.palette.color(QPalette::Highlight), paper_);
            painter_.setPen(QPen(ring, pen + 9, Qt::SolidLine, Qt::RoundCap));
            painter_.drawLine(line);
            painter_.setPen(QPen(paper_, pen + 5, Qt::SolidLine, Qt::RoundCap));
            painter_.drawLine(line);
        }
        QColor colour = indication.row >= 0 ? ink_ : faded(ink_, .45);
        if (isMember(index)) colour = colourOf(check_->mark, paper_);
        if (line.length() + pen < kSmall) {  // to scale it is a speck: a ring says where it is
            painter_.setPen(QPen(faded(colour, .55), 1));
            painter_.setBrush(Qt::NoBrush);
            painter_.drawEllipse(line.center(), kSmall * .75, kSmall * .75);
        }
        painter_.setPen(QPen(colour, pen, Qt::SolidLine, Qt::RoundCap));
        painter_.drawLine(line);
        if (!indication.considered && pen > 3.5) {  // hollow: seen, but not counted
            painter_.setPen(QPen(paper_, pen - 2, Qt::SolidLine, Qt::RoundCap));
            painter_.drawLine(line);
        }
    }

    /// A cross hair where a half-typed row says that something is.
    void drawPending(const PicturePending& pending) {
        const QPointF at = scale_.toPixels(pending.x, pending.y);
        const bool current = pending.row == style_.currentRow;
        const QColor colour =
            current ? readable(style_.palette.color(QPalette::Highlight), paper_) : ink_;
        painter_.setPen(QPen(colour, current ? 2 : 1));
        for (const QPointF way : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)}) {
            painter_.drawLine(at + way * 4, at + way * 12);
        }
    }

    void drawGroup(const PictureGroup& group) {
        if (group.members.empty()) return;
        QPainterPath spine;
        double widest = 0;
        QPointF last;
        for (std::size_t i = 0; i < group.members.size(); ++i) {
            const auto& capsule =
                picture_.indications[static_cast<std::size_t>(group.members[i])].capsule;
            const QLineF line = segment(capsule);
            if (i > 0) {
                spine.moveTo(last);
                spine.lineTo(centre(capsule));
            }
            spine.moveTo(line.p1());
            spine.lineTo(line.p2());
            last = centre(capsule);
            widest = std::max(widest, breadth(capsule));
        }
        QPainterPathStroker stroker;
        stroker.setWidth(widest + 14);
        stroker.setCapStyle(Qt::RoundCap);
        stroker.setJoinStyle(Qt::RoundJoin);
        const QPainterPath hull = stroker.createStroke(spine).simplified();
        painter_.setPen(QPen(faded(ink_, .75), 1.2, Qt::DotLine));
        painter_.setBrush(faded(ink_, .05));
        painter_.drawPath(hull);
        const QFontMetricsF metrics(painter_.font());
        QRectF box(0, 0, metrics.horizontalAdvance(group.id), metrics.height());
        box.moveBottomLeft(hull.boundingRect().topRight() + QPointF(2, 4));
        labels_.push_back(box);
        painter_.setPen(ink_);
        painter_.drawText(box, Qt::AlignCenter, group.id);
    }

    [[nodiscard]] QPainterPath shownFrame() const {
        QTransform toPixels;
        toPixels.translate(scale_.datum.x(), scale_.datum.y());
        toPixels.scale(scale_.pixelsPerMm, -scale_.pixelsPerMm);
        return toPixels.map(framePath(*check_->frame));
    }

    void drawFrameGround() {
        if (!check_ || !check_->frame) return;
        painter_.fillPath(shownFrame(), faded(colourOf(check_->mark, paper_), .09));
    }

    void drawFrameLine() {
        if (!check_ || !check_->frame) return;
        const QColor colour = colourOf(check_->mark, paper_);
        painter_.setBrush(Qt::NoBrush);
        painter_.setPen(QPen(colour, 2));
        painter_.drawPath(shownFrame());
    }

    /// The check's label on a patch of paper, above the frame where there is room.
    void drawTag() {
        if (!check_ || !check_->frame) return;
        const QRectF frame = shownFrame().boundingRect();
        const QColor colour = colourOf(check_->mark, paper_);
        const QFontMetricsF metrics(painter_.font());
        QRectF tag = metrics.boundingRect(check_->label).adjusted(-6, -3, 6, 3);
        const QRectF sheet = style_.sheet();
        tag.moveBottomLeft(frame.topLeft() - QPointF(0, 3));
        if (tag.top() < sheet.top() + 2) tag.moveTop(sheet.top() + 4);
        tag.moveLeft(std::clamp(tag.left(), sheet.left() + 2,
                                std::max(sheet.left() + 2, sheet.right() - tag.width() - 2)));
        painter_.setPen(QPen(colour, 1));
        painter_.setBrush(paper_);
        painter_.drawRect(tag);
        painter_.drawText(tag, Qt::AlignCenter, check_->label);
    }

    /// Labels beside their indications, left out where they would cover each other.
    void drawLabels() {
        if (picture_.indications.size() > kMostLabels && scale_.pixelsPerMm < 4) return;
        const QFontMetricsF metrics(painter_.font());
        const QRectF sheet = style_.sheet();
        for (std::size_t i = 0; i < picture_.indications.size(); ++i) {
            const auto& indication = picture_.indications[i];
            const QPointF middle = centre(indication.capsule);
            if (!sheet.contains(middle)) continue;
            const double away = std::max(breadth(indication.capsule) / 2 + 4, kSmall * .75);
            QRectF box(0, 0, metrics.horizontalAdvance(indication.label), metrics.height());
            box.moveCenter(middle + QPointF(away + box.width() / 2, -away - box.height() / 4));
            const bool covered =
                std::any_of(labels_.begin(), labels_.end(),
                            [&](const QRectF& other) { return other.intersects(box); });
            if (covered && (indication.row < 0 || indication.row != style_.currentRow)) continue;
            labels_.push_back(box);
            painter_.setPen(isMember(i)           ? colourOf(check_->mark, paper_)
                            : indication.row >= 0 ? ink_
                                                  : faded(ink_, .55));
            painter_.drawText(box, Qt::AlignCenter, indication.label);
        }
    }

    QPainter& painter_;
    const SurfacePicture& picture_;
    const SurfaceScale& scale_;
    const SurfaceStyle& style_;
    const std::optional<ShownCheck>& check_;
    QColor paper_;
    QColor ink_;
    std::vector<QRectF> labels_;  ///< where labels stand already
};

}  // namespace

QPainterPath framePath(const model::CheckFrame& frame) {
    const double width = frame.shape.width.approximately();
    const double height = frame.shape.height.approximately();
    const QRectF body(-width / 2, -height / 2, width, height);
    QPainterPath path;
    if (frame.shape.circle) {
        path.addEllipse(body);
    } else {
        path.addRect(body);
    }
    QTransform place;
    place.translate(frame.x, frame.y);
    place.rotate(frame.angleDegrees);
    return place.map(path);
}

void paintSurface(QPainter& painter, const SurfacePicture& picture, const SurfaceScale& scale,
                  const SurfaceStyle& style, const std::optional<ShownCheck>& check) {
    Drawing(painter, picture, scale, style, check).draw();
}

}  // namespace app
