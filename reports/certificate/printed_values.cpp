// SPDX-License-Identifier: Apache-2.0
#include "certificate/printed_values.h"

#include <cmath>

#include "base/decimal.h"
#include "certificate/phrases.h"
#include "limits/words.h"

namespace reports {

std::string filled(std::string_view phrase, const std::vector<std::string>& values) {
    std::string text;
    for (std::size_t i = 0; i < phrase.size(); ++i) {
        const bool placeholder = phrase[i] == '%' && i + 1 < phrase.size() &&
                                 phrase[i + 1] >= '1' && phrase[i + 1] <= '9';
        if (!placeholder) {
            text += phrase[i];
            continue;
        }
        const auto index = static_cast<std::size_t>(phrase[++i] - '1');
        if (index < values.size()) text += values[index];
    }
    return text;
}

std::string joined(const std::vector<std::string>& texts, std::string_view separator) {
    std::string result;
    for (const std::string& text : texts) {
        if (!result.empty()) result += separator;
        result += text;
    }
    return result;
}

std::string shortList(const std::vector<std::string>& texts, std::size_t most,
                      std::string_view separator) {
    if (texts.size() <= most) return joined(texts, separator);
    const std::vector<std::string> first(texts.begin(),
                                         texts.begin() + static_cast<std::ptrdiff_t>(most));
    return filled(phrases::kListMore,
                  {joined(first, separator), std::to_string(texts.size() - most)});
}

std::string orNotRecorded(const std::string& text) {
    const bool blank = text.find_first_not_of(" \t\r\n") == std::string::npos;
    return blank ? phrases::kNotRecorded : text;
}

std::string grouped(const std::string& digits) {
    constexpr std::size_t kDigitsInAGroup = 8;
    std::string text;
    for (std::size_t i = 0; i < digits.size(); ++i) {
        if (i > 0 && i % kDigitsInAGroup == 0) text += ' ';
        text += digits[i];
    }
    return text;
}

Mark markOf(model::Word word) {
    switch (word) {
        case model::Word::Acceptable:
            return Mark::Acceptable;
        case model::Word::NotAcceptable:
            return Mark::NotAcceptable;
        case model::Word::NotJudged:
            break;
    }
    return Mark::NotJudged;
}

std::string lowerWord(model::Word word) {
    switch (word) {
        case model::Word::Acceptable:
            return phrases::kAcceptable;
        case model::Word::NotAcceptable:
            return phrases::kNotAcceptable;
        case model::Word::NotJudged:
            break;
    }
    return phrases::kNotJudged;
}

std::string upperWord(model::Word word) {
    switch (word) {
        case model::Word::Acceptable:
            return phrases::kAcceptableUpper;
        case model::Word::NotAcceptable:
            return phrases::kNotAcceptableUpper;
        case model::Word::NotJudged:
            break;
    }
    return phrases::kNotJudgedUpper;
}

std::string stageWord(model::Stage stage) {
    switch (stage) {
        case model::Stage::AsCast:
            return phrases::kAsCast;
        case model::Stage::HeatTreated:
            return phrases::kHeatTreated;
        case model::Stage::RoughMachined:
            return phrases::kRoughMachined;
        case model::Stage::FinishMachined:
            break;
    }
    return phrases::kFinishMachined;
}

std::string methodName(model::Method method) {
    switch (method) {
        case model::Method::Magnetic:
            return phrases::kMagnetic;
        case model::Method::Penetrant:
            return phrases::kPenetrant;
        case model::Method::Ultrasonic:
            break;
    }
    return phrases::kUltrasonic;
}

std::string kindsText(const std::vector<model::Kind>& kinds) {
    std::vector<std::string> words;
    words.reserve(kinds.size());
    for (const model::Kind kind : kinds) words.emplace_back(model::word(kind));
    return words.empty() ? phrases::kNone : joined(words, ", ");
}

std::string unbroken(const std::string& text) {
    std::string kept;
    for (const char c : text) kept += c == ' ' ? std::string("\u00a0") : std::string(1, c);
    return kept;
}

std::string levelText(const std::string& key, const std::string& level) {
    if (key != kAllClasses) return unbroken(filled(phrases::kLevelOf, {key, level}));
    // A bare number says nothing.
    const bool bare = !level.empty() && level.front() >= '0' && level.front() <= '9';
    return unbroken(bare ? filled(phrases::kBareLevel, {level}) : level);
}

std::string levelsText(const std::map<std::string, std::string>& levels) {
    std::vector<std::string> texts;
    texts.reserve(levels.size());
    for (const auto& [key, level] : levels) texts.push_back(levelText(key, level));
    return texts.empty() ? phrases::kNoLevels : joined(texts, ", ");
}

namespace {

std::string withUnit(const std::string& number, model::CheckUnit unit) {
    switch (unit) {
        case model::CheckUnit::Millimetre:
            return number + "\u00a0mm";
        case model::CheckUnit::SquareMillimetre:
            return number + "\u00a0mm²";
        case model::CheckUnit::Percent:
            return number + "\u00a0%";
        case model::CheckUnit::Decibel:
            return number + "\u00a0dB";
        case model::CheckUnit::Count:
        case model::CheckUnit::None:
            break;
    }
    return number;
}

const char* comparisonSign(model::Comparison comparison) {
    switch (comparison) {
        case model::Comparison::Less:
            return "<";
        case model::Comparison::AtMost:
            return "≤";
        case model::Comparison::AtLeast:
            return "≥";
        case model::Comparison::More:
            break;
    }
    return ">";
}

model::Int128 dividedUp(model::Int128 numerator, model::Int128 denominator) {
    return (numerator + denominator - 1) / denominator;
}

std::string fixed(double value, int decimals) {
    const double unit = std::pow(10.0, decimals);
    const double rounded = std::round(value * unit) / unit;
    return model::formatMillionths(static_cast<std::int64_t>(std::llround(rounded * 1e6)));
}

}  // namespace

std::string measuredText(const model::Check& check) {
    if (!check.measured) return phrases::kDash;
    return withUnit(model::formatMillionths(*check.measured), check.unit);
}

std::string limitText(const model::Check& check) {
    if (!check.limit) return phrases::kDash;
    return std::string(comparisonSign(check.comparison)) + "\u00a0" +
           withUnit(model::formatMillionths(*check.limit), check.unit);
}

std::string shareText(const model::Check& check) {
    if (!check.measured || !check.limit || check.unit == model::CheckUnit::None) return {};
    const bool upper = check.comparison == model::Comparison::AtMost ||
                       check.comparison == model::Comparison::Less;
    // measured / (numerator / denominator), or the other way round for a lower limit
    model::Int128 over = static_cast<model::Int128>(*check.measured) * check.limit->denominator;
    model::Int128 under = check.limit->numerator;
    if (!upper) std::swap(over, under);
    if (over < 0 || under <= 0) return {};
    constexpr int kPerMille = 1000;
    constexpr int kMostPerMille = 9990;
    const model::Int128 perMille = dividedUp(over * kPerMille, under);
    if (perMille > kMostPerMille) return phrases::kFarOver;
    constexpr std::int64_t kMillionthsOfPercent = model::kMillion / 10;
    return model::formatMillionths(static_cast<std::int64_t>(perMille) * kMillionthsOfPercent) +
           "\u00a0%";
}

std::string ruleText(const model::Check& check) {
    std::string text(model::word(check.rule));
    if (!check.classText.empty()) text += ", " + check.classText;
    if (!check.level.empty()) text += ", " + unbroken(check.level);
    return text;
}

std::string whetherCounted(model::Relevance relevance, const std::string& reason, bool considered) {
    if (relevance == model::Relevance::NonRelevant) return filled(phrases::kNonRelevant, {reason});
    if (relevance == model::Relevance::False) return filled(phrases::kFalse, {reason});
    std::string text = considered ? phrases::kCountedYes : phrases::kUnderThreshold;
    if (!reason.empty()) text += "; " + reason;
    return text;
}

std::string placeText(double millimetres) {
    return fixed(millimetres, 2);
}

std::string angleText(double degrees) {
    return fixed(degrees, 1);
}

}  // namespace reports
