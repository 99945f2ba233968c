// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <array>

#include "pdf/blocks.h"
#include "pdf/cells.h"
#include "pdf/line_breaking.h"
#include "pdf/signs.h"
#include "pdf/style.h"

namespace reports {

namespace {

struct HeadingLook {
    double size;
    double gap;
    double below;
};
constexpr std::array<HeadingLook, 3> kHeadings = {{{12, 5, 1.7}, {10.5, 5.5, 1}, {8.6, 3, 0.6}}};

/// A text as one strip a line, so that it can go over pages; never one line alone.
Strips linesOf(const Box& box, Faces& faces) {
    auto glyphs = std::make_shared<const Glyphs>(faces.lay(box.text, box.weight));
    constexpr Glyph kEm{u'm', 0, 1000, false};
    const double emWidth = widthMm(Line(&kEm, 1), box.size) / 1000;
    const std::vector<Line> lines = brokenLines(*glyphs, box.width / emWidth);
    Strips strips;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        Strip strip;
        strip.height = style::lineHeight(box.size);
        strip.keepWithNext =
            lines.size() > 1 && i + 1 < lines.size() && (i == 0 || i + 2 == lines.size());
        strip.draw = [glyphs, line = lines[i], box](Canvas& canvas, double top) {
            canvas.text(style::kLeft + box.x, top + style::ascent(box.size), line, box.size,
                        box.colour);
        };
        strips.push_back(std::move(strip));
    }
    return strips;
}

}  // namespace

void append(Strips& strips, Strips more, double gapBefore) {
    if (more.empty()) return;
    more.front().gapBefore = gapBefore;
    std::ranges::move(more, std::back_inserter(strips));
}

void addHeading(Strips& strips, const Heading& heading, Faces& faces) {
    const int level = std::clamp(heading.level, 1, 3);
    const HeadingLook look = kHeadings[static_cast<std::size_t>(level - 1)];
    const double codeWidth = heading.code.empty() ? 0 : 10;
    std::vector<Box> boxes;
    boxes.push_back({0, style::kWidth - codeWidth, heading.text, Weight::Bold, look.size,
                     level == 1 ? style::kAccent : style::kInk});
    if (!heading.code.empty())
        boxes.push_back({style::kWidth - codeWidth, codeWidth, heading.code, Weight::Regular,
                         style::kCodeSize, style::kMuted, Align::Right, Mark::None,
                         style::ascent(look.size) - style::ascent(style::kCodeSize)});
    Strips rows = rowOf(std::move(boxes), {}, faces);
    for (Strip& row : rows) {
        row.keepWithNext = true;
        if (level == 1)
            row.draw = [text = std::move(row.draw), height = row.height](Canvas& canvas,
                                                                         double top) {
                text(canvas, top);
                const double y = top + height + 0.6;
                canvas.line({style::kLeft, y}, {style::kLeft + style::kWidth, y},
                            Pen{0.25, style::kAccent});
            };
        row.height += look.below;
    }
    if (level < 3) {
        rows.front().bookmark = heading.text;
        rows.front().bookmarkLevel = level;
    }
    append(strips, std::move(rows), look.gap);
}

void addParagraph(Strips& strips, const Paragraph& paragraph, Faces& faces) {
    Box box{0, style::kWidth, paragraph.text, Weight::Regular, style::kTextSize, style::kInk};
    if (paragraph.tone == Paragraph::Tone::Strong) box.weight = Weight::Bold;
    if (paragraph.tone == Paragraph::Tone::Small) {
        box.size = style::kSmallSize;
        box.colour = style::kMuted;
    }
    Strips lines = linesOf(box, faces);
    if (paragraph.keepWithNext)
        for (Strip& line : lines) line.keepWithNext = true;
    append(strips, std::move(lines), 1.2);
}

void addStatement(Strips& strips, const Statement& statement, Faces& faces) {
    const bool large = statement.large;
    const double signSize = large ? 11 : 5;
    const double wordSize = large ? 19 : 10.5;
    const double indent = (large ? 15 : 8) + 3;
    const double padding = large ? 1.8 : 1;
    const Colour colour = style::colourOf(statement.mark);
    const auto withBar = [colour](Strips& rows) {
        for (Strip& row : rows)
            row.draw = [text = std::move(row.draw), height = row.height, colour](Canvas& canvas,
                                                                                 double top) {
                canvas.rectangle(style::kLeft, top, 1.1, height + 0.05, colour, std::nullopt);
                text(canvas, top);
            };
    };

    Strips word =
        rowOf({{indent, style::kWidth - indent, statement.word, Weight::Bold, wordSize, colour}},
              {padding, false}, faces);
    word.front().draw = [text = std::move(word.front().draw), signSize, wordSize, padding,
                         mark = statement.mark, indent](Canvas& canvas, double top) {
        text(canvas, top);
        const double middle = top + padding + style::ascent(wordSize) * 0.62;
        drawSign(canvas, mark, {style::kLeft + 3 + (indent - 3 - 2) / 2, middle}, signSize);
    };
    if (!statement.meaning.empty()) {
        word.back().height -= padding * 0.7;
        word.back().keepWithNext = true;
        Strips meaning = linesOf({indent, style::kWidth - indent, statement.meaning, Weight::Bold,
                                  style::kMeaningSize, style::kInk},
                                 faces);
        meaning.back().height += padding;
        std::ranges::move(meaning, std::back_inserter(word));
    }
    if (!statement.text.empty()) {
        word.back().height -= padding * 0.7;
        Strips text = linesOf({indent, style::kWidth - indent, statement.text, Weight::Regular,
                               style::kNoteSize, style::kInk},
                              faces);
        word.back().keepWithNext = true;
        text.back().height += padding;
        std::ranges::move(text, std::back_inserter(word));
    }
    // A word without explanation is the heading of what follows.
    if (statement.text.empty()) word.back().keepWithNext = true;
    withBar(word);
    append(strips, std::move(word), large ? 1 : 2);
}

void addFields(Strips& strips, const Fields& fields, Faces& faces) {
    const auto columns = static_cast<std::size_t>(std::max(1, fields.columns));
    constexpr double kGutter = 6;
    const double width =
        (style::kWidth - kGutter * static_cast<double>(columns - 1)) / static_cast<double>(columns);
    constexpr double kNameWidth = 33;
    double gap = 1.6;
    for (std::size_t i = 0; i < fields.fields.size(); i += columns) {
        std::vector<Box> boxes;
        for (std::size_t k = i; k < std::min(i + columns, fields.fields.size()); ++k) {
            const Field& field = fields.fields[k];
            const double x = static_cast<double>(k - i) * (width + kGutter);
            const double nameTop =
                style::ascent(style::kTextSize) - style::ascent(style::kLabelSize);
            const std::string code = field.code.empty() ? "" : "\u00a0 " + field.code;
            boxes.push_back({x, kNameWidth - 2, field.name + code, Weight::Regular,
                             style::kLabelSize, style::kMuted, Align::Left, Mark::None, nameTop});
            boxes.push_back({x + kNameWidth, width - kNameWidth, field.value, Weight::Regular,
                             style::kTextSize, style::kInk});
        }
        append(strips, rowOf(std::move(boxes), {0.55, true}, faces), gap);
        gap = 0;
    }
}

}  // namespace reports
