// SPDX-License-Identifier: Apache-2.0
// The written procedure and the technique sheet, as they were on the day of the test.
#include <algorithm>

#include "conditions/test_context.h"
#include "limits/words.h"

namespace model {
namespace {

std::string nameOf(const std::string& number, const std::string& revision) {
    return number + " / " + revision;
}

class ProcedureCheck {
public:
    ProcedureCheck(const TestContext& context, const Procedure& entry, std::string place,
                   std::string id, FindingList& findings)
        : context_(context),
          entry_(entry),
          place_(std::move(place)),
          id_(std::move(id)),
          findings_(findings) {}

    void check() {
        const std::string method(word(context_.draft.header.method));
        if (entry_.method != method)
            block("method", "is for %1, not for %2", {entry_.method, method});
        checkApproval();
        checkRevision();
    }

private:
    void block(const std::string& what, std::string reason, std::vector<std::string> arguments) {
        findings_.add(id_ + " " + what, Reaction::Block,
                      inputError(place_, std::move(reason), std::move(arguments)));
    }

    void checkApproval() {
        if (entry_.approvedBy.empty() || entry_.approvedOn.empty())
            block("approval", "is not approved", {});
        else if (!isDate(entry_.approvedOn))
            block("approval", "was approved on \"%1\", which is no date", {entry_.approvedOn});
        else if (entry_.approvedOn > context_.date)
            block("approval", "was approved on %1, after the test on %2",
                  {entry_.approvedOn, context_.date});
    }

    void checkRevision() {
        std::string reason;
        std::vector<std::string> arguments;
        if (!entry_.obsoleteFrom.empty() && !isDate(entry_.obsoleteFrom)) {
            block("revision", "is obsolete from \"%1\", which is no date", {entry_.obsoleteFrom});
        } else if (!entry_.obsoleteFrom.empty() && entry_.obsoleteFrom <= context_.date) {
            reason = "is obsolete from %1 on; the test was on %2";
            arguments = {entry_.obsoleteFrom, context_.date};
        } else if (entry_.state == "obsolete" && entry_.obsoleteFrom.empty()) {
            reason = "is obsolete, and since when is not stated";
        } else if (const Procedure* later = laterRevision()) {
            reason = "revision %1 was in force on the day of the test, since %2";
            arguments = {later->revision, later->approvedOn};
        }
        if (reason.empty()) return;
        const bool isFixed = std::ranges::count(itemsOf(context_.file.order.terms.fixedProcedures),
                                                nameOf(entry_.number, entry_.revision)) > 0;
        if (isFixed) {
            arguments.push_back(context_.file.order.number);
            reason += "; order %" + std::to_string(arguments.size()) + " fixes this revision";
        }
        findings_.add(id_ + " revision", isFixed ? Reaction::Log : Reaction::Block,
                      inputError(place_, std::move(reason), std::move(arguments)));
    }

    /// Another revision that was approved later, and was in force.
    [[nodiscard]] const Procedure* laterRevision() const {
        const Procedure* later = nullptr;
        for (const Procedure& other : context_.used().procedures) {
            const bool isInForce =
                isDate(other.approvedOn) && other.approvedOn <= context_.date &&
                !other.approvedBy.empty() &&
                (other.state == "current" || !other.obsoleteFrom.empty()) &&
                (other.obsoleteFrom.empty() || other.obsoleteFrom > context_.date);
            if (other.number == entry_.number && other.revision != entry_.revision && isInForce &&
                other.approvedOn > entry_.approvedOn &&
                (later == nullptr || other.approvedOn > later->approvedOn))
                later = &other;
        }
        return later;
    }

