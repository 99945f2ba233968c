// SPDX-License-Identifier: Apache-2.0
#include "conditions/parameters.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <set>

#include "registers/equipment.h"

namespace model {
namespace {

using testing::Contains;
using testing::IsEmpty;
using testing::Not;

TEST(Parameters, HaveKeysThatTellThemApartAndUnitsOfTheirDimension) {
    std::set<std::string_view> keys;
    std::set<std::string_view> labels;
    for (const Parameter& each : parameters()) {
        EXPECT_TRUE(keys.insert(each.key).second) << each.key;
        EXPECT_TRUE(labels.insert(each.label).second) << each.label;
        EXPECT_EQ(parameter(each.key), &each);
        const auto units = unitsOf(each.dimension);
        if (each.kind == ParameterKind::Number && each.dimension != Dimension::None)
            EXPECT_THAT(units, Contains(each.unit)) << each.key;
        else
            EXPECT_THAT(each.unit, IsEmpty()) << each.key;
        EXPECT_EQ(each.kind == ParameterKind::Choice, !each.choices.empty()) << each.key;
        EXPECT_FALSE(partsOf(each.methods).empty()) << each.key;
    }
    EXPECT_EQ(parameter("no such thing"), nullptr);
}

TEST(Parameters, NameMetersThatTheEquipmentRegisterKnows) {
    std::vector<std::string_view> kinds;
    for (const Field<Equipment>& field : Equipment::fields())
        if (field.info.key == "kind") kinds = partsOf(field.info.choices);
    for (const Parameter& each : parameters())
        for (const std::string_view meter : partsOf(each.meters))
            EXPECT_THAT(kinds, Contains(meter)) << each.key;
}

TEST(Parameters, AreListedByMethod) {
    const auto keysOf = [](Method method) {
        std::vector<std::string_view> keys;
        for (const Parameter* each : parametersOf(method)) keys.push_back(each->key);
        return keys;
    };
    EXPECT_THAT(keysOf(Method::Magnetic), Contains("field_strength"));
    EXPECT_THAT(keysOf(Method::Magnetic), Not(Contains("penetration_time")));
    EXPECT_THAT(keysOf(Method::Penetrant), Contains("uv_a"));
    EXPECT_THAT(keysOf(Method::Ultrasonic), Not(Contains("uv_a")));
    EXPECT_THAT(keysOf(Method::Ultrasonic), Contains("couplant"));
}

}  // namespace
}  // namespace model
