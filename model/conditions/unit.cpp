// SPDX-License-Identifier: Apache-2.0
#include "conditions/unit.h"

#include <algorithm>
#include <cassert>

#include "registers/field.h"

namespace model {
namespace {

/// A number of this unit is (number x over + offset) / under of the dimension's own unit.
struct ConditionUnit {
    std::string_view word;
    std::int64_t over = 1;
    std::int64_t under = 1;
    std::int64_t offset = 0;
    Dimension of = Dimension::None;
    bool inOersted = false;
};

// Definitions: inch 25.4 mm, foot 304.8 mm, pound 0.45359237 kg (agreement of 1959); standard
// acceleration of free fall 9.80665 m/s2 (3rd CGPM, 1901); 0 deg C is 273.15 K.
constexpr ConditionUnit kUnits[] = {
    {"W/m2", 1, 1, 0, Dimension::Irradiance},
    {"uW/cm2", 1, 100, 0, Dimension::Irradiance},
    {"mW/cm2", 10, 1, 0, Dimension::Irradiance},
    {"lx", 1, 1, 0, Dimension::Illuminance},
    {"fc", 1'562'500, 145'161, 0, Dimension::Illuminance},  // 1 / 0.3048^2
    {"lm/ft2", 1'562'500, 145'161, 0, Dimension::Illuminance},
    {"kA/m", 1'000, 1, 0, Dimension::MagneticField},
    {"A/m", 1, 1, 0, Dimension::MagneticField},
    {"Oe", 1, 1, 0, Dimension::MagneticField, true},
    {"G", 1, 1, 0, Dimension::MagneticField, true},
    {"mT", 10, 1, 0, Dimension::MagneticField, true},
    {"mm", 1, 1, 0, Dimension::Extent},
    {"um", 1, 1'000, 0, Dimension::Extent},
    {"cm", 10, 1, 0, Dimension::Extent},
    {"m", 1'000, 1, 0, Dimension::Extent},
    {"in", 127, 5, 0, Dimension::Extent},
    {"deg C", 1, 1, 0, Dimension::Temperature},
    {"deg F", 5, 9, -160, Dimension::Temperature},
    {"K", 100, 100, -27'315, Dimension::Temperature},
    {"N", 20'000, 196'133, 0, Dimension::Force},  // 1 / 9.80665
    {"kgf", 1, 1, 0, Dimension::Force},
    {"lbf", 45'359'237, 100'000'000, 0, Dimension::Force},
    {"kg", 1, 1, 0, Dimension::Force},
    {"lb", 45'359'237, 100'000'000, 0, Dimension::Force},
    {"min", 60, 1, 0, Dimension::Time},
    {"s", 1, 1, 0, Dimension::Time},
    {"h", 3'600, 1, 0, Dimension::Time},
    {"mL/100mL", 1, 1, 0, Dimension::VolumeShare},
    {"%", 1, 1, 0, Dimension::VolumeShare},
    {"mg/kg", 1, 1, 0, Dimension::MassShare},
    {"ppm", 1, 1, 0, Dimension::MassShare},
    {"%", 10'000, 1, 0, Dimension::MassShare},
    {"%", 1, 1, 0, Dimension::Share},
    {"dB", 1, 1, 0, Dimension::Decibels},
    {"MHz", 1, 1, 0, Dimension::Frequency},
    {"kHz", 1, 1'000, 0, Dimension::Frequency},
    {"mm/s", 1, 1, 0, Dimension::Speed},
    {"m/min", 50, 3, 0, Dimension::Speed},
    {"in/s", 127, 5, 0, Dimension::Speed},
    {"in/min", 127, 300, 0, Dimension::Speed},
    {"A", 1, 1, 0, Dimension::Current},
    {"kA", 1'000, 1, 0, Dimension::Current},
    {"kPa", 1, 1, 0, Dimension::Pressure},
    {"bar", 100, 1, 0, Dimension::Pressure},
    {"MPa", 1'000, 1, 0, Dimension::Pressure},
};

// What an oersted lies between, in A/m over kUnderBounds.
constexpr Int128 kOerstedAtLeast = 795'774;
constexpr Int128 kOerstedAtMost = 795'775;
constexpr Int128 kUnderBounds = 10'000;

const ConditionUnit* unitFor(std::string_view word, Dimension dimension) {
    const auto* const found = std::ranges::find_if(kUnits, [&](const ConditionUnit& unit) {
        return unit.of == dimension && unit.word == word;
    });
    return found == std::end(kUnits) ? nullptr : found;
}

std::string listed(const std::vector<std::string_view>& words) {
    std::string list;
    for (const std::string_view word : words) {
        if (!list.empty()) list += ", ";
        list += word;
    }
    return list;
}

// The largest numerator is 1e12 x 45 359 237 and the largest denominator 1e6 x 1e8: their product
// stays below 2^127.
bool holdsExactly(Int128 a, Int128 overA, Comparison comparison, Int128 b, Int128 overB) {
    const Int128 left = a * overB;
    const Int128 right = b * overA;
    switch (comparison) {
        case Comparison::Less:
            return left < right;
        case Comparison::AtMost:
            return left <= right;
        case Comparison::AtLeast:
            return left >= right;
        case Comparison::More:
            return left > right;
    }
    return false;
}

}  // namespace

std::vector<std::string_view> unitsOf(Dimension dimension) {
    std::vector<std::string_view> words;
    for (const ConditionUnit& unit : kUnits)
        if (unit.of == dimension) words.push_back(unit.word);
    return words;
}

Result<ConditionValue> ConditionValue::read(std::string_view number, std::string_view unit,
                                            Dimension dimension) {
    const auto millionths = numberOf(number);
    if (!millionths)
        return inputError("", "\"%1\" is not a number that can be read", {std::string(number)});
    static constexpr ConditionUnit kPlain{""};
    const ConditionUnit* known = dimension == Dimension::None ? (unit.empty() ? &kPlain : nullptr)
                                                              : unitFor(unit, dimension);
    if (known == nullptr) {
        if (dimension == Dimension::None)
            return inputError("", "it has no unit; \"%1\" is stated", {std::string(unit)});
        if (unit.empty())
            return inputError("", "no unit is stated; take one of: %1",
                              {listed(unitsOf(dimension))});
        return inputError("", "\"%1\" is not a unit of it; take one of: %2",
                          {std::string(unit), listed(unitsOf(dimension))});
    }
    ConditionValue value;
    value.numerator_ = static_cast<Int128>(*millionths) * known->over +
                       static_cast<Int128>(known->offset) * kMillion;
    value.denominator_ = static_cast<Int128>(known->under) * kMillion;
    value.inOersted_ = known->inOersted;
    value.dimension_ = dimension;
    value.text_ = std::string(number);
    if (!unit.empty()) value.text_ += " " + std::string(unit);
    return value;
}

double ConditionValue::approximately() const {
    constexpr double kPi = 3.14159265358979323846;
    const double value = static_cast<double>(numerator_) / static_cast<double>(denominator_);
    return inOersted_ ? value * 1'000 / (4 * kPi) : value;
}

bool surelyHolds(const ConditionValue& value, Comparison comparison, const ConditionValue& bound) {
    assert(value.dimension_ == bound.dimension_);
    const auto holds = [&](Int128 oersted) {
        const auto numerator = [&](const ConditionValue& of) {
            return of.inOersted_ ? of.numerator_ * oersted : of.numerator_;
        };
        const auto denominator = [&](const ConditionValue& of) {
            return of.inOersted_ ? of.denominator_ * kUnderBounds : of.denominator_;
        };
        return holdsExactly(numerator(value), denominator(value), comparison, numerator(bound),
                            denominator(bound));
    };
    if (value.inOersted_ == bound.inOersted_)
        return holdsExactly(value.numerator_, value.denominator_, comparison, bound.numerator_,
                            bound.denominator_);
    return holds(kOerstedAtLeast) && holds(kOerstedAtMost);
}

}  // namespace model
