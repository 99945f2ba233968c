// SPDX-License-Identifier: Apache-2.0
// What is open where a concession was decided: it accepts named indications, up to a day.
#include <algorithm>

#include "limits/words.h"
#include "repair/case_context.h"

namespace model {
namespace {

/// The examination that found what a concession names, and that it is not known to follow: numbers
/// of indications are used again in a later examination. Empty: it follows all that count.
std::string examinedLater(const Concession& concession, const RepairCase& c,
                          const CaseContext& context) {
    const auto method = methodFrom(c.opened->method);
    const auto stage = stageOf(c);
    if (c.found == nullptr || !method || !stage) return {};
    const std::set<std::string> named = indicationsIn(concession.indications, c.opened->zone);
    for (const ExaminationDraft& draft : context.file.examinations) {
        const ExaminationVerdict* verdict = verdictOn(context, draft);
        const std::string prefix = draft.header.zone + "/";
        const bool isNamed = std::ranges::any_of(
            named, [&](const std::string& name) { return name.starts_with(prefix); });
        if (isNamed && isOf(draft, draft.header.zone, *method, *stage) && verdict != nullptr &&
            !verdict->superseded && !isOnOrAfter(concession.grantedOn, draft.examinedOn))
            return nameOf(draft);
    }
    return {};
}

/// Why a concession does not hold on the context's day; empty: it does.
std::string whyNot(const Concession& concession, const RepairCase& c, const CaseContext& context) {
    if (concession.customerReference.empty()) return "the purchaser's reference is missing";
    if (concession.grantedBy.empty()) return "who granted it is missing";
    if (concession.scope.empty()) return "its scope is missing";
    if (itemsOf(concession.indications).empty()) return "it names no indication";
    if (!isOnOrAfter(concession.grantedOn, c.opened->openedOn))
        return "it is not known to be granted after the nonconformance was opened";
    if (!isOnOrAfter(context.today, concession.grantedOn))
        return "it is not known to be granted by " +
               (context.today.empty() ? std::string("now") : context.today);
    if (const std::string later = examinedLater(concession, c, context); !later.empty())
        return "it is not known to be granted after the examination " + later;
    if (!concession.until.empty() && !isOnOrAfter(concession.until, context.today))
        return "it ended on " + concession.until;
    return {};
}

/// What of the nonconformance fails in what counts now.
std::set<std::string> toBeConceded(const RepairCase& c, const FailedIndications& failed) {
    const std::set<std::string> named = indicationsIn(c.opened->indications, c.opened->zone);
    // After a repair the indications are numbered anew.
    if (named.empty() || c.repaired()) return failed.indications;
    std::set<std::string> both;
    std::ranges::set_intersection(failed.indications, named, std::inserter(both, both.end()));
    return both;
}

/// Names that a concession accepts and that no indication of the zone, method and stage has.
std::set<std::string> strangers(const std::set<std::string>& conceded, const CaseContext& context,
                                Method method, Stage stage) {
    std::set<std::string> left = conceded;
    for (const ExaminationDraft& draft : context.file.examinations) {
        if (draft.header.method != method || draft.header.stage != stage) continue;
        for (const TypedIndication& row : draft.rows) left.erase(draft.header.zone + "/" + row.id);
        for (const TypedReflector& row : draft.reflectors)
            left.erase(draft.header.zone + "/" + row.id);
    }
    return left;
}

std::string listOf(const std::set<std::string>& names) {
    return model::listOf(std::vector<std::string>(names.begin(), names.end()));
}

void checkExactness(RepairCase& c, const CaseContext& context, OpenItems& open, Method method,
                    Stage stage) {
    const std::string place = "nonconformance " + c.opened->number;
    const std::set<std::string> conceded = concededBy(c, context);
    if (const auto strange = strangers(conceded, context, method, stage); !strange.empty())
        open.add(repair_state::kToConcede, place,
                 "a concession names %1, which no examination of that method and stage has",
                 {listOf(strange)});
    const FailedIndications failed = failedOf(context, c.opened->zone, method, stage);
    if (!failed.notKnown.empty())
        return open.add(repair_state::kToConcede, place,
                        "what fails cannot be named indication by indication: %1",
                        {failed.notKnown});
    std::set<std::string> missing;
    std::ranges::set_difference(toBeConceded(c, failed), conceded,
                                std::inserter(missing, missing.end()));
    if (!missing.empty())
        open.add(repair_state::kToConcede, place, "no concession that holds accepts %1",
                 {listOf(missing)});
}

}  // namespace

std::set<std::string> concededBy(const RepairCase& c, const CaseContext& context) {
    std::set<std::string> conceded;
    for (const Concession* concession : c.concessions)
        if (whyNot(*concession, c, context).empty())
            conceded.merge(indicationsIn(concession->indications, c.opened->zone));
    return conceded;
}

bool isConcededAfter(const RepairCase& c, const std::string& day, const CaseContext& context) {
    return std::ranges::any_of(c.concessions, [&](const Concession* concession) {
        return whyNot(*concession, c, context).empty() && isOnOrAfter(concession->grantedOn, day);
    });
}

void checkConcessions(RepairCase& c, const CaseContext& context) {
    if (c.decision() == nullptr || c.decision()->decision != "concession") return;
    OpenItems open(c);
    if (c.concessions.empty())
        return open.add(repair_state::kToConcede, "nonconformance " + c.opened->number,
                        "the purchaser's concession is missing");
    bool anyHolds = false;
    for (const Concession* concession : c.concessions)
        anyHolds = anyHolds || whyNot(*concession, c, context).empty();
    if (!anyHolds)
        for (const Concession* concession : c.concessions)
            open.add(repair_state::kToConcede, "concession " + concession->number, "%1",
                     {whyNot(*concession, c, context)});
    const auto method = methodFrom(c.opened->method);
    const auto stage = stageOf(c);
    if (c.found != nullptr && anyHolds && method && stage)
        checkExactness(c, context, open, *method, *stage);
}

}  // namespace model
