// SPDX-License-Identifier: Apache-2.0
// The condition sets that the program ships.
#include "conditions/shipped_sets.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <set>

#include "conditions/condition_set.h"

namespace model {
namespace {

TEST(ShippedConditionSets, CanAllBeRead) {
    ASSERT_FALSE(shippedConditionSets().empty());
    for (const EmbeddedFile& shipped : shippedConditionSets()) {
        const auto set = parseConditionSet(shipped.text, std::string(shipped.name));
        EXPECT_TRUE(set.ok()) << set.error().message();
    }
    EXPECT_EQ(builtInConditionSets().size(), shippedConditionSets().size());
}

TEST(ShippedConditionSets, HaveIdsThatTellThemApart) {
    std::set<std::string> sets;
    std::set<std::string> rules;
    for (const ConditionSet& set : builtInConditionSets()) {
        EXPECT_TRUE(sets.insert(set.id).second) << set.id;
        // A person's certificate belongs to one scheme, so its rules go by the same names.
        if (set.methods.empty()) continue;
        for (const ConditionRule& rule : set.rules)
            EXPECT_TRUE(rules.insert(rule.id).second) << set.id << ": " << rule.id;
    }
}

TEST(ShippedConditionSets, AreRefusedWhereTheyAreCutShort) {
    for (const EmbeddedFile& shipped : shippedConditionSets()) {
        const std::string_view text = shipped.text.substr(0, shipped.text.rfind("end"));
        for (std::size_t end = text.size(); end != std::string_view::npos && end > 0;
             end = text.rfind('\n', end - 1))
            EXPECT_FALSE(parseConditionSet(text.substr(0, end), std::string(shipped.name)).ok())
                << shipped.name << " up to " << end;
    }
}

TEST(ShippedConditionSets, SayWhereEveryLimitComesFrom) {
    for (const ConditionSet& set : builtInConditionSets())
        for (const ConditionRule& rule : set.rules) {
            EXPECT_GT(rule.source.locator.size(), 5u) << set.id << ": " << rule.id;
            EXPECT_TRUE(rule.limit || rule.every || !rule.words.empty() ||
                        !rule.parameter.empty() || !rule.check.empty() || set.methods.empty() ||
                        rule.kind == ConditionKind::CheckBefore ||
                        rule.kind == ConditionKind::CheckAfter ||
                        rule.kind == ConditionKind::PenetrantFirst)
                << rule.id;
        }
}

struct Printed {
    const char* set;
    const char* rule;
    Comparison comparison;
    const char* limit;
    Reaction reaction;
    Grade grade;
};

class ConditionLimitsOracle : public testing::TestWithParam<Printed> {};

// Written down from the clauses and from what second-hand texts say of them, not from the files.
// Grade P: at second hand or in part; grade M: from memory, common practice, no source.
TEST_P(ConditionLimitsOracle, AreThoseOfTheStandard) {
    const Printed& printed = GetParam();
    const ConditionSet* set = conditionSet(printed.set);
    ASSERT_NE(set, nullptr) << printed.set;
    const auto rule = std::ranges::find(set->rules, printed.rule, &ConditionRule::id);
    ASSERT_NE(rule, set->rules.end()) << printed.rule;
    ASSERT_TRUE(rule->limit) << printed.rule;
    EXPECT_EQ(rule->limit->text(), printed.limit) << printed.rule;
    EXPECT_EQ(rule->reaction, printed.reaction) << printed.rule;
    EXPECT_EQ(rule->source.grade, printed.grade) << printed.rule;
    EXPECT_EQ(rule->comparison, printed.comparison) << printed.rule;
}

constexpr auto kLeast = Comparison::AtLeast;
constexpr auto kMost = Comparison::AtMost;
constexpr auto kMore = Comparison::More;
constexpr auto kBlock = Reaction::Block;
constexpr auto kWarn = Reaction::Warn;

INSTANTIATE_TEST_SUITE_P(
    Clauses, ConditionLimitsOracle,
    testing::Values(
        // ISO 3059:2012 6: 10 W/m2 UV-A and 20 lx at the part; 500 lx white (from memory).
        Printed{"ISO 3059:2012", "MT-10/PT-10", kLeast, "10 W/m2", kBlock, Grade::Partly},
        Printed{"ISO 3059:2012", "MT-11/PT-10", kMost, "20 lx", kBlock, Grade::Partly},
        Printed{"ISO 3059:2012", "MT-12/PT-11", kLeast, "500 lx", kBlock, Grade::Memory},
        Printed{"ISO 3059:2012", "MT-12/PT-11 colour", kLeast, "2500 K", kWarn, Grade::Read},
        Printed{"ISO 3059:2012", "MT-13 lamp", kLeast, "10 min", kWarn, Grade::Read},
        // ISO 9934-1:2016 8.1: 2 kA/m as basis of calculation, two directions; 7: coating 50 um.
        Printed{"ISO 9934-1:2016", "MT-04 least", kLeast, "2 kA/m", kWarn, Grade::Read},
        Printed{"ISO 9934-1:2016", "MT-04 most", kMost, "6 kA/m", kWarn, Grade::Memory},
        Printed{"ISO 9934-1:2016", "MT-06", kLeast, "2", kBlock, Grade::Read},
        Printed{"ISO 9934-1:2016", "MT-19 coating", kMost, "50 um", kWarn, Grade::Read},
        // ISO 4986 and ISO 4987:2020 5.4: up to 3 times.
        Printed{"ISO 4986:2020", "MT-21", kMost, "3", kBlock, Grade::Memory},
        Printed{"ISO 4987:2020", "PT-18", kMost, "3", kBlock, Grade::Read},
        // ISO 3452-1:2021 8.3 to 8.6: 10 to 50 deg C, 5 to 60 min, 10 to 30 min.
        Printed{"ISO 3452-1:2021", "PT-01 least", kLeast, "10 deg C", kBlock, Grade::Partly},
        Printed{"ISO 3452-1:2021", "PT-01 most", kMost, "50 deg C", kBlock, Grade::Partly},
        Printed{"ISO 3452-1:2021", "PT-04 least", kLeast, "5 min", kBlock, Grade::Partly},
        Printed{"ISO 3452-1:2021", "PT-04 most", kMost, "60 min", kWarn, Grade::Partly},
        Printed{"ISO 3452-1:2021", "PT-05 UV-A", kLeast, "1 W/m2", kWarn, Grade::Partly},
        Printed{"ISO 3452-1:2021", "PT-05 light", kMost, "100 lx", kWarn, Grade::Partly},
        Printed{"ISO 3452-1:2021", "PT-07", kMost, "50 deg C", kWarn, Grade::Memory},
        Printed{"ISO 3452-1:2021", "PT-08 least", kLeast, "10 min", kBlock, Grade::Partly},
        Printed{"ISO 3452-1:2021", "PT-08 most", kMost, "30 min", kWarn, Grade::Partly},
        // ASME V Articles 6 and 7: 100 fc, printed as 1076 lx; prods 75 mm to 200 mm.
        Printed{"ASME V Article 7", "MT-12 ASME V", kLeast, "1076 lx", kBlock, Grade::Memory},
        Printed{"ASME V Article 6", "PT-11 ASME V", kLeast, "1076 lx", kBlock, Grade::Memory},
        Printed{"ASME V Article 7", "MT-07 ASME V least", kLeast, "75 mm", kWarn, Grade::Memory},
        Printed{"ASME V Article 7", "MT-07 ASME V most", kMost, "200 mm", kWarn, Grade::Memory},
        // T.O. 33B-1-1 3.5.6: 60 min in oil, 30 min in water; 2 fc.
        Printed{"T.O. 33B-1-1 MT", "MT-15 oil T.O.", kLeast, "60 min", kBlock, Grade::Read},
        Printed{"T.O. 33B-1-1 MT", "MT-15 water T.O.", kLeast, "30 min", kBlock, Grade::Read},
        Printed{"T.O. 33B-1-1 MT", "MT-11 T.O.", kMost, "2 fc", kBlock, Grade::Read},
        Printed{"T.O. 33B-1-1 PT", "PT-15 light", kMost, "2 lm/ft2", kBlock, Grade::Read},
        // ISO 4992-1:2020, EN 12680-2:2003 1: wall up to 600 mm; 6 dB over noise; Ra 12.5 um;
        // twin-crystal probes up to 50 mm.
        Printed{"ISO 4992-1:2020", "UT-01", kMost, "600 mm", kBlock, Grade::Partly},
        Printed{"EN 12680-2:2003", "UT-01 EN 12680-2", kMost, "600 mm", kBlock, Grade::Read},
        Printed{"ISO 4992-2:2006", "UT-01 ISO 4992-2", kMost, "600 mm", kBlock, Grade::Read},
        Printed{"ISO 4992-1:2020", "UT-03", kLeast, "6 dB", kBlock, Grade::Partly},
        Printed{"ISO 4992-1:2020", "UT-04 machined", kMost, "12.5 um", kWarn, Grade::Read},
        Printed{"ISO 4992-1:2020", "UT-08", kMost, "50 mm", kWarn, Grade::Read},
        Printed{"ISO 4992-1:2020", "UT-06 least", kLeast, "1 MHz", kWarn, Grade::Memory},
        Printed{"ISO 4992-1:2020", "UT-06 most", kMost, "5 MHz", kWarn, Grade::Memory},
        Printed{"ASTM A609", "UT-07 A609", kMost, "28 mm", Reaction::Log, Grade::Memory},
        Printed{"ASTM A609", "UT-09 A609", kMost, "150 mm/s", kWarn, Grade::Memory},
        Printed{"ASME V Article 5", "UT-10 ASME V", kLeast, "10 %", kBlock, Grade::Memory},
        // ISO 17640, at second hand: 4 h, 15 deg C, 4 dB; 2 % from memory.
        Printed{"ISO 17640", "UT-16 interval", kMost, "4 h", kBlock, Grade::Partly},
        Printed{"ISO 17640", "UT-16 temperature", kMost, "15 deg C", kWarn, Grade::Partly},
        Printed{"ISO 17640", "UT-17 loss", kMore, "4 dB", kBlock, Grade::Partly},
        Printed{"ISO 17640", "UT-17 gain", kMore, "4 dB", kBlock, Grade::Memory},
        Printed{"ISO 17640", "UT-18", kMore, "2 %", kBlock, Grade::Memory},
        // ASME V T-467, from memory: 2 dB, 10 % of the reading.
        Printed{"ASME V T-467", "UT-19 loss", kMore, "2 dB", kBlock, Grade::Memory},
        Printed{"ASME V T-467", "UT-19 gain", kMore, "2 dB", kBlock, Grade::Memory},
        Printed{"ASME V T-467", "UT-19 range", kMore, "10 %", kBlock, Grade::Memory}));

struct Interval {
    const char* set;
    const char* rule;
    const char* every;
    Grade grade;
};

class ConditionIntervalsOracle : public testing::TestWithParam<Interval> {};

// ASTM E3024-16 Table 1, ASTM E1444-16e1 7.4.4, ISO 22232-3:2020 6.2.3 and 6.3.1, ISO 9712:2012 7.4
// with the vision form of 2021.
TEST_P(ConditionIntervalsOracle, AreThoseOfTheStandard) {
    const Interval& printed = GetParam();
    const ConditionSet* set = conditionSet(printed.set);
    ASSERT_NE(set, nullptr) << printed.set;
    const auto rule = std::ranges::find(set->rules, printed.rule, &ConditionRule::id);
    ASSERT_NE(rule, set->rules.end()) << printed.rule;
    ASSERT_TRUE(rule->every) << printed.rule;
    EXPECT_EQ(rule->every->text(), printed.every) << printed.rule;
    EXPECT_EQ(rule->source.grade, printed.grade) << printed.rule;
}

INSTANTIATE_TEST_SUITE_P(
    Clauses, ConditionIntervalsOracle,
    testing::Values(Interval{"ASTM E3024-16", "MT-14 UV-A", "on the day", Grade::Read},
                    Interval{"ASTM E3024-16", "MT-14 lamp", "7 days", Grade::Read},
                    Interval{"ASTM E3024-16", "MT-14 performance", "on the day", Grade::Read},
                    Interval{"ASTM E3024-16", "MT-14 concentration", "8 hours", Grade::Read},
                    Interval{"ASTM E3024-16", "MT-14 contamination", "7 days", Grade::Read},
                    Interval{"ASTM E3024-16", "MT-14 yoke", "6 months", Grade::Read},
                    Interval{"ASTM E3024-16", "MT-14 ammeter", "6 months", Grade::Read},
                    Interval{"ASTM E3024-16", "MT-14 timer", "6 months", Grade::Read},
                    Interval{"ASTM E3024-16", "MT-14 quick break", "6 months", Grade::Read},
                    Interval{"ASTM E3024-16", "MT-14 meters", "12 months", Grade::Read},
                    Interval{"ASTM E3024-16", "MT-14 magnetometer", "6 months", Grade::Read},
                    Interval{"ASTM E1444-16e1", "MT-05b", "6 months", Grade::Partly},
                    Interval{"ISO 22232-3:2020", "UT-11 instrument", "on the day", Grade::Read},
                    Interval{"ISO 22232-3:2020", "UT-11 angle", "on the day", Grade::Read},
                    Interval{"ISO 22232-3:2020", "UT-13 linearity", "7 days", Grade::Memory},
                    Interval{"ISO 22232-3:2020", "UT-15", "12 months", Grade::Partly},
                    Interval{"ISO 9712:2021", "near vision", "12 months", Grade::Read},
                    Interval{"ISO 9712:2021", "colour perception", "60 months", Grade::Read},
                    Interval{"ISO 9712:2012", "near vision", "12 months", Grade::Read},
                    Interval{"SNT-TC-1A", "near vision", "12 months", Grade::Memory},
                    Interval{"ISO 9712:2021", "certificate period", "60 months", Grade::Memory}));

}  // namespace
}  // namespace model
