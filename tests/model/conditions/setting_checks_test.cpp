// SPDX-License-Identifier: Apache-2.0
// Setting checks in time, and what a drift means for signing. ISO 17640 is known at second hand:
// its limits warn, but a drift blocks where an approved procedure took the rule over.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "valid_test.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

SettingCheck& checkOf(ValidTest& test, const std::string& id) {
    auto& checks = test.draft.conditions.settingChecks;
    return *std::ranges::find(checks, id, &SettingCheck::id);
}

TEST(SettingChecks, ComeBeforeTheFirstScanAndAfterTheLast) {
    ValidTest test = ultrasonicTest();
    checkOf(test, "A-S1").at = "2026-11-25T08:00:00Z";
    checkOf(test, "E-S1").at = "2026-11-25T08:30:00Z";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    checkOf(test, "E-S1").at = "2026-11-25T08:29:59Z";
    EXPECT_EQ(onlyOne(test.findings()).id, "UT-16 end S1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
    EXPECT_EQ(onlyOne(test.findings({digestOf("ISO 17640")})).reaction, Reaction::Block);
    checkOf(test, "E-S1").at = "2026-11-25T08:30:00Z";
    checkOf(test, "A-S1").at = "2026-11-25T08:00:01Z";
    // It began before the check that it names, too.
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("UT-16 before S1", "unclear scan 1"));
}

TEST(SettingChecks, LieAtMostFourHoursApartWhileTheSettingIsUsed) {
    ValidTest test = ultrasonicTest();
    test.draft.conditions.endedAt = "2026-11-25T13:00:00Z";
    checkOf(test, "E-S1").at = "2026-11-25T11:30:00Z";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    checkOf(test, "E-S1").at = "2026-11-25T11:30:01Z";
    const ConditionFinding finding = onlyOne(test.findings());
    EXPECT_EQ(finding.id, "UT-16 interval S1 A-S1");
    EXPECT_EQ(finding.measured, "241 min");
    EXPECT_EQ(finding.limit, "<= 4 h");
    // A check between parts the time.
    test.draft.conditions.settingChecks.push_back(
        {"B", "S1", "2026-11-25T10:00:00Z", "interval", "Q-2", "", "0", "0", "20", "20", "", ""});
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(SettingChecks, MayLieFartherApartWhileTheSettingIsNotUsed) {
    ValidTest test = ultrasonicTest();
    checkOf(test, "A-S2").at = "2026-11-25T02:00:00Z";
    test.draft.conditions.settingChecks.push_back(
        {"B", "S2", "2026-11-25T08:31:00Z", "interval", "Q-2", "", "0", "0", "20", "20", "", ""});
    test.draft.conditions.scans[1].afterCheck = "B";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(SettingChecks, AreAskedForOfEverySetting) {
    ValidTest test = ultrasonicTest();
    std::erase_if(test.draft.conditions.settingChecks,
                  [](const SettingCheck& check) { return check.setting == "S2"; });
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("UT-16 before S2", "UT-16 interval S2",
                                                    "UT-16 end S2", "unclear scan 2"));
    test = ultrasonicTest();
    test.draft.conditions.scans.pop_back();
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("UT-16 before S2"));
    test.draft.conditions.scans.clear();
    test.draft.conditions.settingChecks.clear();
    test.draft.settings.clear();
    EXPECT_THAT(idsOf(test.findings()), testing::Contains("UT-16 before"));
}

TEST(SettingChecks, CompareBlockAndPartAtNearlyOneTemperature) {
    ValidTest test = ultrasonicTest();
    checkOf(test, "A-S1").partTemperature = "5";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    checkOf(test, "A-S1").partTemperature = "35";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    for (const char* text : {"4.9", "35.1", "", "warm"}) {
        checkOf(test, "A-S1").partTemperature = text;
        EXPECT_EQ(onlyOne(test.findings()).id, "UT-16 temperature A-S1") << text;
    }
}