    const TestContext& context_;
    const Procedure& entry_;
    std::string place_;
    std::string id_;
    FindingList& findings_;
};

const Procedure* find(const TestContext& context, const std::string& number,
                      const std::string& revision, const char* id, FindingList& findings) {
    const auto& procedures = context.used().procedures;
    const auto found = std::ranges::find_if(procedures, [&](const Procedure& entry) {
        return entry.number == number && entry.revision == revision;
    });
    if (found != procedures.end()) return &*found;
    findings.add(id, Reaction::Block,
                 revision.empty()
                     ? inputError(std::string(id) + " " + number, "its revision is not stated")
                     : inputError(std::string(id) + " " + nameOf(number, revision),
                                  "is not in the register"));
    return nullptr;
}

void checkSheet(TestContext& context, FindingList& findings) {
    const TestConditions& stated = context.conditions();
    if (stated.sheetNumber.empty()) return;
    context.sheet =
        find(context, stated.sheetNumber, stated.sheetRevision, "technique sheet", findings);
    if (context.sheet == nullptr) return;
    const Procedure& sheet = *context.sheet;
    const std::string place = "technique sheet " + nameOf(sheet.number, sheet.revision);
    const std::string wanted = nameOf(stated.procedureNumber, stated.procedureRevision);
    if (sheet.kind != "technique sheet")
        findings.add("technique sheet kind", Reaction::Block,
                     inputError(place, "is a %1, not a technique sheet", {sheet.kind}));
    else if (sheet.parentProcedure != wanted)
        findings.add("technique sheet procedure", Reaction::Block,
                     sheet.parentProcedure.empty()
                         ? inputError(place, "does not say to which procedure it belongs")
                         : inputError(place, "belongs to procedure %1, not to %2",
                                      {sheet.parentProcedure, wanted}));
    ProcedureCheck(context, sheet, place, "technique sheet", findings).check();
}

void addSet(TestContext& context, const std::string& id, FindingList& findings) {
    const ConditionSet* set = conditionSet(id);
    const Method method = context.draft.header.method;
    if (set == nullptr) {
        findings.add("conditions " + id, Reaction::Block,
                     inputError("procedure " + context.procedure->number,
                                "names the condition set \"%1\", which there is not", {id}));
    } else if (std::ranges::count(set->methods, method) == 0) {
        findings.add("conditions " + id, Reaction::Block,
                     inputError("procedure " + context.procedure->number,
                                "names the condition set \"%1\", which is not for %2",
                                {id, std::string(word(method))}));
    } else if (std::ranges::count(context.sets, set) == 0) {
        context.sets.push_back(set);
    }
}

void findSets(TestContext& context, FindingList& findings) {
    std::string drift;
    for (const Procedure* entry : {context.procedure, context.sheet}) {
        if (entry == nullptr) continue;
        for (const std::string& id : itemsOf(entry->conditionSets)) addSet(context, id, findings);
        if (entry->driftRule.empty()) continue;
        drift = entry->driftRule;
        context.driftNamedBy = entry;
    }
    if (context.sets.empty())
        findings.add("conditions", Reaction::Warn,
                     inputError("procedure " + context.procedure->number,
                                "names no set of condition limits to compare with"));
    if (context.draft.header.method != Method::Ultrasonic) return;
    if (drift.empty()) {
        findings.add("drift rule", Reaction::Warn,
                     inputError("procedure " + context.procedure->number,
                                "does not say what follows from a drifted setting"));
        return;
    }
    addSet(context, drift, findings);
    context.drift = conditionSet(drift);
    if (context.drift == nullptr || context.drift->hasDrift()) return;
    findings.add("drift rule", Reaction::Block,
                 inputError("procedure " + context.procedure->number,
                            "names \"%1\" for drift, which says nothing of it", {drift}));
    context.drift = nullptr;
}

}  // namespace

void checkProcedure(TestContext& context, FindingList& findings) {
    const TestConditions& stated = context.conditions();
    context.procedure =
        find(context, stated.procedureNumber, stated.procedureRevision, "procedure", findings);
    if (context.procedure == nullptr) return;
    const Procedure& procedure = *context.procedure;
    const std::string place = "procedure " + nameOf(procedure.number, procedure.revision);
    ProcedureCheck(context, procedure, place, "procedure", findings).check();
    checkSheet(context, findings);
    if (!stated.testStandard.empty() &&
        std::ranges::count(itemsOf(procedure.standards), stated.testStandard) == 0)
        findings.add(
            "test standard", Reaction::Warn,
            inputError(place, "does not name the test standard %1", {stated.testStandard}));
    if (!stated.deviations.empty() && stated.deviationsAgreed.empty())
        findings.add("deviations", Reaction::Warn,
                     inputError(place, "was deviated from, and who agreed is not stated"));
    findSets(context, findings);
}

}  // namespace model
