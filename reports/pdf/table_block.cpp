// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "pdf/blocks.h"
#include "pdf/cells.h"
#include "pdf/style.h"

namespace reports {

namespace {

constexpr double kCellGap = 2;  // between neighbouring columns

struct Place {
    double x;
    double width;
};

std::vector<Place> placesOf(const std::vector<Column>& columns) {
    double shares = 0;
    for (const Column& column : columns) shares += column.share;
    const double free = style::kWidth - kCellGap * static_cast<double>(columns.size() - 1);
    std::vector<Place> places;
    double x = 0;
    for (const Column& column : columns) {
        const double width = free * column.share / shares;
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
    const std::vector<Place> places = placesOf(table.columns);
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