ValidTest driftedTest() {
    ValidTest test = ultrasonicTest();
    checkOf(test, "E-S1").sensitivityDrift = "-6";
    checkOf(test, "E-S1").corrected = "yes";
    return test;
}

TEST(DriftedSetting, BlocksUntilTheVoidScanIsRepeated) {
    ValidTest test = driftedTest();
    const ConditionFinding finding = onlyOne(test.findings());
    EXPECT_EQ(finding.id, "void 1");
    EXPECT_EQ(finding.reaction, Reaction::Block);
    EXPECT_EQ(finding.measured, "loss of 6 dB");
    EXPECT_EQ(finding.source.locator, "ISO 17640, at second hand");
    // A reason does not make a void scan good.
    test.draft.conditions.acknowledgements = {{"void 1", "it looked all right", "Q-3"}};
    EXPECT_TRUE(onlyOne(test.findings()).stands());

    TestConditions& stated = test.draft.conditions;
    stated.scans[0].examinedAgain = "3";
    stated.scans.push_back({"3", "top", "S1", "E-S1", "2026-11-25T09:30:00Z",
                            "2026-11-25T10:00:00Z", "", "100", "15", ""});
    stated.settingChecks.push_back(
        {"L-S1", "S1", "2026-11-25T10:05:00Z", "end", "Q-2", "CB-1", "0", "0", "20", "18", "", ""});
    stated.endedAt = "2026-11-25T10:10:00Z";
    const ConditionFinding noted = onlyOne(test.findings());
    EXPECT_EQ(noted.id, "repeated 1");
    EXPECT_EQ(noted.reaction, Reaction::Log);
    EXPECT_FALSE(noted.stands());
}

TEST(DriftedSetting, ReopensIndications) {
    ValidTest test = driftedTest();
    checkOf(test, "E-S1").sensitivityDrift = "6";
    TypedReflector row;
    row.id = "u1";
    row.x = "5";
    row.setting = "S1";
    row.afterCheck = "A-S1";
    test.draft.reflectors = {row};
    EXPECT_EQ(onlyOne(test.findings()).id, "evaluate again u1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test.draft.reflectors[0].afterCheck = "E-S1";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.draft.reflectors[0].afterCheck.clear();
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("check before u1", "evaluate again u1"));
}

TEST(DriftedSetting, WarnsWhereNobodyTookTheRuleOver) {
    ValidTest test = driftedTest();
    test.file.used.procedures[0].approvedOn = "2026-11-26";
    const auto findings = test.findings();
    ASSERT_THAT(idsOf(findings), ElementsAre("procedure approval", "void 1"));
    EXPECT_EQ(findings[1].reaction, Reaction::Warn);
    EXPECT_EQ(test.findings({digestOf("ISO 17640")})[1].reaction, Reaction::Block);
}

TEST(DriftedSetting, IsJudgedByTheSheetWhereItNamesARule) {
    ValidTest test = driftedTest();
    checkOf(test, "E-S1").sensitivityDrift = "-3";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    Procedure sheet = test.file.used.procedures[0];
    sheet.number = "UT-S1";
    sheet.kind = "technique sheet";
    sheet.parentProcedure = "UT-1 / B";
    sheet.driftRule = "ASME V T-467";
    test.file.used.procedures.push_back(sheet);
    test.draft.conditions.sheetNumber = "UT-S1";
    test.draft.conditions.sheetRevision = "B";
    EXPECT_EQ(onlyOne(test.findings()).id, "void 1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
}

TEST(DriftRule, HasToBeNamedAndToSpeakOfDrift) {
    ValidTest test = ultrasonicTest();
    test.file.used.procedures[0].driftRule.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "drift rule");
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    test.file.used.procedures[0].driftRule = "ISO 4992-1:2020";
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test.file.used.procedures[0].driftRule = "works' own";
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
}

TEST(UnknownIds, Block) {
    ValidTest test = ultrasonicTest();
    test.draft.conditions.scans[0].afterCheck = "Z-9";
    EXPECT_EQ(onlyOne(test.findings()).id, "unclear scan 1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
}

}  // namespace
}  // namespace model
