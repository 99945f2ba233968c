// SPDX-License-Identifier: Apache-2.0
#include "pdf/figure_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "pdf/convex_hull.h"
#include "pdf/style.h"

namespace reports {

namespace {

constexpr double kLabelSize = 6;
constexpr double kLeastWidth = 0.4;  // of an indication on paper
constexpr double kGroupRoom = 1.1;   // between an indication and its group's outline
constexpr double kAxisLength = 11;

constexpr Colour kFailing = style::colourOf(Mark::NotAcceptable);

double radians(double degrees) {
    return degrees * std::numbers::pi / 180;
}

struct LabelBox {
    double left, top, right, bottom;
    [[nodiscard]] bool meets(const LabelBox& other) const {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }
};

/// One figure on one place of the paper.
class FigureDrawing {
public:
    FigureDrawing(const Figure& figure, Canvas& canvas, double left, double top)
        : figure_(figure),
          canvas_(canvas),
          left_(left),
          top_(top),
          width_((figure.right - figure.left) * figure.scale),
          height_((figure.top - figure.bottom) * figure.scale) {}

    /// Returns how many labels were left out.
    int draw() {
        canvas_.rectangle(left_, top_, width_, height_, std::nullopt, Pen{0.15, style::kFaint});
        canvas_.clip(left_, top_, width_, height_);
        drawOutline();
        for (const FigureGroup& group : figure_.groups) drawGroup(group);
        for (const FigureCapsule& capsule : figure_.capsules) drawCapsule(capsule);
        for (const FigureFrame& frame : figure_.frames) drawFrame(frame);
        drawAxes();
        canvas_.unclip();
        drawLabels();
        return leftOut_;
    }

private:
    [[nodiscard]] PaperPoint paper(double x, double y) const {
        return {left_ + (x - figure_.left) * figure_.scale,
                top_ + (figure_.top - y) * figure_.scale};
    }

    void drawOutline() {
        if (!figure_.zoneWidth || !figure_.zoneHeight) return;
        // What lies far outside the window is not drawn: libharu's coordinates end.
        constexpr double kBeyond = 5;
        const PaperPoint from = paper(0, *figure_.zoneHeight);
        const PaperPoint to = paper(*figure_.zoneWidth, 0);
        const double left = std::max(from.x, left_ - kBeyond);
        const double top = std::max(from.y, top_ - kBeyond);
        const double right = std::min(to.x, left_ + width_ + kBeyond);
        const double bottom = std::min(to.y, top_ + height_ + kBeyond);
        canvas_.rectangle(left, top, right - left, bottom - top, std::nullopt,
                          Pen{0.3, style::kInk});
    }

    void drawAxes() {
        const PaperPoint datum = paper(0, 0);
        if (datum.x < left_ || datum.x > left_ + width_ || datum.y < top_ ||
            datum.y > top_ + height_)
            return;
        const Pen pen{0.3, style::kAccent};
        canvas_.circle(datum, 0.8, style::kAccent, std::nullopt);
        canvas_.line(datum, {datum.x + kAxisLength, datum.y}, pen);
        canvas_.line(datum, {datum.x, datum.y - kAxisLength}, pen);
        constexpr double kHead = 1.4;
        const PaperPoint x = {datum.x + kAxisLength, datum.y};
        const PaperPoint y = {datum.x, datum.y - kAxisLength};
        const std::array<PaperPoint, 3> headX = {
            {{x.x + kHead, x.y}, {x.x, x.y - kHead / 2}, {x.x, x.y + kHead / 2}}};
        const std::array<PaperPoint, 3> headY = {
            {{y.x, y.y - kHead}, {y.x - kHead / 2, y.y}, {y.x + kHead / 2, y.y}}};
        canvas_.polygon(headX, style::kAccent, std::nullopt);
        canvas_.polygon(headY, style::kAccent, std::nullopt);
    }

    /// The capsule's outline on paper, widened by `room` mm of paper.
    [[nodiscard]] std::vector<PaperPoint> outlineOf(const FigureCapsule& capsule,
                                                    double room) const {
        const double half = (capsule.length - capsule.width) / 2 * figure_.scale;
        const double radius = std::max(capsule.width * figure_.scale, kLeastWidth) / 2 + room;
        const PaperPoint centre = paper(capsule.x, capsule.y);
        const double along = radians(capsule.angleDegrees);
        constexpr int kSteps = 12;  // of each round end
        std::vector<PaperPoint> points;
        for (const double end : {1.0, -1.0})
            for (int i = 0; i <= kSteps; ++i) {
                const double turn = along + (end > 0 ? -0.5 : 0.5) * std::numbers::pi +
                                    std::numbers::pi * i / kSteps;
                points.push_back(
                    {centre.x + end * half * std::cos(along) + radius * std::cos(turn),
                     centre.y - end * half * std::sin(along) - radius * std::sin(turn)});
            }
        return points;
    }

