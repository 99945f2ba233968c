// SPDX-License-Identifier: Apache-2.0
// Certificates, sight and permission of whoever tested and whoever evaluated, on the day of the
// test.
#include <algorithm>

#include "conditions/test_context.h"
#include "limits/words.h"

namespace model {
namespace {

using Is = ConditionKind;

/// What is wrong with a certificate on a day; empty: nothing.
std::string wrongOn(const Qualification& held, const std::string& date) {
    if (held.state == "withdrawn") return "certificate %1 is withdrawn";
    if (held.state == "interrupted") return "certificate %1 ended by a break in the work";
    if (held.state != "valid") return "the state of certificate %1 is not stated";
    if (!isDate(held.issuedOn) || !isDate(held.expiresOn))
        return "the dates of certificate %1 are not stated";
    if (held.issuedOn > date) return "certificate %1 was issued on %2, after the test on %4";
    if (held.expiresOn < date) return "certificate %1 ended on %3, before the test on %4";
    return {};
}

/// Whose rules are taken where a scheme has none of its own.
constexpr std::string_view kUsualScheme = "ISO 9712";

int levelOf(const Qualification& held) {
    return held.level == "1" ? 1 : held.level == "2" ? 2 : held.level == "3" ? 3 : 0;
}

bool containsWord(std::string text, std::string_view word) {
    std::ranges::transform(text, text.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return text.find(word) != std::string::npos;
}

bool isForSector(const Qualification& held, const ConditionRule& rule) {
    return std::ranges::any_of(
        rule.words, [&](const std::string& sector) { return containsWord(held.sector, sector); });
}

/// Whether the scheme parts certificates by sector, and this one is for another.
bool isForOtherSector(const Qualification& held) {
    const ConditionSet* set = schemeSet(held.scheme);
    return set != nullptr && std::ranges::any_of(set->rules, [&](const ConditionRule& rule) {
               return rule.kind == Is::Sector && !isForSector(held, rule);
           });
}

class PersonCheck {
public:
    PersonCheck(const TestContext& context, std::string person, FindingList& findings)
        : context_(context),
          person_(std::move(person)),
          method_(word(context.draft.header.method)),
          findings_(findings) {}

    /// The level of the certificate that holds; 0: none does.
    int check() {
        const Qualification* held = heldCertificate();
        if (held == nullptr) return 0;
        const int level = levelOf(*held);
        if (level == 0)
            findings_.add("level " + person_, Reaction::Block,
                          inputError(place(),
                                     "certificate %1 is of the level \"%2\", which there "
                                     "is not",
                                     {held->certificate, held->level}));
        const ConditionSet* set = schemeSet(held->scheme);
        if (set == nullptr) {
            set = schemeSet(kUsualScheme);
            findings_.add(
                "scheme " + person_, Reaction::Log,
                inputError(place(), "no rules are kept for the scheme %1; those of %2 are taken",
                           {held->scheme, set ? set->id : std::string()}));
        }
        if (set == nullptr) return level;
        for (const ConditionRule& rule : set->rules) {
            if (rule.kind == Is::Sight) checkSight(*set, rule);
            if (rule.kind == Is::CertificatePeriod) checkPeriod(*set, rule, *held);
            if (rule.kind == Is::Sector) checkSector(*set, rule, *held);
            if (rule.kind == Is::Authorisation) checkAuthorisation(*set, rule);
        }
        return level;
    }

private:
    [[nodiscard]] std::string place() const { return "person " + person_; }

    /// The highest that holds on the day, those for castings first; where none does, a finding
    /// about the one that ended last.
    const Qualification* heldCertificate() {
        const Qualification* best = nullptr;
        const Qualification* last = nullptr;
        for (const Qualification& held : context_.used().qualifications) {
            if (held.person != person_ || held.method != method_) continue;
            if (wrongOn(held, context_.date).empty()) {
                if (best == nullptr || rank(held) > rank(*best)) best = &held;
            } else if (last == nullptr || held.expiresOn > last->expiresOn) {
                last = &held;
            }
        }
        if (best != nullptr) return best;
        findings_.add(
            "certificate " + person_, Reaction::Block,
            last ? inputError(place(), wrongOn(*last, context_.date),
                              {last->certificate, last->issuedOn, last->expiresOn, context_.date})
                 : inputError(place(), "no certificate for %1 is in the register", {method_}));
        return nullptr;
    }

    static std::pair<bool, int> rank(const Qualification& held) {
        return {!isForOtherSector(held), levelOf(held)};
    }

    void checkSight(const ConditionSet& set, const ConditionRule& rule) {
        const EyeTest* last = nullptr;
        for (const EyeTest& test : context_.used().eyeTests)
            if (test.person == person_ && test.kind == rule.check && isDate(test.testedOn) &&
                test.testedOn <= context_.date &&
                (last == nullptr || test.testedOn >= last->testedOn))
                last = &test;
        const auto say = [&](std::string reason, std::vector<std::string> arguments) {
            ConditionFinding& finding = findings_.addByRule(
                set, rule, person_, inputError(place(), std::move(reason), std::move(arguments)));
            finding.limit = "every " + rule.every->text();
            if (last) finding.measured = last->testedOn;
        };
        if (last == nullptr)
            return say("no eye test of %1 before the test on %2 is in the register",
                       {rule.check, context_.date});
        if (last->result != "passed" && last->result != "passed with glasses")
            return say("the eye test of %1 on %2 was not passed", {rule.check, last->testedOn});
        const std::string holdsUntil = monthsAfter(last->testedOn, rule.every->count);
        if (holdsUntil < context_.date)
            say("the eye test of %1 on %2 held until %3; the test was on %4",
                {rule.check, last->testedOn, holdsUntil, context_.date});
    }

    void checkPeriod(const ConditionSet& set, const ConditionRule& rule,
                     const Qualification& held) {
        const std::string latest = monthsAfter(held.issuedOn, rule.every->count);
        if (held.expiresOn <= latest) return;
        ConditionFinding& finding = findings_.addByRule(
            set, rule, person_,
            inputError(place(), "certificate %1, issued on %2, is said to hold until %3",
                       {held.certificate, held.issuedOn, held.expiresOn}));
        finding.measured = held.expiresOn;
        finding.limit = "<= " + latest;
    }

    void checkSector(const ConditionSet& set, const ConditionRule& rule,
                     const Qualification& held) {
        if (isForSector(held, rule)) return;
        ConditionFinding& finding = findings_.addByRule(
            set, rule, person_,
            held.sector.empty()
                ? inputError(place(), "certificate %1 does not say for which sector it holds",
                             {held.certificate})
                : inputError(place(), "certificate %1 holds for the sector %2",
                             {held.certificate, held.sector}));
        finding.measured = held.sector;
        finding.limit = listOf(rule.words);
    }

    void checkAuthorisation(const ConditionSet& set, const ConditionRule& rule) {
        const std::string& procedure = context_.conditions().procedureNumber;
        const Authorisation* other = nullptr;
        for (const Authorisation& given : context_.used().authorisations) {
            if (given.person != person_ || given.method != method_) continue;
            other = &given;
            const auto procedures = itemsOf(given.procedures);
            const bool isFor = procedures.empty() || std::ranges::count(procedures, procedure) > 0;
            if (isFor && given.state == "valid" && isDate(given.grantedOn) &&
                given.grantedOn <= context_.date &&
                (given.until.empty() || (isDate(given.until) && given.until >= context_.date)))
                return;
        }
        findings_.addByRule(
            set, rule, person_,
            other ? inputError(place(),
                               "the employer's permission to test by procedure %1 did not hold on "
                               "%2",
                               {procedure, context_.date})
                  : inputError(place(), "the employer's permission for %1 is not in the register",
                               {method_}));
    }

    const TestContext& context_;
    std::string person_;
    std::string method_;
    FindingList& findings_;
};

}  // namespace

void checkPeople(const TestContext& context, const std::string& evaluator, FindingList& findings) {
    const std::string& examiner = context.testers.examiner;
    if (examiner.empty()) {
        findings.add("examiner", Reaction::Block,
                     inputError("people", "who made the test is not stated"));
        return;
    }
    const int level = PersonCheck(context, examiner, findings).check();
    if (!evaluator.empty() && evaluator != examiner) {
        if (PersonCheck(context, evaluator, findings).check() == 1)
            findings.add(
                "evaluator level", Reaction::Block,
                inputError("person " + evaluator, "is of Level 1; evaluating needs Level 2 or 3"));
    } else if (level == 1) {
        findings.add("evaluator", Reaction::Block,
                     inputError("person " + examiner,
                                "is of Level 1; a person of Level 2 or 3 has to evaluate, and "
                                "none is named"));
    }
    const std::string& ordered = context.file.order.terms.operatorLevel;
    if (ordered.empty() || level == 0) return;
    const int least = ordered == "1" ? 1 : ordered == "2" ? 2 : ordered == "3" ? 3 : 4;
    if (level >= least) return;
    ConditionFinding& finding =
        findings.add("ordered level " + examiner, Reaction::Block,
                     inputError("order " + context.file.order.number,
                                "asks for an examiner of Level %1; %2 is of Level %3",
                                {ordered, examiner, std::to_string(level)}));
    finding.measured = "Level " + std::to_string(level);
    finding.limit = ">= Level " + ordered;
}

}  // namespace model
