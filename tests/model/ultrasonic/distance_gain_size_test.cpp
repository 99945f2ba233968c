// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/distance_gain_size.h"

#include <array>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/special_functions/bessel.hpp>
#include <cmath>
#include <complex>
#include <gmock/gmock.h>
#include <numbers>
#include <random>
#include <vector>

#include "ultrasonic/far_field.h"

namespace model {
namespace {

constexpr double kAgreementDb = 0.02;
constexpr std::array kDiscs{0.1, 0.2, 0.4, 0.6, 0.8, 1.0};

/// The model as it stands in its definition, by adaptive quadrature with Boost.Math's Bessel
/// functions: nothing in common with the series and the quadrature of the program.
class DefinedModel {
public:
    explicit DefinedModel(double a) : a_(a) {}

    [[nodiscard]] double discDb(double g) const { return averageDb(2 * kPi / a_, g, true); }

    /// A back wall mirrors the crystal: the mean over the crystal's face at twice the path.
    [[nodiscard]] double backWallDb() const { return averageDb(kPi / a_, 1, false); }

private:
    using Complex = std::complex<double>;
    using Quadrature = boost::math::quadrature::gauss_kronrod<double, 31>;
    static constexpr double kPi = std::numbers::pi;
    static constexpr unsigned kDepth = 12;
    static constexpr double kTolerance = 1e-8;

    static Complex pressure(double kappa, double r) {
        const auto integrand = [&](double x) {
            return boost::math::cyl_bessel_j(0, kappa * r * x) * x *
                   std::exp(Complex(0, kappa * x * x / 2));
        };
        return Complex(0, -kappa) * std::exp(Complex(0, kappa * r * r / 2)) *
               Quadrature::integrate(integrand, 0.0, 1.0, kDepth, kTolerance);
    }

    static double averageDb(double kappa, double g, bool squared) {
        const auto integrand = [&](double r) {
            const Complex p = pressure(kappa, r);
            return (squared ? p * p : p) * r;
        };
        return 20 * std::log10(std::abs(
                        2.0 * Quadrature::integrate(integrand, 0.0, g, kDepth, kTolerance)));
    }

