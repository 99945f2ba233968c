// SPDX-License-Identifier: Apache-2.0
#include "judge/reflector_view.h"

#include <algorithm>
#include <numeric>

namespace model {
namespace {

Certainty triedAs(const ClassChoices& choices, Kind kind, const ClassSet& classes) {
    const auto as = std::ranges::find(choices.kinds, kind, &ClassChoices::AsKind::kind);
    return (as->classes & classes).any() ? Certainty::Yes : Certainty::No;
}

}  // namespace

const GroupTallies::Tally& GroupTallies::of(const ReflectorItems& items, const ClassSet& classes,
                                            const ReflectorItem& group) {
    const auto [known, isNew] = known_.try_emplace(classes.to_ulong());
    std::vector<Tally>& tallies = known->second;
    if (isNew) {
        for (std::size_t i = items.singles; i < items.items.size(); ++i) {
            Tally& tally = tallies.emplace_back();
            for (const std::size_t finding : items.items[i].findings) {
                if (items.considered[finding] == Certainty::No) continue;
                const Certainty here = items.classes[finding].within(classes);
                if (here == Certainty::Yes) ++tally.certain;
                if (here == Certainty::Open) ++tally.perhaps;
            }
        }
    }
    return tallies[*group.group];
}

std::vector<std::size_t> ReflectorView::lookedAt() const {
    if (trial) {
        const auto group = zone->grouped->groupOf[trial->finding];
        if (!group) return {trial->finding};
        return {trial->finding, items->singles + *group};
    }
    std::vector<std::size_t> all(items->items.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    return all;
}

bool ReflectorView::isOwn(const ReflectorItem& item) const {
    if (trial) return true;  // only what lies in the zone is tried
    return std::ranges::any_of(item.findings, [&](std::size_t f) { return zone->isOwn(f); });
}

std::string ReflectorView::nameOf(const ReflectorItem& item) const {
    return item.group ? zone->grouped->groups[*item.group].id : zone->nameOf(item.findings.front());
}

Certainty ReflectorView::triedWithin(const ClassSet& classes, const ReflectorItem& group) const {
    GroupTallies::Tally tally = tallies->of(*items, classes, group);
    const ClassChoices& choices = items->classes[trial->finding];
    if (items->considered[trial->finding] != Certainty::No) {
        const Certainty untried = choices.within(classes);
        if (untried == Certainty::Yes) --tally.certain;
        if (untried == Certainty::Open) --tally.perhaps;
        if (triedAs(choices, trial->kind, classes) == Certainty::Yes) ++tally.certain;
    }
    if (tally.certain > 0) return Certainty::Yes;
    return tally.perhaps > 0 ? Certainty::Open : Certainty::No;
}

Certainty ReflectorView::within(const ClassSet& classes, const ReflectorItem& item) const {
    if (trial && item.group) return triedWithin(classes, item);
    Certainty best = Certainty::No;
    for (const std::size_t finding : item.findings) {
        if (items->considered[finding] == Certainty::No) continue;
        const ClassChoices& choices = items->classes[finding];
        Certainty here = choices.within(classes);
        if (trial)
            here = triedAs(choices, trial->kind, classes);
        else if (here == Certainty::Open && failsAsEach.contains(finding))
            here = Certainty::Yes;
        best = std::max(best, here);
    }
    return best;
}

Certainty ReflectorView::takes(const Rule& rule, const ClassSet& classes,
                               const ReflectorItem& item) const {
    if (item.considered == Certainty::No) return Certainty::No;
    const bool counts = rule.kind == RuleKind::Count || rule.kind == RuleKind::CountAtMaximum;
    const Certainty considered = counts ? item.considered : Certainty::Yes;
    return std::min(
        {considered, within(classes, item), conditionsHold(rule.conditions, item.measured)});
}

std::optional<Area> ReflectorView::examinedArea() const {
    if (!examination().ultrasonic.zoneArea) return std::nullopt;
    Area examined = *examination().ultrasonic.zoneArea;
    for (const NotExamined& left : examination().notExamined) examined = examined - left.area;
    if (examined <= Area{}) return std::nullopt;
    return examined;
}

int severityOf(const std::optional<bool>& passes) {
    if (!passes) return 1;
    return *passes ? 0 : 2;
}

std::optional<bool> passesAs(Certainty taken, Extent measured, Comparison comparison,
                             Rational limit) {
    const Certainty holding =
        holdsFor({Rational(measured.atLeast), measured.exact}, comparison, limit);
    if (holding == Certainty::Yes) return true;
    if (holding == Certainty::No && taken == Certainty::Yes) return false;
    return std::nullopt;
}

}  // namespace model