    void drawCapsule(const FigureCapsule& capsule) {
        const std::vector<PaperPoint> outline = outlineOf(capsule, 0);
        switch (capsule.role) {
            case FigureCapsule::Role::Failing:
                canvas_.polygon(outline, kFailing, Pen{0.2, kFailing});
                break;
            case FigureCapsule::Role::Counted:
                canvas_.polygon(outline, style::kWhite, Pen{0.25, style::kInk});
                break;
            case FigureCapsule::Role::NotCounted:
                canvas_.polygon(outline, std::nullopt, Pen{0.15, style::kMuted});
                break;
            case FigureCapsule::Role::Neighbour:
                canvas_.polygon(outline, style::kFaint, Pen{0.15, style::kInk});
                break;
        }
    }

    void drawGroup(const FigureGroup& group) {
        std::vector<PaperPoint> points;
        for (const std::size_t member : group.members)
            std::ranges::copy(outlineOf(figure_.capsules[member], kGroupRoom),
                              std::back_inserter(points));
        canvas_.polygon(convexHull(std::move(points)), std::nullopt, Pen{0.15, style::kAccent});
    }

    [[nodiscard]] std::vector<PaperPoint> cornersOf(const FigureFrame& frame) const {
        const double c = std::cos(radians(frame.angleDegrees));
        const double s = std::sin(radians(frame.angleDegrees));
        std::vector<PaperPoint> corners;
        for (const auto& [x, y] :
             {std::pair{-1, 1}, std::pair{1, 1}, std::pair{1, -1}, std::pair{-1, -1}}) {
            const double dx = x * frame.width / 2;
            const double dy = y * frame.height / 2;
            corners.push_back(paper(frame.x + c * dx - s * dy, frame.y + s * dx + c * dy));
        }
        return corners;
    }

    void drawFrame(const FigureFrame& frame) {
        const Pen pen{0.4, frame.failing ? kFailing : style::kInk, Dash::Long};
        if (frame.circle)
            canvas_.circle(paper(frame.x, frame.y), frame.width / 2 * figure_.scale, std::nullopt,
                           pen);
        else
            canvas_.polygon(cornersOf(frame), std::nullopt, pen);
    }

    void drawLabels() {
        // Labels keep off the indications, unless these are too many to find such places among.
        constexpr std::size_t kManyIndications = 400;
        if (figure_.capsules.size() <= kManyIndications)
            for (const FigureCapsule& capsule : figure_.capsules)
                shapes_.push_back(boundsOf(capsule));
        const PaperPoint datum = paper(0, 0);
        place(figure_.datum,
              {{datum.x + 1.2, datum.y + 3},
               {datum.x - 9, datum.y + 3},
               {datum.x + 1.2, datum.y - 1.2}},
              style::kAccent, Weight::Regular, false);
        place(figure_.xAxis,
              {{datum.x + kAxisLength, datum.y + 2.8}, {datum.x + kAxisLength, datum.y - 1}},
              style::kAccent, Weight::Regular, false);
        place(figure_.yAxis,
              {{datum.x - 2.2, datum.y - kAxisLength + 1},
               {datum.x + 1.2, datum.y - kAxisLength + 1}},
              style::kAccent, Weight::Regular, false);
        for (const FigureFrame& frame : figure_.frames) labelFrame(frame);
        if (figure_.zoneWidth && figure_.zoneHeight) {
            const PaperPoint corner = paper(*figure_.zoneWidth, *figure_.zoneHeight);
            const double back = labelWidth(figure_.zoneLabel, Weight::Regular) + 1;
            place(figure_.zoneLabel,
                  {{corner.x - back, corner.y + 2.8}, {corner.x - back, corner.y - 1}},
                  style::kMuted, Weight::Regular, false);
        }
        for (const FigureGroup& group : figure_.groups)
            labelAround(group.label, boundsOf(group), style::kAccent, Weight::Bold);
        for (const FigureCapsule& capsule : figure_.capsules)
            labelAround(capsule.label, boundsOf(capsule),
                        capsule.role == FigureCapsule::Role::Failing ? kFailing : style::kInk,
                        Weight::Regular);
    }

