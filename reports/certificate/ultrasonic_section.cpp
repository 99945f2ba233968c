// SPDX-License-Identifier: Apache-2.0
#include "certificate/ultrasonic_section.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "limits/words.h"
#include "quantity/entry.h"

namespace reports {
namespace {

using Row = std::vector<TableCell>;

/// A length as typed, with its unit.
std::string typedLength(const std::string& typed, model::LengthUnit unit) {
    if (typed.empty()) return phrases::kNotRecorded;
    return unbroken(typed + " " + std::string(model::symbol(unit)));
}

std::string beamText(const model::TypedSetting& setting) {
    const std::string frequency = orNotRecorded(setting.frequency);
    if (setting.kind == "angle") {
        std::string text =
            filled(phrases::kAngleBeam, {frequency, orNotRecorded(setting.probeAngle)});
        if (!setting.front.empty())
            text += filled(phrases::kIndexToFront, {typedLength(setting.front, setting.unit)});
        return text;
    }
    return filled(setting.kind == "twin" ? phrases::kTwinCrystal : phrases::kStraightBeam,
                  {frequency});
}

std::string elementText(const model::TypedSetting& setting) {
    if (setting.element == "rectangular")
        return filled(phrases::kRectangularElement,
                      {typedLength(setting.elementWidth, setting.unit),
                       typedLength(setting.elementLength, setting.unit)});
    return filled(phrases::kRoundElement, {typedLength(setting.diameter, setting.unit)});
}

std::string soundText(const model::TypedSetting& setting) {
    return filled(phrases::kVelocity, {orNotRecorded(setting.velocity)}) +
           (setting.attenuation.empty() ? std::string(phrases::kNoAttenuation)
                                        : filled(phrases::kAttenuation, {setting.attenuation}));
}

std::string wallText(const model::TypedSetting& setting) {
    const std::string wall = typedLength(setting.thickness, setting.unit);
    if (setting.surface == "outer" || setting.surface == "inner")
        return filled(setting.surface == "outer" ? phrases::kOuter : phrases::kInner,
                      {wall, typedLength(setting.radius, setting.unit)});
    return filled(phrases::kFlat, {wall});
}

bool onBlock(const model::TypedSetting& setting) {
    return setting.referenceOn == "block";
}

std::string referenceText(const model::TypedSetting& setting) {
    const std::string kind = orNotRecorded(setting.reference);
    std::string text = onBlock(setting)
                           ? filled(phrases::kInBlock, {kind, orNotRecorded(setting.block)})
                           : filled(phrases::kOnCasting, {kind});
    if (!setting.referenceDiameter.empty())
        text += filled(phrases::kReferenceDiameter,
                       {typedLength(setting.referenceDiameter, setting.unit)});
    if (!setting.referenceVelocity.empty())
        text += filled(phrases::kReferenceSound, {setting.referenceVelocity});
    if (!setting.referenceAttenuation.empty())
        text += filled(phrases::kAttenuation, {setting.referenceAttenuation});
    return text;
}

std::string sensitivityText(const model::TypedSetting& setting) {
    return filled(phrases::kEchoAt,
                  {orNotRecorded(setting.referenceGain), orNotRecorded(setting.referenceScreen),
                   typedLength(setting.referencePath, setting.unit)});
}

std::string transferText(const model::TypedSetting& setting) {
    if (!setting.transfer.empty()) return filled(phrases::kDecibels, {setting.transfer});
    return onBlock(setting) ? phrases::kNotRecorded : phrases::kNoTransfer;
}

/// Empty where nothing of the casting's own sound was measured.
std::string measuredOnCasting(const model::TypedSetting& setting) {
    std::vector<std::string> texts;
    if (!setting.knownThickness.empty())
        texts.push_back(
            filled(phrases::kVelocityMeasured, {typedLength(setting.knownThickness, setting.unit),
                                                typedLength(setting.shownThickness, setting.unit),
                                                orNotRecorded(setting.setVelocity)}));
    if (!setting.firstEchoGain.empty())
        texts.push_back(filled(
            phrases::kEchoesMeasured,
            {orNotRecorded(setting.firstEchoNumber), setting.firstEchoGain,
             orNotRecorded(setting.secondEchoNumber), orNotRecorded(setting.secondEchoGain)}));
    return joined(texts, "; ");
}

void addSetting(std::vector<Block>& blocks, const model::TypedSetting& setting) {
    blocks.push_back(Heading{3, filled(phrases::kSetting, {setting.name})});
    blocks.push_back(Fields{{
        {"", phrases::kProbe, orNotRecorded(setting.probe)},
        {"", phrases::kBeam, beamText(setting)},
        {"", phrases::kElement, elementText(setting)},
        {"", phrases::kSound, soundText(setting)},
        {"", phrases::kScannedWall, wallText(setting)},
        {"", phrases::kReference, referenceText(setting)},
        {"", phrases::kSensitivity, sensitivityText(setting)},
        {"", phrases::kTransfer, transferText(setting)},
    }});
    const std::string measured = measuredOnCasting(setting);
    if (!measured.empty())
        blocks.push_back(Fields{{{"", phrases::kMeasuredOnCasting, measured}}, 1});
}

/// A dimension in mm; what was not measured and what is not measurable say so.
std::string extentText(const std::optional<model::Length>& length, bool notMeasurable) {
    if (length) return toText(*length);
    return notMeasurable ? phrases::kInBeam : phrases::kNotMeasured;
}

template <class Quantity>
std::string optionalText(const std::optional<Quantity>& value) {
    return value ? toText(*value) : phrases::kNotMeasured;
}

std::string classText(const ExaminedReflector& one) {
    if (one.judged->classified) return std::string(model::word(*one.judged->classified));
    if (!one.judged->openClass.empty()) return one.judged->openClass;
    // What is not relevant leaves before classes are told.
    return one.read.relevance == model::Relevance::Relevant ? phrases::kNotClassified
                                                            : phrases::kDash;
}

std::string classAndKind(const ExaminedReflector& one) {
    const std::string text = classText(one);
    const std::string kind =
        one.read.kind ? std::string(model::word(*one.read.kind)) : phrases::kKindNotStated;
    return text == kind ? text : text + ", " + kind;
}

std::string remarksOf(const ExaminedReflector& one) {
    std::vector<std::string> texts = {
        whetherCounted(one.read.relevance, one.read.reason, one.judged->considered)};
    if (!one.judged->group.empty()) texts.push_back(filled(phrases::kInGroup, {one.judged->group}));
    if (!one.read.backWallLossExplained.empty())
        texts.push_back(filled(phrases::kLossExplained, {one.read.backWallLossExplained}));
    if (one.read.wall) texts.push_back(filled(phrases::kWallHere, {toText(*one.read.wall)}));
    return joined(texts, "; ");
}

Row reflectorRow(const ExaminedReflector& one) {
    const model::Reflector& read = one.read;
    std::string length = extentText(read.length, read.lengthNotMeasurable);
    if (read.angle != model::Angle())
        length += "\n" + filled(phrases::kAtAngle, {toText(read.angle)});
    return {{read.id, Mark::None, true},
            {toText(read.x)},
            {toText(read.y)},
            {optionalText(read.depth)},
            {optionalText(read.fbh)},
            {length},
            {extentText(read.width, read.widthNotMeasurable)},
            {extentText(read.throughWall, read.throughWallNotMeasurable)},
            {optionalText(read.area)},
            {optionalText(read.overReference)},
            {optionalText(read.backWallLoss)},
            {classAndKind(one)},
            {remarksOf(one)}};
}

/// A computed value to 0.1.
std::string tenths(double value) {
    std::string text = std::to_string(std::llround(std::abs(value) * 10));
    if (text.size() < 2) text.insert(0, "0");
    text.insert(text.size() - 1, ".");
    return std::signbit(value) && text != "0.0" ? "-" + text : text;
}

std::string computedFbh(const model::Size& size) {
    std::vector<std::string> texts;
    if (size.fbhMm && size.method == model::SizingMethod::DistanceGainSize)
        texts.push_back(filled(phrases::kByDistanceGainSize, {tenths(*size.fbhMm)}));
    else if (size.fbhMm)
        texts.push_back(filled(phrases::kByFarField, {tenths(*size.fbhMm)}));
    if (size.farFieldFbhMm && size.method != model::SizingMethod::FarField)
        texts.push_back(filled(phrases::kByFarField, {tenths(*size.farFieldFbhMm)}));
    return texts.empty() ? phrases::kDash : joined(texts, "\n");
}

std::string movementText(const model::TypedReflector& typed) {
    if (typed.along.empty() && typed.across.empty()) return phrases::kDash;
    const auto moved = [&typed](const std::string& text) {
        return text.empty() ? std::string(phrases::kNotMeasured) : typedLength(text, typed.unit);
    };
    return filled(phrases::kMovementOf,
                  {orNotRecorded(typed.drop), moved(typed.along), moved(typed.across)});
}

Row readingRow(const ExaminedReflector& one) {
    const model::TypedReflector& typed = *one.typed;
    const model::Size& size = *one.size;
    return {{one.read.id, Mark::None, true},
            {orNotRecorded(typed.setting)},
            {typedLength(typed.soundPath, typed.unit)},
            {orNotRecorded(typed.gain)},
            {orNotRecorded(typed.screen)},
            {size.echoDb ? tenths(*size.echoDb) : phrases::kDash},
            {std::to_string(size.leg)},
            {movementText(typed)},
            {computedFbh(size)}};
}

void addReadings(std::vector<Block>& blocks, const Examined& examined) {
    Table table{{{phrases::kId, Align::Left, 0.6},
                 {phrases::kOfSetting, Align::Left, 1},
                 {phrases::kSoundPath, Align::Right, 0.9},
                 {phrases::kGain, Align::Right, 0.8},
                 {phrases::kScreen, Align::Right, 0.9},
                 {phrases::kEcho, Align::Right, 1.2},
                 {phrases::kLeg, Align::Right, 0.5},
                 {phrases::kMovement, Align::Left, 2.4},
                 {phrases::kComputedFbh, Align::Left, 2.2}},
                {}};
    // Which indications met a limit, in the order in which they met it.
    std::vector<std::pair<std::string, std::vector<std::string>>> notes;
    for (const ExaminedReflector& one : examined.reflectors) {
        if (!one.size) continue;
        table.rows.push_back(readingRow(one));
        for (const std::string& note : one.size->notes) {
            auto found = std::ranges::find(notes, note, &decltype(notes)::value_type::first);
            if (found == notes.end()) found = notes.insert(found, {note, {}});
            found->second.push_back(one.read.id);
        }
    }
    if (table.rows.empty()) return;
    blocks.push_back(Heading{3, phrases::kReadings});
    blocks.push_back(std::move(table));
    if (notes.empty()) return;
    std::vector<std::string> texts;
    for (const auto& [note, ids] : notes)
        texts.push_back("• " + filled(phrases::kNoteOf, {joined(ids, ", "), note}));
    blocks.push_back(Heading{3, phrases::kSizeNotes});
    blocks.push_back(Paragraph{Paragraph::Tone::Plain, joined(texts, "\n")});
}

}  // namespace

void addUltrasonicTest(std::vector<Block>& blocks, const Examined& examined) {
    const model::UltrasonicTest& test = examined.draft->header.ultrasonic;
    const auto recorded = [](const auto& value, const char* phrase) {
        return value ? filled(phrase, {toText(*value)}) : std::string(phrases::kNotRecorded);
    };
    const model::Testability testability = test.testability.value_or(model::Testability());
    blocks.push_back(Heading{3, phrases::kUltrasonicTest});
    blocks.push_back(Fields{{
        {"", phrases::kZoneArea, recorded(test.zoneArea, phrases::kSquareMillimetres)},
        {"", phrases::kDeadZone, recorded(test.deadZone, phrases::kMillimetres)},
        {"", phrases::kSmallestFbh, recorded(testability.smallestFbh, phrases::kMillimetres)},
        {"", phrases::kSignalToNoise, recorded(testability.signalToNoise, phrases::kDecibels)},
    }});
    blocks.push_back(
        Fields{{{"", phrases::kDirections, orNotRecorded(joined(test.directions, "; "))}}, 1});
    for (const model::TypedSetting& setting : examined.draft->settings) addSetting(blocks, setting);
}

void addReflectors(std::vector<Block>& blocks, const Examined& examined) {
    Table table{{{phrases::kId, Align::Left, 0.7},
                 {phrases::kX, Align::Right, 0.8},
                 {phrases::kY, Align::Right, 0.8},
                 {phrases::kDepth, Align::Right, 0.85},
                 {phrases::kFbh, Align::Right, 0.8},
                 {phrases::kLength, Align::Right, 0.9},
                 {phrases::kWidth, Align::Right, 0.85},
                 {phrases::kThroughWall, Align::Right, 0.95},
                 {phrases::kArea, Align::Right, 0.9},
                 {phrases::kOverReference, Align::Right, 0.85},
                 {phrases::kBackWallLoss, Align::Right, 0.75},
                 {phrases::kClassAndKind, Align::Left, 1.5},
                 {phrases::kConsidered, Align::Left, 2.6}},
                {}};
    for (const ExaminedReflector& one : examined.reflectors)
        table.rows.push_back(reflectorRow(one));
    blocks.push_back(std::move(table));
    blocks.push_back(Paragraph{Paragraph::Tone::Small, phrases::kReflectorUnits});
    addReadings(blocks, examined);
}

}  // namespace reports
