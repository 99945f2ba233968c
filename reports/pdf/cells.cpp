// SPDX-License-Identifier: Apache-2.0
#include "pdf/cells.h"

#include <algorithm>

#include "pdf/line_breaking.h"
#include "pdf/signs.h"
#include "pdf/style.h"

namespace reports {

namespace {

constexpr double kSignSize = 2.7;
// A row that goes over pages leaves room for the headings that stand again above it and for the
// last line, which begins inside and may end outside.
constexpr double kMostHeight = style::kHeight - 30;

struct LaidBox {
    Box box;
    Glyphs glyphs;
    std::vector<Line> lines;  // refer to `glyphs`
    double indent = 0;

    LaidBox(Box given, Faces& faces)
        : box(std::move(given)),
          glyphs(faces.lay(box.text, box.weight)),
          indent(box.mark == Mark::None ? 0 : kSignSpace) {
        const double emWidth = widthMm(Line(&kEm, 1), box.size) / 1000;
        lines = brokenLines(glyphs, (box.width - indent) / emWidth);
    }
    LaidBox(const LaidBox&) = delete;
    LaidBox& operator=(const LaidBox&) = delete;

    [[nodiscard]] double height() const {
        return box.top + static_cast<double>(lines.size()) * style::lineHeight(box.size);
    }

    static constexpr Glyph kEm{u'm', 0, 1000, false};
};

using LaidRow = std::vector<std::unique_ptr<LaidBox>>;

/// Draws the lines of the row that begin between `from` and `to` mm of its height, at `top`.
void drawPart(Canvas& canvas, const LaidRow& row, double from, double to, double top) {
    constexpr double kTolerance = 1e-6;
    for (const auto& laid : row) {
        const Box& box = laid->box;
        const double step = style::lineHeight(box.size);
        for (std::size_t i = 0; i < laid->lines.size(); ++i) {
            const double y = box.top + static_cast<double>(i) * step;
            if (y < from - kTolerance || y >= to - kTolerance) continue;
            const Line line = laid->lines[i];
            const double free = box.width - laid->indent - widthMm(line, box.size);
            const double shift = box.align == Align::Right    ? free
                                 : box.align == Align::Centre ? free / 2
                                                              : 0;
            const double x = style::kLeft + box.x;
            const double baseLine = top + y - from + style::ascent(box.size);
            if (i == 0)
                drawSign(canvas, box.mark,
                         {x + kSignSize / 2, baseLine - style::ascent(box.size) * 0.36}, kSignSize);
            canvas.text(x + laid->indent + shift, baseLine, line, box.size, box.colour);
        }
    }
}

}  // namespace

Strips rowOf(std::vector<Box> boxes, const RowLook& look, Faces& faces) {
    auto row = std::make_shared<LaidRow>();
    double height = 0;
    for (Box& box : boxes) {
        row->push_back(std::make_unique<LaidBox>(std::move(box), faces));
        height = std::max(height, row->back()->height());
    }
    Strips strips;
    double from = 0;
    do {
        const bool last = height - from <= kMostHeight;
        const double part = last ? height - from : kMostHeight;
        Strip strip;
        strip.height = part + 2 * look.padding;
        strip.draw = [row, from, part, look, last](Canvas& canvas, double top) {
            drawPart(canvas, *row, from, from + part, top + look.padding);
            if (!look.ruled || !last) return;
            const double y = top + part + 2 * look.padding;
            canvas.line({style::kLeft, y}, {style::kLeft + style::kWidth, y},
                        Pen{0.12, style::kFaint});
        };
        strips.push_back(std::move(strip));
        from += part;
    } while (from < height);
    return strips;
}

}  // namespace reports
