// SPDX-License-Identifier: Apache-2.0
#include "judge/ultrasonic_coverage.h"

#include <algorithm>
#include <map>

#include "judge/recording.h"
#include "limits/words.h"
#include "surface/neighbours.h"

namespace model {
namespace {

std::string listed(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
    return text;
}

/// Whether a rule about indications looks at a class.
bool isLookedAt(const LimitTable& table, IndicationClass classified) {
    return std::ranges::any_of(table.rules, [&](const Rule& rule) {
        return rule.kind != RuleKind::Testability &&
               setOf(rule.classes).test(static_cast<std::size_t>(classified));
    });
}

/// The largest shape that a reflector with a length can have: without a width a disc of it.
Capsule largestShape(const ReflectorItem& item, const Finding& finding) {
    Capsule capsule = finding.capsule;
    if (item.openShape) {
        capsule.radius += capsule.half;
        capsule.half = 0;
    }
    return capsule;
}

/// Names of the indications that may join a neighbour with what of them was not measured.
class OpenJoins {
public:
    explicit OpenJoins(const ReflectorView& view)
        : view_(view), bundle_(*view.zone->bundle), rule_(view.table().joins) {}

    std::vector<std::string> names();

private:
    /// Whether it may join anything, however far.
    [[nodiscard]] bool isUnbounded(std::size_t finding) const {
        return view_.items->items[finding].openShape &&
               (rule_.reach != JoinRule::Reach::Constant ||
                !bundle_.findings[finding].reflector->length);
    }
    [[nodiscard]] bool areApart(std::size_t a, std::size_t b) const {
        const auto group = view_.zone->grouped->groupOf[a];
        return !group || group != view_.zone->grouped->groupOf[b];
    }
    /// Whether the zone has one that is not yet joined with it.
    [[nodiscard]] bool hasOwnApart(std::size_t finding) const;
    [[nodiscard]] bool reachesAnother(const Neighbours& neighbours, std::size_t finding) const;

    const ReflectorView& view_;
    const Bundle& bundle_;
    const JoinRule& rule_;
};

bool OpenJoins::hasOwnApart(std::size_t finding) const {
    for (std::size_t i = 0; i < bundle_.findings.size(); ++i)
        if (i != finding && areApart(i, finding) &&
            (view_.zone->isOwn(i) || view_.zone->isOwn(finding)))
            return true;
    return false;
}

bool OpenJoins::reachesAnother(const Neighbours& neighbours, std::size_t finding) const {
    bool reaches = false;
    neighbours.forEach(finding, millimetresOf(rule_.gap) + 1e-6L, [&](const Neighbour& other) {
        const bool open =
            view_.items->items[finding].openShape || view_.items->items[other.index].openShape;
        reaches = reaches || (open && areApart(finding, other.index) &&
                              holds(Rational(roundedGap(other.distance).millionths()),
                                    rule_.comparison, Rational(rule_.gap.millionths())));
    });
    return reaches;
}

std::vector<std::string> OpenJoins::names() {
    std::vector<Capsule> shapes;
    for (std::size_t i = 0; i < bundle_.findings.size(); ++i)
        shapes.push_back(largestShape(view_.items->items[i], bundle_.findings[i]));
    std::optional<Real> period;
    if (bundle_.period) period = millimetresOf(*bundle_.period);
    const Neighbours neighbours(shapes, period);
    std::vector<std::string> open;
    for (std::size_t i = 0; i < bundle_.findings.size(); ++i)
        if (isUnbounded(i) ? hasOwnApart(i)
                           : view_.zone->isOwn(i) && rule_.reach == JoinRule::Reach::Constant &&
                                 reachesAnother(neighbours, i))
            open.push_back(view_.zone->nameOf(i));
    return open;
}

}  // namespace

std::vector<std::string> uncoveredReasons(const ReflectorView& view) {
    const UltrasonicTest& test = view.examination().ultrasonic;
    std::vector<std::string> reasons;
    if (!test.testability || (!test.testability->smallestFbh && !test.testability->signalToNoise))
        reasons.emplace_back("the testability is not stated");
    if (test.directions.empty()) reasons.emplace_back("the directions of scanning are not stated");
    if (!test.deadZone)
        reasons.emplace_back("the dead zone is not stated");
    else if (*test.deadZone > Length{} && test.directions.size() == 1)
        reasons.push_back("the dead zone of " + toText(*test.deadZone) +
                          " mm is not covered by another direction");
    std::vector<std::string> unexplained;
    for (std::size_t i = 0; i < view.items->singles; ++i) {
        const Finding& finding = view.zone->bundle->findings[i];
        if (!view.zone->isOwn(i) || !finding.reflector->backWallLossExplained.empty()) continue;
        if (reachesEvaluationLoss(view.table(), *finding.reflector,
                                  wallAt(*view.zone->bundle, finding)) != Certainty::No)
            unexplained.push_back(view.zone->nameOf(i));
    }
    if (!unexplained.empty())
        reasons.push_back("a back-wall loss at the evaluation level is not explained: " +
                          listed(unexplained));
    return reasons;
}

std::vector<std::string> unjudgedReasons(const ReflectorView& view) {
    const LimitTable& table = view.table();
    std::map<IndicationClass, std::vector<std::string>> unordered;
    std::map<IndicationClass, std::vector<std::string>> unlooked;
    for (const ReflectorItem& item : view.items->items) {
        if (item.group || item.considered == Certainty::No || !view.isOwn(item)) continue;
        for (const IndicationClass classified : view.items->classes[item.findings.front()].all()) {
            if (!isOrdered(table, *view.zone->levels, classified))
                unordered[classified].push_back(view.nameOf(item));
            else if (!isLookedAt(table, classified))
                unlooked[classified].push_back(view.nameOf(item));
        }
    }
    std::vector<std::string> reasons;
    reasons.reserve(unordered.size() + unlooked.size() + 3);
    for (const auto& [classified, names] : unordered)
        reasons.push_back("no level is ordered for " + std::string(word(classified)) + ": " +
                          listed(names));
    for (const auto& [classified, names] : unlooked)
        reasons.push_back("the table has no rule for " + std::string(word(classified)) + ": " +
                          listed(names));
    const bool anyOwn = std::ranges::any_of(
        view.items->items, [&](const ReflectorItem& item) { return view.isOwn(item); });
    if (!anyOwn || view.items->singles < 2) return reasons;
    if (table.joins.known == Known::Unknown)
        reasons.emplace_back("how the table joins neighbouring indications is unknown");
    if (table.clusters.known == Known::Unknown)
        reasons.emplace_back("how the table forms clusters is unknown");
    if (table.joins.known == Known::Given)
        if (const auto open = OpenJoins(view).names(); !open.empty())
            reasons.push_back(
                "whether it joins a neighbour is open, as a length or width was not measured: " +
                listed(open));
    return reasons;
}

}  // namespace model
