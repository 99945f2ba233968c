// SPDX-License-Identifier: Apache-2.0
#include "surface/rows.h"

#include <cmath>
#include <gtest/gtest.h>

#include "random_capsules.h"

namespace model {
namespace {

const GapLimit kUnderTwo{millimetres(2), false};

std::vector<Capsule> spots(const std::vector<std::array<double, 3>>& placed) {
    std::vector<Capsule> capsules;
    for (const auto& [x, y, diameter] : placed) {
        const auto nm = [](double mm) { return nanometres(std::llround(mm * 1e6)); };
        capsules.push_back(makeCapsule(nm(x), nm(y), nm(diameter), nm(diameter), {}, {}));
    }
    return capsules;
}

struct Row {
    Length length;
    std::vector<std::size_t> members;
    [[nodiscard]] bool betterThan(const Row& other) const {
        if (length != other.length) return length > other.length;
        if (members.size() != other.members.size()) return members.size() > other.members.size();
        return members < other.members;
    }
};

/// A straight line: all points p with normal(angle) . p = offset.
struct Line {
    double angle;
    double offset;
};

struct Disc {
    double x, y, r;
};

std::vector<Disc> endDiscs(const std::vector<Capsule>& all) {
    std::vector<Disc> discs;
    for (const Capsule& c : all)
        for (const Real at : {c.half, -c.half})
            discs.push_back({static_cast<double>(c.x + at * c.along.x),
                             static_cast<double>(c.y + at * c.along.y),
                             static_cast<double>(c.radius)});
    return discs;
}

/// Every line that is tangent to two end circles, and every tangent of an end circle just before
/// and just after two centres change their order along it: a transversal of a set can always be
/// moved, without changing the order, until it is one of these.
std::vector<Line> criticalLines(const std::vector<Capsule>& all) {
    const std::vector<Disc> discs = endDiscs(all);
    std::vector<Line> lines;
    const auto addTangents = [&](double angle) {
        for (const Disc& d : discs)
            for (const int side : {-1, 1})
                lines.push_back(
                    {angle, std::cos(angle) * d.x + std::sin(angle) * d.y + side * d.r});
    };
    for (std::size_t a = 0; a < discs.size(); ++a)
        for (std::size_t b = a + 1; b < discs.size(); ++b)
            for (const int sideA : {-1, 1})
                for (const int sideB : {-1, 1})
                    for (const int sign : {-1, 1}) {
                        const double far =
                            std::hypot(discs[b].x - discs[a].x, discs[b].y - discs[a].y);
                        const double level = sideA * discs[a].r - sideB * discs[b].r;
                        if (far < 1e-12 || std::fabs(level) > far) continue;
                        const double angle =
                            std::atan2(discs[b].y - discs[a].y, discs[b].x - discs[a].x) +
                            sign * std::acos(level / far);
                        lines.push_back({angle, std::cos(angle) * discs[a].x +
                                                    std::sin(angle) * discs[a].y +
                                                    sideA * discs[a].r});
                    }
    for (std::size_t a = 0; a < all.size(); ++a)
        for (std::size_t b = a + 1; b < all.size(); ++b)
            for (const double beside : {-1e-7, 1e-7})
                addTangents(std::atan2(static_cast<double>(all[b].y - all[a].y),
                                       static_cast<double>(all[b].x - all[a].x)) +
                            beside);
    return lines;
}

/// The best row by trying every subset of what each critical line meets.
Row bestByTrying(const std::vector<Capsule>& all, const std::vector<bool>& alive, GapLimit limit,
                 std::size_t least) {
    const std::vector<Disc> discs = endDiscs(all);
    Row best;
    for (const Line& line : criticalLines(all)) {
        const double nx = std::cos(line.angle);
        const double ny = std::sin(line.angle);
        std::vector<std::pair<double, std::size_t>> met;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const Disc& p = discs[2 * i];
            const Disc& q = discs[2 * i + 1];
            const double u = nx * p.x + ny * p.y - line.offset;
            const double v = nx * q.x + ny * q.y - line.offset;
            if (alive[i] && std::min(u, v) - p.r <= 1e-7 && std::max(u, v) + p.r >= -1e-7)
                met.emplace_back(
                    -ny * static_cast<double>(all[i].x) + nx * static_cast<double>(all[i].y), i);
        }
        std::sort(met.begin(), met.end());
        for (std::size_t chosen = 0; chosen < (std::size_t{1} << met.size()); ++chosen) {
            std::vector<std::size_t> order;
            for (std::size_t k = 0; k < met.size(); ++k)
                if (chosen >> k & 1) order.push_back(met[k].second);
            if (order.size() < least) continue;
            bool linked = true;
            for (std::size_t k = 0; k + 1 < order.size() && linked; ++k)
                linked = limit.links(roundedGap(distance(all[order[k]], all[order[k + 1]])));
            if (!linked) continue;
            std::vector<Capsule> members;
            members.reserve(order.size());
            for (const std::size_t i : order) members.push_back(all[i]);
            std::sort(order.begin(), order.end());
            const Row row{greatestExtent(members), order};
            if (row.betterThan(best)) best = row;
        }
    }
    return best;
}

TEST(Rows, AgreeWithTryingEverySubsetOnEveryCriticalLine) {
    int rowsSeen = 0;
    for (unsigned seed = 0; seed < 60; ++seed) {
        const auto made = test::randomCapsules(seed, 8, 14, 4);
        std::vector<bool> alive(made.capsules.size(), true);
        const auto rows = rowsOf(made.capsules, kUnderTwo, 3, std::nullopt);
        for (std::size_t i = 0;; ++i) {
            const Row expected = bestByTrying(made.capsules, alive, kUnderTwo, 3);
            if (expected.members.empty()) {
                EXPECT_EQ(rows.size(), i) << "seed " << seed;
                break;
            }
            ASSERT_LT(i, rows.size()) << "seed " << seed;
            std::vector<std::size_t> members = rows[i].members;
            std::sort(members.begin(), members.end());
            EXPECT_EQ(rows[i].length, expected.length) << "seed " << seed << " row " << i;
            EXPECT_EQ(members, expected.members) << "seed " << seed << " row " << i;
            for (const std::size_t member : members) alive[member] = false;
            ++rowsSeen;
        }
    }
    EXPECT_GT(rowsSeen, 40);
}

// Source: EN 1369:2012, 5.2 (three or more, each gap under 2 mm): worked cases.
TEST(RowsOracle, AGapOfTwoMillimetresBreaksARow) {
    EXPECT_TRUE(rowsOf(spots({{0, 0, 2}, {3.5, 0, 2}, {7.5, 0, 2}}), kUnderTwo, 3, {}).empty());
    const auto rows = rowsOf(spots({{0, 0, 2}, {3.5, 0, 2}, {7.4, 0, 2}}), kUnderTwo, 3, {});
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].length, nanometres(9'400'000));
}

