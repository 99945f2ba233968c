// SPDX-License-Identifier: Apache-2.0
#include "repair/repair_case.h"

#include <algorithm>
#include <charconv>
#include <tuple>

#include "record/other_results.h"
#include "repair/case_context.h"
#include "repair/last_day.h"

namespace model {
namespace {

std::optional<int> wholeOf(const std::string& text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || value < 0) return std::nullopt;
    return value;
}

template <class Entry>
std::vector<const Entry*> naming(const std::vector<Entry>& entries, std::string Entry::*field,
                                 const std::string& number) {
    std::vector<const Entry*> found;
    for (const Entry& entry : entries)
        if (entry.*field == number) found.push_back(&entry);
    return found;
}

void gatherWork(RepairCase& c, const CaseContext& context) {
    const Dossier& dossier = context.file.dossier;
    const std::string& number = c.opened->number;
    c.decisions = naming(dossier.dispositions, &Disposition::nonconformance, number);
    std::ranges::stable_sort(c.decisions, {}, [](const Disposition* decision) {
        return wholeOf(decision->sequence).value_or(0);
    });
    c.excavations = naming(dossier.excavations, &Excavation::nonconformance, number);
    c.concessions = naming(dossier.concessions, &Concession::nonconformance, number);
    for (const Excavation* excavation : c.excavations) {
        c.severities.push_back(severityOf(*excavation, context.file, context.rule));
        if (!excavation->cavityRecord.empty())
            std::ranges::copy(
                naming(dossier.otherResults, &OtherResult::number, excavation->cavityRecord),
                std::back_inserter(c.cavityTests));
        std::ranges::copy(naming(dossier.weldRepairs, &WeldRepair::excavation, excavation->number),
                          std::back_inserter(c.weldRepairs));
    }
    for (const HeatTreatment& treatment : dossier.heatTreatments) {
        const std::vector<std::string> welds = itemsOf(treatment.weldRepairs);
        if (std::ranges::any_of(c.weldRepairs, [&](const WeldRepair* weld) {
                return std::ranges::count(welds, weld->number) > 0;
            }))
            c.heatTreatments.push_back(&treatment);
    }
}

void gatherTests(RepairCase& c, const CaseContext& context) {
    const CastingFile& file = context.file;
    c.found = foundBy(context, *c.opened);
    if (c.found == nullptr) c.foundByOther = foundByOther(file, *c.opened);
    for (const ExaminationDraft& draft : file.examinations)
        if (reexamines(draft, *c.opened)) c.reexaminations.push_back(&draft);
    std::ranges::stable_sort(c.reexaminations, {}, [](const ExaminationDraft* draft) {
        return std::tuple(draft->header.repairCycle, draft->header.repeat);
    });
    if (c.foundByOther == nullptr) return;
    for (const OtherResult* result : standingResultsOf(file))
        if (result > c.foundByOther && result->test == c.foundByOther->test &&
            concerns(*result, c.opened->zone) && !isCavityTest(file, *result) &&
            isOnOrAfter(result->performedOn, c.foundByOther->performedOn))
            c.otherReexaminations.push_back(result);
}

/// Whether `later` was opened on what an examination after `c` found, by the test that found `c`.
bool carriesOn(const RepairCase& later, const RepairCase& c) {
    if (&later == &c) return false;
    if (c.found != nullptr && later.found != nullptr)
        return std::ranges::count(c.reexaminations, later.found) > 0 &&
               later.found->header.method == c.found->header.method &&
               later.found->header.repairCycle > c.found->header.repairCycle;
    return c.foundByOther != nullptr && later.foundByOther != nullptr &&
           std::ranges::count(c.otherReexaminations, later.foundByOther) > 0;
}

bool decidesRepair(const RepairCase& c) {
    return c.decision() != nullptr &&
           (c.decision()->decision == "grind only" || c.decision()->decision == "weld repair");
}

/// The repair cycle that a case has come to, and that of what it carries on before it.
int cycleOf(const RepairCase& c, const std::vector<RepairCase>& all) {
    int cycle = 0;
    if (c.found != nullptr) {
        cycle = c.found->header.repairCycle;
    } else {
        for (const RepairCase& before : all)
            if (before.carriedOnBy == c.opened) cycle = std::max(cycle, cycleOf(before, all));
    }
    if (c.repaired() || decidesRepair(c)) ++cycle;
    for (const ExaminationDraft* draft : c.reexaminations)
        if (c.found != nullptr &&
            isOf(*draft, c.found->header.zone, c.found->header.method, c.found->header.stage))
            cycle = std::max(cycle, draft->header.repairCycle);
    return cycle;
}

/// The purchaser may agree to more cycles than the order allows.
void checkCycles(RepairCase& c, const CaseContext& context) {
    const std::string& atMost = context.file.order.terms.repairCycles;
    if (atMost.empty() || c.cycle == 0) return;
    OpenItems open(c);
    const std::string_view state = c.repaired() ? repair_state::kIncomplete : repair_state::kOnHold;
    const auto limit = wholeOf(atMost);
    if (!limit)
        return open.add(state, "order " + context.file.order.number,
                        "the number of repair cycles that it allows, \"%1\", is not a whole number",
                        {atMost});
    if (c.cycle > *limit && c.decision()->agreement.empty())
        open.add(state, "nonconformance " + c.opened->number,
                 "it has come to repair cycle %1, and the order allows %2; the purchaser's "
                 "agreement is missing",
                 {std::to_string(c.cycle), atMost});
}

void checkFound(RepairCase& c) {
    if (c.found != nullptr || c.foundByOther != nullptr) return;
    OpenItems(c).add(repair_state::kIncomplete, "nonconformance " + c.opened->number,
                     "the examination or the result by %1 that found it in zone %2 is not there",
                     {c.opened->method, c.opened->zone});
}

std::string_view endOf(const RepairCase& c) {
    const std::string& decision = c.decision()->decision;
    if (decision == "scrap") return repair_state::kScrapped;
    if (decision == "regrade") return repair_state::kRegraded;
    if (c.carriedOnBy != nullptr) return repair_state::kCarriedOn;
    if (decision == "concession") return repair_state::kConceded;
    return c.weldRepairs.empty() ? repair_state::kGround : repair_state::kWelded;
}

void check(RepairCase& c, const CaseContext& context) {
    const bool givenUp = c.decision() != nullptr &&
                         (c.decision()->decision == "scrap" || c.decision()->decision == "regrade");
    const bool isLimited = c.decision() != nullptr && !givenUp;
    if (isLimited && !c.repaired()) checkCycles(c, context);  // before anything is taken out
    checkDecision(c, context);
    if (!givenUp) {
        checkExcavations(c, context);
        checkWelds(c);
        checkHeatTreatments(c, context);
        checkReexamination(c, context);
        if (c.carriedOnBy == nullptr) checkConcessions(c, context);
        if (isLimited && c.repaired()) checkCycles(c, context);
        checkFound(c);
    }
    c.closed = c.open.empty();
    if (c.closed) c.state = endOf(c);
}

}  // namespace

std::vector<RepairCase> repairCasesOf(const CastingFile& file, const Verdict& verdict,
                                      std::string_view today) {
    const CaseContext context{file, verdict, repairRule(file.order.terms.repairRule),
                              today.empty() ? lastDayOf(file) : std::string(today)};
    std::vector<RepairCase> cases;
    for (const Nonconformance& opened : file.dossier.nonconformances) {
        RepairCase& c = cases.emplace_back();
        c.opened = &opened;
        gatherWork(c, context);
        gatherTests(c, context);
    }
    for (RepairCase& c : cases)
        for (const RepairCase& later : cases)
            if (carriesOn(later, c)) c.carriedOnBy = later.opened;
    for (RepairCase& c : cases) c.cycle = cycleOf(c, cases);
    for (RepairCase& c : cases) check(c, context);
    return cases;
}

}  // namespace model
