// SPDX-License-Identifier: Apache-2.0
#include "conditions/test_context.h"

#include <algorithm>

namespace model {
namespace {

constexpr std::chrono::hours kEarliestZone{14};
constexpr std::chrono::hours kLatestZone{12};

}  // namespace

std::vector<NamedItem> namedEquipment(const ExaminationDraft& draft) {
    std::vector<NamedItem> items;
    const auto add = [&](const std::string& id, std::string place) {
        if (!id.empty() && std::ranges::count(items, id, &NamedItem::id) == 0)
            items.push_back({id, std::move(place)});
    };
    for (const std::string& id : itemsOf(draft.conditions.equipment)) add(id, "equipment");
    for (const Measurement& measured : draft.conditions.measurements)
        add(measured.instrument, "measurement " + measured.parameter);
    for (const SettingCheck& check : draft.conditions.settingChecks)
        add(check.block, "setting check " + check.id);
    return items;
}

bool canBeOn(UtcTime moment, std::string_view date) {
    const auto midnight = timeFrom(std::string(date) + "T00:00:00Z");
    return midnight && moment >= *midnight - kEarliestZone &&
           moment <= *midnight + std::chrono::hours(24) + kLatestZone;
}

std::string dayOf(UtcTime moment) {
    return toText(moment).substr(0, 10);
}

const Equipment* equipmentIn(const Holdings& holdings, std::string_view id) {
    const auto found = std::ranges::find(holdings.equipment, id, &Equipment::id);
    return found == holdings.equipment.end() ? nullptr : &*found;
}

const Consumable* consumableIn(const Holdings& holdings, std::string_view id) {
    const auto found = std::ranges::find(holdings.consumables, id, &Consumable::id);
    return found == holdings.consumables.end() ? nullptr : &*found;
}

Applies applies(const ConditionRule& rule, const Facts& facts, std::string& missing) {
    const auto matches = [&](const WhenClause& clause) {
        return std::ranges::any_of(facts.of(clause.parameter), [&](const Fact& fact) {
            return !fact.text.empty() &&
                   (clause.values.empty() || std::ranges::count(clause.values, fact.text) > 0);
        });
    };
    for (const WhenClause& clause : rule.unless)
        if (matches(clause)) return Applies::No;
    bool open = false;
    for (const WhenClause& clause : rule.when) {
        if (matches(clause)) continue;
        const auto& known = facts.of(clause.parameter);
        const bool isKnown =
            std::ranges::any_of(known, [](const Fact& fact) { return !fact.text.empty(); });
        if (isKnown || clause.values.empty()) return Applies::No;
        if (!open) missing = clause.parameter;
        open = true;
    }
    return open ? Applies::Unknown : Applies::Yes;
}

}  // namespace model
