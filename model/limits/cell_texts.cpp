// SPDX-License-Identifier: Apache-2.0
#include "limits/cell_texts.h"

#include "base/decimal.h"
#include "limits/words.h"

namespace model {

std::string plainText(Rational value) {
    if (value.isWhole()) return std::to_string(value.numerator / value.denominator);
    return std::to_string(value.numerator) + "/" + std::to_string(value.denominator);
}

std::string inWords(Comparison comparison) {
    switch (comparison) {
        case Comparison::Less:
            return "below";
        case Comparison::AtMost:
            return "at most";
        case Comparison::AtLeast:
            return "at least";
        case Comparison::More:
            return "above";
    }
    return "";
}

std::string unitOf(const Rule& rule) {
    switch (rule.kind) {
        case RuleKind::IndividualLength:
        case RuleKind::CumulativeLength:
        case RuleKind::Spacing:
        case RuleKind::EquivalentReflector:
        case RuleKind::ThroughWallExtent:
            return " mm";
        case RuleKind::TotalArea:
        case RuleKind::IndividualArea:
            return " mm2";
        case RuleKind::AreaShare:
            return " %";
        case RuleKind::BackWallLoss:
            return " dB";
        case RuleKind::Count:
        case RuleKind::CountAtMaximum:
        case RuleKind::LineOfIndications:
        case RuleKind::ForbiddenKind:
            break;
        case RuleKind::Testability:
            return rule.testability == TestabilityMeasure::SmallestFbh ? " mm" : " dB";
    }
    return "";
}

std::string bareValue(const Cell& cell, const std::string& unit) {
    const std::string share = cell.written.empty() ? plainText(cell.fraction) : cell.written;
    switch (cell.type) {
        case Cell::Type::Number:
            return cell.written.empty() ? formatMillionths(cell.number) + unit : cell.written;
        case Cell::Type::FractionOfThickness:
            return share + " of the thickness";
        case Cell::Type::FractionOfArea:
            return share + " of the zone's area";
        case Cell::Type::None:
            return "none";
        case Cell::Type::Unknown:
            return "unknown";
        case Cell::Type::Agreed:
            return "as agreed";
    }
    return "";
}

std::string withNote(const std::string& value, const Cell& cell) {
    return cell.note.empty() ? value : value + " (" + cell.note + ")";
}

std::string limitText(const Cell& cell, Comparison comparison, const std::string& unit) {
    const bool isLimit = cell.type == Cell::Type::Number ||
                         cell.type == Cell::Type::FractionOfThickness ||
                         cell.type == Cell::Type::FractionOfArea;
    const std::string text = bareValue(cell, unit);
    return withNote(isLimit ? inWords(comparison) + " " + text : text, cell);
}

std::string bandText(const Band& band) {
    std::string text;
    if (band.lower) text = std::string(word(band.lowerComparison)) + " " + toText(*band.lower);
    if (band.upper)
        text += (text.empty() ? "" : ", ") + std::string(word(band.upperComparison)) + " " +
                toText(*band.upper);
    return text;
}

std::string frameText(const FrameShape& shape) {
    if (shape.circle) return "circle of " + toText(shape.width) + " mm";
    return toText(shape.width) + " x " + toText(shape.height) + " mm";
}

std::string measureText(ReflectorMeasure measure) {
    switch (measure) {
        case ReflectorMeasure::Fbh:
            return "flat-bottomed hole";
        case ReflectorMeasure::IndicationLength:
            return "length";
        case ReflectorMeasure::LengthToWidth:
            return "length to width";
        case ReflectorMeasure::OverReference:
            return "echo over the reference";
        case ReflectorMeasure::BackWallLoss:
            return "back-wall loss";
    }
    return "";
}

std::string unitOf(ReflectorMeasure measure) {
    switch (measure) {
        case ReflectorMeasure::Fbh:
        case ReflectorMeasure::IndicationLength:
            return " mm";
        case ReflectorMeasure::OverReference:
        case ReflectorMeasure::BackWallLoss:
            return " dB";
        case ReflectorMeasure::LengthToWidth:
            break;
    }
    return "";
}

std::string conditionText(const Condition& condition) {
    const bool ratio = condition.of == ReflectorMeasure::LengthToWidth;
    const Rational value = condition.value;
    return measureText(condition.of) + " " + inWords(condition.comparison) + " " +
           formatMillionths(ratio ? Rational(value.numerator * kMillion, value.denominator)
                                  : value) +
           unitOf(condition.of);
}

std::string rimText(const RimZone& rim) {
    return plainText(rim.share) + " of the wall on each side" +
           (rim.atMost ? ", at most " + toText(*rim.atMost) + " mm" : "");
}

}  // namespace model
