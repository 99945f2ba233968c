// SPDX-License-Identifier: Apache-2.0
#include "pdf/strip.h"

#include "pdf/blocks.h"
#include "pdf/cells.h"
#include "pdf/style.h"

namespace reports {

namespace {

void addMasthead(Strips& strips, const Document& document, Faces& faces) {
    constexpr double kCodeWidth = 10;
    const auto add = [&](const std::string& text, const std::string& code, Weight weight,
                         double size, Colour colour, double gap) {
        if (text.empty()) return;
        std::vector<Box> boxes{{0, style::kWidth - kCodeWidth, text, weight, size, colour}};
        if (!code.empty())
            boxes.push_back({style::kWidth - kCodeWidth, kCodeWidth, code, Weight::Regular,
                             style::kCodeSize, style::kMuted, Align::Right, Mark::None,
                             style::ascent(size) - style::ascent(style::kCodeSize)});
        append(strips, rowOf(std::move(boxes), {}, faces), gap);
    };
    add(document.issuer, document.issuerCode, Weight::Bold, 11, style::kInk, 0);
    add(document.issuerAddress, {}, Weight::Regular, style::kTextSize, style::kMuted, 0);
    add(document.title, document.titleCode, Weight::Bold, style::kTitleSize, style::kAccent, 3);
    add(document.subtitle, {}, Weight::Regular, style::kTextSize, style::kMuted, 0.3);
}

void addEndMark(Strips& strips, const Document& document, Faces& faces) {
    Strips end = rowOf({{0, style::kWidth, document.endMark, Weight::Bold, style::kTextSize,
                         style::kInk, Align::Centre}},
                       {}, faces);
    end.front().draw = [text = std::move(end.front().draw)](Canvas& canvas, double top) {
        const double middle = top + style::lineHeight(style::kTextSize) * 0.42;
        constexpr double kClear = 30;  // half of the room around the words
        const double centre = style::kLeft + style::kWidth / 2;
        const Pen pen{0.25, style::kInk};
        canvas.line({style::kLeft, middle}, {centre - kClear, middle}, pen);
        canvas.line({centre + kClear, middle}, {style::kLeft + style::kWidth, middle}, pen);
        text(canvas, top);
    };
    append(strips, std::move(end), 6);
}

}  // namespace

Strips stripsOf(const Document& document, const std::vector<LoadedPhoto>& photos, Faces& faces) {
    Strips strips;
    addMasthead(strips, document, faces);
    std::vector<Figure> figures;
    std::size_t photosSeen = 0;
    for (const Block& block : document.blocks) {
        if (const auto* figure = std::get_if<Figure>(&block)) {
            figures.push_back(*figure);
            continue;
        }
        addFigures(strips, figures, faces);
        figures.clear();
        if (const auto* heading = std::get_if<Heading>(&block))
            addHeading(strips, *heading, faces);
        else if (const auto* paragraph = std::get_if<Paragraph>(&block))
            addParagraph(strips, *paragraph, faces);
        else if (const auto* statement = std::get_if<Statement>(&block))
            addStatement(strips, *statement, faces);
        else if (const auto* fields = std::get_if<Fields>(&block))
            addFields(strips, *fields, faces);
        else if (const auto* table = std::get_if<Table>(&block))
            addTable(strips, *table, document.continued, faces);
        else if (const auto* photo = std::get_if<Photo>(&block))
            addPhoto(strips, *photo, photos[photosSeen++], faces);
        else if (const auto* signatures = std::get_if<SignatureBoxes>(&block))
            addSignatureBoxes(strips, *signatures, faces);
    }
    addFigures(strips, figures, faces);
    // The end mark never stands alone.
    if (!strips.empty()) strips.back().keepWithNext = true;
    addEndMark(strips, document, faces);
    return strips;
}

}  // namespace reports
