// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/field.h"

#include <algorithm>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <complex>
#include <gtest/gtest.h>
#include <numbers>

namespace model {
namespace {

constexpr double kPi = std::numbers::pi;
using Quadrature = boost::math::quadrature::gauss_kronrod<double, 61>;

// Source: published exam question banks; aluminium of 6340 m/s at 2 MHz.
TEST(FieldOracle, Wavelength) {
    EXPECT_NEAR(wavelengthMm(6340, 2), 3.17, 0.005);
    EXPECT_DOUBLE_EQ(wavelengthMm(5920, 2), 2.96);  // hand-computed
}

// Source: published exam question banks, 5900 m/s.
TEST(FieldOracle, RoundNearFieldOfExamQuestions) {
    EXPECT_NEAR(roundNearFieldMm(20, wavelengthMm(5900, 5)), 84.7, 0.05);
    EXPECT_NEAR(roundNearFieldMm(10, wavelengthMm(5900, 2.5)), 10.6, 0.05);
    EXPECT_NEAR(roundNearFieldMm(20, wavelengthMm(5900, 2.5)), 42.4, 0.05);
}

// Hand-computed: 0.75 in, 2.25 MHz, 0.23 in/us: 0.5625 x 2.25 / 0.92 = 1.376 in.
TEST(FieldOracle, RoundNearFieldInInches) {
    EXPECT_NEAR(roundNearFieldMm(0.75 * 25.4, wavelengthMm(0.23 * 25400, 2.25)) / 25.4, 1.376,
                0.0005);
}

// Source: published exam question bank: a probe of 20 mm in steel, moved to water.
TEST(FieldOracle, NearFieldGrowsInWater) {
    const double inSteel = 20;
    const double diameter = std::sqrt(4 * wavelengthMm(5900, 5) * inSteel);
    EXPECT_NEAR(roundNearFieldMm(diameter, wavelengthMm(1480, 5)), 80, 0.5);
}

// Exact field on the axis of a piston, 2 |sin(pi / lambda (sqrt(z^2 + D^2 / 4) - z))|: it is 2 at
// its last maximum, and falls from there on.
TEST(FieldOracle, LastMaximumOfTheExactAxialField) {
    const double wavelength = 2.95;
    const auto pressure = [&](double z) {
        return 2 * std::abs(std::sin(kPi / wavelength * (std::hypot(z, 12) - z)));
    };
    const double last = roundLastMaximumMm(24, wavelength);
    EXPECT_NEAR(pressure(last), 2, 1e-9);
    EXPECT_LT(last, roundNearFieldMm(24, wavelength));
    for (int step = 20; step < 100; ++step)
        EXPECT_LT(pressure(last * (step + 1) / 20), pressure(last * step / 20)) << step;
    EXPECT_EQ(roundLastMaximumMm(2, wavelength), 0);  // smaller than a wavelength: no maximum
}

/// Fresnel integral from 0, by Boost.Math.
std::complex<double> fresnel(double end) {
    return {Quadrature::integrate([](double t) { return std::cos(kPi / 2 * t * t); }, 0.0, end),
            Quadrature::integrate([](double t) { return std::sin(kPi / 2 * t * t); }, 0.0, end)};
}

/// k of the last maximum on the axis of a rectangular piston, searched from far to near.
double lastMaximumFactor(double ratio) {
    const auto pressure = [&](double k) {
        const double end = std::sqrt(2 / k);
        return std::abs(fresnel(end) * fresnel(ratio * end));
    };
    double k = 3;
    while (pressure(k - 0.001) > pressure(k)) k -= 0.001;
    return k;
}

// Against an independent quadrature, between the table's ratios too.
TEST(FieldOracle, RectangularNearFieldByQuadrature) {
    for (const double ratio : {1.0, 0.95, 0.9, 0.75, 0.5, 0.36, 0.1}) {
        const double expected = lastMaximumFactor(ratio) * 20 * 20 / (4 * 2.0);
        EXPECT_NEAR(rectangularNearFieldMm(20, 20 * ratio, 2), expected, 0.005 * expected) << ratio;
        EXPECT_DOUBLE_EQ(rectangularNearFieldMm(20 * ratio, 20, 2),
                         rectangularNearFieldMm(20, 20 * ratio, 2));
    }
}

// Hand-computed: 1.37 x 400 / 8 = 68.5 mm.
TEST(FieldOracle, SquareNearField) {
    EXPECT_NEAR(squareNearFieldMm(20, 2), 68.5, 0.005);
}

// Hand-computed: 10 x 12 mm, 2.5 MHz, tan b = 2, 12 mm in a wedge of 2730 m/s, steel 3250 m/s:
// lambda 1.3, a = arcsin(0.84 x 0.8944) = 48.70 deg; 120 x 0.4472 / (pi x 1.3 x 0.6600) = 19.91;
// 12 x 1.1382 / 2 = 6.83; 13.08 mm.
TEST(FieldOracle, NearFieldBehindAWedge) {
    const double refracted = std::atan(2) * 180 / kPi;
    const double incident = std::asin(2730.0 / 3250 * 2 / std::sqrt(5)) * 180 / kPi;
    EXPECT_NEAR(wedgeNearFieldMm({120, 12, incident, refracted}, 1.3), 13.08, 0.02);
    EXPECT_EQ(wedgeNearFieldMm({120, 60, incident, refracted}, 1.3), 0);  // ends within the wedge
}

}  // namespace
}  // namespace model
