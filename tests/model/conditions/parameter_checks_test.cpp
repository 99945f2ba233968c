// SPDX-License-Identifier: Apache-2.0
// Conditions as measured and stated: both sides of each limit, in every unit. Limits and grades
// are those of the sets, see shipped_sets_test.cpp.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "valid_test.h"

namespace model {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// Ids after one value was changed.
std::vector<std::string> with(ValidTest test, const char* parameter, const char* value,
                              const char* unit) {
    test.take(parameter, value, unit);
    return idsOf(test.findings());
}

struct Sides {
    const char* test;  ///< "MT", "PT", "UT"
    const char* parameter;
    const char* kept;
    const char* unit;
    const char* broken;
    const char* brokenUnit;
    const char* id;
};

class LimitOnBothSides : public testing::TestWithParam<Sides> {};

TEST_P(LimitOnBothSides, HoldsAtTheLimitAndNotBeyond) {
    const Sides& sides = GetParam();
    const auto make = sides.test == std::string("MT")   ? magneticTest
                      : sides.test == std::string("PT") ? penetrantTest
                                                        : ultrasonicTest;
    EXPECT_THAT(with(make(), sides.parameter, sides.kept, sides.unit), IsEmpty())
        << sides.parameter << " " << sides.kept;
    EXPECT_THAT(with(make(), sides.parameter, sides.broken, sides.brokenUnit),
                ElementsAre(sides.id))
        << sides.parameter << " " << sides.broken;
}

INSTANTIATE_TEST_SUITE_P(
    Magnetic, LimitOnBothSides,
    testing::Values(
        Sides{"MT", "uv_a", "1000", "uW/cm2", "999.9", "uW/cm2", "MT-10/PT-10"},
        Sides{"MT", "uv_a", "10", "W/m2", "9.999999", "W/m2", "MT-10/PT-10"},
        Sides{"MT", "uv_a", "1", "mW/cm2", "0.99", "mW/cm2", "MT-10/PT-10"},
        // 20 lx are 1.858 fc (1 fc = 10.76391 lx, NIST SP 811).
        Sides{"MT", "ambient_light", "20", "lx", "20.000001", "lx", "MT-11/PT-10"},
        Sides{"MT", "ambient_light", "1.858", "fc", "1.859", "fc", "MT-11/PT-10"},
        Sides{"MT", "field_strength", "2", "kA/m", "1999", "A/m", "MT-04 least"},
        // 2 kA/m are 25.1327 Oe, 6 kA/m are 75.398 Oe (1 Oe = 79.57747 A/m, NIST SP 811).
        Sides{"MT", "field_strength", "25.14", "G", "25.13", "G", "MT-04 least"},
        Sides{"MT", "field_strength", "75.39", "Oe", "75.40", "Oe", "MT-04 most"},
        Sides{"MT", "field_strength", "6", "kA/m", "6.000001", "kA/m", "MT-04 most"},
        Sides{"MT", "dark_adaptation", "60", "s", "59", "s", "MT-13 eyes"},
        Sides{"MT", "magnification", "3", "", "3.1", "", "MT-21"},
        Sides{"MT", "directions", "2", "", "1", "", "MT-06"}));

INSTANTIATE_TEST_SUITE_P(
    Penetrant, LimitOnBothSides,
    testing::Values(Sides{"PT", "part_temperature", "10", "deg C", "9.9", "deg C", "PT-01 least"},
                    Sides{"PT", "part_temperature", "50", "deg F", "49.9", "deg F", "PT-01 least"},
                    Sides{"PT", "part_temperature", "122", "deg F", "122.1", "deg F", "PT-01 most"},
                    Sides{"PT", "part_temperature", "323.15", "K", "323.16", "K", "PT-01 most"},
                    Sides{"PT", "penetration_time", "10", "min", "599", "s", "PT-04 procedure"},
                    Sides{"PT", "penetration_time", "1", "h", "60.1", "min", "PT-04 most"},
                    Sides{"PT", "penetrant_dried", "no", "", "yes", "", "PT-04 dried"},
                    Sides{"PT", "removal_uv_a", "100", "uW/cm2", "99", "uW/cm2", "PT-05 UV-A"},
                    Sides{"PT", "removal_light", "100", "lx", "9.3", "fc", "PT-05 light"},
                    Sides{"PT", "drying_temperature", "50", "deg C", "123", "deg F", "PT-07"},
                    Sides{"PT", "solvent_sprayed", "no", "", "yes", "", "PT-06 solvent"},
                    Sides{"PT", "surface_clean", "yes", "", "no", "", "PT-17 surface"},
                    Sides{"PT", "closing_treatment", "no", "", "yes", "", "PT-17 closing"},
                    Sides{"PT", "magnification", "3", "", "4", "", "PT-18"},
                    Sides{"PT", "uv_a", "10", "W/m2", "9.9", "W/m2", "MT-10/PT-10"}));

INSTANTIATE_TEST_SUITE_P(
    Ultrasonic, LimitOnBothSides,
    testing::Values(Sides{"UT", "surface_ra", "12.5", "um", "12.6", "um", "UT-04 machined"},
                    Sides{"UT", "surface_ra", "0.0125", "mm", "0.0005", "in", "UT-04 machined"}));

// Findings that differ by more than the id of one rule.

TEST(PenetrationTime, BelowFiveMinutesIsTooShortEvenWhereTheProcedureAllowsLess) {
    ValidTest test = penetrantTest();
    test.take("penetration_least", "3", "min");
    test.take("penetration_time", "5", "min");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("penetration_time", "4.9", "min");
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("PT-04 least"));
    test.drop("penetration_time");
    EXPECT_THAT(idsOf(test.findings()),
                ElementsAre("PT-04 least", "PT-04 most", "PT-04 procedure"));
}

