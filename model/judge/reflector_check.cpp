// SPDX-License-Identifier: Apache-2.0
#include "judge/reflector_check.h"

#include <algorithm>

#include "judge/spacing.h"

namespace model {
namespace {

/// What does not show cannot be judged: too little sensitivity leaves the zone open and never fails
/// it.
RuleOutcome checkTestability(const ReflectorView& view, const Rule& rule, const LevelOrder& order) {
    const bool ofHole = rule.testability == TestabilityMeasure::SmallestFbh;
    const Length wall = view.examination().thickness;
    Check check = beginCheck(rule, order);
    if (const auto& stated = view.examination().ultrasonic.testability) {
        if (ofHole && stated->smallestFbh) check.measured = stated->smallestFbh->millionths();
        if (!ofHole && stated->signalToNoise) check.measured = stated->signalToNoise->millionths();
    }
    AtRow at{rowFor(rule, order.level, wall), std::nullopt, std::nullopt,
             ofHole ? "the smallest reflector that shows is not stated"
                    : "the signal to noise is not stated"};
    if (at.row != nullptr) {
        at.limit = view.limitIn(at.row->limit, wall);
        if (!at.limit) at.reason = whyNoLimit(at.row->limit, order.level);
        if (at.limit && check.measured) {
            if (holds(Rational(*check.measured), rule.passes, *at.limit))
                at.passes = true;
            else
                at.reason = ofHole ? "a reflector as small as the table asks for does not show"
                                   : "the signal to noise is below what the table asks for";
        }
    }
    return concluded(std::move(check), rule, order, {at});
}

/// The smallest gap between two of them. What is taken only perhaps can pass but not fail, and
/// where a shape is open the gap may be smaller.
RuleOutcome checkSpacing(const ReflectorView& view, const Rule& rule, const LevelOrder& order) {
    const ClassSet classes = setOf(order.classes);
    const auto closest = [&](Certainty least, bool& open) {
        std::vector<std::size_t> findings;
        std::vector<Capsule> capsules;
        for (const std::size_t i : view.lookedAt()) {
            const ReflectorItem& item = view.items->items[i];
            if (item.group || view.takes(rule, classes, item) < least) continue;
            findings.push_back(i);
            capsules.push_back(view.zone->bundle->findings[i].capsule);
            open = open || item.openShape;
        }
        return smallestGap(*view.zone, findings, capsules);
    };
    bool open = false;
    const auto possible = closest(Certainty::Open, open);
    Check check = beginCheck(rule, order);
    const Length wall = view.examination().thickness;
    AtRow at{rowFor(rule, order.level, wall), std::nullopt, !possible.has_value(), ""};
    if (at.passes == false) at.passes = std::nullopt;
    if (possible) {
        check.measured = possible->gap.millionths();
        check.members = {view.zone->nameOf(possible->first), view.zone->nameOf(possible->second)};
    }
    if (at.row != nullptr) at.limit = view.limitIn(at.row->limit, wall);
    if (possible && at.row != nullptr && !at.limit) {
        at.reason = whyNoLimit(at.row->limit, order.level);
    } else if (possible && at.limit) {
        bool ignored = false;
        const auto certain = closest(Certainty::Yes, ignored);
        const auto stands = [&](const ClosestPair& pair) {
            return holds(Rational(pair.gap.millionths()), rule.passes, *at.limit);
        };
        if (certain && !stands(*certain))
            at.passes = false;
        else if (stands(*possible) && !open)
            at.passes = true;
        else
            at.reason = "how far they are apart is open: a length, a width or a kind is missing";
    }
    return concluded(std::move(check), rule, order, {at});
}

}  // namespace

bool isAboutClusters(const Rule& rule) {
    return rule.classes == std::vector{IndicationClass::Clustered};
}

Check beginCheck(const Rule& rule, const LevelOrder& order) {
    Check check;
    check.rule = rule.kind;
    check.key = order.key;
    check.level = order.level;
    check.classText = classText(order.classes);
    check.comparison = rule.passes;
    check.unit = unitOf(rule);
    return check;
}

RuleOutcome concluded(Check check, const Rule& rule, const LevelOrder& order,
                      const std::vector<AtRow>& rows) {
    RuleOutcome outcome;
    const AtRow* worst = nullptr;
    for (const AtRow& at : rows) {
        outcome.outside = outcome.outside || at.row == nullptr;
        if (at.row == nullptr || at.row->limit.type == Cell::Type::None) continue;
        const int severity = severityOf(at.passes);
        const bool worse = worst == nullptr || severity > severityOf(worst->passes) ||
                           (severity == severityOf(worst->passes) && at.limit && worst->limit &&
                            (rule.passes == Comparison::AtMost || rule.passes == Comparison::Less
                                 ? *at.limit < *worst->limit
                                 : *at.limit > *worst->limit));
        if (worse) worst = &at;
    }
    if (worst == nullptr) {
        if (!outcome.outside) outcome.leftOut = leftOutText(rule, order.classes, order.level);
        return outcome;
    }
    const std::string note = check.note;
    stateRow(check, rule, worst->row->limit, worst->limit);
    if (!note.empty()) check.note += (check.note.empty() ? "" : "; ") + note;
    check.passes = worst->passes;
    if (!check.passes) check.reason = worst->reason;
    outcome.check = std::move(check);
    return outcome;
}

RuleOutcome applyReflectorRule(const ReflectorView& view, const Rule& rule,
                               const LevelOrder& order) {
    if (isAboutClusters(rule)) return checkClusters(view, rule, order);
    switch (rule.kind) {
        case RuleKind::IndividualLength:
        case RuleKind::IndividualArea:
        case RuleKind::EquivalentReflector:
        case RuleKind::ThroughWallExtent:
        case RuleKind::BackWallLoss:
            return checkEachReflector(view, rule, order);
        case RuleKind::CumulativeLength:
        case RuleKind::TotalArea:
        case RuleKind::AreaShare:
        case RuleKind::Count:
            return checkReflectorSum(view, rule, order);
        case RuleKind::Testability:
            return checkTestability(view, rule, order);
        case RuleKind::Spacing:
            return checkSpacing(view, rule, order);
        default:
            break;
    }
    // Rows and maxima of surface methods: open as soon as there is anything.
    const Length wall = view.examination().thickness;
    AtRow at{rowFor(rule, order.level, wall), std::nullopt, std::nullopt,
             "the rule is for surface indications"};
    if (view.items->items.empty()) at.passes = true;
    return concluded(beginCheck(rule, order), rule, order, {at});
}

}  // namespace model
