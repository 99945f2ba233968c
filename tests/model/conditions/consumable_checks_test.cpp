// SPDX-License-Identifier: Apache-2.0
// Batches on the day of the test.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "valid_test.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Not;

TEST(Batch, MayBeUsedToItsLastDay) {
    ValidTest test = penetrantTest();
    test.consumable("PE-1").expiresOn = kTestDay;
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.consumable("PE-1").expiresOn = "2026-11-24";
    EXPECT_EQ(onlyOne(test.findings()).id, "expiry PE-1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test.consumable("PE-1").expiresOn = "11/26";
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

TEST(Batch, HasToBeInTheRegisterAndNotWithdrawn) {
    ValidTest test = penetrantTest();
    test.draft.conditions.consumables += ", PE-7";
    EXPECT_EQ(onlyOne(test.findings()).id, "consumable PE-7");
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    test = penetrantTest();
    test.consumable("DE-1").state = "withdrawn";
    EXPECT_EQ(onlyOne(test.findings()).id, "state DE-1");
    EXPECT_TRUE(onlyOne(test.findings()).stands());
    // Used up since the test is no fault of the test.
    test.consumable("DE-1").state = "used up";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(Batch, IsNotUsedBeforeItIsOpened) {
    ValidTest test = penetrantTest();
    test.consumable("DE-1").openedOn = kTestDay;
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.consumable("DE-1").openedOn = "2026-11-26";
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

// ISO 9934-2:2015 7.13.
TEST(MagneticMedia, StateUntilWhenTheyMayBeUsed) {
    ValidTest test = magneticTest();
    test.consumable("M-1").expiresOn.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-18 M-1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
}

TEST(MagneticMedia, WithoutBatchCertificateAreNoted) {
    ValidTest test = magneticTest();
    test.consumable("M-1").batchCertificate.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-17 M-1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Log);
    EXPECT_FALSE(onlyOne(test.findings()).stands());
}

// ISO 3452-1 6.1 to 6.4: penetrant and remover of one maker.
TEST(PenetrantFamily, IsFromOneMaker) {
    ValidTest test = penetrantTest();
    test.consumable("RE-1").maker = "Maker B";
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-02 family RE-1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    // The developer may be another's.
    test = penetrantTest();
    test.consumable("DE-1").maker = "Maker B";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test = penetrantTest();
    test.consumable("PE-1").maker.clear();
    test.consumable("RE-1").maker.clear();
    EXPECT_THAT(idsOf(test.findings()), Contains("PT-02 family RE-1"));
}

TEST(PenetrantFamily, NeedsARemoverUnlessItIsWater) {
    ValidTest test = penetrantTest();
    test.draft.conditions.consumables = "PE-1, DE-1";
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-02 family remover");
    test.take("removal", "water");
    test.take("rinse_temperature", "20", "deg C");
    test.measured("rinse_temperature").instrument = "TH-1";
    test.measured("rinse_temperature").at = "2026-11-25T08:20:00Z";
    test.measured("rinse_temperature").by = "Q-2";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    // A remover that is named beside the water still has to be of the family.
    test.draft.conditions.consumables = "PE-1, RE-1, DE-1";
    test.consumable("RE-1").maker = "Maker B";
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-02 water RE-1");
}

TEST(PenetrantFamily, NeedsAPenetrantAtAll) {
    ValidTest test = penetrantTest();
    test.draft.conditions.consumables = "RE-1, DE-1";
    test.take("viewing", "fluorescent");
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("PT-02 family penetrant", "PT-02 designation"));
}

TEST(Designation, IsOfTheFormOfTheStandard) {
    for (const char* text : {"I C d - 2", "ICd-2", "I C d \xE2\x80\x93 2"}) {
        ValidTest test = penetrantTest();
        test.consumable("PE-1").designation = text;
        EXPECT_THAT(idsOf(test.findings()), IsEmpty()) << text;
    }
    for (const char* text :
         {"", "I C d", "C d - 2", "IIII C d - 2", "I c d - 2", "I C d - 5", "I C d - two", "2"}) {
        ValidTest test = penetrantTest();
        test.consumable("PE-1").designation = text;
        EXPECT_EQ(onlyOne(test.findings()).id, "PT-02 designation PE-1") << text;
        EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
    }
}

TEST(Designation, AgreesWithTypeAndLevel) {
    ValidTest test = penetrantTest();
    test.consumable("PE-1").sensitivityLevel = "3";
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-02 designation PE-1");
    test.consumable("PE-1").sensitivityLevel = "1/2";
    test.consumable("PE-1").designation = "I C d - 1/2";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.consumable("PE-1").designation = "II C d - 1/2";
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-02 designation PE-1");
}

TEST(PenetrantLevel, IsAtLeastTheOrdered) {
    const auto ids = [](const char* ordered, const char* level, const char* type) {
        ValidTest test = penetrantTest();
        test.file.order.terms.penetrantLevel = ordered;
        Consumable& penetrant = test.consumable("PE-1");
        penetrant.sensitivityLevel = level;
        penetrant.designation =
            std::string(std::string(type) == "fluorescent" ? "I" : "II") + " C d - " + level;
        penetrant.type = type;
        auto findings = test.findings();
        std::erase_if(findings, [](const ConditionFinding& finding) {
            return !finding.id.starts_with("ordered");
        });
        for (const ConditionFinding& finding : findings)
            EXPECT_EQ(finding.reaction, Reaction::Block);
        return idsOf(findings);
    };
    EXPECT_THAT(ids("2", "2", "fluorescent"), IsEmpty());
    EXPECT_THAT(ids("2", "3", "fluorescent"), IsEmpty());
    EXPECT_THAT(ids("2", "1", "fluorescent"), ElementsAre("ordered penetrant level PE-1"));
    EXPECT_THAT(ids("1/2", "1/2", "fluorescent"), IsEmpty());
    EXPECT_THAT(ids("1", "1/2", "fluorescent"), ElementsAre("ordered penetrant level PE-1"));
    EXPECT_THAT(ids("2", "", "fluorescent"), ElementsAre("ordered penetrant level PE-1"));
    EXPECT_THAT(ids("2", "high", "fluorescent"), ElementsAre("ordered penetrant level PE-1"));
    EXPECT_THAT(ids("fluorescent 2", "2", "fluorescent"), IsEmpty());
    EXPECT_THAT(ids("fluorescent 2", "2", "colour contrast"),
                ElementsAre("ordered penetrant level PE-1"));
    EXPECT_THAT(ids("high", "4", "fluorescent"), ElementsAre("ordered penetrant level"));
}

TEST(PenetrantLevel, CannotBeMetWithoutAPenetrant) {
    ValidTest test = penetrantTest();
    test.file.order.terms.penetrantLevel = "2";
    test.draft.conditions.consumables = "RE-1, DE-1";
    EXPECT_THAT(idsOf(test.findings()), Contains("ordered penetrant level"));
    // It is nothing to a magnetic test of the same order.
    test = magneticTest();
    test.file.order.terms.penetrantLevel = "2";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

// ASME V Article 6 Appendix II, at second hand: below 1 % by mass, 10 000 mg/kg.
TEST(SulphurAndHalogens, HaveLimitsForTheAlloysThatTheyHarm) {
    ValidTest test = penetrantTest();
    test.file.used.procedures[0].conditionSets += ", ASME V Article 6";
    test.take("alloy", "ferritic");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    for (Consumable& item : test.file.used.consumables) {
        item.sulphur = "9999.999999";
        item.halogens = "9999.999999";
    }
    for (const char* alloy : {"nickel", "austenitic", "duplex"}) {
        test.take("alloy", alloy);
        EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    }
    test.consumable("DE-1").halogens = "10000";
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-13 halogens DE-1");
    EXPECT_EQ(onlyOne(test.findings()).limit, "< 1 %");
    test.consumable("DE-1").halogens.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-13 halogens DE-1");
    test.consumable("DE-1").halogens = "little";
    EXPECT_EQ(onlyOne(test.findings()).id, "unreadable chlorine and fluorine DE-1");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test.take("alloy", "nickel");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.consumable("DE-1").batchCertificate.clear();
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("PT-12 DE-1", "PT-13 sulphur DE-1"));
    // Which limit holds is not known without the alloy.
    test.consumable("DE-1").batchCertificate = "BC-1";
    test.drop("alloy");
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("not stated alloy"));
}

TEST(PenetrantExpiry, HasToBeStatedWhereTheTechnicalOrderIsKept) {
    ValidTest test = penetrantTest();
    test.file.used.procedures[0].conditionSets = "T.O. 33B-1-1 PT";
    test.consumable("RE-1").expiresOn.clear();
    EXPECT_THAT(idsOf(test.findings()), Contains("PT-16 RE-1"));
    test.consumable("RE-1").expiresOn = kTestDay;
    EXPECT_THAT(idsOf(test.findings()), Not(Contains("PT-16 RE-1")));
}

}  // namespace
}  // namespace model
