// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/material.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <limits>

#include "ultrasonic/field.h"

namespace model {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;

// Hand-computed: 2 x 50 mm in 17.857 us; an instrument set to 5920 m/s shows 52.86 mm for 50.
TEST(MaterialOracle, VelocityFromAKnownThickness) {
    EXPECT_NEAR(velocityFromTime(50, 17.857), 5600, 0.1);
    EXPECT_NEAR(velocityFromThickness(50, 52.86, 5920), 5599.7, 0.1);
}

// Source: published exam question banks. The first has 100 % and 20 % of the screen at 400 mm and
// takes 0.5 dB for the reflection (it prints 0.009 dB/mm, cut); the second echoes 2 and 5, 9.5 dB
// apart, at 250 mm.
TEST(MaterialOracle, FarFieldAttenuationOfExamQuestions) {
    const auto first = attenuationOf({400, 1, 2, gainStepDb(100, 20), 0.5, {}});
    ASSERT_TRUE(first.ok());
    EXPECT_NEAR(first->dbPerM, 9, 0.5);
    EXPECT_EQ(first->spreading, SpreadingRule::FarField);
    EXPECT_EQ(first->lossPerBounceDb, 0.5);
    const auto second = attenuationOf({250, 2, 5, 9.5, 0, {}});
    ASSERT_TRUE(second.ok());
    EXPECT_NEAR(second->dbPerM, 1, 0.05);
}

// Hand-computed, the back-wall curve in closed form: D 24, 2 MHz, iron of 5600 m/s, so N 51.4 mm;
// 150 mm thick, 2.9 N; the echoes 11 dB apart: 16.6 dB/m by the far-field rule, 18.7 dB/m by the
// curve.
TEST(MaterialOracle, NearFieldCorrectionOfAttenuation) {
    const double nearField = roundNearFieldMm(24, wavelengthMm(5600, 2));
    const auto attenuation = attenuationOf({150, 1, 2, 11, 0, nearField});
    ASSERT_TRUE(attenuation.ok());
    EXPECT_NEAR(attenuation->dbPerM, 18.7, 0.05);
    EXPECT_NEAR(attenuation->farFieldDbPerM, 16.6, 0.05);
    EXPECT_EQ(attenuation->spreading, SpreadingRule::DistanceGainSize);
    EXPECT_THAT(attenuation->notes, Contains(HasSubstr("far-field rule alone would give 16.6")));
}

// The curve tends to 1 / distance: from 60 near fields on the two rules agree.
TEST(MaterialOracle, BothRulesAgreeFarAway) {
    const auto attenuation = attenuationOf({1200, 1, 2, 12, 0, 20});
    ASSERT_TRUE(attenuation.ok());
    EXPECT_NEAR(attenuation->dbPerM, attenuation->farFieldDbPerM, 0.01);
    EXPECT_THAT(attenuation->notes, Not(Contains(HasSubstr("near field"))));
}

TEST(Material, SaysWhatTheAttenuationLeavesOut) {
    const auto plain = attenuationOf({400, 1, 2, 14, 0, {}});
    ASSERT_TRUE(plain.ok());
    EXPECT_THAT(plain->notes, Contains(HasSubstr("near field is not known")));
    EXPECT_THAT(plain->notes, Contains(HasSubstr("no loss at the surfaces")));
    const auto corrected = attenuationOf({400, 1, 2, 14, 0.5, 40});
    ASSERT_TRUE(corrected.ok());
    EXPECT_TRUE(corrected->notes.empty());
}

// 6.02 dB are spreading alone: less is refused, not set to zero.
TEST(Material, RefusesANegativeAttenuation) {
    const auto negative = attenuationOf({400, 1, 2, 5.9, 0, {}});
    ASSERT_FALSE(negative.ok());
    EXPECT_EQ(negative.error().kind, ErrorKind::Input);
    EXPECT_EQ(negative.error().place, "drop");
    EXPECT_THAT(negative.error().message(), HasSubstr("below zero (-0.2 dB/m)"));
    EXPECT_THAT(attenuationOf({400, 1, 2, 6.02, 0, {}}).error().message(),
                HasSubstr("below zero (-0.1 dB/m)"));
    EXPECT_TRUE(attenuationOf({400, 1, 2, 6.03, 0, {}}).ok());
    EXPECT_FALSE(attenuationOf({400, 1, 2, 6.03, 0.5, {}}).ok());
}

TEST(Material, RefusesEchoesThatCannotBe) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(attenuationOf({0, 1, 2, 9, 0, {}}).error().place, "thickness");
    EXPECT_EQ(attenuationOf({100, 0, 2, 9, 0, {}}).error().place, "echoes");
    EXPECT_EQ(attenuationOf({100, 2, 2, 9, 0, {}}).error().place, "echoes");
    EXPECT_EQ(attenuationOf({100, 1, 2, nan, 0, {}}).error().place, "drop");
    EXPECT_EQ(attenuationOf({100, 1, 2, 9, -1, {}}).error().place, "loss_per_bounce");
    EXPECT_EQ(attenuationOf({100, 1, 2, 9, 0, 0}).error().place, "near_field");
    EXPECT_EQ(attenuationOf({69, 1, 2, 30, 0, 100}).error().place, "echoes");
    EXPECT_TRUE(attenuationOf({71, 1, 2, 30, 0, 100}).ok());
}

// Guide values: over 80 % nodularity 5300 to 5500 m/s (abstract of a velocity study on spheroidal
// graphite iron); below 5500 m/s possibly less than 75 % (a foundry guide).
TEST(MaterialOracle, VelocityPutsNodularityInDoubt) {
    EXPECT_FALSE(nodularityWarning(5600));
    EXPECT_FALSE(nodularityWarning(5500));
    for (const double velocity : {5499.99, 5400.0, 5300.0, 5299.0, 4800.0}) {
        const auto warning = nodularityWarning(velocity);
        ASSERT_TRUE(warning) << velocity;
        EXPECT_THAT(*warning, HasSubstr("foundry guide (grade R)"));
        EXPECT_THAT(*warning, HasSubstr("velocity study"));
        EXPECT_THAT(*warning, HasSubstr("never certifies nodularity"));
        EXPECT_THAT(*warning,
                    HasSubstr(velocity < 5300 ? "in serious doubt" : "the nodularity is in doubt"));
    }
    EXPECT_THAT(*nodularityWarning(5499.99), HasSubstr("velocity 5499.9 m/s"));
}

}  // namespace
}  // namespace model
