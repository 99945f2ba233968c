// SPDX-License-Identifier: Apache-2.0
#include "conditions/unit.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace model {
namespace {

using testing::Contains;
using testing::HasSubstr;

ConditionValue value(const char* number, const char* unit, Dimension dimension) {
    auto read = ConditionValue::read(number, unit, dimension);
    EXPECT_TRUE(read.ok()) << number << " " << unit;
    return read ? *read : ConditionValue();
}

bool isSame(const ConditionValue& a, const ConditionValue& b) {
    return surelyHolds(a, Comparison::AtMost, b) && surelyHolds(a, Comparison::AtLeast, b);
}

struct Equal {
    Dimension dimension;
    const char* number;
    const char* unit;
    const char* own;
    const char* ownUnit;
};

class ExactUnitsOracle : public testing::TestWithParam<Equal> {};

// Factors that NIST SP 811 (2008), Appendix B.8, prints in bold as exact, and the definitions of
// SI prefixes (SI Brochure, 9th edition, table 7).
TEST_P(ExactUnitsOracle, ConvertWithoutRounding) {
    const Equal& equal = GetParam();
    EXPECT_TRUE(isSame(value(equal.number, equal.unit, equal.dimension),
                       value(equal.own, equal.ownUnit, equal.dimension)));
}

INSTANTIATE_TEST_SUITE_P(
    NistSp811, ExactUnitsOracle,
    testing::Values(
        // SI Brochure: mu is 1e-6, m is 1e-3, k is 1e3, c is 1e-2, M is 1e6.
        Equal{Dimension::Irradiance, "1000", "uW/cm2", "10", "W/m2"},
        Equal{Dimension::Irradiance, "1", "mW/cm2", "10", "W/m2"},
        Equal{Dimension::MagneticField, "2.4", "kA/m", "2400", "A/m"},
        Equal{Dimension::Extent, "50", "um", "0.05", "mm"},
        Equal{Dimension::Extent, "1.5", "m", "150", "cm"},
        Equal{Dimension::Frequency, "500", "kHz", "0.5", "MHz"},
        Equal{Dimension::Current, "1.2", "kA", "1200", "A"},
        Equal{Dimension::Pressure, "0.3", "MPa", "300", "kPa"},
        // SI Brochure table 8: the bar is 100 kPa; the minute 60 s, the hour 3600 s.
        Equal{Dimension::Pressure, "2", "bar", "200", "kPa"},
        Equal{Dimension::Time, "4", "h", "240", "min"},
        Equal{Dimension::Time, "10", "min", "600", "s"},
        // inch: 2.54 E-02 m, exact.
        Equal{Dimension::Extent, "1", "in", "25.4", "mm"},
        Equal{Dimension::Speed, "6", "in/s", "152.4", "mm/s"},
        Equal{Dimension::Speed, "60", "in/min", "25.4", "mm/s"},
        Equal{Dimension::Speed, "9", "m/min", "150", "mm/s"},
        // kilogram-force: 9.80665 E+00 N, exact.
        Equal{Dimension::Force, "9.80665", "N", "1", "kgf"},
        Equal{Dimension::Force, "44.129925", "N", "4.5", "kg"},
        // pound: 4.535 923 7 E-01 kg, exact.
        Equal{Dimension::Force, "100", "lb", "45.359237", "kg"},
        Equal{Dimension::Force, "1000", "lbf", "453.59237", "kgf"},
        // degree Fahrenheit: (t - 32)/1.8; degree Celsius: t + 273.15 in K.
        Equal{Dimension::Temperature, "50", "deg F", "10", "deg C"},
        Equal{Dimension::Temperature, "122", "deg F", "50", "deg C"},
        Equal{Dimension::Temperature, "-40", "deg F", "-40", "deg C"},
        Equal{Dimension::Temperature, "273.15", "K", "0", "deg C"},
        Equal{Dimension::Temperature, "310.15", "K", "98.6", "deg F"},
        // SI Brochure 5.4.7: the percent is 0.01; ppm is 1e-6.
        Equal{Dimension::MassShare, "0.02", "%", "200", "ppm"},
        Equal{Dimension::MassShare, "200", "mg/kg", "200", "ppm"},
        Equal{Dimension::VolumeShare, "0.4", "mL/100mL", "0.4", "%"}));

struct Rounded {
    Dimension dimension;
    const char* number;
    const char* unit;
    const char* below;
    const char* above;
    const char* ownUnit;
};

class RoundedUnitsOracle : public testing::TestWithParam<Rounded> {};

// Factors that NIST SP 811 (2008), Appendix B.8, prints rounded to seven digits: the exact one lies
// within half a unit of the last.
TEST_P(RoundedUnitsOracle, LieWithinTheLastPrintedDigit) {
    const Rounded& rounded = GetParam();
    const auto converted = value(rounded.number, rounded.unit, rounded.dimension);
    EXPECT_TRUE(surelyHolds(converted, Comparison::More,
                            value(rounded.below, rounded.ownUnit, rounded.dimension)));
    EXPECT_TRUE(surelyHolds(converted, Comparison::Less,
                            value(rounded.above, rounded.ownUnit, rounded.dimension)));
}

INSTANTIATE_TEST_SUITE_P(
    NistSp811, RoundedUnitsOracle,
    testing::Values(
        // footcandle: 1.076 391 E+01 lx.
        Rounded{Dimension::Illuminance, "1000", "fc", "10763.905", "10763.915", "lx"},
        Rounded{Dimension::Illuminance, "1000", "lm/ft2", "10763.905", "10763.915", "lx"},
        // pound-force: 4.448 222 E+00 N.
        Rounded{Dimension::Force, "1000", "lbf", "4448.2215", "4448.2225", "N"},
        // oersted: 7.957 747 E+01 A/m; the bounds here are wider, as unit.h says.
        Rounded{Dimension::MagneticField, "1", "Oe", "79.577", "79.578", "A/m"}));

TEST(ConditionValueOracle, TakesTheOerstedBetweenBoundsAroundThePublishedFactor) {
    // NIST SP 811, B.8: 7.957 747 E+01, that is 1000/(4 pi). A gauss in air is the same field: its
    // susceptibility of 4e-7 (CRC Handbook of Chemistry and Physics, oxygen 20 % of air) takes
    // 0.00003 A/m off.
    const auto oersted = value("1", "Oe", Dimension::MagneticField);
    for (const char* possible : {"79.577472", "79.577471", "79.57744"}) {
        const auto si = value(possible, "A/m", Dimension::MagneticField);
        // Neither way is certain so near to it.
        EXPECT_FALSE(surelyHolds(oersted, Comparison::AtMost, si)) << possible;
        EXPECT_FALSE(surelyHolds(oersted, Comparison::AtLeast, si)) << possible;
    }
}

TEST(ConditionValue, ComparesOerstedGaussAndMilliteslaExactly) {
    const auto field = [](const char* number, const char* unit) {
        return value(number, unit, Dimension::MagneticField);
    };
    EXPECT_TRUE(isSame(field("3", "G"), field("3", "Oe")));
    EXPECT_TRUE(isSame(field("3", "G"), field("0.3", "mT")));
    EXPECT_TRUE(surelyHolds(field("3", "G"), Comparison::AtMost, field("3", "G")));
    EXPECT_FALSE(surelyHolds(field("3.000001", "G"), Comparison::AtMost, field("3", "G")));
}

TEST(ConditionValue, FailsOnTheSafeSideWhereAFieldInOerstedMeetsOneInSi) {
    const auto field = [](const char* number, const char* unit) {
        return value(number, unit, Dimension::MagneticField);
    };
    // 25.13274 Oe is 1999.99986 A/m: below 2 kA/m.
    EXPECT_FALSE(surelyHolds(field("25.13274", "Oe"), Comparison::AtLeast, field("2", "kA/m")));
    EXPECT_TRUE(surelyHolds(field("25.133", "Oe"), Comparison::AtLeast, field("2", "kA/m")));
    EXPECT_FALSE(surelyHolds(field("25.133", "Oe"), Comparison::AtMost, field("2", "kA/m")));
    EXPECT_TRUE(surelyHolds(field("25.132", "Oe"), Comparison::AtMost, field("2", "kA/m")));
    // Also where the limit is the one in gauss.
    EXPECT_TRUE(surelyHolds(field("0.238", "kA/m"), Comparison::AtMost, field("3", "G")));
    EXPECT_FALSE(surelyHolds(field("0.239", "kA/m"), Comparison::AtMost, field("3", "G")));
}

TEST(ConditionValue, ComparesAtTheLimitExactly) {
    const auto limit = value("10", "W/m2", Dimension::Irradiance);
    const auto at = value("1000", "uW/cm2", Dimension::Irradiance);
    const auto below = value("999.999999", "uW/cm2", Dimension::Irradiance);
    EXPECT_TRUE(surelyHolds(at, Comparison::AtLeast, limit));
    EXPECT_FALSE(surelyHolds(at, Comparison::More, limit));
    EXPECT_FALSE(surelyHolds(below, Comparison::AtLeast, limit));
    EXPECT_TRUE(surelyHolds(below, Comparison::Less, limit));
}

TEST(ConditionValue, KeepsItsTextAsTyped) {
    EXPECT_EQ(value("8,50", "W/m2", Dimension::Irradiance).text(), "8,50 W/m2");
    EXPECT_EQ(value("3", "", Dimension::None).text(), "3");
}

TEST(ConditionValue, ComparesTheLargestNumbersOfEveryUnit) {
    for (int dimension = 1; dimension <= static_cast<int>(Dimension::Pressure); ++dimension)
        for (const auto a : unitsOf(static_cast<Dimension>(dimension)))
            for (const auto b : unitsOf(static_cast<Dimension>(dimension))) {
                const auto read = [&](const char* number, std::string_view unit) {
                    return *ConditionValue::read(number, unit, static_cast<Dimension>(dimension));
                };
                // Their sizes are apart by more than the largest factor between two units.
                EXPECT_TRUE(surelyHolds(read("1000000", a), Comparison::More, read("0.001", b)))
                    << a << " " << b;
                EXPECT_FALSE(surelyHolds(read("0.001", b), Comparison::AtLeast, read("1000000", a)))
                    << a << " " << b;
            }
}

TEST(ConditionValue, RefusesWhatIsNoNumber) {
    for (const char* text : {"", " ", "-", "8 W/m2", "1e3", "eight", "1.2.3", "1000001", "nan"})
        EXPECT_FALSE(ConditionValue::read(text, "lx", Dimension::Illuminance).ok()) << text;
}

TEST(ConditionValue, RefusesAUnitThatIsMissingUnknownOrOfAnotherKind) {
    for (const char* unit : {"", "lux", "W/m2", "LX", "kA/m"}) {
        const auto read = ConditionValue::read("5", unit, Dimension::Illuminance);
        ASSERT_FALSE(read.ok()) << unit;
        EXPECT_THAT(read.error().arguments, Contains(HasSubstr("lx, fc")));
    }
    EXPECT_FALSE(ConditionValue::read("3", "mm", Dimension::None).ok());
}

TEST(UnitsOf, BeginsWithTheMostUsualOne) {
    EXPECT_EQ(unitsOf(Dimension::Irradiance).front(), "W/m2");
    EXPECT_EQ(unitsOf(Dimension::MagneticField).front(), "kA/m");
    EXPECT_EQ(unitsOf(Dimension::Time).front(), "min");
    EXPECT_TRUE(unitsOf(Dimension::None).empty());
}

}  // namespace
}  // namespace model
