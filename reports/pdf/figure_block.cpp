// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "pdf/blocks.h"
#include "pdf/cells.h"
#include "pdf/figure_drawing.h"
#include "pdf/style.h"

namespace reports {

namespace {

constexpr double kCaptionSize = 8.6;
constexpr double kCaptionHeight = 5;
constexpr double kScaleHeight = 6.5;
constexpr double kBetween = 5;       // two figures side by side
constexpr double kLeastRoomMm = 70;  // caption and scale beside the next figure's

double widthOf(const Figure& figure) {
    return (figure.right - figure.left) * figure.scale;
}
double heightOf(const Figure& figure) {
    return (figure.top - figure.bottom) * figure.scale;
}

void drawScale(Canvas& canvas, const Figure& figure, double left, double top) {
    const double y = top + 4;
    const double right = left + figure.barLength * figure.scale;
    const Pen pen{0.35, style::kInk};
    canvas.line({left, y}, {right, y}, pen);
    for (const double x : {left, right}) canvas.line({x, y - 1}, {x, y + 1}, pen);
    const double width = canvas.text(right + 2, y + 0.9, figure.barText, Weight::Regular,
                                     style::kSmallSize, style::kInk);
    canvas.text(right + 2 + width + 4, y + 0.9, figure.scaleText, Weight::Regular,
                style::kSmallSize, style::kMuted);
}

std::string withNumber(std::string phrase, int number) {
    const std::size_t at = phrase.find("%1");
    if (at != std::string::npos) phrase.replace(at, 2, std::to_string(number));
    return phrase;
}

/// Figures side by side, as high as the highest.
Strip rowOfFigures(const std::vector<Figure>& row, Faces& faces) {
    std::string legend;
    double height = 0;
    for (const Figure& figure : row) {
        if (!figure.legend.empty()) legend += (legend.empty() ? "" : " ") + figure.legend;
        height = std::max(height, heightOf(figure));
    }
    Strip explained;
    if (!legend.empty())
        explained =
            rowOf({{0, style::kWidth, legend, Weight::Regular, style::kSmallSize, style::kMuted}},
                  {}, faces)
                .front();
    Strip strip;
    const double noteHeight = style::lineHeight(style::kSmallSize);
    strip.height = kCaptionHeight + height + kScaleHeight + explained.height + noteHeight;
    strip.draw = [row, height, explained](Canvas& canvas, double top) {
        double left = style::kLeft;
        int leftOut = 0;
        for (const Figure& figure : row) {
            canvas.text(left, top + style::ascent(kCaptionSize), figure.caption, Weight::Bold,
                        kCaptionSize, style::kInk);
            leftOut += drawFigure(canvas, figure, left, top + kCaptionHeight);
            drawScale(canvas, figure, left, top + kCaptionHeight + heightOf(figure));
            left += std::max(widthOf(figure), kLeastRoomMm) + kBetween;
        }
        const double below = top + kCaptionHeight + height + kScaleHeight;
        if (explained.draw) explained.draw(canvas, below);
        if (leftOut > 0)
            canvas.text(style::kLeft, below + explained.height + style::ascent(style::kSmallSize),
                        withNumber(row.front().labelsLeftOut, leftOut), Weight::Regular,
                        style::kSmallSize, style::kMuted);
    };
    return strip;
}

}  // namespace

void addFigures(Strips& strips, const std::vector<Figure>& figures, Faces& faces) {
    std::vector<Figure> row;
    double used = 0;
    const auto finishRow = [&] {
        if (row.empty()) return;
        Strip strip = rowOfFigures(row, faces);
        strip.gapBefore = 4;
        strips.push_back(std::move(strip));
        row.clear();
        used = 0;
    };
    for (const Figure& figure : figures) {
        const double width = std::max(widthOf(figure), kLeastRoomMm);
        if (used + width > style::kWidth) finishRow();
        row.push_back(figure);
        used += width + kBetween;
    }
    finishRow();
}

}  // namespace reports
