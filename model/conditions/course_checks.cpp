// SPDX-License-Identifier: Apache-2.0
// When the test was made: its own times, and the order of methods on one surface.
#include "conditions/test_context.h"
#include "judge/sheet_words.h"

namespace model {
namespace {

using Is = ConditionKind;

/// A magnetic test of the same zone that was made before, or may have been.
const ExaminationDraft* magneticBefore(const TestContext& context) {
    const Examination& header = context.draft.header;
    for (const ExaminationDraft& other : context.file.examinations) {
        const bool isSame =
            other.header.method == Method::Magnetic && other.header.zone == header.zone &&
            other.header.stage == header.stage && other.header.repairCycle == header.repairCycle;
        if (!isSame || other.examinedOn > context.date) continue;
        if (isDate(other.examinedOn) && other.examinedOn == context.date) {
            const auto start = timeFrom(other.conditions.startedAt);
            if (start && context.start && *start >= *context.start) continue;
        }
        return &other;
    }
    return nullptr;
}

}  // namespace

void checkTimes(TestContext& context, FindingList& findings) {
    const TestConditions& stated = context.conditions();
    const auto end = timeFrom(stated.endedAt);
    context.start = timeFrom(stated.startedAt);
    context.until = *timeFrom(context.date + "T23:59:59Z");
    for (const std::string& text : {stated.startedAt, stated.endedAt})
        if (!text.empty() && !timeFrom(text))
            findings.add("time of test", Reaction::Block,
                         inputError("time of test",
                                    "\"%1\" is not a time such as 2026-11-25T09:30:00Z", {text}));
    if (context.start && !canBeOn(*context.start, context.date))
        findings.add("time of test", Reaction::Block,
                     inputError("time of test", "it began at %1, not on the day of the test, %2",
                                {stated.startedAt, context.date}));
    if (context.start && end && *end < *context.start)
        findings.add("time of test", Reaction::Block,
                     inputError("time of test", "it ended at %1, before it began at %2",
                                {stated.endedAt, stated.startedAt}));
    else if (end)
        context.until = *end;
}

void checkCourse(const TestContext& context, const Facts& facts, FindingList& findings) {
    if (context.draft.header.method != Method::Penetrant) return;
    const ExaminationDraft* before = magneticBefore(context);
    if (before == nullptr) return;
    forEachRule(context, facts, [&](const ConditionSet& set, const ConditionRule& rule) {
        if (rule.kind == Is::PenetrantFirst)
            findings.addByRule(
                set, rule, "",
                inputError("zone " + context.draft.header.zone,
                           "was tested by MT on %1, which may not have been after PT: particles "
                           "close openings",
                           {before->examinedOn}));
    });
}

}  // namespace model
