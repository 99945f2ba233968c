// SPDX-License-Identifier: Apache-2.0
#include "archive/holdings_store.h"

#include <algorithm>
#include <map>

#include "archive/register_store.h"
#include "registers/condition_attestation.h"

namespace model {
namespace {

// What is read, written and taken of every list is the same, so it is said once: each(list, key).
template <class DossierOrConst, class Each>
void eachListOfDossier(DossierOrConst& dossier, Each each) {
    each(dossier.nonconformances, "nonconformances");
    each(dossier.dispositions, "dispositions");
    each(dossier.excavations, "excavations");
    each(dossier.weldRepairs, "weld_repairs");
    each(dossier.heatTreatments, "heat_treatments");
    each(dossier.concessions, "concessions");
    each(dossier.otherResults, "other_results");
    each(dossier.attachments, "attachments");
}

template <class HoldingsOrConst, class Each>
void eachListOfHoldings(HoldingsOrConst& holdings, Each each) {
    each(holdings.equipment, "equipment");
    each(holdings.checks, "equipment_checks");
    each(holdings.consumables, "consumables");
    each(holdings.procedures, "procedures");
    each(holdings.qualifications, "qualifications");
    each(holdings.eyeTests, "eye_tests");
    each(holdings.authorisations, "authorisations");
}

/// Adds the current entries that `choice` has.
template <class T>
Result<void> append(const Connection& connection, const EntryChoice& choice, std::vector<T>& list) {
    auto entries = loadEntriesAs<T>(connection, choice);
    if (!entries) return entries.error();
    for (Stored<T>& entry : *entries) list.push_back(std::move(entry.value));
    return {};
}

/// The same of each key, or of each beginning of keys with `suffix` behind it.
template <class T>
Result<void> appendOf(const Connection& connection, const std::set<std::string>& keys,
                      const std::string& suffix, std::vector<T>& list) {
    for (const std::string& key : keys) {
        EntryChoice choice;
        (suffix.empty() ? choice.key : choice.keysFrom) = key + suffix;
        choice.byKey = true;
        if (auto added = append(connection, choice, list); !added) return added;
    }
    return {};
}

struct Named {
    std::set<std::string> equipment;
    std::set<std::string> consumables;
    std::set<std::string> procedures;  ///< numbers
    std::set<std::string> people;
    std::set<std::string> days;
};

void addTo(std::set<std::string>& names, const std::string& name) {
    if (!name.empty()) names.insert(name);
}

Named namedIn(const std::vector<ExaminationDraft>& examinations) {
    Named named;
    for (const ExaminationDraft& draft : examinations) {
        const TestConditions& conditions = draft.conditions;
        for (const std::string& id : itemsOf(conditions.equipment)) addTo(named.equipment, id);
        for (const std::string& id : itemsOf(conditions.consumables)) addTo(named.consumables, id);
        for (const Measurement& one : conditions.measurements)
            addTo(named.equipment, one.instrument);
        for (const SettingCheck& check : conditions.settingChecks)
            addTo(named.equipment, check.block);
        for (const TypedSetting& setting : draft.settings) {
            addTo(named.equipment, setting.block);
            addTo(named.equipment, setting.probe);
        }
        addTo(named.procedures, conditions.procedureNumber);
        addTo(named.procedures, conditions.sheetNumber);
        addTo(named.people, draft.examinedBy);
        addTo(named.people, conditions.evaluatedBy);
        if (isDate(draft.examinedOn)) named.days.insert(draft.examinedOn);
    }
    return named;
}

/// Which of all checks of one thing say something about tests on `days`.
std::vector<EquipmentCheck> checksAround(std::vector<EquipmentCheck> checks,
                                         const std::set<std::string>& days) {
    std::ranges::stable_sort(checks, {}, &EquipmentCheck::at);
    std::map<std::string, std::vector<std::size_t>> kinds;
    for (std::size_t i = 0; i < checks.size(); ++i) kinds[checks[i].check].push_back(i);
    std::set<std::size_t> kept;
    for (const auto& [kind, indexes] : kinds) {
        for (const std::string& day : days) {
            // A day at the works lies within three days of UTC.
            const std::string first = daysAfter(day, -1);
            const std::string last = daysAfter(day, 1);
            std::optional<std::size_t> before;
            std::optional<std::size_t> next;
            for (const std::size_t i : indexes) {
                const std::string date = checks[i].at.substr(0, 10);
                if (date < first) before = i;
                if (date >= first && date <= last) kept.insert(i);
                if (date > last && !next) next = i;
            }
            if (before) kept.insert(*before);
            if (next) kept.insert(*next);
        }
    }
    std::vector<EquipmentCheck> around;
    around.reserve(kept.size());
    for (const std::size_t i : kept) around.push_back(std::move(checks[i]));
    return around;
}

Result<void> appendChecks(const Connection& connection, const Named& named, Holdings& used) {
    for (const std::string& id : named.equipment) {
        std::vector<EquipmentCheck> checks;
        if (auto added = appendOf(connection, {id}, " / ", checks); !added) return added;
        std::ranges::move(checksAround(std::move(checks), named.days),
                          std::back_inserter(used.checks));
    }
    return {};
}

}  // namespace

Result<Dossier> loadDossier(const Connection& connection, const std::string& serial) {
    const auto stored = loadEntries(connection, {.casting = serial});
    if (!stored) return stored.error();
    Dossier dossier;
    Result<void> read;
    eachListOfDossier(dossier, [&]<class T>(std::vector<T>& list, const char*) {
        for (const StoredEntry& one : *stored) {
            if (!read || one.registerName != T::kRegister) continue;
            if (auto entry = entryAs<T>(connection, one))
                list.push_back(std::move(*entry));
            else
                read = entry.error();
        }
    });
    if (!read) return read.error();
    return dossier;
}

Result<Holdings> loadHoldings(const Connection& connection) {
    Holdings holdings;
    Result<void> read;
    eachListOfHoldings(holdings, [&](auto& list, const char*) {
        if (read) read = append(connection, {.byKey = true}, list);
    });
    if (!read) return read.error();
    return holdings;
}

Result<Holdings> loadUsed(const Connection& connection,
                          const std::vector<ExaminationDraft>& examinations,
                          const std::set<std::string>& people) {
    Named named = namedIn(examinations);
    named.people.insert(people.begin(), people.end());
    Holdings used;
    if (auto done = appendOf(connection, named.equipment, "", used.equipment); !done)
        return done.error();
    if (auto done = appendChecks(connection, named, used); !done) return done.error();
    if (auto done = appendOf(connection, named.consumables, "", used.consumables); !done)
        return done.error();
    if (auto done = appendOf(connection, named.procedures, " / ", used.procedures); !done)
        return done.error();
    if (auto done = appendOf(connection, named.people, " / ", used.qualifications); !done)
        return done.error();
    if (auto done = appendOf(connection, named.people, " / ", used.eyeTests); !done)
        return done.error();
    if (auto done = appendOf(connection, named.people, " / ", used.authorisations); !done)
        return done.error();
    return used;
}

void addHoldings(Holdings& all, const Holdings& more) {
    const auto add = [](auto& list, const auto& added) {
        for (const auto& entry : added)
            if (std::ranges::find(list, entry) == list.end()) list.push_back(entry);
    };
    add(all.equipment, more.equipment);
    add(all.checks, more.checks);
    add(all.consumables, more.consumables);
    add(all.procedures, more.procedures);
    add(all.qualifications, more.qualifications);
    add(all.eyeTests, more.eyeTests);
    add(all.authorisations, more.authorisations);
}

Canonical::Object canonicalOf(const Dossier& dossier) {
    Canonical::Object object;
    eachListOfDossier(dossier,
                      [&](const auto& list, const char* key) { addList(object, key, list); });
    return object;
}

Canonical::Object canonicalOf(const Holdings& holdings) {
    Canonical::Object object;
    eachListOfHoldings(holdings,
                       [&](const auto& list, const char* key) { addList(object, key, list); });
    return object;
}

std::optional<Dossier> dossierFrom(const Canonical::Object& object) {
    Canonical::Object rest = object;
    Dossier dossier;
    bool understood = true;
    eachListOfDossier(dossier, [&]<class T>(std::vector<T>& list, const char* key) {
        if (auto taken = takeList<T>(rest, key))
            list = std::move(*taken);
        else
            understood = false;
    });
    if (!understood || !rest.empty()) return std::nullopt;
    return dossier;
}

std::optional<Holdings> holdingsFrom(const Canonical::Object& object) {
    Canonical::Object rest = object;
    Holdings holdings;
    bool understood = true;
    eachListOfHoldings(holdings, [&]<class T>(std::vector<T>& list, const char* key) {
        if (auto taken = takeList<T>(rest, key))
            list = std::move(*taken);
        else
            understood = false;
    });
    if (!understood || !rest.empty()) return std::nullopt;
    return holdings;
}

Result<std::set<std::string>> attestedConditionSets(const Connection& connection) {
    const auto entries = loadEntriesAs<ConditionSetAttestation>(connection, {.byKey = true});
    if (!entries) return entries.error();
    std::set<std::string> digests;
    for (const auto& entry : *entries)
        if (entry.value.state == "attested") digests.insert(entry.value.sha256);
    return digests;
}

}  // namespace model
