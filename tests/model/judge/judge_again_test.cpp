// SPDX-License-Identifier: Apache-2.0
// What-ifs. Limits used: EN 1369:2012 Table 1 (R): at SM 2 non-linear indications up to 4 mm, two
// of them at the maximum; at SM 3 up to 6 mm. EN 1369:2012 Table 2 (M): LM 3 up to 6 mm.
#include "judge/judge_again.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sheet_maker.h"

namespace model {
namespace {

using test::apart;
using test::linear;
using test::mm;
using test::sheetOf;
using test::shippedTables;
using test::spot;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

const std::string kNote{kWhatIfNote};

/// Three spots of 4 mm: one more at the maximum than SM 2 allows.
Sheet threeSpots() {
    return sheetOf("EN 1369:2012", {{"non-linear", "SM 2"}},
                   apart({spot("4"), spot("4"), spot("4")}));
}

std::string refused(const Sheet& sheet, const OtherCriteria& other) {
    const auto again = judgedAgain(sheet, shippedTables(), other);
    EXPECT_FALSE(again.ok());
    return again.ok() ? "" : again.error().message();
}

TEST(JudgeAgain, OracleGivesTheVerdictOfAnotherLevelBesideTheOrdered) {
    const auto again =
        judgedAgain(threeSpots(), shippedTables(), {"", "", {{"non-linear", "SM 3"}}});
    ASSERT_TRUE(again.ok()) << again.error().message();
    EXPECT_EQ(again->ordered.word, Word::NotAcceptable);
    EXPECT_EQ(again->whatIf.word, Word::Acceptable);
    EXPECT_THAT(again->changed, ElementsAre(0U));
    EXPECT_EQ(again->sheet.examinations[0].levels.at("non-linear"), "SM 3");
    EXPECT_EQ(again->ordered.examinations[0].levels.at("non-linear"), "SM 2");
    EXPECT_THAT(again->whatIf.examinations[0].notes, Contains(kNote));
    EXPECT_THAT(again->ordered.examinations[0].notes, Not(Contains(kNote)));
}

TEST(JudgeAgain, OracleCanComeOutWorse) {
    const auto again =
        judgedAgain(sheetOf("EN 1369:2012", {{"non-linear", "SM 3"}}, apart({spot("6")})),
                    shippedTables(), {"", "", {{"non-linear", "SM 2"}}});
    ASSERT_TRUE(again.ok()) << again.error().message();
    EXPECT_EQ(again->ordered.word, Word::Acceptable);
    EXPECT_EQ(again->whatIf.word, Word::NotAcceptable);
}

TEST(JudgeAgain, IsTheVerdictOnASheetThatOrdersTheOtherCriteria) {
    const auto again = judgedAgain(threeSpots(), shippedTables(), {"", "ISO 4986:2020", {}});
    ASSERT_TRUE(again.ok()) << again.error().message();
    Sheet otherwise = threeSpots();
    otherwise.examinations[0].table = "ISO 4986:2020";
    const auto verdict = judge(otherwise, shippedTables());
    ASSERT_TRUE(verdict.ok());
    const ExaminationVerdict& e = again->whatIf.examinations[0];
    EXPECT_EQ(e.tableId, "ISO 4986:2020");
    EXPECT_EQ(e.word, verdict->examinations[0].word);
    ASSERT_EQ(e.checks.size(), verdict->examinations[0].checks.size());
    for (std::size_t i = 0; i < e.checks.size(); ++i) {
        EXPECT_EQ(e.checks[i].passes, verdict->examinations[0].checks[i].passes);
        EXPECT_EQ(e.checks[i].measured, verdict->examinations[0].checks[i].measured);
    }
}

TEST(JudgeAgain, DoesNotJudgeWhereTheOtherTableHasNoneOfTheLevels) {
    const auto again = judgedAgain(threeSpots(), shippedTables(), {"", "ISO 23278:2015", {}});
    ASSERT_TRUE(again.ok()) << again.error().message();
    EXPECT_THAT(again->sheet.examinations[0].levels, IsEmpty());
    EXPECT_EQ(again->whatIf.word, Word::NotJudged);
}

TEST(JudgeAgain, LeavesOtherMethodsAndOtherZonesAsOrdered) {
    Sheet sheet = threeSpots();
    Sheet penetrant = sheetOf("EN 1371-1:2011", {{"isolated", "SP 2"}, {"clustered", "CP 2"}},
                              apart({spot("4")}));
    penetrant.examinations[0].indications[0].kind = Kind::Porosity;
    sheet.examinations.push_back(penetrant.examinations[0]);
    sheet.examinations.push_back(threeSpots().examinations[0]);
    sheet.examinations[2].zone = "Z2";
    const auto again = judgedAgain(sheet, shippedTables(), {"", "ISO 4986:2020", {}});
    ASSERT_TRUE(again.ok()) << again.error().message();
    EXPECT_THAT(again->changed, ElementsAre(0U, 2U));
    EXPECT_EQ(again->whatIf.examinations[1].tableId, "EN 1371-1:2011");
    EXPECT_THAT(again->whatIf.examinations[1].notes, Not(Contains(kNote)));
    const auto one = judgedAgain(sheet, shippedTables(), {"Z2", "", {{"non-linear", "SM 3"}}});
    ASSERT_TRUE(one.ok()) << one.error().message();
    EXPECT_THAT(one->changed, ElementsAre(2U));
    EXPECT_EQ(one->whatIf.examinations[0].word, Word::NotAcceptable);
    EXPECT_EQ(one->whatIf.examinations[2].word, Word::Acceptable);
    EXPECT_EQ(one->whatIf.word, Word::NotAcceptable);
}

TEST(JudgeAgain, KeepsWhatWasSaidAgainstAnExamination) {
    Sheet sheet = threeSpots();
    sheet.examinations[0].rejected = Objection{"Otto Sandmann", "rough"};
    const auto again = judgedAgain(sheet, shippedTables(), {"", "", {{"non-linear", "SM 3"}}});
    ASSERT_TRUE(again.ok());
    EXPECT_EQ(again->whatIf.word, Word::NotAcceptable);
}

TEST(JudgeAgain, OrdersAllInPlaceOfRimAndCore) {
    const LimitTable* table = shippedTables().find("EN 12680-3:2003");
    ASSERT_NE(table, nullptr);
    ASSERT_FALSE(table->keys.empty());
    const std::string level = table->keys[0].levels[0];
    Sheet sheet = sheetOf("EN 12680-3:2003", {{"rim", level}, {"core", level}}, {});
    sheet.casting.material = Material::SpheroidalGraphiteIron;
    const auto again = judgedAgain(sheet, shippedTables(),
                                   {"", "", {{table->keys[0].name, table->keys[0].levels[1]}}});
    ASSERT_TRUE(again.ok()) << again.error().message();
    EXPECT_EQ(again->sheet.examinations[0].levels.size(), 1U);
}

TEST(JudgeAgain, RefusesWhatChangesNothingOrCannotBe) {
    const Sheet sheet = threeSpots();
    EXPECT_THAT(refused(sheet, {}), HasSubstr("another table or another level is missing"));
    EXPECT_THAT(refused(sheet, {"", "", {{"non-linear", "SM 2"}}}), HasSubstr("nothing would be"));
    EXPECT_THAT(refused(sheet, {"Z9", "", {{"non-linear", "SM 3"}}}), HasSubstr("zone \"Z9\""));
    EXPECT_THAT(refused(sheet, {"", "No such:2000", {}}), HasSubstr("no limit table \"No such"));
    EXPECT_THAT(refused(sheet, {"", "EN 1371-1:2011", {}}), HasSubstr("nothing would be"));
    EXPECT_THAT(refused(sheet, {"", "", {{"rim", "1"}}}), HasSubstr("level key \"rim\""));
    EXPECT_THAT(refused(sheet, {"", "", {{"non-linear", "SM 9"}}}),
                HasSubstr("EN 1369:2012 has no level \"SM 9\""));
}

TEST(JudgeAgain, TakesNoZoneAwayFromItsNeighbours) {
    Sheet sheet = sheetOf("EN 1369:2012", {{"linear", "LM 3"}, {"aligned", "AM 3"}},
                          test::numbered({linear("5", "180", "50")}));
    sheet.examinations[0].surface =
        SurfacePlace{"S", {mm("0"), mm("0"), {}}, mm("200"), mm("200"), std::nullopt};
    sheet.examinations.push_back(sheet.examinations[0]);
    sheet.examinations[1].zone = "Z2";
    sheet.examinations[1].surface->placement.x = mm("200");
    EXPECT_THAT(refused(sheet, {"Z2", "ISO 4986:2020", {}}), HasSubstr("share a surface"));
    // Another level of the same table leaves them together.
    EXPECT_TRUE(judgedAgain(sheet, shippedTables(), {"Z2", "", {{"linear", "LM 5"}}}).ok());
}

}  // namespace
}  // namespace model
