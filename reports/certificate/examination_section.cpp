// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "certificate/conditions_section.h"
#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/sections.h"
#include "certificate/ultrasonic_section.h"
#include "certificate/zone_figure.h"
#include "judge/forbidden.h"
#include "limits/words.h"
#include "quantity/entry.h"

namespace reports {

namespace {

using Row = std::vector<TableCell>;

std::vector<model::Kind> forbiddenKinds(const CertificateInput& input, const Examined& examined) {
    std::vector<model::Kind> kinds = examined.draft->header.forbiddenKinds;
    const auto add = [&kinds](const std::vector<model::Kind>& more) {
        for (const model::Kind kind : more)
            if (std::ranges::find(kinds, kind) == kinds.end()) kinds.push_back(kind);
    };
    add(input.file.order.forbiddenKinds);
    if (examined.table != nullptr) add(examined.table->forbiddenKinds);
    return kinds;
}

std::string forbiddenText(const CertificateInput& input, const Examined& examined) {
    const std::vector<model::Kind> kinds = forbiddenKinds(input, examined);
    const bool asPlanar = examined.verdict->method == model::Method::Ultrasonic &&
                          std::ranges::any_of(kinds, model::isCrackLike);
    return kindsText(kinds) + (asPlanar ? phrases::kCracksAsPlanar : "");
}

std::string surfaceText(const std::optional<model::SurfacePlace>& place) {
    if (!place) return phrases::kNoSurface;
    std::string text = filled(phrases::kSurfacePlace,
                              {place->id, toText(place->placement.x), toText(place->placement.y),
                               toText(place->placement.angle)});
    if (place->period) text += filled(phrases::kSurfacePeriod, {toText(*place->period)});
    return text;
}

std::string sizeText(const Examined& examined) {
    const std::optional<model::SurfacePlace>& place = examined.draft->header.surface;
    if (place) return filled(phrases::kSize, {toText(place->width), toText(place->height)});
    if (examined.planned == nullptr) return phrases::kNotRecorded;
    return filled(phrases::kSize,
                  {toText(examined.planned->width), toText(examined.planned->height)});
}

std::string wallText(const Examined& examined) {
    const model::Length wall = examined.draft->header.thickness;
    if (examined.planned != nullptr && examined.planned->thickness != wall)
        return filled(phrases::kWallDiffers, {toText(wall), toText(examined.planned->thickness)});
    return filled(phrases::kMillimetres, {toText(wall)});
}

std::string bestLevelsText(const model::ExaminationVerdict& verdict) {
    // An indication without a class is in no check, so no level can be said to pass.
    if (std::ranges::any_of(verdict.indications, [](const model::JudgedIndication& one) {
            return one.considered && !one.classified;
        }))
        return phrases::kBestNotKnown;
    std::vector<std::string> texts;
    for (const auto& [key, level] : verdict.bestLevels)
        texts.push_back(level                ? levelText(key, *level)
                        : key == kAllClasses ? std::string(phrases::kNoBestLevel)
                                             : filled(phrases::kBestLevelNone, {key}));
    if (!verdict.bestLevelsUnknown.empty())
        texts.push_back(filled(phrases::kBestUnknown, {joined(verdict.bestLevelsUnknown, ", ")}));
    return texts.empty() ? phrases::kDash : joined(texts, "; ");
}

void addFacts(std::vector<Block>& blocks, const CertificateInput& input, const Examined& examined) {
    const model::ExaminationDraft& draft = *examined.draft;
    const model::ExaminationVerdict& verdict = *examined.verdict;
    blocks.push_back(Fields{{
        {"", phrases::kLimitTable,
         verdict.tableId.empty()
             ? phrases::kNotRecorded
             : filled(phrases::kRevisionOf,
                      {verdict.tableId, std::to_string(verdict.tableRevision)})},
        {"", phrases::kLevels, levelsText(verdict.levels)},
        {"", phrases::kWallThickness, wallText(examined)},
        {"", phrases::kForbidden, forbiddenText(input, examined)},
        {"", phrases::kZoneSize, sizeText(examined)},
        {"", phrases::kSurface, surfaceText(draft.header.surface)},
        {"", phrases::kExaminedBy, orNotRecorded(draft.examinedBy)},
        {"", phrases::kExaminedOn, orNotRecorded(draft.examinedOn)},
        {"", phrases::kProcedure, procedureText(draft)},
        {"", phrases::kBestLevels, bestLevelsText(verdict)},
    }});
    Fields wide;
    wide.columns = 1;
    if (examined.recorded != nullptr)
        wide.fields.push_back(
            {"", phrases::kRecordedBy,
             filled(phrases::kSignedOn, {examined.recorded->by, examined.recorded->on})});
    if (!draft.remarks.empty())
        wide.fields.push_back({"", phrases::kExaminationRemarks, draft.remarks});
    if (!wide.fields.empty()) blocks.push_back(std::move(wide));
}

void addList(std::vector<Block>& blocks, const char* heading, std::vector<std::string> texts) {
    if (texts.empty()) return;
    for (std::string& text : texts) text.insert(0, "• ");
    blocks.push_back(Heading{3, heading});
    blocks.push_back(Paragraph{Paragraph::Tone::Plain, joined(texts, "\n")});
}

void addNotExamined(std::vector<Block>& blocks, const Examined& examined) {
    for (const model::NotExamined& part : examined.draft->header.notExamined)
        blocks.push_back(Paragraph{
            Paragraph::Tone::Strong,
            filled(phrases::kAreaNotExamined,
                   {toText(part.area), part.reason.empty() ? phrases::kNoReason : part.reason,
                    part.agreed.empty() ? phrases::kNotAgreed : part.agreed})});
}

TableCell outcomeCell(const model::Check& check) {
    if (!check.passes) return {phrases::kCouldNotBeMade, Mark::NotJudged, true};
    // A limit that is not known is needed by nothing.
    if (*check.passes && !check.limit && check.measured == 0)
        return {phrases::kNothingCounted, Mark::None, false};
    if (*check.passes) return {phrases::kPasses, Mark::Acceptable, false};
    return {phrases::kFails, Mark::NotAcceptable, true};
}

std::string countedText(const model::Check& check, const std::string& drawnFrame) {
    std::vector<std::string> texts;
    if (!check.reason.empty()) texts.push_back(check.reason);
    if (!check.members.empty()) texts.push_back(joined(check.members, ", "));
    if (check.frame) {
        std::vector<std::string> place = {placeText(check.frame->x), placeText(check.frame->y),
                                          angleText(check.frame->angleDegrees)};
        if (!drawnFrame.empty()) place.insert(place.begin(), drawnFrame);
        texts.push_back(
            filled(drawnFrame.empty() ? phrases::kFramePlaceUndrawn : phrases::kFramePlace, place));
    }
    if (!check.note.empty()) texts.push_back(check.note);
    return texts.empty() ? phrases::kDash : joined(texts, "; ");
}

std::string sourceText(const model::Check& check) {
    if (check.source.locator.empty()) return phrases::kOrderSource;
    return filled(phrases::kSourceGrade,
                  {check.source.locator, std::string(model::word(check.source.grade))});
}

Row checkRow(const model::Check& check, const std::string& drawnFrame) {
    const std::string share = shareText(check);
    const bool fails = check.passes && !*check.passes;
    return {{ruleText(check)},
            {measuredText(check), Mark::None, fails},
            {limitText(check)},
            {share.empty() ? phrases::kDash : share},
            outcomeCell(check),
            {sourceText(check)},
            {countedText(check, drawnFrame)}};
}

void addChecks(std::vector<Block>& blocks, const Examined& examined,
               const std::map<std::size_t, std::string>& drawnFrames) {
    const std::vector<model::Check>& checks = examined.verdict->checks;
    if (checks.empty() && examined.indications.empty() && examined.reflectors.empty()) return;
    blocks.push_back(Heading{3, phrases::kChecks});
    if (checks.empty()) {
        blocks.push_back(Paragraph{Paragraph::Tone::Plain, phrases::kNoChecks});
        return;
    }
    Table table{{{phrases::kRule, Align::Left, 1.9},
                 {phrases::kMeasured, Align::Right, 1},
                 {phrases::kLimit, Align::Right, 1},
                 {phrases::kUsed, Align::Right, 0.8},
                 {phrases::kOutcome, Align::Left, 1},
                 {phrases::kSource, Align::Left, 1.2},
                 {phrases::kCounted, Align::Left, 2.4}},
                {}};
    // What decided comes first: failed, then not made, then passed.
    const auto rank = [](const model::Check& check) {
        return !check.passes ? 1 : *check.passes ? 2 : 0;
    };
    for (int wanted = 0; wanted <= 2; ++wanted)
        for (std::size_t i = 0; i < checks.size(); ++i) {
            if (rank(checks[i]) != wanted) continue;
            const auto drawn = drawnFrames.find(i);
            table.rows.push_back(
                checkRow(checks[i], drawn == drawnFrames.end() ? std::string() : drawn->second));
        }
    blocks.push_back(std::move(table));
}

/// The value in mm; under it the text as typed where that was in inch.
std::string lengthText(model::Length length, const std::string& typed, model::LengthUnit unit) {
    std::string text = toText(length);
    if (unit == model::LengthUnit::Inch) text += "\n" + filled(phrases::kInInch, {typed});
    return text;
}

std::string consideredText(const ExaminedIndication& one) {
    std::vector<std::string> texts = {
        whetherCounted(one.read.relevance, one.read.reason, one.judged->considered)};
    if (one.read.stated)
        texts.emplace_back(*one.read.stated == model::StatedClass::Linear
                               ? phrases::kStatedLinear
                               : phrases::kStatedNonLinear);
    if (one.read.removed) texts.push_back(filled(phrases::kRemoved, {toText(*one.read.removed)}));
    return joined(texts, "; ");
}

std::string classText(const ExaminedIndication& one) {
    if (one.judged->classified) return std::string(model::word(*one.judged->classified));
    // What is not relevant leaves before classes are told.
    return one.read.relevance == model::Relevance::Relevant ? phrases::kNotClassified
                                                            : phrases::kDash;
}

Row indicationRow(const ExaminedIndication& one) {
    const model::Indication& read = one.read;
    const model::TypedIndication& typed = *one.typed;
    return {{read.id, Mark::None, true},
            {lengthText(read.x, typed.x, typed.unit)},
            {lengthText(read.y, typed.y, typed.unit)},
            {lengthText(read.length, typed.length, typed.unit)},
            {read.width ? lengthText(*read.width, typed.width, typed.unit) : phrases::kHairline},
            {toText(read.angle)},
            {read.area ? toText(*read.area) : phrases::kNotMeasured},
            {classText(one)},
            {read.kind ? std::string(model::word(*read.kind)) : phrases::kKindNotStated},
            {one.judged->group.empty() ? phrases::kDash : one.judged->group},
            {consideredText(one)}};
}

void addIndications(std::vector<Block>& blocks, const Examined& examined) {
    blocks.push_back(Heading{3, phrases::kIndications});
    if (!examined.reflectors.empty()) {
        addReflectors(blocks, examined);
        return;
    }
    if (examined.indications.empty()) {
        const bool stated = examined.draft->header.noIndications;
        blocks.push_back(Paragraph{stated ? Paragraph::Tone::Plain : Paragraph::Tone::Strong,
                                   stated ? phrases::kNoIndications : phrases::kNothingStated});
        return;
    }
    Table table{{{phrases::kId, Align::Left, 0.8},
                 {phrases::kX, Align::Right, 0.9},
                 {phrases::kY, Align::Right, 0.9},
                 {phrases::kLength, Align::Right, 0.9},
                 {phrases::kWidth, Align::Right, 0.95},
                 {phrases::kAngle, Align::Right, 0.75},
                 {phrases::kArea, Align::Right, 0.75},
                 {phrases::kClass, Align::Left, 1.15},
                 {phrases::kKind, Align::Left, 1.2},
                 {phrases::kGroup, Align::Left, 0.75},
                 {phrases::kConsidered, Align::Left, 3.4}},
                {}};
    for (const ExaminedIndication& one : examined.indications)
        table.rows.push_back(indicationRow(one));
    blocks.push_back(std::move(table));
}

void addGroups(std::vector<Block>& blocks, const Examined& examined) {
    if (examined.verdict->groups.empty()) return;
    Table table{{{phrases::kGroup, Align::Left, 0.6},
                 {phrases::kClass, Align::Left, 1},
                 {phrases::kLength, Align::Right, 0.8},
                 {phrases::kMembers, Align::Left, 4}},
                {}};
    for (const model::JudgedGroup& group : examined.verdict->groups)
        table.rows.push_back({{group.id, Mark::None, true},
                              {group.openClass.empty() ? std::string(model::word(group.classified))
                                                       : group.openClass},
                              {filled(phrases::kMillimetres, {toText(group.length)})},
                              {joined(group.members, ", ")}});
    blocks.push_back(Heading{3, phrases::kGroups});
    blocks.push_back(std::move(table));
}

std::string stated(const char* phrase, const SignedReason& statement) {
    return filled(phrase, {statement.by, statement.on, statement.reason});
}

void addExamination(std::vector<Block>& blocks, const CertificateInput& input,
                    const Examined& examined, const std::vector<Examined>& all,
                    PrintedConditions& printed) {
    const model::ExaminationVerdict& verdict = *examined.verdict;
    const Recorded* recorded = examined.recorded;
    const bool invalid = recorded != nullptr && recorded->invalidated.has_value();
    blocks.push_back(Heading{2, examined.name()});
    blocks.push_back(Statement{markOf(verdict.word), upperWord(verdict.word),
                               verdict.superseded && !invalid ? phrases::kSuperseded : ""});
    if (invalid)
        blocks.push_back(
            Statement{Mark::Caution, phrases::kDeclaredInvalid,
                      stated(phrases::kDeclaredInvalidMeaning, *recorded->invalidated)});
    if (recorded != nullptr && recorded->rejected)
        blocks.push_back(Statement{Mark::NotAcceptable, phrases::kRejected,
                                   stated(phrases::kRejectedMeaning, *recorded->rejected)});
    addFacts(blocks, input, examined);
    addConditions(blocks, input, examined, printed);
    if (verdict.method == model::Method::Ultrasonic) addUltrasonicTest(blocks, examined);
    addNotExamined(blocks, examined);
    addList(blocks, phrases::kReasons, verdict.reasons);
    ZoneFigures drawn = figuresOf(examined, all);
    addChecks(blocks, examined, drawn.frameOfCheck);
    addIndications(blocks, examined);
    addGroups(blocks, examined);
    for (Figure& figure : drawn.figures) blocks.push_back(std::move(figure));
    addList(blocks, phrases::kNotes, verdict.notes);
}

}  // namespace

void addExaminations(std::vector<Block>& blocks, const CertificateInput& input,
                     const std::vector<Examined>& all) {
    if (all.empty()) return;
    blocks.push_back(Heading{1, phrases::kExaminations, "D01"});
    blocks.push_back(Paragraph{Paragraph::Tone::Small, phrases::kUsedMeaning, true});
    blocks.push_back(Paragraph{Paragraph::Tone::Small, phrases::kIndicationUnits, true});
    PrintedConditions printed;
    for (const Examined& examined : all) addExamination(blocks, input, examined, all, printed);
}

}  // namespace reports
