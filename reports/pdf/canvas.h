// SPDX-License-Identifier: Apache-2.0
// Drawing on an A4 page in millimetres from its upper left corner.
#pragma once

#include <hpdf.h>
#include <optional>
#include <span>
#include <string_view>

#include "pdf/faces.h"
#include "pdf/glyph.h"

namespace reports {

inline constexpr double kPageWidthMm = 210;
inline constexpr double kPageHeightMm = 297;

struct Colour {
    float red = 0;
    float green = 0;
    float blue = 0;

    friend bool operator==(Colour, Colour) = default;
};

enum class Dash { Solid, Dots, Short, Long };

struct Pen {
    double width = 0.2;  ///< mm
    Colour colour;
    Dash dash = Dash::Solid;
};

struct PaperPoint {
    double x = 0;
    double y = 0;
};

/// Millimetres that `line` takes at a font size in points.
double widthMm(Line line, double sizePt);

class Canvas {
public:
    Canvas(HPDF_Page page, Faces& faces) : page_(page), faces_(&faces) {}

    /// `y` is the base line. Characters stand where libharu's widths put them.
    void text(double x, double y, Line line, double sizePt, Colour colour, double degrees = 0);
    /// Lays and draws; returns the width in mm.
    double text(double x, double y, std::string_view text, Weight weight, double sizePt,
                Colour colour);
    [[nodiscard]] Faces& faces() const { return *faces_; }

    void line(PaperPoint from, PaperPoint to, const Pen& pen);
    /// A closed outline; filled, drawn or both.
    void polygon(std::span<const PaperPoint> points, std::optional<Colour> fill,
                 std::optional<Pen> pen);
    void rectangle(double x, double y, double width, double height, std::optional<Colour> fill,
                   std::optional<Pen> pen);
    void circle(PaperPoint centre, double radius, std::optional<Colour> fill,
                std::optional<Pen> pen);

    /// Fills the rectangle with the whole picture.
    void picture(HPDF_Image image, double x, double y, double width, double height);

    /// Nothing outside the rectangle is drawn until unclip().
    void clip(double x, double y, double width, double height);
    void unclip();

    /// An entry of the file's outline that leads here; `parent` may be null.
    HPDF_Outline bookmark(HPDF_Doc file, HPDF_Outline parent, std::string_view title, double y);

private:
    void setPen(const Pen& pen);
    void setFill(Colour colour);
    void paint(bool fill, bool stroke);

    HPDF_Page page_;
    Faces* faces_;
};

}  // namespace reports
