// SPDX-License-Identifier: Apache-2.0
// That what rejects across the edge of two zones, or across the seam of a round surface, would
// pass if each zone were judged by itself. Source: EXPECTED.md, SF-02-01 and CD-09-02.
#include <algorithm>
#include <gtest/gtest.h>

#include "judge/judge.h"
#include "judge/sheet_words.h"
#include "scenario_castings.h"

namespace {

class SharedSurface : public testing::TestWithParam<const char*> {
protected:
    void SetUp() override {
        auto shipped = model::TableSet::shipped();
        ASSERT_TRUE(shipped) << shipped.error().message();
        tables_ = std::move(*shipped);
    }
    /// The word for Z1 and Z2 of the casting, both together or one of them left in the sheet.
    std::string wordOn(const std::vector<std::string>& zones, bool placed) {
        model::Sheet sheet = scenarioSheet(GetParam());
        std::erase_if(sheet.examinations, [&](const model::Examination& examination) {
            return std::ranges::find(zones, examination.zone) == zones.end();
        });
        EXPECT_EQ(sheet.examinations.size(), zones.size());
        for (model::Examination& examination : sheet.examinations)
            if (!placed) examination.surface.reset();
        const auto verdict = model::judge(sheet, tables_);
        if (!verdict) return verdict.error().message();
        return std::string(word(verdict->word));
    }

private:
    model::TableSet tables_;
};

TEST_P(SharedSurface, IsNotAcceptableAcrossTheEdge) {
    EXPECT_EQ(wordOn({"Z1", "Z2"}, true), "not acceptable");
}

TEST_P(SharedSurface, EachZoneAloneWouldPass) {
    EXPECT_EQ(wordOn({"Z1"}, true), "acceptable");
    EXPECT_EQ(wordOn({"Z2"}, true), "acceptable");
}

TEST_P(SharedSurface, CutIntoUnplacedZonesItWouldHideWhatCrossesTheEdge) {
    EXPECT_EQ(wordOn({"Z1", "Z2"}, false), "acceptable");
}

INSTANTIATE_TEST_SUITE_P(EdgeAndSeam, SharedSurface, testing::Values("SF-02-01", "CD-09-02"),
                         [](const auto& parameter) {
                             return parameter.param[0] == 'S' ? "Edge" : "Seam";
                         });

}  // namespace
