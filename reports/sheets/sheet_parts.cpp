// SPDX-License-Identifier: Apache-2.0
#include "sheets/sheet_parts.h"

#include <algorithm>
#include <utility>

#include "base/decimal.h"
#include "certificate/figure_geometry.h"
#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "limits/words.h"
#include "sheets/sheet_phrases.h"

namespace reports {
namespace {

namespace words = sheet_phrases;

constexpr double kFigureMostWide = 166;  // of the page's 168 mm
constexpr double kFigureMostHigh = 95;   // leaves room for a table on the same page
constexpr double kMarginShare = 0.05;

std::string drawingText(const model::Part& part) {
    if (part.drawing.empty() || part.drawingRevision.empty()) return orNotRecorded(part.drawing);
    return filled(phrases::kDrawingRevision, {part.drawing, part.drawingRevision});
}

Fields castingFacts(const SheetInput& input) {
    const model::CastingFile& file = input.file;
    Fields facts;
    facts.columns = 2;
    const auto add = [&](const char* name, const std::string& value) {
        facts.fields.push_back({"", name, orNotRecorded(value)});
    };
    add(words::kCasting, file.casting.serial);
    add(words::kHeat, file.casting.heat);
    add(words::kPart, file.part.description.empty()
                          ? file.part.number
                          : filled(words::kPartText, {file.part.number, file.part.description}));
    add(words::kDrawing, drawingText(file.part));
    add(words::kMaterial, file.part.materialGrade);
    add(words::kOrder, file.order.number);
    add(words::kMarking, file.casting.marking);
    add(words::kPrintedOn, input.printedOn);
    return facts;
}

}  // namespace

Document beginSheet(const SheetInput& input, const std::string& title,
                    const std::string& subtitle) {
    const model::CastingFile& file = input.file;
    Document document;
    document.title = title;
    document.subtitle = subtitle;
    document.subject = filled(words::kSubject, {title, file.casting.serial, file.part.number});
    document.producer = filled(phrases::kProgram, {input.programVersion});
    document.language = phrases::kLanguage;
    document.issuer = input.worksName;
    document.identity = filled(words::kIdentity, {title, file.casting.serial, input.printedOn});
    if (input.demonstration) document.pageNotices.emplace_back(phrases::kDemonstration);
    document.pageOf = phrases::kPageOf;
    document.continued = phrases::kContinued;
    document.endMark = words::kEndMark;
    document.blocks.emplace_back(castingFacts(input));
    return document;
}

const model::PlannedZone* plannedZone(const model::CastingFile& file, const std::string& name) {
    const auto found = std::ranges::find(file.plan.zones, name, &model::PlannedZone::name);
    return found == file.plan.zones.end() ? nullptr : &*found;
}

Figure zoneSheetFigure(const std::string& name, const model::PlannedZone* planned,
                       std::vector<FigureCapsule> capsules, const std::string& legend) {
    Figure figure;
    Window window;
    if (planned != nullptr && planned->width > model::Length() &&
        planned->height > model::Length()) {
        figure.zoneWidth = planned->width.approximately();
        figure.zoneHeight = planned->height.approximately();
        window.include({*figure.zoneWidth, *figure.zoneHeight}, 0, 0);
    }
    window.include({0, 0}, 0, 0);  // the datum is always in sight
    for (const FigureCapsule& capsule : capsules) window.include(capsule);
    window.widen(kMarginShare);
    lookThrough(window, figure, kFigureMostWide, kFigureMostHigh);
    figure.caption = filled(words::kZone, {name});
    figure.zoneLabel = filled(phrases::kZoneLabel, {name});
    figure.xAxis = phrases::kX;
    figure.yAxis = phrases::kY;
    figure.datum = phrases::kDatum;
    figure.labelsLeftOut = phrases::kLabelsLeftOut;
    figure.capsules = std::move(capsules);
    figure.legend = legend;
    return figure;
}

std::optional<FigureCapsule> capsuleOf(const model::Excavation& excavation,
                                       const std::string& label, FigureCapsule::Role role) {
    const auto x = model::numberOf(excavation.x);
    const auto y = model::numberOf(excavation.y);
    const auto length = model::numberOf(excavation.length);
    const auto width = model::numberOf(excavation.width);
    if (!x || !y || !length || !width || *length <= 0 || *width <= 0) return std::nullopt;
    const auto inMm = [](std::int64_t millionths) { return static_cast<double>(millionths) / 1e6; };
    // A cavity wider than long lies across.
    const bool across = *width > *length;
    const double angle = inMm(model::numberOf(excavation.angle).value_or(0));
    return FigureCapsule{label,
                         inMm(*x),
                         inMm(*y),
                         inMm(across ? *width : *length),
                         inMm(across ? *length : *width),
                         across ? angle + 90 : angle,
                         role};
}

std::string millimetresText(const std::string& typed) {
    return typed.empty() ? words::kNotMeasured : unbroken(filled(phrases::kMillimetres, {typed}));
}

std::string millimetresText(const std::optional<model::Length>& length) {
    return length ? filled(phrases::kMillimetres, {model::formatMillionths(length->millionths())})
                  : words::kNotMeasured;
}

std::string placeText(const std::string& x, const std::string& y) {
    return unbroken(filled(words::kPlace, {orNotRecorded(x), orNotRecorded(y)}));
}

std::string sizeText(const model::Excavation& excavation) {
    const auto shown = [](const std::string& text) {
        return text.empty() ? std::string("?") : text;
    };
    return unbroken(filled(words::kSize, {shown(excavation.length), shown(excavation.width),
                                          shown(excavation.depth)}));
}

std::string examinationText(const model::Examination& header) {
    std::string text =
        filled(phrases::kExaminationOf,
               {header.zone, std::string(model::word(header.method)), stageWord(header.stage)});
    if (header.repairCycle > 0)
        text += ", " + filled(phrases::kAfterRepair, {std::to_string(header.repairCycle)});
    if (header.repeat > 0) text += ", " + filled(phrases::kRepeat, {std::to_string(header.repeat)});
    return text;
}

std::string listedOrDash(const std::vector<std::string>& texts) {
    return texts.empty() ? phrases::kDash : joined(texts, ", ");
}

Mark markOf(const model::RepairCase& c) {
    if (!c.closed) return Mark::NotAcceptable;
    const bool conforms =
        c.state == model::repair_state::kGround || c.state == model::repair_state::kWelded;
    return conforms ? Mark::Acceptable : Mark::Caution;
}

}  // namespace reports
