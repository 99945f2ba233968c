// SPDX-License-Identifier: Apache-2.0
// What must hold of every ultrasonic sheet: more or larger indications never make it better, and
// less knowledge never makes it acceptable. Random sheets, the same in every run.
#include <algorithm>
#include <gtest/gtest.h>
#include <random>

#include "reflector_maker.h"

namespace model {
namespace {

using test::cell;
using test::joinAllWithin;
using test::mm;
using test::ofWall;
using test::ruleOf;
using test::tableOf;
using test::ultrasonicSheet;

class Chance {
public:
    explicit Chance(unsigned seed) : engine_(seed) {}
    int upTo(int most) { return static_cast<int>(engine_() % static_cast<unsigned>(most + 1)); }
    bool once(int in) { return upTo(in - 1) == 0; }
    Length length(int least, int most) { return millimetres(least + upTo(most - least)); }
    GainStep gain(int least, int most) { return decibels(least + upTo(most - least)); }

private:
    std::mt19937 engine_;
};

/// Every rule that looks at indications, with joins, frames and a recording limit.
LimitTable everyRule() {
    const std::vector<IndicationClass> volumetric{IndicationClass::Rim, IndicationClass::Core};
    LimitTable table = tableOf(
        {ruleOf(RuleKind::ThroughWallExtent, volumetric, {ofWall(1, 5), ofWall(1, 3)}),
         ruleOf(RuleKind::ThroughWallExtent, {IndicationClass::Planar},
                {ofWall(1, 10), ofWall(1, 5)}),
         ruleOf(RuleKind::IndividualArea, {IndicationClass::Rim}, {cell("300"), cell("600")}),
         ruleOf(RuleKind::IndividualArea, {IndicationClass::Core}, {cell("900"), cell("1800")}),
         ruleOf(RuleKind::IndividualLength, {}, {cell("45"), cell("70")}),
         ruleOf(RuleKind::EquivalentReflector, {IndicationClass::Planar}, {cell("6"), cell("9")}),
         ruleOf(RuleKind::TotalArea, volumetric, {cell("1500"), cell("3000")}),
         ruleOf(RuleKind::AreaShare, {}, {cell("3"), cell("5")}),
         ruleOf(RuleKind::CumulativeLength, {IndicationClass::Dross}, {cell("40"), cell("90")}),
         ruleOf(RuleKind::Count, {}, {cell("4"), cell("6")}),
         ruleOf(RuleKind::Count, {IndicationClass::Planar}, {cell("1"), cell("2")}),
         ruleOf(RuleKind::Spacing, {IndicationClass::Planar}, {cell("15"), cell("5")},
                Comparison::AtLeast)});
    table.rules[1].conditions = {
        {ReflectorMeasure::IndicationLength, Comparison::More, Rational(10'000'000), {}}};
    table.rules[9].framed = true;
    table.frame.known = Known::Given;
    table.frame.shape = FrameShape{mm("100"), mm("100"), false};
    table.recording.push_back({ReflectorMeasure::Fbh, Comparison::AtLeast, std::nullopt, {}});
    table.recording[0].rows = {{{}, cell("3"), 0}};
    table.notMeasurable.throughWall = mm("3");
    joinAllWithin(table, "10");
    return table;
}

/// Extents small enough to be acceptable often; what is left out was not measured.
Reflector randomReflector(Chance& chance, int number, bool complete) {
    const auto given = [&] { return complete || !chance.once(8); };
    Reflector u;
    u.id = "u" + std::to_string(number);
    u.x = chance.length(0, 300);
    u.y = chance.length(0, 200);
    u.angle = degrees(chance.upTo(179));
    if (given()) u.depth = chance.length(1, 50);
    if (given()) u.fbh = chance.length(1, 8);
    if (given()) u.length = chance.length(4, 24);
    if (u.length && given()) u.width = Length::fromMillionths(u.length->millionths() / 2);
    if (given()) u.throughWall = chance.length(1, 7);
    if (given()) u.backWallLoss = chance.gain(0, 6);
    if (given()) u.overReference = chance.gain(-9, 1);
    if (given())
        u.kind = chance.once(4) ? Kind::Planar : chance.once(4) ? Kind::Dross : Kind::Volumetric;
    if (!complete && !u.throughWall) u.throughWallNotMeasurable = chance.once(2);
    return u;
}

Sheet randomSheet(Chance& chance, const LimitTable& table, bool complete) {
    std::vector<Reflector> reflectors;
    const int many = 1 + chance.upTo(4);
    reflectors.reserve(static_cast<std::size_t>(many));
    for (int i = 0; i < many; ++i) reflectors.push_back(randomReflector(chance, i, complete));
    const std::vector<std::string>& levels = table.keys[0].levels;
    return ultrasonicSheet(
        table.id,
        {{"all",
          levels[static_cast<std::size_t>(chance.upTo(static_cast<int>(levels.size()) - 1))]}},
        std::move(reflectors), table.materials[0]);
}

/// Makes one indication larger in one way. Widths stay: a ratio of length to width may loosen.
void enlarge(Chance& chance, Reflector& u) {
    const auto more = [&](std::optional<Length>& value) {
        if (value) *value += chance.length(1, 20);
    };
    switch (chance.upTo(4)) {
        case 0:
            return more(u.length);
        case 1:
            if (!u.throughWall) return;
            *u.throughWall += chance.length(1, 20);
            return;
        case 2:
            return more(u.fbh);
        case 3:
            if (u.overReference) *u.overReference += chance.gain(1, 12);
            return;
        default:
            if (u.backWallLoss) *u.backWallLoss += chance.gain(1, 20);
            return;
    }
}

/// Takes out one thing that was known. A typed area goes back to length and width, a wall to the
/// zone's thickness: these stay.
void forget(Chance& chance, Examination& e) {
    Reflector& u = e.reflectors[static_cast<std::size_t>(
        chance.upTo(static_cast<int>(e.reflectors.size()) - 1))];
    switch (chance.upTo(11)) {
        case 0:
            return u.depth.reset();
        case 1:
            return u.fbh.reset();
        case 2:
            u.width.reset();
            return u.length.reset();
        case 3:
            return u.width.reset();
        case 4:
            return u.throughWall.reset();
        case 5:
            return u.overReference.reset();
        case 6:
            return u.kind.reset();
        case 7:
            return e.ultrasonic.zoneArea.reset();
        case 8:
            return e.ultrasonic.testability.reset();
        case 9:
            return e.ultrasonic.deadZone.reset();
        case 10:
            u.throughWallNotMeasurable = false;
            return;
        default:
            return e.ultrasonic.directions.pop_back();
    }
}

std::vector<LimitTable> tables() {
    std::vector<LimitTable> all{everyRule()};
    for (const LimitTable* shipped : test::shippedTables().all())
        if (shipped->method == Method::Ultrasonic) all.push_back(*shipped);
    return all;
}

Word wordOf(const LimitTable& table, const Sheet& sheet) {
    TableSet set;
    EXPECT_TRUE(set.add(table).ok());
    const auto verdict = judge(sheet, set);
    EXPECT_TRUE(verdict.ok()) << (verdict.ok() ? "" : verdict.error().message());
    return verdict.ok() ? verdict->word : Word::NotJudged;
}

constexpr int kRounds = 1500;

TEST(UltrasonicProperty, MoreOrLargerIsNeverBetter) {
    Chance chance(20241);
    for (const LimitTable& table : tables()) {
        // Where clusters are judged by how far they spread, more of them can spread far enough.
        const bool spreads = table.clusters.spread.has_value();
        int acceptable = 0;
        for (int round = 0; round < kRounds; ++round) {
            const Sheet before = randomSheet(chance, table, chance.once(2));
            Sheet after = before;
            std::vector<Reflector>& found = after.examinations[0].reflectors;
            if (chance.once(3))
                found.push_back(randomReflector(chance, 99, chance.once(2)));
            else
                enlarge(chance, found[static_cast<std::size_t>(
                                    chance.upTo(static_cast<int>(found.size()) - 1))]);
            const Word first = wordOf(table, before);
            const Word then = wordOf(table, after);
            if (first == Word::Acceptable) ++acceptable;
            const Word held = spreads && first == Word::NotJudged ? Word::Acceptable : first;
            // What was open may become certain, but never for the better.
            ASSERT_FALSE(then < held) << table.id << " round " << round;
        }
        if (table.id == "T") {
            EXPECT_GT(acceptable, kRounds / 50);
        }
    }
}

TEST(UltrasonicProperty, LessKnowledgeNeverMakesAcceptable) {
    Chance chance(555);
    for (const LimitTable& table : tables()) {
        int acceptable = 0;
        for (int round = 0; round < kRounds; ++round) {
            const Sheet before = randomSheet(chance, table, !chance.once(3));
            Sheet after = before;
            forget(chance, after.examinations[0]);
            const Word first = wordOf(table, before);
            if (first == Word::Acceptable)
                ++acceptable;
            else
                ASSERT_NE(wordOf(table, after), Word::Acceptable) << table.id << " round " << round;
        }
        if (table.id == "T") {
            EXPECT_GT(acceptable, kRounds / 50);
        }
    }
}

TEST(UltrasonicProperty, TheOrderOfTheSheetDoesNotMatter) {
    Chance chance(77);
    for (const LimitTable& table : tables())
        for (int round = 0; round < kRounds / 5; ++round) {
            const Sheet before = randomSheet(chance, table, chance.once(2));
            Sheet after = before;
            std::vector<Reflector>& found = after.examinations[0].reflectors;
            std::reverse(found.begin(), found.end());
            ASSERT_EQ(wordOf(table, before), wordOf(table, after)) << table.id << " " << round;
        }
}

}  // namespace
}  // namespace model
