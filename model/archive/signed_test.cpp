// SPDX-License-Identifier: Apache-2.0
#include "archive/signed_test.h"

#include <algorithm>

#include "archive/holdings_store.h"
#include "conditions/condition_set.h"
#include "limits/words.h"

namespace model {
namespace {

/// The sets that the procedure of the test and its technique sheet name, and those about people.
std::vector<UsedConditionSet> setsOf(const SignedTest& test,
                                     const std::set<std::string>& attested) {
    const TestConditions& conditions = test.conditions;
    std::set<std::string> ids;
    for (const Procedure& procedure : test.used.procedures) {
        const bool isNamed = (procedure.number == conditions.procedureNumber &&
                              procedure.revision == conditions.procedureRevision) ||
                             (procedure.number == conditions.sheetNumber &&
                              procedure.revision == conditions.sheetRevision);
        if (!isNamed) continue;
        for (std::string& id : itemsOf(procedure.conditionSets)) ids.insert(std::move(id));
        if (!procedure.driftRule.empty()) ids.insert(procedure.driftRule);
    }
    for (const Qualification& held : test.used.qualifications)
        if (const ConditionSet* set = schemeSet(held.scheme)) ids.insert(set->id);
    std::vector<UsedConditionSet> sets;
    for (const std::string& id : ids)
        if (const ConditionSet* set = conditionSet(id))
            sets.push_back({set->id, set->revision, set->digest, attested.contains(set->digest)});
    return sets;
}

void addText(Canonical::Object& object, const char* key, const std::string& text) {
    if (!text.empty()) object[key] = text;
}

Canonical::Object canonicalOf(const ConditionFinding& finding) {
    Canonical::Object object;
    object["id"] = finding.id;
    object["reaction"] = word(finding.reaction);
    addText(object, "place", finding.reason.place);
    object["reason"] = finding.reason.reason;
    Canonical::Array arguments;
    for (const std::string& argument : finding.reason.arguments) arguments.emplace_back(argument);
    if (!arguments.empty()) object["arguments"] = std::move(arguments);
    addText(object, "measured", finding.measured);
    addText(object, "limit", finding.limit);
    if (!finding.source.locator.empty()) {
        object["locator"] = finding.source.locator;
        object["grade"] = word(finding.source.grade);
    }
    addText(object, "acknowledged", finding.acknowledged);
    addText(object, "acknowledged_by", finding.acknowledgedBy);
    if (finding.onlySaid) object["only_said"] = true;
    return object;
}

std::string textOf(const Canonical& object, const char* key) {
    const Canonical* member = object.member(key);
    return member && member->text() ? *member->text() : std::string();
}

std::optional<Reaction> reactionFrom(const std::string& text) {
    for (const Reaction reaction : {Reaction::Log, Reaction::Warn, Reaction::Block})
        if (text == word(reaction)) return reaction;
    return std::nullopt;
}

std::optional<ConditionFinding> findingFrom(const Canonical& object) {
    ConditionFinding finding;
    finding.id = textOf(object, "id");
    const auto reaction = reactionFrom(textOf(object, "reaction"));
    if (!reaction) return std::nullopt;
    finding.reaction = *reaction;
    finding.reason.place = textOf(object, "place");
    finding.reason.reason = textOf(object, "reason");
    if (const Canonical* arguments = object.member("arguments"); arguments && arguments->array())
        for (const Canonical& argument : *arguments->array())
            finding.reason.arguments.push_back(argument.text() ? *argument.text() : "");
    finding.measured = textOf(object, "measured");
    finding.limit = textOf(object, "limit");
    finding.source.locator = textOf(object, "locator");
    if (!finding.source.locator.empty()) {
        const auto grade = gradeFrom(textOf(object, "grade"));
        if (!grade) return std::nullopt;
        finding.source.grade = *grade;
    }
    finding.acknowledged = textOf(object, "acknowledged");
    finding.acknowledgedBy = textOf(object, "acknowledged_by");
    const Canonical* onlySaid = object.member("only_said");
    finding.onlySaid = onlySaid && onlySaid->truth() && *onlySaid->truth();
    return finding;
}

Canonical::Object canonicalOf(const UsedConditionSet& set) {
    Canonical::Object object;
    object["id"] = set.id;
    object["revision"] = set.revision;
    object["sha256"] = set.digest;
    object["attested"] = set.attested;
    return object;
}

std::optional<UsedConditionSet> setFrom(const Canonical& object) {
    const Canonical* revision = object.member("revision");
    const Canonical* attested = object.member("attested");
    if (!revision || !revision->whole() || !attested || !attested->truth()) return std::nullopt;
    return UsedConditionSet{textOf(object, "id"), static_cast<int>(*revision->whole()),
                            textOf(object, "sha256"), *attested->truth()};
}

/// Empty where the content has no such member; none where an element is not understood.
template <class T>
std::optional<std::vector<T>> listIn(const Canonical& content, const char* key,
                                     std::optional<T> (*from)(const Canonical&)) {
    std::vector<T> list;
    const Canonical* member = content.member(key);
    if (!member) return list;
    if (!member->array()) return std::nullopt;
    for (const Canonical& element : *member->array()) {
        auto one = from(element);
        if (!one) return std::nullopt;
        list.push_back(std::move(*one));
    }
    return list;
}

Canonical::Object objectIn(const Canonical& content, const char* key) {
    const Canonical* member = content.member(key);
    return member && member->object() ? *member->object() : Canonical::Object();
}

}  // namespace

Result<SignedTest> testNow(const Connection& connection, const CastingFile& file,
                           const ExaminationDraft& draft, const std::string& examiner) {
    SignedTest test;
    test.conditions = draft.conditions;
    test.testers = {examiner, draft.conditions.evaluatedBy};
    auto used = loadUsed(connection, {draft}, {examiner});
    if (!used) return used.error();
    const auto attested = attestedConditionSets(connection);
    if (!attested) return attested.error();
    CastingFile then = file;
    then.used = *used;
    test.used = std::move(*used);
    test.sets = setsOf(test, *attested);
    const auto same = std::ranges::find(then.examinations, draft.id, &ExaminationDraft::id);
    if (same != then.examinations.end())
        *same = draft;
    else
        then.examinations.push_back(draft);
    test.findings = validityOf(then, draft, test.testers, *attested);
    return test;
}

void addTo(Canonical::Object& content, const SignedTest& test) {
    if (auto conditions = canonicalOf(test.conditions); !conditions.empty())
        content["conditions"] = std::move(conditions);
    Canonical::Object testers;
    addText(testers, "examiner", test.testers.examiner);
    addText(testers, "evaluator", test.testers.evaluator);
    content["testers"] = std::move(testers);
    if (auto used = canonicalOf(test.used); !used.empty()) content["used"] = std::move(used);
    Canonical::Array sets;
    for (const UsedConditionSet& set : test.sets) sets.emplace_back(canonicalOf(set));
    if (!sets.empty()) content["condition_sets"] = std::move(sets);
    Canonical::Array findings;
    for (const ConditionFinding& finding : test.findings)
        findings.emplace_back(canonicalOf(finding));
    if (!findings.empty()) content["findings"] = std::move(findings);
}

std::optional<SignedTest> signedTestFrom(const Canonical& content) {
    auto conditions = testConditionsFrom(objectIn(content, "conditions"));
    auto used = holdingsFrom(objectIn(content, "used"));
    auto sets = listIn<UsedConditionSet>(content, "condition_sets", setFrom);
    auto findings = listIn<ConditionFinding>(content, "findings", findingFrom);
    if (!conditions || !used || !sets || !findings) return std::nullopt;
    const Canonical testers = objectIn(content, "testers");
    return SignedTest{std::move(*conditions),
                      {textOf(testers, "examiner"), textOf(testers, "evaluator")},
                      std::move(*used),
                      std::move(*sets),
                      std::move(*findings)};
}

}  // namespace model