    double a_;
};

/// Between 0 and 1, the same on every machine.
class SteadyRandom {
public:
    double next() { return static_cast<double>(engine_() >> 11U) * 0x1p-53; }
    double between(double low, double high) { return low + (high - low) * next(); }
    /// Every octave as likely as every other.
    double scaled(double low, double high) { return low * std::pow(high / low, next()); }

private:
    std::mt19937_64 engine_{20260417};
};

/// Two hundred, each farther than the one before by the same ratio.
std::vector<double> distances(double first, double last) {
    constexpr int kCount = 200;
    std::vector<double> all;
    all.reserve(kCount);
    for (int number = 0; number < kCount; ++number)
        all.push_back(first * std::pow(last / first, double(number) / (kCount - 1)));
    return all;
}

/// The smallest disc that echoes as a back wall.
double crossing(double a) {
    return discOfEcho(a, backWallEchoDb(a)).g;
}

// Source: an independent computation of the project's reference model, made before this program.
TEST(DistanceGainSizeOracle, AgreesWithTheIndependentTable) {
    struct Row {
        double a;
        double backWall;
        std::array<double, kDiscs.size()> discs;
    };
    constexpr std::array<Row, 8> kTable{
        {{0.5, -1.85, {-66.98, -34.72, -13.01, -6.90, -3.73, -2.20}},
         {1, -2.48, {-28.38, -17.57, -9.67, -6.92, -4.33, -2.90}},
         {2, -3.87, {-34.09, -22.37, -11.64, -6.79, -4.74, -4.05}},
         {3, -6.41, {-40.05, -28.15, -16.71, -10.73, -7.35, -5.70}},
         {5, -10.34, {-48.38, -36.39, -24.56, -17.92, -13.54, -10.58}},
         {10, -16.15, {-60.19, -48.16, -36.18, -29.23, -24.39, -20.75}},
         {20, -22.12, {-72.17, -60.14, -48.11, -41.09, -36.13, -32.32}},
         {50, -30.06, {-88.08, -76.04, -64.00, -56.96, -51.97, -48.10}}}};
    for (const Row& row : kTable) {
        EXPECT_NEAR(backWallEchoDb(row.a), row.backWall, kAgreementDb) << "A " << row.a;
        for (std::size_t disc = 0; disc < kDiscs.size(); ++disc)
            EXPECT_NEAR(discEchoDb(row.a, kDiscs[disc]), row.discs[disc], kAgreementDb)
                << "A " << row.a << ", G " << kDiscs[disc];
    }
}

// Source: Boost.Math, Gauss-Kronrod quadrature of the model's definition.
TEST(DistanceGainSizeOracle, AgreesWithQuadratureAtTwoHundredRandomPlaces) {
    SteadyRandom random;
    for (int place = 0; place < 200; ++place) {
        const double a = random.scaled(kSmallestDistance, 100);
        const double g = random.between(0.02, 1);
        EXPECT_NEAR(discEchoDb(a, g), DefinedModel(a).discDb(g), kAgreementDb)
            << "A " << a << ", G " << g;
    }
}

// Source: as above.
TEST(DistanceGainSizeOracle, AgreesWithQuadratureForDiscsLargerThanTheCrystal) {
    for (const double a : {0.5, 0.7, 0.9, 1.3, 2.0, 5.0, 30.0}) {
        const DefinedModel model(a);
        for (const double g : {1.0, crossing(std::max(a, kSmallestDistance)), 1.5 * a, 3.95 * a})
            EXPECT_NEAR(discEchoDb(a, g), model.discDb(g), kAgreementDb)
                << "A " << a << ", G " << g;
    }
}

// Source: as above, with the back wall as the mirror of the crystal.
TEST(DistanceGainSizeOracle, AgreesWithQuadratureForBackWalls) {
    SteadyRandom random;
    for (int place = 0; place < 200; ++place) {
        const double a = random.scaled(0.3, 100);
        EXPECT_NEAR(backWallEchoDb(a), DefinedModel(a).backWallDb(), kAgreementDb) << "A " << a;
    }
}

// Source: the formulas of Krautkraemer, Ultrasonic Testing of Materials, 4th ed., p. 99.
TEST(DistanceGainSizeOracle, TendsToTheFarFieldFormulas) {
    for (const double a : {300.0, 1000.0, 30'000.0}) {
        EXPECT_NEAR(backWallEchoDb(a), farBackWallEchoDb(a), 0.001) << "A " << a;
        for (const double g : {0.001, 0.05, 0.3, 1.0})
            EXPECT_NEAR(discEchoDb(a, g), farDiscEchoDb(a, g), 0.001) << "A " << a << ", G " << g;
    }
}

// Source: the pressure on the axis of a piston, 2 sin(pi / 2 A) in closed form; a disc much smaller
// than the beam sends back its square times G^2.
TEST(DistanceGainSizeOracle, GivesSmallDiscsTheSquareOfThePressureOnTheAxis) {
    for (const double a : {0.7, 0.8, 1.0, 1.7, 4.0, 60.0}) {
        const double onAxis = 2 * std::sin(std::numbers::pi / (2 * a));
        for (const double g : {1e-8, 1e-5, 1e-3}) {
            const double echoDb = 40 * std::log10(onAxis * g);
            EXPECT_NEAR(discEchoDb(a, g), echoDb, 0.001) << "A " << a << ", G " << g;
            const DiscSize size = discOfEcho(a, echoDb);
            EXPECT_NEAR(size.g / g, 1, 1e-4) << "A " << a << ", G " << g;
            EXPECT_FALSE(size.clipped);
        }
    }
}

TEST(DistanceGainSize, GivesALargerDiscAHigherEchoUpToTheBackWall) {
    for (const double a : distances(kSmallestDistance, 150)) {
        const double largest = crossing(a);
        double last = -1e9;
        for (int step = 1; step <= 100; ++step) {
            const double echo = discEchoDb(a, largest * step / 100);
            EXPECT_GT(echo, last) << "A " << a << ", G " << largest * step / 100;
            last = echo;
        }
        EXPECT_NEAR(last, backWallEchoDb(a), 1e-6) << "A " << a;
    }
}

TEST(DistanceGainSize, GivesAFartherReflectorALowerEcho) {
    double lastWall = 0;
    double lastDisc = 0;
    for (const double a : distances(3, 200)) {
        EXPECT_LT(backWallEchoDb(a), lastWall) << "A " << a;
        EXPECT_LT(discEchoDb(a, 0.4), lastDisc) << "A " << a;
        lastWall = backWallEchoDb(a);
        lastDisc = discEchoDb(a, 0.4);
    }
}

TEST(DistanceGainSize, TakesADiscFarBeyondTheBeamForABackWall) {
    for (const double a : {0.5, 0.52, 0.6, 0.7, 1.0, 2.0, 5.0, 20.0}) {
        EXPECT_NEAR(discEchoDb(a, 3.999 * a), backWallEchoDb(a), kAgreementDb) << "A " << a;
        EXPECT_EQ(discEchoDb(a, 4.001 * a), backWallEchoDb(a)) << "A " << a;
    }
}

TEST(DistanceGainSize, FindsTheDiscWhoseEchoItIs) {
    SteadyRandom random;
    for (int place = 0; place < 2000; ++place) {
        const double a = random.scaled(kSmallestDistance, 200);
        const double g = random.scaled(1e-4, 0.999) * crossing(a);
        const DiscSize size = discOfEcho(a, discEchoDb(a, g));
        EXPECT_NEAR(size.g / g, 1, 1e-6) << "A " << a << ", G " << g;
        EXPECT_FALSE(size.clipped) << "A " << a << ", G " << g;
    }
}

TEST(DistanceGainSize, ClipsAtTheBackWall) {
    for (const double a : {0.7, 1.0, 2.0, 3.0, 10.0, 100.0}) {
        const double wall = backWallEchoDb(a);
        const DiscSize below = discOfEcho(a, wall - 0.001);
        EXPECT_FALSE(below.clipped) << "A " << a;
        const DiscSize at = discOfEcho(a, wall);
        EXPECT_NEAR(discEchoDb(a, at.g), wall, 1e-6) << "A " << a;
        EXPECT_LT(below.g, at.g) << "A " << a;
        for (const double above : {0.001, 3.0, 40.0}) {
            const DiscSize size = discOfEcho(a, wall + above);
            EXPECT_TRUE(size.clipped) << "A " << a;
            EXPECT_EQ(size.g, at.g) << "A " << a;
        }
    }
}

// In the independent table at A = 3 a disc as large as the crystal stands above the back wall by
// interference at its edge alone: -5.70 dB against -6.41 dB.
TEST(DistanceGainSize, DoesNotSizeInterferenceAboveTheBackWall) {
    const DiscSize size = discOfEcho(3, -5.70);
    EXPECT_TRUE(size.clipped);
    EXPECT_GT(size.g, 0.8);
    EXPECT_LT(size.g, 1.0);
}

TEST(DistanceGainSizeDiagram, HasTwelveDiscsOverTheWholeRange) {
    const Diagram shown = diagram();
    ASSERT_GE(shown.a.size(), 100U);
    EXPECT_DOUBLE_EQ(shown.a.front(), 0.7);
    EXPECT_DOUBLE_EQ(shown.a.back(), 100);
    for (std::size_t at = 1; at < shown.a.size(); ++at)
        EXPECT_NEAR(shown.a[at] / shown.a[at - 1], shown.a[1] / shown.a[0], 1e-12);
    ASSERT_EQ(shown.backWallDb.size(), shown.a.size());
    ASSERT_EQ(shown.curves.size(), 12U);
    EXPECT_EQ(shown.curves.back().g, 1);
    for (const DiagramCurve& curve : shown.curves) ASSERT_EQ(curve.echoDb.size(), shown.a.size());
}

TEST(DistanceGainSizeDiagram, ShowsWhatIsSizedBy) {
    const Diagram shown = diagram();
    for (std::size_t at = 0; at < shown.a.size(); at += 5) {
        EXPECT_EQ(shown.backWallDb[at], backWallEchoDb(shown.a[at]));
        for (const DiagramCurve& curve : shown.curves)
            EXPECT_NEAR(curve.echoDb[at], discEchoDb(shown.a[at], curve.g), 1e-6)
                << "A " << shown.a[at] << ", G " << curve.g;
    }
}

// Source: ISO 3, preferred numbers R10: ten to the decade, each 10^(1/10) of the one before,
// rounded by at most 1.3 %. An echo grows with the disc's area, so by 4 dB from each to the next.
TEST(DistanceGainSizeDiagram, SetsItsDiscsFourDecibelsApart) {
    const Diagram shown = diagram();
    for (std::size_t curve = 1; curve < shown.curves.size(); ++curve)
        EXPECT_NEAR(shown.curves[curve - 1].echoDb.back() + 4, shown.curves[curve].echoDb.back(),
                    0.3)
            << "G " << shown.curves[curve].g;
}

}  // namespace
}  // namespace model