TEST(DevelopmentTime, ComesFromTheTimesStated) {
    ValidTest test = penetrantTest();
    test.take("final_look_at", "2026-11-25T08:50:00Z");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("final_look_at", "2026-11-25T08:49:59Z");
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-08 least");
    EXPECT_EQ(onlyOne(test.findings()).measured, "599 s");
    test.take("final_look_at", "2026-11-25T09:10:00Z");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("final_look_at", "2026-11-25T09:10:01Z");
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-08 most");
    test.take("agreement", "letter 7");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(DevelopmentTime, ThatWasTypedDoesNotReplaceTheTimesStated) {
    ValidTest test = penetrantTest();
    test.take("development_time", "15", "min");
    test.take("final_look_at", "2026-11-25T08:45:00Z");
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-08 least");
    test.drop("developer_dry_at");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.drop("development_time");
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("PT-08 least", "PT-08 most"));
}

TEST(DevelopmentTime, CannotRunBackwards) {
    ValidTest test = penetrantTest();
    test.take("final_look_at", "2026-11-25T08:39:00Z");
    const ConditionFinding finding = onlyOne(test.findings());
    EXPECT_EQ(finding.reaction, Reaction::Block);
    EXPECT_THAT(finding.reason.message(), HasSubstr("below 0"));
}

TEST(SpecialTemperature, NeedsAProcedureOfItsOwn) {
    ValidTest test = penetrantTest();
    test.take("part_temperature", "4", "deg C");
    EXPECT_EQ(onlyOne(test.findings()).id, "PT-01 least");
    test.take("special_procedure", "PT-6 / A");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(Directions, MayBeOneWhereAMultidirectionalFieldIsProven) {
    ValidTest test = magneticTest();
    test.take("directions", "1");
    test.take("multidirectional_proof", "no");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-06");
    test.take("multidirectional_proof", "yes");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(ProofOfField, HasToBeMoreThanAShim) {
    ValidTest test = magneticTest();
    for (const char* proof : {"piece with known flaws", "calculation, verified"}) {
        test.take("field_proof", proof);
        EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    }
    test.take("field_proof", "shim or pie gauge");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-08");
    test.drop("field_proof");
    EXPECT_THAT(idsOf(test.findings()), Contains("MT-08"));
}

TEST(TangentialField, HasToSayHowItWasRead) {
    ValidTest test = magneticTest();
    test.take("field_reading", "mean");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-04 reading");
    test.drop("waveform");
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("MT-04 reading", "MT-04 waveform", "MT-25"));
    test = magneticTest();
    test.drop("field_strength");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-04 measured");
    test.take("field_proof", "piece with known flaws");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

// ISO 9934-1:2016 7: up to 50 um, else the sensitivity is proven.
TEST(Coating, IsLimitedWithoutProofAndNeverTakenForNone) {
    ValidTest test = magneticTest();
    test.draft.conditions.coating = "50";
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.draft.conditions.coating = "50.1";
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-19 coating");
    EXPECT_EQ(onlyOne(test.findings()).measured, "50.1 um");
    test.take("coating_proof", "yes");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.drop("coating_proof");
    test.draft.conditions.coating.clear();
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-19 coating");
    EXPECT_THAT(onlyOne(test.findings()).measured, IsEmpty());
    test.draft.conditions.coating = "thin";
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
}

TEST(Viewing, ComesFromTheMediaAndDecidesWhichLightIsAskedFor) {
    ValidTest test = magneticTest();
    test.consumable("M-1").type = "colour contrast";
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("MT-12/PT-11"));
    EXPECT_THAT(onlyOne(test.findings()).reason.message(), HasSubstr("not stated"));
    test.draft.conditions.measurements.push_back(
        {"white_light", "500", "lx", "LX-1", "2026-11-25T08:05:00Z", "Q-2", "", ""});
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("white_light", "499.9", "lx");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-12/PT-11");
    // 46.4 fc are 499.45 lx, 46.5 fc 500.5 lx.
    test.take("white_light", "46.4", "fc");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-12/PT-11");
    test.take("white_light", "46.5", "fc");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("colour_temperature", "2499", "K");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-12/PT-11 colour");
    test.take("colour_temperature", "2500", "K");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
}

TEST(Viewing, ThatIsNotKnownIsSaidOnceAsGravelyAsWhatWaitsForIt) {
    ValidTest test = magneticTest();
    test.consumable("M-1").type = "dual purpose";
    EXPECT_EQ(onlyOne(test.findings()).id, "not stated viewing");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
    EXPECT_EQ(onlyOne(test.findings({digestOf("ISO 3059:2012")})).reaction, Reaction::Block);
    test.take("viewing", "fluorescent");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    // Both are looked at where the statement and the media differ.
    test.take("viewing", "colour contrast");
    test.consumable("M-1").type = "fluorescent";
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("MT-12/PT-11"));
}

