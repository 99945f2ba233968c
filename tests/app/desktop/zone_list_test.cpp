// SPDX-License-Identifier: Apache-2.0
// What the bench offers to begin: the tests of the zone plan, and those of the order beside them or
// in their place.
#include "bench/zone_list.h"

#include <gtest/gtest.h>

namespace app {
namespace {

model::CastingFile twoZones() {
    model::CastingFile file;
    for (const char* name : {"Z1", "Z2"}) {
        model::PlannedZone zone;
        zone.name = name;
        zone.tests.push_back(
            {model::Method::Magnetic, model::Stage::AsCast, "EN 1369:2012", {{"linear", "LM 4"}}});
        file.plan.zones.push_back(zone);
    }
    return file;
}

TEST(ZoneLines, AreThoseOfThePlanWhereTheOrderAsksForNothing) {
    const auto lines = zoneLines(twoZones());
    ASSERT_EQ(lines.size(), 2U);
    for (const ZoneLine& line : lines) {
        ASSERT_TRUE(line.test);
        EXPECT_EQ(line.test->levels.at("linear"), "LM 4");
        EXPECT_EQ(line.examination, -1);
    }
}

TEST(ZoneLines, OfferWhatTheOrderAsksForBesideThePlanAndInItsPlace) {
    model::CastingFile file = twoZones();
    file.order.terms.tests = {
        {"Z2", "MT", "as cast", "EN 1369:2012", "linear=LM 2", ""},
        {"Z1", "PT", "finish machined", "EN 1371-1:2011", "linear=LP 2", ""},
    };
    const auto lines = zoneLines(file);
    ASSERT_EQ(lines.size(), 3U);
    EXPECT_EQ(lines[0].title, "Z1  MT");
    EXPECT_EQ(lines[0].test->levels.at("linear"), "LM 4");
    EXPECT_EQ(lines[1].title, "Z1  PT");
    ASSERT_TRUE(lines[1].test);
    EXPECT_EQ(lines[1].test->method, model::Method::Penetrant);
    EXPECT_EQ(lines[1].test->stage, model::Stage::FinishMachined);
    EXPECT_EQ(lines[1].test->table, "EN 1371-1:2011");
    EXPECT_EQ(lines[1].zone, 0);
    EXPECT_EQ(lines[2].title, "Z2  MT");
    EXPECT_EQ(lines[2].test->levels.at("linear"), "LM 2");
}

}  // namespace
}  // namespace app
