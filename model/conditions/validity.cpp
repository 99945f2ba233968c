// SPDX-License-Identifier: Apache-2.0
#include "conditions/validity.h"

#include "conditions/test_context.h"

namespace model {

std::vector<ConditionFinding> validityOf(const CastingFile& file, const ExaminationDraft& draft,
                                         const Testers& testers,
                                         const std::set<std::string>& attestedSets) {
    FindingList findings(draft, attestedSets);
    if (draft.conditions.procedureNumber.empty()) {
        findings
            .add("test conditions", Reaction::Warn, inputError("", "test conditions not stated"))
            .onlySaid = true;
        return findings.take();
    }
    if (!isDate(draft.examinedOn)) {
        findings.add("date of test", Reaction::Block,
                     draft.examinedOn.empty()
                         ? inputError("date of test", "is not stated")
                         : inputError("date of test", "\"%1\" is not a date", {draft.examinedOn}));
        return findings.take();
    }
    TestContext context{.file = file,
                        .draft = draft,
                        .testers = testers,
                        .date = draft.examinedOn,
                        .start = {},
                        .until = {}};
    checkTimes(context, findings);
    checkProcedure(context, findings);
    checkPeople(context,
                testers.evaluator.empty() ? draft.conditions.evaluatedBy : testers.evaluator,
                findings);
    const Facts facts(file, draft, findings);
    checkEquipment(context, facts, findings);
    checkConsumables(context, facts, findings);
    checkParameters(context, facts, findings);
    checkOrderLimits(context, facts, findings);
    checkSettings(context, facts, findings);
    checkCourse(context, facts, findings);
    return findings.take();
}

}  // namespace model