TEST(Lamp, OfMercuryHasToWarmUp) {
    ValidTest test = magneticTest();
    test.take("lamp", "mercury");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-13 lamp");
    test.take("lamp_warm_up", "10", "min");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("lamp_warm_up", "9.5", "min");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-13 lamp");
}

// ISO 4986:2020 1.
TEST(Ferromagnetic, IsBlockedWhereItIsNotAndDuplexNeedsAReason) {
    ValidTest test = magneticTest();
    test.take("ferromagnetic", "yes");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("ferromagnetic", "duplex");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-02");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Warn);
    test.take("ferromagnetic", "no");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-01");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
}

TEST(Demagnetising, BeforeViewingWantsFixedIndications) {
    ValidTest test = magneticTest();
    test.take("viewed_after_demagnetising", "yes");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-24");
    test.take("indications_fixed", "yes");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.drop("viewed_after_demagnetising");
    EXPECT_EQ(onlyOne(test.findings()).id, "not stated viewed_after_demagnetising");
}

TEST(ResidualField, IsAskedForWhereTheOrderLimitsIt) {
    ValidTest test = magneticTest();
    test.file.order.terms.residualField = "0.4";
    EXPECT_EQ(onlyOne(test.findings()).id, "ordered residual field");
    EXPECT_EQ(onlyOne(test.findings()).reaction, Reaction::Block);
    test.draft.conditions.measurements.push_back(
        {"residual_field", "0.4", "kA/m", "TF-1", "2026-11-25T09:20:00Z", "Q-2", "", ""});
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("residual_field", "0.400001", "kA/m");
    EXPECT_EQ(onlyOne(test.findings()).measured, "0.400001 kA/m");
    // 0.4 kA/m are 5.0265 G (1 Oe = 79.57747 A/m, NIST SP 811).
    test.take("residual_field", "5.02", "G");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("residual_field", "5.03", "G");
    EXPECT_EQ(onlyOne(test.findings()).id, "ordered residual field");
    test.file.order.terms.residualField = "low";
    EXPECT_TRUE(onlyOne(test.findings()).stands());
}

