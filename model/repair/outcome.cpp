// SPDX-License-Identifier: Apache-2.0
#include "repair/outcome.h"

#include <algorithm>

#include "base/word_table.h"
#include "limits/words.h"
#include "record/coverage.h"
#include "record/other_results.h"
#include "repair/case_context.h"
#include "repair/last_day.h"

namespace model {
namespace {

constexpr WordEntry<Outcome> kOutcomes[] = {
    {Outcome::Conforms, "conforms"},
    {Outcome::ConformsAfterRepair, "conforms after repair"},
    {Outcome::UnderConcession, "under concession"},
    {Outcome::DoesNotConform, "does not conform"},
    {Outcome::NotJudged, "not judged"},
};

bool isEnded(const RepairCase& c) {
    return c.closed && c.state != repair_state::kScrapped && c.state != repair_state::kRegraded;
}

/// Whether something was not judged, which "not acceptable" outranks in the casting's word.
bool anythingNotJudged(const CastingFile& file, const Verdict& verdict) {
    return !requiredTestsOf(file).errors.empty() ||
           std::ranges::any_of(verdict.examinations,
                               [](const ExaminationVerdict& made) {
                                   return !made.superseded && made.word == Word::NotJudged;
                               }) ||
           std::ranges::any_of(coverageOf(file, verdict),
                               [](const CoveredTest& covered) {
                                   return covered.state != CoveredTest::State::Made;
                               }) ||
           std::ranges::any_of(
               otherCoverageOf(file),
               [](const CoveredOther& covered) { return covered.word == Word::NotJudged; }) ||
           std::ranges::any_of(standingResultsOf(file), [](const OtherResult* result) {
               return wordOf(*result) == Word::NotJudged;
           });
}

/// Whether concessions that hold accept everything that fails, indication by indication.
class Conceded {
public:
    Conceded(const CaseContext& context, const std::vector<RepairCase>& cases)
        : context_(context), cases_(cases) {}

    [[nodiscard]] bool all() const {
        const auto& examinations = context_.verdict.examinations;
        return std::ranges::all_of(examinations,
                                   [&](const ExaminationVerdict& made) {
                                       return made.superseded || made.word != Word::NotAcceptable ||
                                              accepted(made);
                                   }) &&
               std::ranges::all_of(
                   standingResultsOf(context_.file), [&](const OtherResult* result) {
                       return wordOf(*result) != Word::NotAcceptable || accepted(*result);
                   });
    }

private:
    [[nodiscard]] bool accepted(const ExaminationVerdict& made) const {
        const FailedIndications failed = failedOf(context_, made.zone, made.method, made.stage);
        if (!failed.notKnown.empty()) return false;
        std::set<std::string> conceded;
        for (const RepairCase& c : cases_)
            if (c.state == repair_state::kConceded && c.found != nullptr &&
                c.found->header.method == made.method && c.found->header.stage == made.stage)
                conceded.merge(concededBy(c, context_));
        return !failed.indications.empty() && std::ranges::includes(conceded, failed.indications);
    }
    /// The concession is of what the test found: its zone, or the whole casting.
    [[nodiscard]] bool accepted(const OtherResult& result) const {
        return std::ranges::any_of(cases_, [&](const RepairCase& c) {
            const bool isOf = c.foundByOther == &result ||
                              std::ranges::count(c.otherReexaminations, &result) > 0 ||
                              std::ranges::count(c.cavityTests, &result) > 0;
            return isOf && c.state == repair_state::kConceded &&
                   isConcededAfter(c, result.performedOn, context_);
        });
    }

    const CaseContext& context_;
    const std::vector<RepairCase>& cases_;
};

}  // namespace

std::string_view word(Outcome outcome) {
    return wordIn(kOutcomes, outcome);
}

Outcome outcomeOf(const CastingFile& file, const Verdict& verdict, std::string_view today) {
    const Word word = castingWord(file, verdict);
    if (word == Word::NotJudged) return Outcome::NotJudged;
    const std::vector<RepairCase> cases = repairCasesOf(file, verdict, today);
    if (!std::ranges::all_of(cases, isEnded) || !looseEndsOf(file, verdict).empty())
        return Outcome::DoesNotConform;
    if (word == Word::Acceptable)
        return std::ranges::any_of(cases, &RepairCase::repaired) ? Outcome::ConformsAfterRepair
                                                                 : Outcome::Conforms;
    const CaseContext context{file, verdict, nullptr,
                              today.empty() ? lastDayOf(file) : std::string(today)};
    if (!anythingNotJudged(file, verdict) && Conceded(context, cases).all())
        return Outcome::UnderConcession;
    return Outcome::DoesNotConform;
}

}  // namespace model