TEST(Rows, OneLineMustMeetEveryMember) {
    // An arc: neighbours are near, but no line meets the middle one with both of its neighbours.
    EXPECT_TRUE(rowsOf(spots({{0, 0, 1}, {1.5, 1.5, 1}, {3, 0, 1}}), kUnderTwo, 3, {}).empty());
    // Lowered until one line just touches all three.
    EXPECT_EQ(rowsOf(spots({{0, 0, 1}, {1.5, 1, 1}, {3, 0, 1}}), kUnderTwo, 3, {}).size(), 1U);
}

TEST(Rows, TheLongestIsTakenFirstAndItsMembersLeave) {
    // A cross: five along x, four more along y that share the middle spot.
    const auto rows = rowsOf(spots({{-5, 0, 1.5},
                                    {-2.5, 0, 1.5},
                                    {0, 0, 1.5},
                                    {2.5, 0, 1.5},
                                    {5, 0, 1.5},
                                    {0, -4.6, 1.5},
                                    {0, -2.3, 1.5},
                                    {0, 2.3, 1.5},
                                    {0, 4.6, 1.5}}),
                             kUnderTwo, 3, {});
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].members.size(), 5U);
    EXPECT_EQ(rows[0].length, nanometres(11'500'000));
}

TEST(Rows, ARowAcrossTheSeamIsUnrolled) {
    const auto rows =
        rowsOf(spots({{98, 5, 2}, {1, 5, 2}, {4, 5, 2}}), kUnderTwo, 3, millimetres(100));
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].length, millimetres(8));
}

TEST(Rows, ARingIsAtLeastThePeriodLong) {
    std::vector<std::array<double, 3>> ring;
    ring.reserve(10);
    for (int i = 0; i < 10; ++i) ring.push_back({3.0 * i, 5, 2});
    const auto rows = rowsOf(spots(ring), kUnderTwo, 3, millimetres(30));
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].members.size(), 10U);
    EXPECT_GE(rows[0].length, millimetres(30));
}

TEST(Rows, CoincidentSpotsDoNotDisturb) {
    const auto rows = rowsOf(spots({{0, 0, 2}, {0, 0, 2}, {0, 0, 2}, {0, 0, 2}}), kUnderTwo, 3, {});
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].length, millimetres(2));
}

}  // namespace
}  // namespace model
