// SPDX-License-Identifier: Apache-2.0
#include "certificate/certificate.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sample/sample_casting.h"

namespace {

using reports::asText;
using reports::certificateOf;
using reports::Document;
using reports::Mark;
using testing::HasSubstr;
using testing::Not;

std::string textOf(const sample::Sample& sample) {
    const auto document = certificateOf(sample.input());
    EXPECT_TRUE(document.ok()) << (document.ok() ? "" : document.error().message());
    std::string text = document.ok() ? asText(*document) : std::string();
    // No-break spaces hold lines together; a reader sees spaces.
    for (std::size_t at = 0; (at = text.find("\u00a0", at)) != std::string::npos;)
        text.replace(at, 2, " ");
    return text;
}

const reports::Statement* statementAfter(const Document& document, const std::string& heading) {
    const auto at = std::ranges::find_if(document.blocks, [&heading](const reports::Block& block) {
        const auto* found = std::get_if<reports::Heading>(&block);
        return found != nullptr && found->text == heading;
    });
    if (at == document.blocks.end() || at + 1 == document.blocks.end()) return nullptr;
    return std::get_if<reports::Statement>(&*(at + 1));
}

std::string lineWith(const std::string& text, const std::string& part) {
    const std::size_t at = text.find(part);
    if (at == std::string::npos) return {};
    const std::size_t begin = text.rfind('\n', at) + 1;
    return text.substr(begin, text.find('\n', at) - begin);
}

TEST(Certificate, SaysThatItIsNotReleasedAtTheTopAndOnEveryPage) {
    const auto document = certificateOf(sample::soundCasting().input());
    ASSERT_TRUE(document.ok());
    const auto* first = std::get_if<reports::Statement>(&document->blocks.front());
    ASSERT_NE(first, nullptr);
    EXPECT_EQ(first->word, "NOT RELEASED");
    EXPECT_THAT(document->watermark, HasSubstr("NOT RELEASED"));
    EXPECT_THAT(document->pageNotices, testing::ElementsAre("NOT RELEASED"));
    EXPECT_THAT(document->subtitle, HasSubstr("Not released"));
}

TEST(Certificate, OfADemonstrationArchiveSaysSoOnEveryPage) {
    sample::Sample sample = sample::soundCasting();
    sample.issue.demonstration = true;
    const auto document = certificateOf(sample.input());
    ASSERT_TRUE(document.ok());
    EXPECT_THAT(document->pageNotices, testing::Contains("Demonstration"));
}

TEST(Certificate, NamesItsTypeAsOrdered) {
    sample::Sample sample = sample::soundCasting();
    EXPECT_THAT(textOf(sample), HasSubstr("Type 3.1 of EN 10204:2004 as ordered"));
    sample.file.order.certificateType = "3.1.B";  // EN 10204:1991; not a type of 2004
    EXPECT_THAT(textOf(sample), HasSubstr("\"3.1.B\", which is no type of EN 10204:2004"));
    sample.file.order.certificateType.clear();
    EXPECT_THAT(textOf(sample), HasSubstr("The order names no type"));
}

TEST(Certificate, CarriesTheFactsOfCastingOrderAndWorks) {
    const std::string text = textOf(sample::mixedCasting());
    for (const char* fact :
         {"Quillmere Castings {A01}", "Furnace Lane 12, Quillmere",
          "Serial number {B06}: QM-26-0147", "Heat number {B07}: H 4471",
          "Part number {A09}: P-2201", "Drawing and revision {A09}: D-2201-00, revision C",
          "Material {B02}: cast steel, G20Mn5 to EN 10293",
          "Customer {A06}: Łódzka Odlewnia & Søhne (Прага)",
          "Customer's order {A07}: 4500017721, item 10", "Works order {A08}: QO-2026-031",
          "Certificate number {A03}: QC-2026-0147", "Date of issue {Z02}: 2026-11-25",
          "Never accepted by order: crack, hot tear",
          "Remarks of the order: Witness point before machining."})
        EXPECT_THAT(text, HasSubstr(fact));
}

TEST(Certificate, SaysWhatIsNotRecordedInsteadOfLeavingItOut) {
    sample::Sample sample = sample::soundCasting();
    sample.issue.number.reset();
    sample.file.casting.heat.clear();
    sample.file.order.customer = "  ";
    const std::string text = textOf(sample);
    EXPECT_THAT(text, HasSubstr("Certificate number {A03}: none given"));
    EXPECT_THAT(text, HasSubstr("Heat number {B07}: not recorded"));
    EXPECT_THAT(text, HasSubstr("Customer {A06}: not recorded"));
    EXPECT_THAT(text, HasSubstr("Certificate without number, casting QM-26-0147"));
}

TEST(Certificate, PrintsTheResultWithTheReasonsOfTheWorst) {
    const auto document = certificateOf(sample::mixedCasting().input());
    ASSERT_TRUE(document.ok());
    const auto* result = statementAfter(*document, "Result");
    ASSERT_NE(result, nullptr);
    EXPECT_EQ(result->word, "NOT ACCEPTABLE");
    EXPECT_EQ(result->mark, Mark::NotAcceptable);
    EXPECT_THAT(result->text,
                HasSubstr("Examinations that count: 5. Acceptable: 3, not acceptable: 1, "
                          "not judged: 1."));
    EXPECT_THAT(result->text, HasSubstr("Z1 MT, heat treated: cumulative length"));
    EXPECT_THAT(result->text, HasSubstr("the limit of level P 2 is not known"));
}

TEST(Certificate, IsAcceptableOnlyWhenEverythingRequiredWasMade) {
    sample::Sample sample = sample::soundCasting();
    auto document = certificateOf(sample.input());
    ASSERT_TRUE(document.ok());
    EXPECT_EQ(statementAfter(*document, "Result")->word, "ACCEPTABLE");

    sample.file.plan.zones[0].tests.push_back(sample.file.plan.zones[0].tests[0]);
    sample.file.plan.zones[0].tests[1].stage = model::Stage::FinishMachined;
    document = certificateOf(sample.input());
    ASSERT_TRUE(document.ok());
    EXPECT_EQ(statementAfter(*document, "Result")->word, "NOT JUDGED");
    const std::string text = textOf(sample);
    EXPECT_THAT(text, HasSubstr("Required and not made: Z1 MT, finish machined."));
    EXPECT_THAT(lineWith(text, "not examined"), HasSubstr("MT, finish machined"));
}

TEST(Certificate, ListsRepairsAndScope) {
    const std::string text = textOf(sample::mixedCasting());
    for (const char* line :
         {"Examined again after repair: Z9 MT, heat treated, after repair 1.",
          "Zone plan revision 2 of part P-2201 requires 5 tests; 4 of them were made as required.",
          "Required and not made: Z5 MT, heat treated.",
          "Zones of the plan without any examination: Z5.",
          "Examined, but not in the zone plan: Z9.", "Areas not examined: Z1 MT, heat treated."})
        EXPECT_THAT(text, HasSubstr(line));
    EXPECT_THAT(textOf(sample::soundCasting()),
                HasSubstr("No examination after a repair is recorded."));
}

TEST(Certificate, TellsATestMadeToAnotherLevelFromTheOneRequired) {
    sample::Sample sample = sample::soundCasting();
    sample.file.plan.zones[0].tests[0].levels["linear"] = "LM 2";
    const std::string text = textOf(sample);
    EXPECT_THAT(text, HasSubstr("Made by another limit table or level than required: Z1 MT, heat "
                                "treated."));
    EXPECT_THAT(text, HasSubstr("required: Trial Standard 7:2020: aligned AM 4, linear LM 2"));
    EXPECT_EQ(reports::resultOf(sample.file, sample.verdict), model::Word::NotJudged);
}

TEST(Certificate, HasARowForEveryZoneWithItsVerdictAsAWord) {
    const std::string text = textOf(sample::mixedCasting());
    EXPECT_THAT(lineWith(text, "Flange to rib"), HasSubstr("[x] not acceptable"));
    EXPECT_THAT(lineWith(text, "Rib, right of Z1"), HasSubstr("[+] acceptable"));
    EXPECT_THAT(lineWith(text, "Bore, lower half"), HasSubstr("[?] not judged"));
    EXPECT_THAT(lineWith(text, "Foot, all four pads"), HasSubstr("[?] not examined"));
    EXPECT_THAT(lineWith(text, "| not in the zone plan"), HasSubstr("after repair 1"));
}

TEST(Certificate, PrintsEveryCheckWithMeasuredLimitShareSourceAndGrade) {
    const std::string text = textOf(sample::mixedCasting());
    // 32.77175 / 18 = 1.82065..., rounded up; the frame as the verdict has it.
    EXPECT_THAT(text, HasSubstr("| cumulative length, linear and aligned, LM 4 | 32.77175 mm | "
                                "≤ 18 mm | 182.1 % | [x] fails | Table 2 (M) | A1, 2, Z2/7; frame "
                                "F1 centred at (560.25, 110.4) mm, turned 12° |"));
    EXPECT_THAT(text, HasSubstr("| individual length, linear, LM 4 | 9.5 mm | ≤ 10 mm | 95 % | "
                                "[+] passes | Table 2 (M) | 1 |"));
    EXPECT_THAT(text, HasSubstr("| count at the maximum, non-linear, SM 2 | 0 | ≤ 2 | 0 % |"));
    EXPECT_THAT(text, HasSubstr("counted from the maximum less 0.5 mm: an interpretation"));
    EXPECT_THAT(text, HasSubstr("| spacing, linear, LM 4 | 31.25 mm | ≥ 30 mm | 96 % |"));
    EXPECT_THAT(text, HasSubstr("| individual length, all, P 2 | 3 mm | – | – | [?] not made | "
                                "Table 1, P 2 (P) | the limit of level P 2 is not known |"));
}

TEST(Certificate, PutsTheChecksThatDecidedFirst) {
    const std::string text = textOf(sample::mixedCasting());
    EXPECT_LT(text.find("| cumulative length, linear and aligned"),
              text.find("| individual length, linear, LM 4"));
}

TEST(Certificate, ListsEveryIndicationAndWhyItDoesNotCount) {
    const std::string text = textOf(sample::mixedCasting());
    EXPECT_THAT(text, HasSubstr("| 1 | 510 | 120.5 | 9.5 | 1 | 30 | – | linear | shrinkage | A1 | "
                                "counted |"));
    // 21.25 in, 13/64 in and 1/32 in are exactly these mm (1 in = 25.4 mm).
    EXPECT_THAT(text, HasSubstr("| 2 | 539.75\n21.25 in | 127\n5 in | 5.159375\n13/64 in | "
                                "0.79375\n1/32 in | 35.5 |"));
    EXPECT_THAT(text, HasSubstr("| 4.2 | non-linear | porosity | – | counted; machining takes off "
                                "6 mm |"));
    EXPECT_THAT(text, HasSubstr("not counted: non-relevant, edge of the stamped number"));
    EXPECT_THAT(text, HasSubstr("not counted: below the limit table's threshold"));
    EXPECT_THAT(text, HasSubstr("| hairline | 0 | – | linear | not stated | A1 | counted; stated "
                                "linear |"));
    EXPECT_THAT(text, HasSubstr("| A1 | aligned | 19.613 mm | 1, 6 |"));
}

TEST(Certificate, TellsNothingFoundFromNothingStated) {
    EXPECT_THAT(textOf(sample::mixedCasting()),
                HasSubstr("No indications found: stated by the person who examined."));
    sample::Sample sample = sample::soundCasting();
    sample.file.examinations[0].header.noIndications = false;
    const std::string text = textOf(sample);
    EXPECT_THAT(text, Not(HasSubstr("No indications found")));
    EXPECT_THAT(text, HasSubstr("nobody states that none were found"));
}

TEST(Certificate, SaysWhichPartOfAZoneWasNotExamined) {
    EXPECT_THAT(textOf(sample::mixedCasting()),
                HasSubstr("400 mm² not examined: clamping claw in the way; agreed: AG-118"));
    sample::Sample sample = sample::soundCasting();
    sample.file.examinations[0].header.notExamined = {{model::squareMillimetres(25), "paint", ""}};
    EXPECT_THAT(textOf(sample),
                HasSubstr("25 mm² not examined: paint; agreed: no agreement recorded"));
}

TEST(Certificate, PrintsBestLevelsReasonsAndNotes) {
    const std::string text = textOf(sample::mixedCasting());
    EXPECT_THAT(text, HasSubstr("Strictest levels that would pass: aligned AM 7; linear LM 7; "
                                "non-linear: none; not known for LM 01"));
    EXPECT_THAT(text, HasSubstr("• the ratio for linear indications is not known"));
    EXPECT_THAT(text, HasSubstr("• indication 3: an examination at stage finish machined is due"));
}

TEST(Certificate, CallsNoLevelBestWhereAnIndicationHasNoClass) {
    sample::Sample sample = sample::mixedCasting();
    sample.verdict.examinations[3].bestLevels = {{"all", "P 1"}};
    const std::string text = textOf(sample);
    EXPECT_THAT(text, HasSubstr("Strictest levels that would pass: not known: a class is not "
                                "known"));
    EXPECT_THAT(text, Not(HasSubstr("pass: P 1")));
}

TEST(Certificate, TellsACheckOfNothingFromOneThatPasses) {
    sample::Sample sample = sample::mixedCasting();
    model::Check& check = sample.verdict.examinations[3].checks[0];
    check.passes = true;
    check.measured = 0;
    check.reason.clear();
    EXPECT_THAT(textOf(sample), HasSubstr("| 0 mm | – | – | nothing counted |"));
}

TEST(Certificate, SaysInPlainWordsThatATableIsNotAttested) {
    const std::string text = textOf(sample::mixedCasting());
    EXPECT_THAT(text, HasSubstr("[!] LIMITS NOT ATTESTED"));
    EXPECT_THAT(text, HasSubstr("Trial Standard 7:2020; Trial Standard 8:2021."));
    EXPECT_THAT(text, HasSubstr("Attestation: not attested: nobody has declared"));
    const std::string attested = textOf(sample::soundCasting());
    EXPECT_THAT(attested, Not(HasSubstr("NOT ATTESTED")));
    EXPECT_THAT(attested, HasSubstr("Attestation: attested: a QA manager has declared"));
}

TEST(Certificate, NamesStandardEditionRevisionAndDigestOfEveryTable) {
    const std::string text = textOf(sample::mixedCasting());
    EXPECT_THAT(text, HasSubstr("Standard: Trial Standard 7\nEdition: 2020\nRevision of the table: "
                                "3\nFingerprint: 01234567 89abcdef\nSHA-256 of the table: 01234567 "
                                "89abcdef aaaaaaaa aaaaaaaa aaaaaaaa aaaaaaaa aaaaaaaa aaaaaaaa"));
    EXPECT_THAT(text, HasSubstr("Evaluation frame: 105 × 148 mm, source clause 5 (M)"));
    EXPECT_THAT(text,
                HasSubstr("Remarks of the table: Invented for tests.\nTable 2 is from memory."));
    EXPECT_THAT(text, HasSubstr("M from memory, not read"));
}

TEST(Certificate, NamesTheFramesThatRulesStateForALevel) {
    sample::Sample sample = sample::soundCasting();
    model::LimitTable table = sample::trialTable();
    table.id = sample.verdict.examinations[0].tableId = "Trial Standard 9:2022";
    table.frame = {model::Known::Absent, {}, {}};
    model::Rule rule;
    rule.frames["T1"] = {model::Known::Given,
                         {model::millimetres(150), model::millimetres(150), true},
                         {"clause 4", model::Grade::Memory}};
    table.rules = {rule, rule};
    ASSERT_TRUE(sample.tables.add(table).ok());
    const std::string text = textOf(sample);
    EXPECT_THAT(text, HasSubstr("Evaluation frame: T1: circle of 150 mm diameter, source clause 4 "
                                "(M)\nRemarks"));
    EXPECT_THAT(text, Not(HasSubstr("the whole surface counts")));
}

TEST(Certificate, NamesTheIndicationOfAForbiddenKind) {
    sample::Sample sample = sample::mixedCasting();
    model::Check& check = sample.verdict.examinations[0].checks[1];
    check.rule = model::RuleKind::ForbiddenKind;
    check.classText = "all";
    check.level.clear();
    check.members = {"3"};
    EXPECT_THAT(textOf(sample),
                HasSubstr("• Z1 MT, heat treated: forbidden kind, all, indication 3\n"));
}

TEST(Certificate, CallsTheFrameRuleItsOwnAndNoClause) {
    const std::string text = textOf(sample::soundCasting());
    EXPECT_THAT(text, HasSubstr("every position and every angle is searched"));
    EXPECT_THAT(text, HasSubstr("It is not a clause of a standard."));
}

TEST(Certificate, PrintsTheOrdersDecisionAndRoundingRule) {
    sample::Sample sample = sample::soundCasting();
    EXPECT_THAT(textOf(sample), HasSubstr("Decision rule of the order: simple acceptance\nRounding "
                                          "rule of the order: no rounding"));
    sample.file.order.decisionRule.clear();
    EXPECT_THAT(textOf(sample), HasSubstr("Decision rule of the order: the order states none"));
}

TEST(Certificate, NamesPeopleAsNotSigned) {
    const std::string text = textOf(sample::mixedCasting());
    EXPECT_THAT(text,
                HasSubstr("| Z2 MT, heat treated | Łucja Ødegård-Brüß | 2026-11-20 | QP-MT-04 "
                          "revision 6 | not signed |"));
    EXPECT_THAT(text, HasSubstr("Released by {Z03}: nobody: not released"));
}

TEST(Certificate, EndsWithScopeCautionsAndAClearEnd) {
    const std::string text = textOf(sample::soundCasting());
    EXPECT_THAT(text, HasSubstr("These results are for the casting named here and no other."));
    EXPECT_THAT(text, HasSubstr("The program assists qualified people"));
    EXPECT_THAT(text, HasSubstr("Local codes, the order and licensed practice decide."));
    EXPECT_THAT(text, HasSubstr("Head of the archive's history when this document was made: "
                                "9f86d081 884c7d65"));
    EXPECT_THAT(text, testing::EndsWith("\nEnd of certificate\n"));
}

TEST(Certificate, PrintsASupersededExaminationAndSaysThatItDoesNotCount) {
    sample::Sample sample = sample::soundCasting();
    sample.file.examinations.push_back(sample.file.examinations[0]);
    sample.file.examinations[1].header.repairCycle = 1;
    sample.verdict.examinations.push_back(sample.verdict.examinations[0]);
    sample.verdict.examinations[1].repairCycle = 1;
    sample.verdict.examinations[0].superseded = true;
    sample.verdict.examinations[0].word = model::Word::NotAcceptable;
    const std::string text = textOf(sample);
    EXPECT_THAT(text, HasSubstr("Examinations that count: 1. Acceptable: 1,"));
    EXPECT_THAT(text,
                HasSubstr("[x] NOT ACCEPTABLE\nA later repair cycle or a worse repeat counts"));
    EXPECT_THAT(text, HasSubstr("[x] not acceptable\ndoes not count"));
}

TEST(Certificate, WithoutAnyExaminationIsNotJudged) {
    sample::Sample sample = sample::soundCasting();
    sample.file.examinations.clear();
    sample.verdict = {model::Word::Acceptable, {}};  // whatever is handed in
    const auto document = certificateOf(sample.input());
    ASSERT_TRUE(document.ok());
    EXPECT_EQ(statementAfter(*document, "Result")->word, "NOT JUDGED");
    EXPECT_THAT(textOf(sample), HasSubstr("No examination is recorded."));
}

TEST(Certificate, RefusesAVerdictOnOtherExaminations) {
    sample::Sample sample = sample::mixedCasting();
    sample.verdict.examinations.pop_back();
    EXPECT_FALSE(certificateOf(sample.input()).ok());

    sample = sample::mixedCasting();
    std::swap(sample.verdict.examinations[0], sample.verdict.examinations[1]);
    const auto swapped = certificateOf(sample.input());
    ASSERT_FALSE(swapped.ok());
    EXPECT_EQ(swapped.error().kind, model::ErrorKind::Input);
    EXPECT_EQ(swapped.error().place, "examinations[0]");
}

TEST(Certificate, RefusesAVerdictThatMissesAnIndication) {
    sample::Sample sample = sample::mixedCasting();
    sample.verdict.examinations[0].indications.erase(
        sample.verdict.examinations[0].indications.begin() + 3);
    const auto missing = certificateOf(sample.input());
    ASSERT_FALSE(missing.ok());
    EXPECT_EQ(missing.error().place, "examinations[0].rows[3]");

    sample = sample::mixedCasting();
    sample.verdict.examinations[0].indications.push_back({"99", std::nullopt, true, ""});
    EXPECT_FALSE(certificateOf(sample.input()).ok());
}

TEST(Certificate, RefusesAHalfTypedRowNamingTheField) {
    sample::Sample sample = sample::mixedCasting();
    sample.file.examinations[0].rows[0].length = "9.5.5";
    const auto document = certificateOf(sample.input());
    ASSERT_FALSE(document.ok());
    EXPECT_EQ(document.error().place, "examinations[0].rows[0].length_mm");
}

TEST(Certificate, RefusesATableThatIsNotTheOneJudgedBy) {
    sample::Sample sample = sample::soundCasting();
    sample.verdict.examinations[0].tableDigest = std::string(64, '0');
    const auto document = certificateOf(sample.input());
    ASSERT_FALSE(document.ok());
    EXPECT_THAT(document.error().message(), HasSubstr("Trial Standard 7:2020"));
}

TEST(Certificate, IsEqualForEqualInput) {
    EXPECT_EQ(textOf(sample::mixedCasting()), textOf(sample::mixedCasting()));
}

}  // namespace
