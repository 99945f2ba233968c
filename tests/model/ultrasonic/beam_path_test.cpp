// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/beam_path.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <gtest/gtest.h>
#include <numbers>
#include <optional>
#include <random>

namespace model {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kDegree = kPi / 180;

ScannedPart flat(double thickness) {
    return {thickness, ScanSurface::Flat, std::nullopt};
}
ScannedPart outer(double radius, double thickness) {
    return {thickness, ScanSurface::Outer, radius};
}
ScannedPart inner(double radius, double thickness) {
    return {thickness, ScanSurface::Inner, radius};
}

void expectPoint(const BeamTrace& trace, double depth, double distance, int leg, double tolerance) {
    ASSERT_TRUE(trace.end);
    EXPECT_NEAR(trace.end->depthMm, depth, tolerance);
    EXPECT_NEAR(trace.end->surfaceDistanceMm, distance, tolerance);
    EXPECT_EQ(trace.end->leg, leg);
}

// Source: published exam question bank: tan b = 1.5, wall 60 mm, 4.5 divisions of 30 mm of depth.
TEST(BeamPathOracle, ThirdLegOfAnExamQuestion) {
    const double angle = std::atan(1.5);
    expectPoint(traceBeam(flat(60), angle / kDegree, 4.5 * 30 / std::cos(angle)), 15, 202.5, 3,
                1e-9);
}

// Source: published exam question bank: a face that a 70 degree beam meets at right angles belongs
// to a groove of 40 degrees in all.
TEST(BeamPathOracle, SeventyDegreesMeetTheFaceOfAGroove) {
    const auto line = traceBeam(flat(100), 70, 50).line;
    ASSERT_EQ(line.size(), 2U);
    const double face = 40.0 / 2 * kDegree;  // from the normal of the surface
    EXPECT_NEAR(line[1].xMm * -std::sin(face) + line[1].yMm * std::cos(face), 0, 1e-9);
}

// Hand-computed with the triangle 3-4-5: cos b = 0.6, wall 30 mm, so that half a skip is 50 mm.
TEST(BeamPathOracle, LegsOnAFlatPart) {
    const double angle = std::acos(0.6) / kDegree;
    const auto at = [&](double path) { return traceBeam(flat(30), angle, path); };
    expectPoint(at(0), 0, 0, 1, 1e-9);
    expectPoint(at(25), 15, 20, 1, 1e-9);
    expectPoint(at(50), 30, 40, 1, 1e-9);  // the corner ends its leg
    expectPoint(at(75), 15, 60, 2, 1e-9);
    expectPoint(at(100), 0, 80, 2, 1e-9);
    expectPoint(at(125), 15, 100, 3, 1e-9);
    expectPoint(at(150), 30, 120, 3, 1e-9);
    EXPECT_NEAR(*halfSkipPathMm(flat(30), angle), 50, 1e-9);
    const auto line = at(125).line;
    ASSERT_EQ(line.size(), 4U);
    EXPECT_NEAR(line[1].xMm, 40, 1e-9);
    EXPECT_NEAR(line[1].yMm, 30, 1e-9);
    EXPECT_NEAR(line[2].xMm, 80, 1e-9);
    EXPECT_NEAR(line[2].yMm, 0, 1e-9);
    EXPECT_NEAR(line[3].xMm, 100, 1e-9);
    EXPECT_NEAR(line[3].yMm, 15, 1e-9);
}

TEST(BeamPath, IsNotFollowedPastTheThirdLeg) {
    const double angle = std::acos(0.6) / kDegree;
    const auto trace = traceBeam(flat(30), angle, 150.01);
    EXPECT_TRUE(trace.beyondThirdLeg);
    EXPECT_FALSE(trace.end);
    ASSERT_EQ(trace.line.size(), 4U);
    EXPECT_NEAR(trace.line.back().xMm, 120, 1e-9);
    EXPECT_NEAR(trace.line.back().yMm, 30, 1e-9);
    EXPECT_FALSE(traceBeam(flat(30), angle, 150).beyondThirdLeg);
    EXPECT_TRUE(traceBeam(inner(100, 30), 45, 1000).beyondThirdLeg);
}

TEST(BeamPath, StraightBeamStaysBelowTheProbe) {
    for (const auto& part : {flat(80), outer(200, 80), inner(200, 80)}) {
        expectPoint(traceBeam(part, 0, 30), 30, 0, 1, 1e-9);
        expectPoint(traceBeam(part, 0, 80), 80, 0, 1, 1e-9);
        expectPoint(traceBeam(part, 0, 90), 70, 0, 2, 1e-9);
        EXPECT_NEAR(*halfSkipPathMm(part, 0), 80, 1e-9);
    }
}

// Hand-computed: R 100, bore 50, sin b = 0.3: half a skip is sqrt(9100) - 40 mm and turns the beam
// by arcsin 0.6 - arcsin 0.3.
TEST(BeamPathOracle, OuterSurfaceToTheBore) {
    const double angle = std::asin(0.3) / kDegree;
    const double half = std::sqrt(9100.0) - 40;
    const double turn = 100 * (std::asin(0.6) - std::asin(0.3));
    EXPECT_NEAR(*halfSkipPathMm(outer(100, 50), angle), half, 1e-9);
    expectPoint(traceBeam(outer(100, 50), angle, half), 50, turn, 1, 1e-9);
    expectPoint(traceBeam(outer(100, 50), angle, 2 * half), 0, 2 * turn, 2, 1e-9);
    expectPoint(traceBeam(outer(100, 50), angle, 3 * half), 50, 3 * turn, 3, 1e-9);
}

// Hand-computed: bore 40, outside 74, sin b = 0.6: half a skip is 70 - 32 mm and turns the beam by
// arcsin 0.6 - arcsin(24 / 74), 12.528 mm along the bore.
TEST(BeamPathOracle, InnerSurfaceToTheOutside) {
    const double angle = std::asin(0.6) / kDegree;
    EXPECT_NEAR(*halfSkipPathMm(inner(40, 34), angle), 38, 1e-9);
    expectPoint(traceBeam(inner(40, 34), angle, 38), 34, 12.528, 1, 5e-4);
    expectPoint(traceBeam(inner(40, 34), angle, 76), 0, 25.056, 2, 1e-3);
}

// Hand-computed: R 100, wall 60, 30 degrees: at 100 cos 30 the axis is deepest, 50 mm below and 60
// degrees on; twice as far it is out again.
TEST(BeamPathOracle, BeamThatMissesTheBore) {
    const double deepest = 100 * std::cos(kPi / 6);
    const auto trace = traceBeam(outer(100, 60), 30, deepest);
    EXPECT_TRUE(trace.boreMissed);
    EXPECT_FALSE(trace.beyondThirdLeg);
    expectPoint(trace, 50, 100 * kPi / 3, 1, 1e-9);
    EXPECT_FALSE(halfSkipPathMm(outer(100, 60), 30));
    expectPoint(traceBeam(outer(100, 60), 30, 2 * deepest), 0, 200 * kPi / 3, 1, 1e-6);
    const auto out = traceBeam(outer(100, 60), 30, 2 * deepest + 0.01);
    EXPECT_TRUE(out.boreMissed);
    EXPECT_FALSE(out.end);
    ASSERT_EQ(out.line.size(), 2U);
    EXPECT_NEAR(out.line[1].xMm, 100 * std::sin(2 * kPi / 3), 1e-9);
    EXPECT_NEAR(out.line[1].yMm, 150, 1e-9);
}

// Source: published exam question bank: the largest angle that reaches the bore of a tube whose
// bore is 3/4 of its outside is 48.6 degrees.
TEST(BeamPathOracle, LargestAngleThatReachesTheBore) {
    EXPECT_FALSE(traceBeam(outer(100, 25), 48.5, 1).boreMissed);
    EXPECT_TRUE(traceBeam(outer(100, 25), 48.65, 1).boreMissed);
}

TEST(BeamPathOracle, LargeRadiiTendToTheFlatPart) {
    for (const double path : {10.0, 60.0, 120.0, 200.0}) {
        const auto expected = traceBeam(flat(40), 55, path).end;
        ASSERT_TRUE(expected);
        for (const auto& part : {outer(1e7, 40), inner(1e7, 40)})
            expectPoint(traceBeam(part, 55, path), expected->depthMm, expected->surfaceDistanceMm,
                        expected->leg, 0.005);
    }
}

/// A ray in the plane around the part's axis, with no formula of ours: it steps forward, halves the
/// step to find a surface, and is thrown back as by a mirror.
struct Walk {
    double depth = 0;
    double distance = 0;
    int leg = 1;
    bool missed = false;
};

Walk walk(const ScannedPart& part, double angleDeg, double path) {
    const bool outside = part.surface == ScanSurface::Outer;
    const double radius = *part.radiusMm;
    const double far = outside ? radius - part.thicknessMm : radius + part.thicknessMm;
    const double least = std::min(radius, far);
    const double most = std::max(radius, far);
    double x = 0;
    double y = radius;
    double dx = std::sin(angleDeg * kDegree);
    double dy = (outside ? -1 : 1) * std::cos(angleDeg * kDegree);
    double turned = 0;
    Walk result;
    for (double left = path; left > 1e-9;) {
        double step = std::min(left, 0.05);
        const auto leaves = [&](double by) {
            const double r = std::hypot(x + by * dx, y + by * dy);
            return r < least || r > most;
        };
        const bool hits = leaves(step);
        if (hits) {
            double in = 0;
            double out = step;
            while (out - in > 1e-13) ((leaves((in + out) / 2)) ? out : in) = (in + out) / 2;
            step = in;
        }
        const double nx = x + step * dx;
        const double ny = y + step * dy;
        turned += std::atan2(x * ny - y * nx, x * nx + y * ny) * -1;
        x = nx;
        y = ny;
        left -= step;
        if (!hits || left <= 1e-9) continue;
        const double r = std::hypot(x, y);
        if (outside && result.leg == 1 && std::abs(r - radius) < 1e-6) {
            result.missed = true;
            break;
        }
        const double along = 2 * (dx * x + dy * y) / (r * r);
        dx -= along * x;
        dy -= along * y;
        ++result.leg;
    }
    result.depth = std::abs(std::hypot(x, y) - radius);
    result.distance = radius * turned;
    return result;
}

// Brute force: random cylinders, angles and paths; fixed seed.
TEST(BeamPathOracle, CurvedPartsAgreeWithAWalkedRay) {
    std::mt19937 random(20);  // NOLINT(bugprone-random-generator-seed,cert-msc51-cpp)
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    int legs[4] = {};
    for (int i = 0; i < 300; ++i) {
        const bool outside = i % 2 == 0;
        const double radius = between(60, 400);
        const double wall = between(0.1, 0.6) * radius;
        const auto part = outside ? outer(radius, wall) : inner(radius, wall);
        const double angle = between(1, 75);
        const auto half = halfSkipPathMm(part, angle);
        const double whole = half ? 3 * *half : 2 * radius * std::cos(angle * kDegree);
        const double path = between(0.01, 0.99) * whole;
        const auto trace = traceBeam(part, angle, path);
        const auto walked = walk(part, angle, path);
        expectPoint(trace, walked.depth, walked.distance, walked.leg, 1e-6);
        ASSERT_FALSE(testing::Test::HasFailure())
            << "radius " << radius << " wall " << wall << " angle " << angle << " path " << path;
        ++legs[walked.leg];
        const auto place = inCrossSection(part, trace.end->depthMm, trace.end->surfaceDistanceMm);
        EXPECT_NEAR(place.xMm, trace.line.back().xMm, 1e-9);
        EXPECT_NEAR(place.yMm, trace.line.back().yMm, 1e-9);
        double drawn = 0;
        for (std::size_t at = 1; at < trace.line.size(); ++at)
            drawn += std::hypot(trace.line[at].xMm - trace.line[at - 1].xMm,
                                trace.line[at].yMm - trace.line[at - 1].yMm);
        EXPECT_NEAR(drawn, path, 1e-6);
        EXPECT_EQ(trace.boreMissed, outside && walk(part, angle, 1.01 * whole).missed);
    }
    for (const int leg : {1, 2, 3}) EXPECT_GT(legs[leg], 20) << leg;
}

// The surfaces themselves in the cross-section, and the centres that the header states.
TEST(BeamPath, CrossSectionHasTheStatedCentre) {
    for (const double along : {-50.0, 0.0, 70.0}) {
        const auto front = inCrossSection(outer(100, 30), 0, along);
        EXPECT_NEAR(std::hypot(front.xMm, front.yMm - 100), 100, 1e-9);
        const auto bore = inCrossSection(outer(100, 30), 30, along);
        EXPECT_NEAR(std::hypot(bore.xMm, bore.yMm - 100), 70, 1e-9);
        const auto outside = inCrossSection(inner(100, 30), 30, along);
        EXPECT_NEAR(std::hypot(outside.xMm, outside.yMm + 100), 130, 1e-9);
    }
}

}  // namespace
}  // namespace model
