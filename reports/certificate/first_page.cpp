// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "certificate/conditions_section.h"
#include "certificate/coverage.h"
#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/record_phrases.h"
#include "certificate/sections.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace reports {

namespace {

constexpr std::size_t kMostReasons = 4;   // on the first page
constexpr std::size_t kMostCriteria = 5;  // on the first page
constexpr std::size_t kMostNames = 6;     // in one list on the first page

void addStatus(std::vector<Block>& blocks, const CertificateInput& input) {
    if (input.issue.forRelease)
        blocks.push_back(
            Statement{Mark::None, phrases::kValidWhenSigned, phrases::kValidWhenSignedMeaning});
    else
        blocks.push_back(
            Statement{Mark::Caution, phrases::kNotReleased, phrases::kNotReleasedMeaning});
    if (input.issue.demonstration)
        blocks.push_back(
            Statement{Mark::Caution, phrases::kDemonstration, phrases::kDemonstrationMeaning});
    if (input.issue.supersedes)
        blocks.push_back(Paragraph{Paragraph::Tone::Strong,
                                   filled(phrases::kSupersedes, {*input.issue.supersedes})});
    const std::string& language = input.file.order.language;
    if (!language.empty() && language != phrases::kLanguage)
        blocks.push_back(
            Paragraph{Paragraph::Tone::Plain, filled(phrases::kOtherLanguageOrdered, {language})});
}

/// What made an examination not acceptable or not judged.
std::vector<std::string> reasonsOf(const Examined& examined) {
    const std::string name = examined.name();
    std::vector<std::string> failed;
    std::vector<std::string> open;
    for (const model::Check& check : examined.verdict->checks) {
        if (!check.passes)
            open.push_back(filled(phrases::kWhyNotMade, {name, ruleText(check), check.reason}));
        else if (*check.passes)
            continue;
        else if (check.rule != model::RuleKind::ForbiddenKind && check.measured && check.limit)
            failed.push_back(filled(phrases::kWhyFailed, {name, ruleText(check),
                                                          measuredText(check), limitText(check)}));
        else
            failed.push_back(filled(phrases::kWhyFailedKind,
                                    {name, ruleText(check), shortList(check.members, kMostNames)}));
    }
    if (examined.recorded != nullptr && examined.recorded->rejected)
        failed.push_back(filled(phrases::kWhyRejected, {name, examined.recorded->rejected->by,
                                                        examined.recorded->rejected->reason}));
    if (!failed.empty()) return failed;
    for (const std::string& reason : examined.verdict->reasons)
        open.push_back(filled(phrases::kWhyReason, {name, reason}));
    return open;
}

std::string resultText(const CertificateInput& input, const std::vector<Examined>& all) {
    if (all.empty()) return phrases::kNothingExamined;
    std::map<model::Word, int> counts;
    int counting = 0;
    for (const Examined& examined : all) {
        if (examined.verdict->superseded) continue;
        ++counting;
        ++counts[examined.verdict->word];
    }
    std::string text = filled(phrases::kCounts, {std::to_string(counting),
                                                 std::to_string(counts[model::Word::Acceptable]),
                                                 std::to_string(counts[model::Word::NotAcceptable]),
                                                 std::to_string(counts[model::Word::NotJudged])});

    const std::vector<CoveredTest> tests = coverageOf(input.file, input.verdict);
    const bool incomplete = std::ranges::any_of(tests, [](const CoveredTest& covered) {
        return covered.state != CoveredTest::State::Made;
    });
    if (incomplete)
        text += std::string(" ") + (input.verdict.word == model::Word::Acceptable
                                        ? phrases::kBetterThanRequired
                                        : phrases::kRequirementsMissing);

    std::vector<std::string> reasons;
    for (const model::Word worst : {model::Word::NotAcceptable, model::Word::NotJudged})
        for (const Examined& examined : all)
            if (!examined.verdict->superseded && examined.verdict->word == worst)
                std::ranges::copy(reasonsOf(examined), std::back_inserter(reasons));
    for (std::size_t i = 0; i < std::min(reasons.size(), kMostReasons); ++i)
        text += "\n• " + reasons[i];
    if (reasons.size() > kMostReasons)
        text += "\n• " +
                filled(phrases::kMoreFurtherOn, {std::to_string(reasons.size() - kMostReasons)});
    return text;
}

void addResult(std::vector<Block>& blocks, const CertificateInput& input,
               const std::vector<Examined>& all, const Conclusion& conclusion) {
    blocks.push_back(Heading{1, phrases::kResult, "Z01"});
    Statement statement{
        markOf(conclusion.word), upperWord(conclusion.word), resultText(input, all), {}, true,
        outcomeText(conclusion)};
    if (conclusion.acceptableButOpen()) {
        statement.mark = Mark::NotAcceptable;
        statement.word = phrases::kDoesNotConformUpper;
        statement.meaning = phrases::kAcceptableButOpen;
    }
    blocks.push_back(std::move(statement));

    std::set<std::string> unattested;
    for (const Examined& examined : all)
        if (!examined.verdict->attested && !examined.verdict->tableId.empty())
            unattested.insert(examined.verdict->tableId);
    if (!unattested.empty())
        blocks.push_back(Statement{Mark::Caution, phrases::kAttestationMissing,
                                   filled(phrases::kAttestationMissingMeaning,
                                          {joined({unattested.begin(), unattested.end()}, "; ")})});
}

void addCriteria(std::vector<Block>& blocks, const std::vector<Examined>& all) {
    using Criterion =
        std::tuple<model::Method, std::string, int, std::map<std::string, std::string>>;
    std::vector<std::pair<Criterion, std::vector<std::string>>> criteria;
    for (const Examined& examined : all) {
        const model::ExaminationVerdict& verdict = *examined.verdict;
        const Criterion criterion{verdict.method, verdict.tableId, verdict.tableRevision,
                                  verdict.levels};
        auto found = std::ranges::find(criteria, criterion,
                                       &std::pair<Criterion, std::vector<std::string>>::first);
        if (found == criteria.end()) found = criteria.insert(found, {criterion, {}});
        if (std::ranges::find(found->second, verdict.zone) == found->second.end())
            found->second.push_back(verdict.zone);
    }
    if (criteria.empty()) return;

    Table table{{{phrases::kMethod, Align::Left, 1.1},
                 {phrases::kLimitTable, Align::Left, 1.4},
                 {phrases::kLevels, Align::Left, 2},
                 {phrases::kZones, Align::Left, 0.8}},
                {}};
    for (std::size_t i = 0; i < std::min(criteria.size(), kMostCriteria); ++i) {
        const auto& [criterion, zones] = criteria[i];
        const auto& [method, id, revision, levels] = criterion;
        table.rows.push_back(
            {{methodName(method)},
             {id.empty() ? phrases::kNotRecorded
                         : filled(phrases::kRevisionOf, {id, std::to_string(revision)})},
             {levelsText(levels)},
             {shortList(zones, kMostNames)}});
    }
    blocks.push_back(Heading{1, phrases::kCriteria});
    blocks.push_back(std::move(table));
    if (criteria.size() > kMostCriteria)
        blocks.push_back(Paragraph{
            Paragraph::Tone::Plain,
            filled(phrases::kCriteriaMore, {std::to_string(criteria.size() - kMostCriteria)})});
}

std::string testName(const CoveredTest& covered) {
    return filled(phrases::kExaminationOf,
                  {covered.zone->name, std::string(model::word(covered.test.method)),
                   stageWord(covered.test.stage)});
}

std::string planText(const CertificateInput& input, const std::vector<CoveredTest>& tests) {
    const std::string revision = std::to_string(input.file.plan.revision);
    if (tests.empty())
        return filled(phrases::kPlanWithoutTests, {revision, input.file.part.number});
    const auto made = std::ranges::count(tests, CoveredTest::State::Made, &CoveredTest::state);
    return filled(phrases::kPlanCovered, {revision, input.file.part.number,
                                          std::to_string(tests.size()), std::to_string(made)});
}

/// Tests that the order asks for beside the plan's or in their place, with who agreed.
std::vector<std::string> orderedTests(const model::CastingFile& file,
                                      const std::vector<CoveredTest>& tests) {
    std::vector<std::string> names;
    for (const CoveredTest& covered : tests) {
        if (!covered.ordered) continue;
        std::string name = testName(covered);
        for (const model::OrderedTest& test : file.order.terms.tests)
            if ((test.zone.empty() || test.zone == covered.zone->name) && !test.reason.empty() &&
                test.method == model::word(covered.test.method) &&
                test.stage == model::word(covered.test.stage)) {
                name = filled(phrases::kOrderedBecause, {name, test.reason});
                break;
            }
        names.push_back(std::move(name));
    }
    return names;
}

/// Of each examination that counts, what is to be said of its test conditions.
struct ConditionNames {
    std::vector<std::string> notStated;
    std::vector<std::string> against;
    std::vector<std::string> reasoned;
};

ConditionNames conditionNames(const std::vector<Examined>& all) {
    ConditionNames names;
    for (const Examined& examined : all) {
        if (examined.verdict->superseded) continue;
        if (!examined.conditionsStated()) names.notStated.push_back(examined.name());
        const auto standing = standingFindings(examined);
        if (!standing.empty())
            names.against.push_back(
                filled(phrases::kRepairOf, {examined.name(), joined(standing, ", ")}));
        const auto reasoned = reasonedFindings(examined);
        if (!reasoned.empty())
            names.reasoned.push_back(
                filled(phrases::kRepairOf, {examined.name(), joined(reasoned, ", ")}));
    }
    return names;
}

void addScope(std::vector<Block>& blocks, const CertificateInput& input,
              const std::vector<Examined>& all, const Conclusion& conclusion) {
    std::vector<std::string> repaired;
    std::vector<std::string> repeated;
    std::vector<std::string> partly;
    std::vector<std::string> outside;
    std::vector<std::string> invalid;
    std::set<std::string> examinedZones;
    for (const Examined& examined : all) {
        const model::Examination& header = examined.draft->header;
        examinedZones.insert(header.zone);
        if (header.repairCycle > 0) repaired.push_back(examined.name());
        if (header.repeat > 0) repeated.push_back(examined.name());
        if (examined.recorded != nullptr && examined.recorded->invalidated)
            invalid.push_back(examined.name());
        if (!header.notExamined.empty()) partly.push_back(examined.name());
        if (examined.planned == nullptr && std::ranges::find(outside, header.zone) == outside.end())
            outside.push_back(header.zone);
    }
    std::vector<std::string> without;
    for (const model::PlannedZone& zone : input.file.plan.zones)
        if (!examinedZones.contains(zone.name)) without.push_back(zone.name);

    const std::vector<CoveredTest> tests = coverageOf(input.file, input.verdict);
    std::vector<std::string> missing;
    std::vector<std::string> other;
    for (const CoveredTest& covered : tests) {
        if (covered.state == CoveredTest::State::Missing) missing.push_back(testName(covered));
        if (covered.state == CoveredTest::State::OtherCriteria) other.push_back(testName(covered));
    }
    for (const model::CoveredOther& covered : model::otherCoverageOf(input.file))
        if (covered.result == nullptr)
            missing.push_back(
                filled(phrases::kOtherTestOf, {covered.zone->name, std::string(covered.test)}));
    std::vector<std::string> unreadable;
    for (const model::Error& error : model::requiredTestsOf(input.file).errors)
        unreadable.push_back(error.message());
    const ConditionNames conditions = conditionNames(all);

    blocks.push_back(Heading{1, phrases::kScope});
    const auto sayList = [](std::vector<std::string>& lines, const char* phrase,
                            const std::vector<std::string>& names) {
        if (!names.empty()) lines.push_back(filled(phrase, {shortList(names, kMostNames, "; ")}));
    };
    std::vector<std::string> plain;
    if (repaired.empty()) plain.emplace_back(phrases::kNoRepairs);
    sayList(plain, phrases::kRepairsExamined, repaired);
    sayList(plain, phrases::kRepeated, repeated);
    sayList(plain, phrases::kDeclaredInvalidList, invalid);
    plain.push_back(planText(input, tests));
    sayList(plain, phrases::kOrderedTests, orderedTests(input.file, tests));
    sayList(plain, phrases::kZonesWithout, without);
    sayList(plain, phrases::kZonesOutside, outside);
    // Of all examinations or none, the list of names says nothing.
    if (!all.empty() && std::ranges::none_of(all, &Examined::conditionsStated))
        plain.push_back(std::string(phrases::kConditionsNotStated) + ".");
    else
        sayList(plain, phrases::kConditionsNotStatedFor, conditions.notStated);
    sayList(plain, phrases::kConditionsReasoned, conditions.reasoned);
    std::vector<std::string> gaps = openItems(conclusion);
    sayList(gaps, phrases::kOrderUnreadable, unreadable);
    sayList(gaps, phrases::kConditionsAgainst, conditions.against);
    sayList(gaps, phrases::kMissingTests, missing);
    sayList(gaps, phrases::kOtherCriteria, other);
    sayList(gaps, phrases::kPartlyExamined, partly);
    if (!gaps.empty()) blocks.push_back(Paragraph{Paragraph::Tone::Strong, joined(gaps, "\n")});
    blocks.push_back(Paragraph{Paragraph::Tone::Plain, joined(plain, "\n")});
}

}  // namespace

void addFirstPage(std::vector<Block>& blocks, const CertificateInput& input,
                  const std::vector<Examined>& all, const Conclusion& conclusion) {
    addStatus(blocks, input);
    addResult(blocks, input, all, conclusion);
    addRepairTable(blocks, conclusion);
    addCasting(blocks, input);
    addCriteria(blocks, all);
    addScope(blocks, input, all, conclusion);
}

}  // namespace reports
