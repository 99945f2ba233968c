// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <numeric>

#include "pdf/blocks.h"
#include "pdf/cells.h"
#include "pdf/line_breaking.h"
#include "pdf/style.h"

namespace reports {

namespace {

constexpr double kCellGap = 3;  // between neighbouring columns

struct Place {
    double x;
    double width;
};

/// The widest word of each column, mm; none is taken for wider than a third of the page.
std::vector<double> leastWidths(const Table& table, Faces& faces) {
    constexpr double kMost = style::kWidth / 3;
    std::vector<double> least(table.columns.size(), 0);
    const auto widen = [&](std::size_t column, const std::string& text, Weight weight, double size,
                           double indent) {
        const Glyph word{0, 0, static_cast<int>(widestWord(faces.lay(text, weight))) + 1, false};
        least[column] =
            std::max(least[column], std::min(kMost, widthMm(Line(&word, 1), size) + indent));
    };
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        widen(i, table.columns[i].heading, Weight::Bold, style::kSmallSize, 0);
    for (const std::vector<TableCell>& row : table.rows)
        for (std::size_t i = 0; i < std::min(row.size(), least.size()); ++i)
            widen(i, row[i].text, row[i].strong ? Weight::Bold : Weight::Regular, style::kTableSize,
                  row[i].mark == Mark::None ? 0 : kSignSpace);
    return least;
}

/// Widths by the columns' shares; a column whose words need more gets it from the others.
std::vector<double> columnWidths(const std::vector<Column>& columns,
                                 const std::vector<double>& least, double free) {
    std::vector<double> widths(columns.size(), 0);
    std::vector<bool> fixed(columns.size(), false);
    for (bool settled = false; !settled;) {
        settled = true;
        double shares = 0;
        double left = free;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (fixed[i])
                left -= widths[i];
            else
                shares += columns[i].share;
        }
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (fixed[i]) continue;
            widths[i] = std::max(0.0, left) * columns[i].share / shares;
            if (widths[i] >= least[i]) continue;
            widths[i] = least[i];
            fixed[i] = true;
            settled = false;
            break;
        }
    }
    const double sum = std::accumulate(widths.begin(), widths.end(), 0.0);
    if (sum > free)
        for (double& width : widths) width *= free / sum;
    return widths;
}

std::vector<Place> placesOf(const Table& table, Faces& faces) {
    const double free = style::kWidth - kCellGap * static_cast<double>(table.columns.size() - 1);
    std::vector<Place> places;
    double x = 0;
    for (const double width : columnWidths(table.columns, leastWidths(table, faces), free)) {
        places.push_back({x, width});
        x += width + kCellGap;
    }
    return places;
}

Strip headingsOf(const Table& table, const std::vector<Place>& places, Faces& faces) {
    std::vector<Box> boxes;
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        boxes.push_back({places[i].x, places[i].width, table.columns[i].heading, Weight::Bold,
                         style::kSmallSize, style::kMuted, table.columns[i].align});
    Strip strip = std::move(rowOf(std::move(boxes), {0.7, false}, faces).front());
    strip.keepWithNext = true;
    strip.draw = [text = std::move(strip.draw), height = strip.height](Canvas& canvas, double top) {
        text(canvas, top);
        canvas.line({style::kLeft, top + height}, {style::kLeft + style::kWidth, top + height},
                    Pen{0.3, style::kMuted});
    };
    return strip;
}

/// The headings under a word that says that the table began on an earlier page.
Strip continuedHeadings(const Strip& headings, const std::string& word) {
    Strip strip = headings;
    const double above = style::lineHeight(style::kSmallSize);
    strip.height += above;
    strip.draw = [text = headings.draw, word, above](Canvas& canvas, double top) {
        canvas.text(style::kLeft, top + style::ascent(style::kSmallSize), word, Weight::Regular,
                    style::kSmallSize, style::kMuted);
        text(canvas, top + above);
    };
    return strip;
}

}  // namespace

void addTable(Strips& strips, const Table& table, const std::string& continued, Faces& faces) {
    if (table.columns.empty()) return;
    const std::vector<Place> places = placesOf(table, faces);
    Strip headings = headingsOf(table, places, faces);
    const auto again = std::make_shared<const Strip>(continuedHeadings(headings, continued));
    headings.gapBefore = 1.4;
    strips.push_back(std::move(headings));
    for (const std::vector<TableCell>& row : table.rows) {
        std::vector<Box> boxes;
        for (std::size_t i = 0; i < std::min(row.size(), places.size()); ++i) {
            const TableCell& cell = row[i];
            const bool marked = cell.mark != Mark::None;
            boxes.push_back({places[i].x, places[i].width, cell.text,
                             cell.strong ? Weight::Bold : Weight::Regular, style::kTableSize,
                             marked ? style::colourOf(cell.mark) : style::kInk,
                             table.columns[i].align, cell.mark});
        }
        Strips parts = rowOf(std::move(boxes), {0.75, true}, faces);
        for (Strip& part : parts) part.headedBy = again;
        append(strips, std::move(parts), 0);
    }
}

}  // namespace reports
