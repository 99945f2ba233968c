// SPDX-License-Identifier: Apache-2.0
#include "judge/reflector_view.h"

#include <algorithm>
#include <numeric>

namespace model {

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
    return std::ranges::any_of(item.findings, [&](std::size_t f) { return zone->isOwn(f); });
}

std::string ReflectorView::nameOf(const ReflectorItem& item) const {
    return item.group ? zone->grouped->groups[*item.group].id : zone->nameOf(item.findings.front());
}

Certainty ReflectorView::within(const ClassSet& classes, const ReflectorItem& item) const {
    Certainty best = Certainty::No;
    for (const std::size_t finding : item.findings) {
        if (items->considered[finding] == Certainty::No) continue;
        const ClassChoices& choices = items->classes[finding];
        Certainty here = choices.within(classes);
        if (trial && trial->finding == finding) {
            const auto as =
                std::ranges::find(choices.kinds, trial->kind, &ClassChoices::AsKind::kind);
            here = (as->classes & classes).any() ? Certainty::Yes : Certainty::No;
        } else if (here == Certainty::Open && failsAsEach.contains(finding)) {
            here = Certainty::Yes;
        }
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
