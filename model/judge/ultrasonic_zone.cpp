// SPDX-License-Identifier: Apache-2.0
#include "judge/ultrasonic_zone.h"

#include <algorithm>

#include "judge/ultrasonic_coverage.h"
#include "limits/words.h"

namespace model {
namespace {

/// Every class that some of a group's members may have.
std::vector<IndicationClass> classesOf(const ReflectorItems& items, const FindingGroup& group) {
    ClassChoices together;
    for (const std::size_t finding : group.findings)
        together.kinds.insert(together.kinds.end(), items.classes[finding].kinds.begin(),
                              items.classes[finding].kinds.end());
    return together.all();
}

std::string openText(const std::vector<IndicationClass>& classes) {
    return classes.size() > 1 ? orText(classes) : std::string();
}

}  // namespace

UltrasonicZone::UltrasonicZone(const ZoneView& zone, const ReflectorItems& items)
    : zone_(zone), items_(items), ordered_(viewAt(zone)) {}

ReflectorView UltrasonicZone::viewAt(const ZoneView& zone) const {
    ReflectorView view{&zone, &items_, {}, std::nullopt};
    GroupTallies tallies;
    ReflectorView trial = view;
    trial.tallies = &tallies;
    for (std::size_t i = 0; i < items_.singles; ++i)
        if (zone.isOwn(i) && items_.classes[i].kinds.size() > 1 && failsAsEach(trial, i))
            view.failsAsEach.insert(i);
    return view;
}

bool UltrasonicZone::failsAsEach(ReflectorView& trial, std::size_t finding) const {
    if (items_.considered[finding] == Certainty::No) return false;
    const auto failsAs = [&](const ClassChoices::AsKind& choice) {
        trial.trial = KindTrial{finding, choice.kind};
        for (const Rule& rule : trial.table().rules) {
            if (rule.kind == RuleKind::Testability || isAboutClusters(rule)) continue;
            for (const LevelOrder& order : ordersOf(trial.table(), *trial.zone->levels, rule)) {
                const RuleOutcome outcome = applyReflectorRule(trial, rule, order);
                if (outcome.check && outcome.check->passes == false) return true;
            }
        }
        return false;
    };
    return std::ranges::all_of(items_.classes[finding].kinds, failsAs);
}

void UltrasonicZone::listIndications(ExaminationVerdict& verdict) const {
    for (const Reflector& reflector : zone_.examination().reflectors)
        verdict.indications.push_back({reflector.id, std::nullopt, false, ""});
    for (std::size_t i = 0; i < items_.singles; ++i) {
        if (!zone_.isOwn(i)) continue;
        JudgedIndication& listed = verdict.indications[zone_.bundle->findings[i].indication];
        listed.classified = items_.classes[i].only();
        listed.openClass = openText(items_.classes[i].all());
        listed.considered = items_.considered[i] != Certainty::No;
        if (const auto group = zone_.grouped->groupOf[i]) {
            listed.group = zone_.grouped->groups[*group].id;
            listed.considered = listed.considered ||
                                items_.items[items_.singles + *group].considered != Certainty::No;
        }
    }
    for (const FindingGroup& group : zone_.grouped->groups) {
        JudgedGroup judged{group.id, group.classified, {}, group.length};
        judged.openClass = openText(classesOf(items_, group));
        bool own = false;
        for (const std::size_t finding : group.findings) {
            judged.members.push_back(zone_.nameOf(finding));
            own = own || zone_.isOwn(finding);
        }
        if (own) verdict.groups.push_back(std::move(judged));
    }
}

void UltrasonicZone::applyRules(ExaminationVerdict& verdict) const {
    bool outside = false;
    for (const Rule& rule : ordered_.table().rules)
        for (const LevelOrder& order : ordersOf(ordered_.table(), *zone_.levels, rule)) {
            RuleOutcome outcome = applyReflectorRule(ordered_, rule, order);
            if (outcome.check) verdict.checks.push_back(std::move(*outcome.check));
            if (!outcome.leftOut.empty()) verdict.notes.push_back(outcome.leftOut);
            outside = outside || outcome.outside;
        }
    if (outside)
        verdict.reasons.push_back("the thickness of " + toText(zone_.examination().thickness) +
                                  " mm, or the wall at an indication, is outside the table");
}

void UltrasonicZone::giveReasons(ExaminationVerdict& verdict) const {
    for (std::string& reason : uncoveredReasons(ordered_))
        verdict.reasons.push_back(std::move(reason));
    for (std::string& reason : unjudgedReasons(ordered_))
        verdict.reasons.push_back(std::move(reason));
}

std::optional<bool> UltrasonicZone::passesAt(const Levels& levels, const std::string& key) const {
    const ZoneView zone(*zone_.bundle, zone_.member, *zone_.grouped, *zone_.vicinity, levels);
    const ReflectorView view = viewAt(zone);
    std::optional<bool> passes = true;
    for (const Rule& rule : view.table().rules)
        for (const LevelOrder& order : ordersOf(view.table(), levels, rule)) {
            if (order.key != key) continue;
            const RuleOutcome outcome = applyReflectorRule(view, rule, order);
            if (outcome.outside) return false;
            if (!outcome.check) continue;
            if (outcome.check->passes == false) return false;
            if (!outcome.check->passes) passes = std::nullopt;
        }
    return passes;
}

void UltrasonicZone::findBestLevels(ExaminationVerdict& verdict) const {
    for (const auto& [name, ordered] : *zone_.levels) {
        verdict.bestLevels[name] = std::nullopt;
        for (const std::string& level : orderedKey(ordered_.table(), name)->levels) {
            Levels tried = *zone_.levels;
            tried[name] = level;
            const std::optional<bool> passes = passesAt(tried, name);
            if (!passes) verdict.bestLevelsUnknown.push_back(level);
            if (passes != true) continue;
            verdict.bestLevels[name] = level;
            break;
        }
    }
}

}  // namespace model
