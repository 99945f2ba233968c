// SPDX-License-Identifier: Apache-2.0
#include "pdf/canvas.h"

#include <array>
#include <cmath>
#include <numbers>

#include "pdf/visible_text.h"

namespace reports {

namespace {

constexpr double kPointsInMm = 72 / 25.4;

HPDF_REAL points(double mm) {
    return static_cast<HPDF_REAL>(mm * kPointsInMm);
}
HPDF_REAL upPoints(double y) {
    return points(kPageHeightMm - y);
}

}  // namespace

double widthMm(Line line, double sizePt) {
    return advanceOf(line) / 1000 * sizePt / kPointsInMm;
}

void Canvas::text(double x, double y, Line line, double sizePt, Colour colour, double degrees) {
    if (line.empty()) return;
    const double turn = degrees * std::numbers::pi / 180;
    const auto cosine = static_cast<HPDF_REAL>(std::cos(turn));
    const auto sine = static_cast<HPDF_REAL>(std::sin(turn));
    setFill(colour);
    HPDF_Page_BeginText(page_);
    HPDF_Page_SetTextMatrix(page_, cosine, sine, -sine, cosine, points(x), upPoints(y));
    for (std::size_t begin = 0; begin < line.size();) {
        std::size_t end = begin;
        std::u16string run;
        for (; end < line.size() && line[end].face == line[begin].face; ++end)
            run += line[end].code;
        HPDF_Font font = faces_->font(line[begin].face);
        if (font == nullptr) break;
        HPDF_Page_SetFontAndSize(page_, font, static_cast<HPDF_REAL>(sizePt));
        HPDF_Page_ShowText(page_, toUtf8(run).c_str());
        begin = end;
    }
    HPDF_Page_EndText(page_);
}

double Canvas::text(double x, double y, std::string_view text, Weight weight, double sizePt,
                    Colour colour) {
    const Glyphs glyphs = faces_->lay(text, weight);
    this->text(x, y, Line(glyphs), sizePt, colour);
    return widthMm(glyphs, sizePt);
}

void Canvas::setFill(Colour colour) {
    HPDF_Page_SetRGBFill(page_, colour.red, colour.green, colour.blue);
}

void Canvas::setPen(const Pen& pen) {
    HPDF_Page_SetLineWidth(page_, points(pen.width));
    HPDF_Page_SetRGBStroke(page_, pen.colour.red, pen.colour.green, pen.colour.blue);
    HPDF_Page_SetLineCap(page_, pen.dash == Dash::Solid ? HPDF_ROUND_END : HPDF_BUTT_END);
    static constexpr std::array<HPDF_UINT16, 2> kDots = {1, 2};  // points
    static constexpr std::array<HPDF_UINT16, 2> kShort = {3, 3};
    static constexpr std::array<HPDF_UINT16, 2> kLong = {9, 4};
    switch (pen.dash) {
        case Dash::Solid:
            HPDF_Page_SetDash(page_, nullptr, 0, 0);
            break;
        case Dash::Dots:
            HPDF_Page_SetDash(page_, kDots.data(), 2, 0);
            break;
        case Dash::Short:
            HPDF_Page_SetDash(page_, kShort.data(), 2, 0);
            break;
        case Dash::Long:
            HPDF_Page_SetDash(page_, kLong.data(), 2, 0);
            break;
    }
}

void Canvas::paint(bool fill, bool stroke) {
    if (fill && stroke)
        HPDF_Page_FillStroke(page_);
    else if (fill)
        HPDF_Page_Fill(page_);
    else if (stroke)
        HPDF_Page_Stroke(page_);
    else
        HPDF_Page_EndPath(page_);
}

void Canvas::line(PaperPoint from, PaperPoint to, const Pen& pen) {
    setPen(pen);
    HPDF_Page_MoveTo(page_, points(from.x), upPoints(from.y));
    HPDF_Page_LineTo(page_, points(to.x), upPoints(to.y));
    HPDF_Page_Stroke(page_);
}

void Canvas::polygon(std::span<const PaperPoint> corners, std::optional<Colour> fill,
                     std::optional<Pen> pen) {
    if (corners.empty()) return;
    if (fill) setFill(*fill);
    if (pen) setPen(*pen);
    HPDF_Page_MoveTo(page_, points(corners[0].x), upPoints(corners[0].y));
    for (const PaperPoint& corner : corners.subspan(1))
        HPDF_Page_LineTo(page_, points(corner.x), upPoints(corner.y));
    HPDF_Page_ClosePath(page_);
    paint(fill.has_value(), pen.has_value());
}

void Canvas::rectangle(double x, double y, double width, double height, std::optional<Colour> fill,
                       std::optional<Pen> pen) {
    const std::array<PaperPoint, 4> corners = {
        {{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}}};
    polygon(corners, fill, pen);
}

void Canvas::circle(PaperPoint centre, double radius, std::optional<Colour> fill,
                    std::optional<Pen> pen) {
    if (fill) setFill(*fill);
    if (pen) setPen(*pen);
    HPDF_Page_Circle(page_, points(centre.x), upPoints(centre.y), points(radius));
    paint(fill.has_value(), pen.has_value());
}

void Canvas::picture(HPDF_Image image, double x, double y, double width, double height) {
    HPDF_Page_DrawImage(page_, image, points(x), upPoints(y + height), points(width),
                        points(height));
}

void Canvas::clip(double x, double y, double width, double height) {
    HPDF_Page_GSave(page_);
    HPDF_Page_Rectangle(page_, points(x), upPoints(y + height), points(width), points(height));
    HPDF_Page_Clip(page_);
    HPDF_Page_EndPath(page_);
}

void Canvas::unclip() {
    HPDF_Page_GRestore(page_);
}

HPDF_Outline Canvas::bookmark(HPDF_Doc file, HPDF_Outline parent, std::string_view title,
                              double y) {
    HPDF_Outline entry = HPDF_CreateOutline(file, parent, toUtf8(visibleText(title)).c_str(),
                                            HPDF_GetEncoder(file, "UTF-8"));
    HPDF_Destination here = HPDF_Page_CreateDestination(page_);
    HPDF_Destination_SetFitH(here, upPoints(y));
    HPDF_Outline_SetDestination(entry, here);
    return entry;
}

}  // namespace reports
