// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/gain.h"

#include <boost/math/special_functions/bessel.hpp>
#include <cmath>
#include <complex>
#include <gtest/gtest.h>
#include <numbers>

namespace model {
namespace {

// Source: published exam question bank: from 80 % to 40 % of the screen are 6 dB.
TEST(GainOracle, HalfTheHeightIsSixDecibels) {
    EXPECT_NEAR(gainStepDb(80, 40), 6, 0.03);
    EXPECT_NEAR(gainStepDb(80, 8), 20, 1e-12);
    EXPECT_NEAR(amplitudeRatio(-20), 0.1, 1e-12);
}

// Hand-computed: 40 % at 30 dB would reach 80 % at 36.02 dB.
TEST(GainOracle, EchoHeightIsStatedAtEightyPercent) {
    EXPECT_EQ(echoHeightDb(30, 80), -30);
    EXPECT_NEAR(echoHeightDb(30, 40), -36.02, 0.005);
    EXPECT_NEAR(echoHeightDb(30, 100), -28.06, 0.005);
    EXPECT_NEAR(echoHeightDb(36, 80) - echoHeightDb(30, 80), -6, 1e-12);
}

// Hand-computed: a back wall that has lost 75 % of its height: 20 lg 4; and 6 dB more gain.
TEST(GainOracle, BackWallLoss) {
    EXPECT_NEAR(backWallLossDb(echoHeightDb(20, 80), echoHeightDb(20, 20)), 12.04, 0.005);
    EXPECT_NEAR(backWallLossDb(echoHeightDb(20, 80), echoHeightDb(26, 80)), 6, 1e-12);
    EXPECT_LT(backWallLossDb(echoHeightDb(20, 80), echoHeightDb(18, 80)), 0);
}

// Source: Krautkraemer, 4th edition: grey iron at 0.30 dB per mm of path: of an echo 25 % remain at
// 20 mm and 0.1 % at 100 mm, 250 times less. And of a wave at 1 dB/m about 90 % after a metre, at
// 10 dB/m 32 %, at 100 dB/m 0.001 %.
TEST(GainOracle, AttenuationTakesItsShareTwice) {
    const double near = amplitudeRatio(-attenuationLossDb(300, 20));
    const double far = amplitudeRatio(-attenuationLossDb(300, 100));
    EXPECT_NEAR(near, 0.25, 0.005);
    EXPECT_NEAR(far, 0.001, 5e-6);
    EXPECT_NEAR(near / far, 250, 2);
    EXPECT_NEAR(amplitudeRatio(-attenuationLossDb(1, 1000) / 2), 0.90, 0.01);
    EXPECT_NEAR(amplitudeRatio(-attenuationLossDb(10, 1000) / 2), 0.32, 0.005);
    EXPECT_NEAR(amplitudeRatio(-attenuationLossDb(100, 1000) / 2), 0.00001, 1e-9);
}

// Hand-computed: 10 dB more gain on a casting of 150 mm than on a block of 100 mm: 3.52 dB of them
// are the distance, 20 lg 1.5, and 6.48 dB the transfer; at 5 dB/m in the casting 1.5 dB of these
// are its material.
TEST(GainOracle, TransferBetweenDifferentThicknesses) {
    const BackWallEcho block{100, echoHeightDb(30, 80), 0, {}};
    BackWallEcho casting{150, echoHeightDb(40, 80), 0, {}};
    EXPECT_NEAR(transferOf(block, casting).lossDb, 6.48, 0.005);
    EXPECT_EQ(transferOf(block, casting).spreading, SpreadingRule::FarField);
    casting.attenuationDbPerM = 5;
    EXPECT_NEAR(transferOf(block, casting).lossDb, 4.98, 0.005);
}

TEST(GainOracle, TransferAtEqualThicknessIsThePlainDifference) {
    EXPECT_NEAR(
        transferOf({100, echoHeightDb(30, 80), 0, {}}, {100, echoHeightDb(34, 40), 0, {}}).lossDb,
        4 + 6.02, 0.005);
    EXPECT_NEAR(
        transferOf({100, echoHeightDb(30, 80), 0, 50}, {100, echoHeightDb(28, 80), 0, 50}).lossDb,
        -2, 1e-9);
}

/// Echo of a flat back wall in closed form (Lommel), with the Bessel functions of Boost.Math.
double backWallDb(double a) {
    const double k = std::numbers::pi / a;
    const std::complex<double> field(boost::math::cyl_bessel_j(0, k),
                                     boost::math::cyl_bessel_j(1, k));
    return 20 * std::log10(std::abs(1.0 - std::polar(1.0, -k) * field));
}

TEST(GainOracle, TransferInTheNearFieldFollowsTheBackWallCurve) {
    const auto transfer = transferOf({50, -30, 0, 50}, {150, -40, 0, 60});
    EXPECT_EQ(transfer.spreading, SpreadingRule::DistanceGainSize);
    EXPECT_NEAR(transfer.lossDb, 10 - (backWallDb(1) - backWallDb(2.5)), 1e-6);
}

}  // namespace
}  // namespace model
