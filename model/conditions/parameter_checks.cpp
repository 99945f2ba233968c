// SPDX-License-Identifier: Apache-2.0
// Rules on what was measured or stated.
#include <algorithm>
#include <map>

#include "conditions/test_context.h"
#include "limits/words.h"

namespace model {
namespace {

using Is = ConditionKind;

std::string labelOf(std::string_view key) {
    const Parameter* known = parameter(key);
    return std::string(known ? known->label : key);
}

std::string boundText(Comparison comparison, const std::string& limit) {
    return std::string(word(comparison)) + " " + limit;
}

std::string listed(const std::vector<std::string>& words) {
    std::string list;
    for (const std::string& each : words) list += (list.empty() ? "" : ", ") + each;
    return list;
}

class ParameterRule {
public:
    ParameterRule(const ConditionSet& set, const ConditionRule& rule, const Facts& facts,
                  FindingList& findings)
        : set_(set), rule_(rule), facts_(facts), findings_(findings) {}

    void check() {
        // What cannot be read is a finding of its own.
        if (facts_.isUnreadable(rule_.parameter)) return;
        switch (rule_.kind) {
            case Is::Limit:
                limit_ = boundText(rule_.comparison, rule_.limit->text());
                return eachFact([&](const Fact& fact) {
                    return surelyHolds(*fact.number, rule_.comparison, *rule_.limit);
                });
            case Is::Stated:
                return eachFact([](const Fact&) { return true; });
            case Is::OneOf:
                limit_ = listed(rule_.words);
                return eachFact([&](const Fact& fact) {
                    return std::ranges::count(rule_.words, fact.text) > 0;
                });
            case Is::Compare:
                return compare();
            case Is::Same:
                return same();
            case Is::Elapsed:
                limit_ = boundText(rule_.comparison, rule_.limit->text());
                return elapsed();
            default:
                return;
        }
    }

private:
    template <class Holds>
    void eachFact(Holds holds) {
        const auto& facts = facts_.of(rule_.parameter);
        if (facts.empty()) return missing(rule_.parameter, "");
        // One finding, with the value that is farthest from the limit in the order of entry; the
        // places of all.
        const Fact* failed = nullptr;
        for (const Fact& fact : facts) {
            if (fact.text.empty()) {
                missing(rule_.parameter, fact.place);
            } else if (!holds(fact) && (failed == nullptr || isWorse(fact, *failed))) {
                failed = &fact;
            }
        }
        if (failed == nullptr) return;
        std::string where = labelOf(rule_.parameter);
        if (!failed->place.empty()) where += ", " + failed->place;
        ConditionFinding& finding = findings_.addByRule(
            set_, rule_, "",
            inputError(std::move(where), "is %1; it has to be %2", {failed->text, limit_}));
        finding.measured = failed->text;
        finding.limit = limit_;
    }

    [[nodiscard]] bool isWorse(const Fact& fact, const Fact& than) const {
        if (!fact.number || !than.number) return false;
        const bool wantsMore =
            rule_.comparison == Comparison::AtLeast || rule_.comparison == Comparison::More;
        return surelyHolds(*fact.number, wantsMore ? Comparison::Less : Comparison::More,
                           *than.number);
    }

    void missing(const std::string& key, const std::string& place) {
        if (rule_.ifStated) return;
        std::string where = labelOf(key);
        if (!place.empty()) where += ", " + place;
        ConditionFinding& finding = findings_.addByRule(
            set_, rule_, place,
            limit_.empty()
                ? inputError(std::move(where), "is not stated")
                : inputError(std::move(where), "is not stated; it has to be %1", {limit_}));
        finding.limit = limit_;
    }

    void compare() {
        if (facts_.of(rule_.second).empty() || facts_.isUnreadable(rule_.second)) return;
        for (const Fact& bound : facts_.of(rule_.second)) {
            limit_ = boundText(rule_.comparison, bound.text);
            eachFact([&](const Fact& fact) {
                return surelyHolds(*fact.number, rule_.comparison, *bound.number);
            });
        }
    }

