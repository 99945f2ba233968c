// SPDX-License-Identifier: Apache-2.0
#include "exchange/verdict_json.h"

#include <cmath>

#include "exchange/sheet_json.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

JsonValue text(std::string_view utf8) {
    return JsonValue::string(utf8);
}

/// Text, or null where it is empty.
JsonValue textOrNull(std::string_view utf8) {
    return utf8.empty() ? JsonValue() : text(utf8);
}

JsonValue unitText(CheckUnit unit) {
    switch (unit) {
        case CheckUnit::Millimetre:
            return text("mm");
        case CheckUnit::SquareMillimetre:
            return text("mm2");
        case CheckUnit::Count:
            return text("count");
        case CheckUnit::Percent:
            return text("%");
        case CheckUnit::Decibel:
            return text("dB");
        case CheckUnit::None:
            return {};
    }
    return {};
}

JsonValue rounded(double value) {
    // Within what a 64-bit count of millionths holds; only a mistake of ours lies beyond.
    if (!(std::abs(value) < 1e12)) return {};
    return JsonValue::number(std::llround(value * 1e6));
}

/// Millionths as a reduced fraction of the unit: "40/3".
std::string fractionText(Rational millionths) {
    Int128 over = millionths.numerator;
    Int128 under = static_cast<Int128>(millionths.denominator) * kMillion;
    Int128 a = over < 0 ? -over : over;
    Int128 b = under;
    while (b != 0) {
        const Int128 rest = a % b;
        a = b;
        b = rest;
    }
    if (a == 0) return "0";
    over /= a;
    under /= a;
    const auto digits = [](Int128 value) {
        std::string reversed;
        for (Int128 rest = value < 0 ? -value : value; rest != 0 || reversed.empty(); rest /= 10)
            reversed += static_cast<char>('0' + static_cast<int>(rest % 10));
        if (value < 0) reversed += '-';
        return std::string(reversed.rbegin(), reversed.rend());
    };
    return digits(over) + "/" + digits(under);
}

/// A class, or what it may be where that is open.
JsonValue classText(const std::optional<IndicationClass>& classified, const std::string& open) {
    if (!open.empty() || !classified) return textOrNull(open);
    return text(word(*classified));
}

JsonValue indicationToJson(const JudgedIndication& indication) {
    return JsonValue::object({{"id", text(indication.id)},
                              {"class", classText(indication.classified, indication.openClass)},
                              {"considered", JsonValue::boolean(indication.considered)},
                              {"group", textOrNull(indication.group)}});
}

JsonValue groupToJson(const JudgedGroup& group) {
    return JsonValue::object({{"id", text(group.id)},
                              {"class", classText(group.classified, group.openClass)},
                              {"members", JsonValue::strings(group.members)},
                              {"length_mm", JsonValue::number(group.length.millionths())}});
}

JsonValue frameToJson(const CheckFrame& frame) {
    JsonValue::Members members{{"centre_x_mm", rounded(frame.x)},
                               {"centre_y_mm", rounded(frame.y)},
                               {"angle_deg", rounded(frame.angleDegrees)}};
    if (frame.shape.circle) {
        members.push_back({"diameter_mm", JsonValue::number(frame.shape.width.millionths())});
    } else {
        members.push_back({"width_mm", JsonValue::number(frame.shape.width.millionths())});
        members.push_back({"height_mm", JsonValue::number(frame.shape.height.millionths())});
    }
    return JsonValue::object(std::move(members));
}

JsonValue checkToJson(const Check& check) {
    JsonValue::Members members{
        {"rule", text(word(check.rule))},
        {"class", textOrNull(check.classText)},
        {"key", textOrNull(check.key)},
        {"level", textOrNull(check.level)},
        {"locator", textOrNull(check.source.locator)},
        {"grade", text(word(check.source.grade))},
        {"measured", check.measured ? JsonValue::number(*check.measured) : JsonValue()}};
    if (check.limit) {
        members.push_back(
            {"limit", JsonValue::number(check.limit->numerator / check.limit->denominator)});
        if (!check.limit->isWhole())
            members.push_back({"limit_exact", text(fractionText(*check.limit))});
    } else {
        members.push_back({"limit", JsonValue()});
    }
    members.push_back({"unit", unitText(check.unit)});
    members.push_back({"comparison", text(word(check.comparison))});
    members.push_back({"passes", check.passes ? JsonValue::boolean(*check.passes) : JsonValue()});
    members.push_back({"members", JsonValue::strings(check.members)});
    members.push_back({"frame", check.frame ? frameToJson(*check.frame) : JsonValue()});
    if (!check.reason.empty()) members.push_back({"reason", text(check.reason)});
    if (!check.note.empty()) members.push_back({"note", text(check.note)});
    return JsonValue::object(std::move(members));
}

JsonValue examinationToJson(const ExaminationVerdict& examination) {
    JsonValue::Members levels;
    for (const auto& [key, level] : examination.levels) levels.push_back({key, text(level)});
    JsonValue::Members best;
    for (const auto& [key, level] : examination.bestLevels)
        best.push_back({key, level ? text(*level) : JsonValue()});
    JsonValue::Members members{
        {"zone", text(examination.zone)},
        {"method", text(word(examination.method))},
        {"stage", text(word(examination.stage))},
        {"repair_cycle", JsonValue::count(examination.repairCycle)},
        {"repeat", JsonValue::count(examination.repeat)},
        {"superseded", JsonValue::boolean(examination.superseded)},
        {"verdict", text(word(examination.word))},
        {"table",
         JsonValue::object({{"id", text(examination.tableId)},
                            {"revision", JsonValue::count(examination.tableRevision)},
                            {"sha256", text(examination.tableDigest)},
                            {"status", text(examination.attested ? "attested" : "not attested")}})},
        {"levels", JsonValue::object(std::move(levels))},
        {"indications", JsonValue::arrayOf(examination.indications, indicationToJson)},
        {"groups", JsonValue::arrayOf(examination.groups, groupToJson)},
        {"checks", JsonValue::arrayOf(examination.checks, checkToJson)},
        {"best_levels", JsonValue::object(std::move(best))},
        {"best_levels_unknown", JsonValue::strings(examination.bestLevelsUnknown)},
        {"reasons", JsonValue::strings(examination.reasons)},
        {"notes", JsonValue::strings(examination.notes)}};
    if (examination.rejected)
        members.push_back({"rejected", objectionToJson(*examination.rejected)});
    if (examination.invalid) members.push_back({"invalid", objectionToJson(*examination.invalid)});
    return JsonValue::object(std::move(members));
}

}  // namespace

JsonValue verdictToJson(const Verdict& verdict) {
    return JsonValue::object(
        {{"format", text(kVerdictFormat)},
         {"verdict", text(word(verdict.word))},
         {"examinations", JsonValue::arrayOf(verdict.examinations, examinationToJson)}});
}

}  // namespace model