    void labelFrame(const FigureFrame& frame) {
        const Colour colour = frame.failing ? kFailing : style::kInk;
        const double width = labelWidth(frame.label, Weight::Bold);
        std::vector<PaperPoint> places;
        if (frame.circle) {
            const PaperPoint top = paper(frame.x, frame.y + frame.width / 2);
            places = {{top.x - width / 2, top.y - 0.8}, {top.x - width / 2, top.y + 3}};
        } else {
            for (const PaperPoint& corner : cornersOf(frame)) {
                places.push_back({corner.x + 0.8, corner.y + 2.8});
                places.push_back({corner.x - width - 0.8, corner.y + 2.8});
                places.push_back({corner.x + 0.8, corner.y - 0.8});
                places.push_back({corner.x - width - 0.8, corner.y - 0.8});
            }
        }
        place(frame.label, places, colour, Weight::Bold, true);
    }

    static LabelBox boundsOf(const std::vector<PaperPoint>& points) {
        LabelBox box{points[0].x, points[0].y, points[0].x, points[0].y};
        for (const PaperPoint& point : points)
            box = {std::min(box.left, point.x), std::min(box.top, point.y),
                   std::max(box.right, point.x), std::max(box.bottom, point.y)};
        return box;
    }
    [[nodiscard]] LabelBox boundsOf(const FigureCapsule& capsule) const {
        return boundsOf(outlineOf(capsule, 0));
    }
    [[nodiscard]] LabelBox boundsOf(const FigureGroup& group) const {
        std::vector<PaperPoint> points;
        for (const std::size_t member : group.members)
            std::ranges::copy(outlineOf(figure_.capsules[member], kGroupRoom),
                              std::back_inserter(points));
        return boundsOf(points);
    }

    void labelAround(const std::string& label, const LabelBox& box, Colour colour, Weight weight) {
        const double width = labelWidth(label, weight);
        const double middleX = (box.left + box.right - width) / 2;
        const double middleY = (box.top + box.bottom) / 2 + 0.75;
        place(label,
              {{box.right + 0.5, middleY},
               {box.right + 0.4, box.top - 0.2},
               {middleX, box.top - 0.5},
               {box.left - width - 0.5, middleY},
               {middleX, box.bottom + 2.1},
               {box.right + 0.4, box.bottom + 1.8}},
              colour, weight, true);
    }

    [[nodiscard]] double labelWidth(const std::string& label, Weight weight) const {
        return widthMm(canvas_.faces().lay(label, weight), kLabelSize);
    }

    [[nodiscard]] bool isInside(const LabelBox& box) const {
        return box.left >= left_ && box.right <= left_ + width_ && box.top >= top_ &&
               box.bottom <= top_ + height_;
    }
    static bool meetsAny(const LabelBox& box, const std::vector<LabelBox>& others) {
        return std::ranges::any_of(others,
                                   [&box](const LabelBox& other) { return box.meets(other); });
    }

    /// Draws a label at the first base point where it covers no other, inside the window.
    void place(const std::string& label, const std::vector<PaperPoint>& bases, Colour colour,
               Weight weight, bool counts) {
        if (label.empty()) return;
        const Glyphs glyphs = canvas_.faces().lay(label, weight);
        const double width = widthMm(glyphs, kLabelSize);
        const auto tryPlaces = [&](bool offShapes) {
            for (const PaperPoint& base : bases) {
                const LabelBox box{base.x, base.y - 1.75, base.x + width, base.y + 0.45};
                if (!isInside(box) || meetsAny(box, taken_) ||
                    (offShapes && meetsAny(box, shapes_)))
                    continue;
                taken_.push_back(box);
                canvas_.text(base.x, base.y, Line(glyphs), kLabelSize, colour);
                return true;
            }
            return false;
        };
        if (tryPlaces(true) || (!shapes_.empty() && tryPlaces(false))) return;
        if (counts) ++leftOut_;
    }

    const Figure& figure_;
    Canvas& canvas_;
    double left_;
    double top_;
    double width_;
    double height_;
    std::vector<LabelBox> shapes_;  // of the indications
    std::vector<LabelBox> taken_;   // by labels
    int leftOut_ = 0;
};

}  // namespace

int drawFigure(Canvas& canvas, const Figure& figure, double left, double top) {
    return FigureDrawing(figure, canvas, left, top).draw();
}

}  // namespace reports
