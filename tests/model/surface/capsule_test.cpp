// SPDX-License-Identifier: Apache-2.0
#include "surface/capsule.h"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <cmath>
#include <gtest/gtest.h>

#include "random_capsules.h"

namespace model {
namespace {

namespace bg = boost::geometry;
using BoostPoint = bg::model::d2::point_xy<double>;
using BoostLine = bg::model::linestring<BoostPoint>;

BoostLine axisOf(const Capsule& c) {
    const auto end = [&](Real at) {
        return BoostPoint(static_cast<double>(c.x + at * c.along.x),
                          static_cast<double>(c.y + at * c.along.y));
    };
    return {end(-c.half), end(c.half)};
}

Capsule spot(const char* x, const char* y, const char* diameter) {
    const auto mm = [](const char* text) { return Length::fromMillionths(*parseMillionths(text)); };
    return makeCapsule(mm(x), mm(y), mm(diameter), mm(diameter), {}, {});
}

// Source: Boost.Geometry, distance between linestrings and between points.
TEST(CapsuleOracle, DistanceAgreesWithBoostGeometry) {
    const auto made = test::randomCapsules(11, 400, 60, 20);
    int touching = 0;
    for (std::size_t i = 0; i + 1 < made.capsules.size(); ++i) {
        const Capsule& a = made.capsules[i];
        const Capsule& b = made.capsules[i + 1];
        const double between = bg::distance(axisOf(a), axisOf(b));
        const double expected =
            std::max(0.0, between - static_cast<double>(a.radius) - static_cast<double>(b.radius));
        EXPECT_NEAR(static_cast<double>(distance(a, b)), expected, 1e-9) << i;
        if (expected == 0) ++touching;
        double farthest = 0;
        for (const BoostPoint& p : axisOf(a))
            for (const BoostPoint& q : axisOf(b)) farthest = std::max(farthest, bg::distance(p, q));
        EXPECT_NEAR(static_cast<double>(reach(a, b)),
                    farthest + static_cast<double>(a.radius + b.radius), 1e-9);
    }
    EXPECT_GT(touching, 10);
}

// Source: Boost.Geometry, convex hull: the diameter of points is that of their hull.
TEST(CapsuleOracle, GreatestExtentAgreesWithTheHullsDiameter) {
    for (unsigned seed = 0; seed < 50; ++seed) {
        const auto made = test::randomCapsules(seed, 40, 50, 15);
        bg::model::multi_point<BoostPoint> points;
        for (const Capsule& c : made.capsules)
            for (const BoostPoint& end : axisOf(c))
                for (int degree = 0; degree < 360; degree += 1)
                    points.emplace_back(
                        end.x() + static_cast<double>(c.radius) * std::cos(degree * M_PI / 180),
                        end.y() + static_cast<double>(c.radius) * std::sin(degree * M_PI / 180));
        bg::model::polygon<BoostPoint> hull;
        bg::convex_hull(points, hull);
        double diameter = 0;
        for (const BoostPoint& p : hull.outer())
            for (const BoostPoint& q : hull.outer())
                diameter = std::max(diameter, bg::distance(p, q));
        // The arcs are sampled every degree: at most 2 r (1 - cos 0.5 deg) < 0.0006 mm too short.
        const double extent = greatestExtent(made.capsules).approximately();
        EXPECT_GE(extent, diameter - 0.0006);
        EXPECT_LE(extent, diameter + 0.0012);
    }
}

TEST(Capsule, TypedCoordinatesDecideAGapAtTheLimit) {
    // In binary fractions 7.3 - 3.1 - 2.2 is not 2; typed, it is.
    EXPECT_EQ(roundedGap(distance(spot("3.1", "0", "2.2"), spot("7.3", "0", "2.2"))),
              millimetres(2));
    // A 3-4-5 triangle off the axes.
    EXPECT_EQ(roundedGap(distance(spot("0.1", "0.2", "3"), spot("3.1", "4.2", "3"))),
              millimetres(2));
    EXPECT_EQ(roundedGap(distance(spot("3.1", "0", "2.2"), spot("7.299999", "0", "2.2"))),
              nanometres(1'999'000));
}

TEST(Capsule, TurningTheZoneDoesNotOpenAGap) {
    for (int turn = 0; turn < 360; turn += 7) {
        const Placement zone{millimetres(812), nanometres(-345'678'901), degrees(turn)};
        const Capsule a =
            makeCapsule(nanometres(3'100'000), {}, millimetres(2), millimetres(2), {}, zone);
        const Capsule b =
            makeCapsule(nanometres(7'100'000), {}, millimetres(2), millimetres(2), {}, zone);
        EXPECT_EQ(roundedGap(distance(a, b)), millimetres(2)) << turn;
        EXPECT_EQ(roundedLength(reach(a, b)), millimetres(6)) << turn;
    }
}

TEST(Capsule, RoundsLengthsHalfUpAndGapsDown) {
    EXPECT_EQ(roundedLength(1.2345L), nanometres(1'235'000));
    EXPECT_EQ(roundedLength(1.23449L), nanometres(1'234'000));
    EXPECT_EQ(roundedGap(1.9999L), nanometres(1'999'000));
    EXPECT_EQ(roundedArea(std::acos(-1.0L)), Area::fromMillionths(3'142'000));
}

TEST(Capsule, CrossingAxesHaveNoGap) {
    const Capsule a = makeCapsule({}, {}, millimetres(10), nanometres(1), {}, {});
    const Capsule b = makeCapsule({}, {}, millimetres(10), nanometres(1), degrees(90), {});
    EXPECT_EQ(distance(a, b), 0);
    EXPECT_EQ(directionOf(degrees(90)).x, 0);
    EXPECT_EQ(directionOf(degrees(-90)).y, -1);
    EXPECT_EQ(directionOf(degrees(540)).x, -1);
}

}  // namespace
}  // namespace model
