// SPDX-License-Identifier: Apache-2.0
#include "pdf/signs.h"

#include <array>

#include "pdf/style.h"

namespace reports {

namespace {

constexpr double kPointsInMm = 72 / 25.4;

void drawTick(Canvas& canvas, PaperPoint c, double r, Colour colour) {
    canvas.circle(c, r * 0.94, std::nullopt, Pen{r * 0.2, colour});
    const Pen pen{r * 0.26, colour};
    canvas.line({c.x - 0.45 * r, c.y + 0.05 * r}, {c.x - 0.12 * r, c.y + 0.42 * r}, pen);
    canvas.line({c.x - 0.12 * r, c.y + 0.42 * r}, {c.x + 0.48 * r, c.y - 0.4 * r}, pen);
}

void drawCross(Canvas& canvas, PaperPoint c, double r, Colour colour) {
    canvas.rectangle(c.x - 0.9 * r, c.y - 0.9 * r, 1.8 * r, 1.8 * r, colour, std::nullopt);
    const Pen pen{r * 0.3, style::kWhite};
    const double arm = 0.45 * r;
    canvas.line({c.x - arm, c.y - arm}, {c.x + arm, c.y + arm}, pen);
    canvas.line({c.x - arm, c.y + arm}, {c.x + arm, c.y - arm}, pen);
}

void drawLetter(Canvas& canvas, PaperPoint c, double y, double r, const char* letter,
                Colour colour) {
    const double size = r * 1.25 * kPointsInMm;
    const Glyphs glyphs = canvas.faces().lay(letter, Weight::Bold);
    canvas.text(c.x - widthMm(glyphs, size) / 2, y, Line(glyphs), size, colour);
}

void drawQuestion(Canvas& canvas, PaperPoint c, double r, Colour colour) {
    const std::array<PaperPoint, 4> diamond = {
        {{c.x, c.y - 1.1 * r}, {c.x + 1.1 * r, c.y}, {c.x, c.y + 1.1 * r}, {c.x - 1.1 * r, c.y}}};
    canvas.polygon(diamond, std::nullopt, Pen{r * 0.16, colour});
    drawLetter(canvas, c, c.y + 0.45 * r, r, "?", colour);
}

void drawExclamation(Canvas& canvas, PaperPoint c, double r, Colour colour) {
    const std::array<PaperPoint, 3> triangle = {
        {{c.x, c.y - r}, {c.x + 1.1 * r, c.y + 0.85 * r}, {c.x - 1.1 * r, c.y + 0.85 * r}}};
    canvas.polygon(triangle, std::nullopt, Pen{r * 0.16, colour});
    drawLetter(canvas, c, c.y + 0.66 * r, r, "!", colour);
}

}  // namespace

void drawSign(Canvas& canvas, Mark mark, PaperPoint centre, double size) {
    const Colour colour = style::colourOf(mark);
    const double radius = size / 2;
    switch (mark) {
        case Mark::Acceptable:
            drawTick(canvas, centre, radius, colour);
            break;
        case Mark::NotAcceptable:
            drawCross(canvas, centre, radius, colour);
            break;
        case Mark::NotJudged:
            drawQuestion(canvas, centre, radius, colour);
            break;
        case Mark::Caution:
            drawExclamation(canvas, centre, radius, colour);
            break;
        case Mark::None:
            break;
    }
}

}  // namespace reports