TEST(Bath, KeepsTheWindowForItsMediaUnlessItIsASealedCan) {
    ValidTest test = magneticTest();
    test.file.used.procedures[0].conditionSets += ", ASTM E709";
    test.take("bath_carrier", "oil");
    const auto ids = [&](const char* concentration) {
        test.take("bath_concentration", concentration, "mL/100mL");
        auto all = idsOf(test.findings());
        std::erase_if(all, [](const std::string& id) { return !id.starts_with("MT-15"); });
        return all;
    };
    EXPECT_THAT(ids("0.1"), IsEmpty());
    EXPECT_THAT(ids("0.4"), IsEmpty());
    EXPECT_THAT(ids("0.09"), ElementsAre("MT-15 fluorescent least E709"));
    EXPECT_THAT(ids("0.41"), ElementsAre("MT-15 fluorescent most E709"));
    test.consumable("M-1").type = "colour contrast";
    EXPECT_THAT(ids("1.2"), IsEmpty());
    EXPECT_THAT(ids("2.4"), IsEmpty());
    EXPECT_THAT(ids("1.19"), ElementsAre("MT-15 colour contrast least E709"));
    EXPECT_THAT(ids("2.41"), ElementsAre("MT-15 colour contrast most E709"));
    test.take("bath_carrier", "aerosol");
    EXPECT_THAT(ids("9"), IsEmpty());
    test.take("bath_carrier", "oil");
    test.consumable("M-1").kind = "magnetic powder";
    EXPECT_THAT(ids("9"), IsEmpty());
}

TEST(Bath, SettlesBeforeItIsRead) {
    ValidTest test = magneticTest();
    test.file.used.procedures[0].conditionSets += ", T.O. 33B-1-1 MT";
    test.take("eyewear", "clear");
    const auto isTooShort = [&](const char* carrier, const char* minutes) {
        test.take("bath_carrier", carrier);
        test.take("bath_settling", minutes, "min");
        return testing::Value(idsOf(test.findings()),
                              Contains("MT-15 " + std::string(carrier) + " T.O."));
    };
    EXPECT_FALSE(isTooShort("oil", "60"));
    EXPECT_TRUE(isTooShort("oil", "59"));
    EXPECT_FALSE(isTooShort("water", "30"));
    EXPECT_TRUE(isTooShort("water", "29"));
}

TEST(Eyewear, MayNotBeTintedForFluorescentViewing) {
    ValidTest test = magneticTest();
    test.file.used.procedures[0].conditionSets += ", T.O. 33B-1-1 MT";
    test.take("bath_carrier", "aerosol");
    test.check("Y-1", "yoke pull").value = "11";
    test.check("Y-1", "yoke pull").unit = "lb";
    test.take("eyewear", "clear");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("eyewear", "photochromic or tinted");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-13 eyewear T.O.");
    // 20 lx are below 2 fc, 21.53 lx above (1 fc = 10.76391 lx).
    test.take("eyewear", "none");
    test.file.used.procedures[0].conditionSets = "T.O. 33B-1-1 MT";
    test.take("ambient_light", "21.52", "lx");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("ambient_light", "21.53", "lx");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-11 T.O.");
}

TEST(PartTemperature, IsUsualForWetAndDryMedia) {
    ValidTest test = magneticTest();
    test.file.used.procedures[0].conditionSets = "ASME V Article 7";
    test.draft.conditions.equipment += ", TH-1";
    test.file.used.equipment.push_back(penetrantTest().equipment("TH-1"));
    test.draft.conditions.measurements.push_back(
        {"part_temperature", "50", "deg C", "TH-1", "2026-11-25T08:05:00Z", "Q-2", "", ""});
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("part_temperature", "123", "deg F");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-22 wet");
    test.consumable("M-1").kind = "magnetic powder";
    test.take("part_temperature", "599", "deg F");
    EXPECT_THAT(idsOf(test.findings()), IsEmpty());
    test.take("part_temperature", "600", "deg F");
    EXPECT_EQ(onlyOne(test.findings()).id, "MT-22 dry");
}

TEST(Elapsed, RunsFromTheDryDeveloperToTheFinalLook) {
    ValidTest test = penetrantTest();
    test.file.used.procedures[0].conditionSets = "ASME V Article 6";
    test.take("alloy", "ferritic");
    const auto ids = [&](const char* look) {
        test.take("final_look_at", look);
        return idsOf(test.findings());
    };
    EXPECT_THAT(ids("2026-11-25T08:50:00Z"), IsEmpty());
    EXPECT_THAT(ids("2026-11-25T08:49:59Z"), ElementsAre("PT-09 ASME V least"));
    EXPECT_THAT(ids("2026-11-25T09:40:00Z"), IsEmpty());
    EXPECT_THAT(ids("2026-11-25T09:40:01Z"), ElementsAre("PT-09 ASME V most"));
    test.drop("final_look_at");
    EXPECT_THAT(idsOf(test.findings()), ElementsAre("PT-09 ASME V least", "PT-09 ASME V most"));
}

}  // namespace
}  // namespace model
