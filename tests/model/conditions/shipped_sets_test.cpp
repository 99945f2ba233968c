// SPDX-License-Identifier: Apache-2.0
// The condition sets that the program ships.
#include "conditions/shipped_sets.h"

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

}  // namespace
}  // namespace model
