// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/refraction.h"

#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace model {
namespace {

using testing::HasSubstr;

// Hand-computed: acrylic 2730 m/s, steel 5920 and 3255 m/s.
TEST(RefractionOracle, CriticalAnglesOfAcrylicOnSteel) {
    EXPECT_NEAR(*criticalAngleDeg(2730, 5920), 27.5, 0.05);
    EXPECT_NEAR(*criticalAngleDeg(2730, 3255), 57.0, 0.05);
    EXPECT_FALSE(criticalAngleDeg(5920, 2730));
    EXPECT_FALSE(criticalAngleDeg(3255, 3255));
}

// Hand-computed: from water (1480 m/s) at 10 degrees into steel of 5900 and 3230 m/s.
TEST(RefractionOracle, WaterOnSteel) {
    EXPECT_NEAR(*refractedDeg(10, 1480, 5900), 43.8, 0.05);
    EXPECT_NEAR(*refractedDeg(10, 1480, 3230), 22.3, 0.05);
    EXPECT_FALSE(refractedDeg(15, 1480, 5900));
}

// Source: published exam question banks: a tube in water, 45 degrees in its wall (3240 m/s); the
// offset of the beam from the tube's axis as a share of the radius is the sine of the incidence;
// 10 % more or less of that offset. Printed to a tenth.
TEST(RefractionOracle, ImmersionOfATube) {
    const double incident = *refractedDeg(45, 3240, 1480);
    EXPECT_NEAR(incident, 18.8, 0.05);
    const double offset = std::sin(incident * std::acos(-1) / 180);
    EXPECT_NEAR(offset, 0.323, 0.0005);
    const auto inWall = [](double share) {
        return *refractedDeg(std::asin(share) * 180 / std::acos(-1), 1480, 3240);
    };
    EXPECT_NEAR(inWall(1.1 * offset), 51, 0.1);
    EXPECT_NEAR(inWall(0.9 * offset), 39.6, 0.1);
}

// Source: published exam question bank: a 60 degree probe for steel (3240 m/s) on copper, 2260 m/s.
// The others hand-computed: 45 degrees at 3255 m/s on iron of 3080 m/s; 70 degrees with the
// velocity 1 % up (Krautkraemer states a shift of about 1.5 degrees).
TEST(RefractionOracle, ProbeMarkedForAnotherMaterial) {
    EXPECT_NEAR(*reAngledDeg(60, 3240, 2260), 37, 0.3);
    EXPECT_NEAR(*reAngledDeg(45, 3255, 3080), 42.0, 0.05);
    EXPECT_NEAR(*reAngledDeg(70, 3240, 3240 * 1.01) - 70, 1.6, 0.05);
    EXPECT_NEAR(*reAngledDeg(45, 3255, 3255), 45, 1e-9);
}

TEST(Refraction, SaysThatAProbeIsPastCritical) {
    const auto angle = reAngledDeg(70, 3080, 3280);
    ASSERT_FALSE(angle.ok());
    EXPECT_EQ(angle.error().kind, ErrorKind::Input);
    EXPECT_THAT(angle.error().reason, HasSubstr("past critical"));
}

// Hand-computed: cos 60 / cos 36.87 = 0.5 / 0.8.
TEST(RefractionOracle, SideAsTheRefractedBeamSeesIt) {
    EXPECT_NEAR(projectedSideMm(16, std::asin(0.6) * 180 / std::acos(-1), 60), 10, 1e-9);
}

}  // namespace
}  // namespace model
