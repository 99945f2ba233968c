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
    Dimension of;
    std::int64_t over = 1;
    std::int64_t under = 1;
    std::int64_t offset = 0;
    bool inOersted = false;
};

// Definitions: inch 25.4 mm, foot 304.8 mm, pound 0.45359237 kg (agreement of 1959); standard
// acceleration of free fall 9.80665 m/s2 (3rd CGPM, 1901); 0 deg C is 273.15 K.
constexpr ConditionUnit kUnits[] = {
    {"W/m2", Dimension::Irradiance},
    {"uW/cm2", Dimension::Irradiance, 1, 100},
    {"mW/cm2", Dimension::Irradiance, 10},
    {"lx", Dimension::Illuminance},
    {"fc", Dimension::Illuminance, 1'562'500, 145'161},  // 1 / 0.3048^2
    {"lm/ft2", Dimension::Illuminance, 1'562'500, 145'161},
    {"kA/m", Dimension::MagneticField, 1'000},
    {"A/m", Dimension::MagneticField},
    {"Oe", Dimension::MagneticField, 1, 1, 0, true},
    {"G", Dimension::MagneticField, 1, 1, 0, true},
    {"mT", Dimension::MagneticField, 10, 1, 0, true},
    {"mm", Dimension::Extent},
    {"um", Dimension::Extent, 1, 1'000},
    {"cm", Dimension::Extent, 10},
    {"m", Dimension::Extent, 1'000},
    {"in", Dimension::Extent, 127, 5},
    {"deg C", Dimension::Temperature},
    {"deg F", Dimension::Temperature, 5, 9, -160},
    {"K", Dimension::Temperature, 100, 100, -27'315},
    {"N", Dimension::Force, 20'000, 196'133},  // 1 / 9.80665
    {"kgf", Dimension::Force},
    {"lbf", Dimension::Force, 45'359'237, 100'000'000},
    {"kg", Dimension::Force},
    {"lb", Dimension::Force, 45'359'237, 100'000'000},
    {"min", Dimension::Time, 60},
    {"s", Dimension::Time},
    {"h", Dimension::Time, 3'600},
    {"mL/100mL", Dimension::VolumeShare},
    {"%", Dimension::VolumeShare},
    {"mg/kg", Dimension::MassShare},
    {"ppm", Dimension::MassShare},
    {"%", Dimension::MassShare, 10'000},
    {"%", Dimension::Share},
    {"dB", Dimension::Decibels},
    {"MHz", Dimension::Frequency},
    {"kHz", Dimension::Frequency, 1, 1'000},
    {"mm/s", Dimension::Speed},
    {"m/min", Dimension::Speed, 50, 3},
    {"in/s", Dimension::Speed, 127, 5},
    {"in/min", Dimension::Speed, 127, 300},
    {"A", Dimension::Current},
    {"kA", Dimension::Current, 1'000},
    {"kPa", Dimension::Pressure},
    {"bar", Dimension::Pressure, 100},
    {"MPa", Dimension::Pressure, 1'000},
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
    static constexpr ConditionUnit kPlain{"", Dimension::None};
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