    void same() {
        const auto& first = facts_.of(rule_.parameter);
        const auto& second = facts_.of(rule_.second);
        if (first.empty()) return missing(rule_.parameter, "");
        if (second.empty()) return missing(rule_.second, "");
        for (const Fact& one : first)
            for (const Fact& other : second)
                if (one.text != other.text) {
                    ConditionFinding& finding = findings_.addByRule(
                        set_, rule_, "",
                        inputError(labelOf(rule_.parameter), "is %1, but %2 is %3",
                                   {one.text, labelOf(rule_.second), other.text}));
                    finding.measured = one.text;
                    finding.limit = other.text;
                    return;
                }
    }

    void elapsed() {
        if (facts_.isUnreadable(rule_.second)) return;
        if (facts_.of(rule_.second).empty()) return missing(rule_.second, "");
        eachFactAgainstSecond();
    }

    void eachFactAgainstSecond() {
        const auto& from = facts_.of(rule_.second);
        const auto& until = facts_.of(rule_.parameter);
        if (until.empty()) return missing(rule_.parameter, "");
        for (const Fact& begun : from)
            for (const Fact& ended : until) {
                const auto seconds = (*ended.moment - *begun.moment).count();
                const auto passed =
                    ConditionValue::read(std::to_string(seconds), "s", Dimension::Time);
                if (passed && seconds >= 0 && surelyHolds(*passed, rule_.comparison, *rule_.limit))
                    continue;
                ConditionFinding& finding =
                    findings_.addByRule(set_, rule_, "",
                                        inputError(labelOf(rule_.parameter),
                                                   "is %1, %2 s after %3 (%4); it has to be %5",
                                                   {ended.text, std::to_string(seconds),
                                                    labelOf(rule_.second), begun.text, limit_}));
                finding.measured = std::to_string(seconds) + " s";
                finding.limit = limit_;
                return;
            }
    }

    const ConditionSet& set_;
    const ConditionRule& rule_;
    const Facts& facts_;
    FindingList& findings_;
    std::string limit_;
};

}  // namespace

void checkParameters(const TestContext& context, const Facts& facts, FindingList& findings) {
    // What leaves open whether rules hold is said once, as gravely as the gravest of them.
    std::map<std::string, Reaction> open;
    for (const ConditionSet* set : context.sets) {
        for (const ConditionRule& rule : set->rules) {
            std::string missing;
            const Applies state = applies(rule, facts, missing);
            if (state == Applies::Yes) ParameterRule(*set, rule, facts, findings).check();
            if (state != Applies::Unknown) continue;
            const auto [at, isNew] = open.emplace(missing, findings.reactionOf(*set, rule));
            if (!isNew) at->second = std::max(at->second, findings.reactionOf(*set, rule));
        }
    }
    for (const auto& [key, reaction] : open)
        findings.add("not stated " + key, reaction,
                     inputError(labelOf(key), "is not stated; limits depend on it"));
}

void checkOrderLimits(const TestContext& context, const Facts& facts, FindingList& findings) {
    const std::string& ordered = context.file.order.terms.residualField;
    if (context.draft.header.method != Method::Magnetic || ordered.empty()) return;
    const std::string place = "order " + context.file.order.number;
    const auto limit = ConditionValue::read(ordered, "kA/m", Dimension::MagneticField);
    if (!limit) {
        Error error = limit.error();
        error.place = place + ", residual field";
        findings.add("ordered residual field", Reaction::Block, std::move(error));
        return;
    }
    const std::string wanted = boundText(Comparison::AtMost, limit->text());
    const auto& readings = facts.of("residual_field");
    const Fact* failed = nullptr;
    for (const Fact& fact : readings)
        if (!surelyHolds(*fact.number, Comparison::AtMost, *limit) &&
            (failed == nullptr || surelyHolds(*fact.number, Comparison::More, *failed->number)))
            failed = &fact;
    if (!readings.empty() && failed == nullptr) return;
    ConditionFinding& finding = findings.add(
        "ordered residual field", Reaction::Block,
        failed
            ? inputError(place, "the residual field is %1; it has to be %2", {failed->text, wanted})
            : inputError(place, "the residual field is not measured; it has to be %1", {wanted}));
    finding.limit = wanted;
    if (failed) finding.measured = failed->text;
}

}  // namespace model
