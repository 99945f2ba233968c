// SPDX-License-Identifier: Apache-2.0
#include "judge/judge_again.h"

#include <algorithm>

#include "judge/level_orders.h"
#include "limits/words.h"

namespace model {
namespace {

using OrderedLevels = std::map<std::string, std::string>;

/// The levels that a table has, of those ordered.
OrderedLevels levelsKnownTo(const LimitTable& table, const OrderedLevels& levels) {
    OrderedLevels known;
    for (const auto& [name, level] : levels) {
        const LevelKey* key = orderedKey(table, name);
        if (key && std::ranges::find(key->levels, level) != key->levels.end())
            known.emplace(name, level);
    }
    return known;
}

/// Orders a level in place of what orders the same classes: "all" in place of "rim" and "core".
void setLevel(const LimitTable& table, const std::string& name, const std::string& level,
              OrderedLevels& levels) {
    const LevelKey* key = orderedKey(table, name);
    if (key && key->name == name)
        std::erase_if(levels,
                      [&](const auto& ordered) { return orderedKey(table, ordered.first) == key; });
    levels[name] = level;
}

/// The examination with the other criteria, as far as they fit its method and table.
Result<Examination> changedBy(const Examination& examination, const TableSet& tables,
                              const OtherCriteria& other) {
    Examination changed = examination;
    if (!other.table.empty()) {
        const LimitTable* table = tables.find(other.table);
        if (!table) return inputError("", "there is no limit table \"%1\"", {other.table});
        if (table->method != examination.method) return changed;
        changed.table = other.table;
        changed.levels = levelsKnownTo(*table, examination.levels);
    }
    const LimitTable* table = tables.find(changed.table);
    if (!table) return inputError("", "there is no limit table \"%1\"", {changed.table});
    for (const auto& [name, level] : other.levels)
        if (orderedKey(*table, name)) setLevel(*table, name, level, changed.levels);
    return changed;
}

bool isJudgedAlike(const Examination& a, const Examination& b) {
    return a.table == b.table && a.levels == b.levels;
}

/// Whether two examinations are judged together while they have the same table.
bool shareSurface(const Examination& a, const Examination& b) {
    return a.surface && b.surface && a.surface->id == b.surface->id && a.method == b.method &&
           a.stage == b.stage && a.repairCycle == b.repairCycle;
}

/// A table for one zone alone would take its neighbours' indications out of sight.
Result<void> checkSurfaces(const Sheet& sheet, const Sheet& changed) {
    for (std::size_t i = 0; i < sheet.examinations.size(); ++i)
        for (std::size_t j = i + 1; j < sheet.examinations.size(); ++j) {
            const Examination& a = sheet.examinations[i];
            const Examination& b = sheet.examinations[j];
            if (a.table == b.table && shareSurface(a, b) &&
                changed.examinations[i].table != changed.examinations[j].table)
                return inputError("",
                                  "zones %1 and %2 share a surface and are judged together: take "
                                  "the other table for both",
                                  {a.zone, b.zone});
        }
    return {};
}

}  // namespace

Result<JudgedAgain> judgedAgain(const Sheet& sheet, const TableSet& tables,
                                const OtherCriteria& other) {
    if (other.table.empty() && other.levels.empty())
        return inputError("", "another table or another level is missing");
    auto ordered = judge(sheet, tables);
    if (!ordered) return ordered.error();
    JudgedAgain again;
    again.sheet = sheet;
    bool zoneIsThere = false;
    std::map<std::string, bool> taken;  // whether a key is one of any table
    for (const auto& [name, level] : other.levels) taken[name] = false;
    for (std::size_t i = 0; i < sheet.examinations.size(); ++i) {
        const Examination& examination = sheet.examinations[i];
        if (!other.zone.empty() && examination.zone != other.zone) continue;
        zoneIsThere = true;
        auto changed = changedBy(examination, tables, other);
        if (!changed) return changed.error();
        for (auto& [name, known] : taken)
            known = known || orderedKey(*tables.find(changed->table), name) != nullptr;
        if (isJudgedAlike(examination, *changed)) continue;
        again.sheet.examinations[i] = std::move(*changed);
        again.changed.push_back(i);
    }
    if (!other.zone.empty() && !zoneIsThere)
        return inputError("", "there is no examination of zone \"%1\"", {other.zone});
    for (const auto& [name, known] : taken)
        if (!known)
            return inputError("", "no examination is judged by a table with the level key \"%1\"",
                              {name});
    if (again.changed.empty())
        return inputError("", "nothing would be judged otherwise than it was ordered");
    if (auto sound = checkSurfaces(sheet, again.sheet); !sound) return sound.error();
    auto whatIf = judge(again.sheet, tables);
    if (!whatIf) return whatIf.error();
    for (const std::size_t index : again.changed)
        whatIf->examinations[index].notes.emplace_back(kWhatIfNote);
    again.ordered = std::move(*ordered);
    again.whatIf = std::move(*whatIf);
    return again;
}

}  // namespace model
