// SPDX-License-Identifier: Apache-2.0
#include "reference/works_registers.h"

#include <QCoreApplication>
#include <algorithm>
#include <fstream>
#include <iterator>

#include "archive/register_saves.h"
#include "archive/registers.h"
#include "conditions/condition_set.h"
#include "looks/text.h"

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Registers", text);
}

template <class T>
Entry entryOf(const model::Stored<T>& stored) {
    return {textsOf(stored.value), {}, stored.version, {}, {}};
}

template <class T>
constexpr bool kHasFile = requires(T entry) {
    entry.fileSha256;
};

/// The bytes of a file that somebody has chosen.
model::Result<std::string> bytesOf(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) return model::refusal(path, "cannot be read");
    std::string bytes{std::istreambuf_iterator<char>(file), {}};
    if (file.bad()) return model::refusal(path, "cannot be read");
    return bytes;
}

template <class T>
model::Result<std::string> keep(model::Archive& archive, const Entry& entry, const Keeper& keeper) {
    T value = entryFrom<T>(entry.texts);
    if constexpr (kHasFile<T>) {
        if (!entry.file.empty()) {
            const auto bytes = bytesOf(entry.file);
            if (!bytes) return bytes.error();
            auto digest = model::keepFile(archive, *bytes);
            if (!digest) return digest.error();
            value.fileSha256 = std::move(*digest);
        }
    }
    const bool isSigned = !model::signersOf(T::kRegister).empty() && keeper.signer;
    const auto saved = isSigned ? model::saveEntry(archive, value, entry.version, *keeper.signer)
                                : model::saveEntry(archive, value, entry.version, keeper.actor);
    if (!saved) return saved.error();
    return model::keyOf(value);
}

template <class T>
Register registerOf(const char* title, const char* newTitle, const char* about,
                    std::vector<std::string> columns) {
    Register made;
    made.name = std::string(T::kRegister);
    made.title = tr(title);
    made.newTitle = tr(newTitle);
    made.about = tr(about);
    made.fields = fieldInfos<T>();
    made.columns = std::move(columns);
    made.files = {{made.name, made.title}};
    made.signers = model::signersOf(T::kRegister);
    made.all = [](const model::Archive& archive) -> model::Result<std::vector<Entry>> {
        const auto stored = model::entries<T>(archive);
        if (!stored) return stored.error();
        std::vector<Entry> entries;
        entries.reserve(stored->size());
        for (const auto& one : *stored) entries.push_back(entryOf(one));
        return entries;
    };
    made.load = [](const model::Archive& archive, const std::string& key) -> model::Result<Entry> {
        const auto stored = model::entry<T>(archive, key);
        if (!stored) return stored.error();
        return entryOf(*stored);
    };
    made.save = keep<T>;
    made.versions = [](const model::Archive& archive,
                       const std::string& key) -> model::Result<std::vector<EntryVersion>> {
        const auto stored = model::versionsOf<T>(archive, key);
        if (!stored) return stored.error();
        std::vector<EntryVersion> versions;
        const auto saves = model::savesOf(archive, T::kRegister, key);
        if (!saves) return saves.error();
        for (const auto& one : *stored) {
            EntryVersion version{entryOf(one), {}, {}};
            const auto save = std::ranges::find(*saves, one.version, &model::EntrySave::version);
            if (save != saves->end()) {
                version.time = save->time;
                version.person = save->person;
            }
            versions.push_back(std::move(version));
        }
        return versions;
    };
    made.wrong = [](const Entry& entry) { return model::wrongFields(entryFrom<T>(entry.texts)); };
    return made;
}

using Choosable = std::vector<std::pair<std::string, QString>>;

/// Adds what can be chosen to each of these fields.
model::Result<void> addPeople(Known& known, const model::Archive& archive,
                              std::initializer_list<const char*> fields) {
    const auto people = model::people(archive);
    if (!people) return people.error();
    Choosable choices;
    for (const auto& person : *people) {
        choices.emplace_back(person.value.id,
                             tr("%1 · %2").arg(qt(person.value.id), qt(person.value.name)));
    }
    for (const char* field : fields) known[field] = choices;
    return {};
}

model::Result<void> addEquipment(Known& known, const model::Archive& archive,
                                 std::initializer_list<const char*> fields) {
    const auto equipment = model::entries<model::Equipment>(archive);
    if (!equipment) return equipment.error();
    Choosable choices;
    for (const auto& one : *equipment) {
        choices.emplace_back(one.value.id, tr("%1 · %2").arg(qt(one.value.id), qt(one.value.kind)));
    }
    for (const char* field : fields) known[field] = choices;
    return {};
}

model::Result<Choosable> procedures(const model::Archive& archive, bool withRevision) {
    const auto procedures = model::entries<model::Procedure>(archive);
    if (!procedures) return procedures.error();
    Choosable choices;
    for (const auto& one : *procedures) {
        const std::string key = withRevision ? model::keyOf(one.value) : one.value.number;
        choices.emplace_back(key, tr("%1 · %2").arg(qt(key), qt(one.value.title)));
    }
    return choices;
}

using Asked = model::Result<Known>;

}  // namespace

Register equipmentRegister() {
    return registerOf<model::Equipment>(
        "Equipment", "New equipment",
        "Everything with a serial number that tests are made or checked with, and until when its "
        "calibration holds.",
        {"id", "kind", "description", "serial", "calibration_due", "state"});
}

Register checkRegister() {
    auto made = registerOf<model::EquipmentCheck>(
        "Equipment checks", "New check",
        "What the works itself has checked: the pull of a yoke, the daily check of an instrument, "
        "the concentration of a bath.",
        {"equipment", "check", "at", "value", "unit", "result", "next_due"});
    made.known = [](const model::Archive& archive) -> Asked {
        Known known;
        if (auto done = addEquipment(known, archive, {"equipment", "with"}); !done) {
            return done.error();
        }
        if (auto done = addPeople(known, archive, {"by"}); !done) return done.error();
        return known;
    };
    return made;
}

Register consumableRegister() {
    return registerOf<model::Consumable>(
        "Consumables", "New batch",
        "Penetrants, removers, developers, magnetic media, couplants: one entry for each batch.",
        {"id", "kind", "product", "batch", "expires_on", "state"});
}

Register procedureRegister() {
    auto made = registerOf<model::Procedure>(
        "Procedures", "New revision",
        "Written procedures and technique sheets, one entry for each revision. A revision that is "
        "obsolete cannot be chosen at the bench unless the order fixes it.",
        {"number", "revision", "kind", "title", "method", "state"});
    made.known = [](const model::Archive& archive) -> Asked {
        Known known;
        if (auto done = addPeople(known, archive, {"approved_by"}); !done) return done.error();
        auto parents = procedures(archive, true);
        if (!parents) return parents.error();
        known["parent_procedure"] = std::move(*parents);
        for (const auto& set : model::builtInConditionSets()) {
            known["condition_sets"].emplace_back(set.id, qt(set.id));
            if (set.hasDrift()) known["drift_rule"].emplace_back(set.id, qt(set.id));
        }
        return known;
    };
    return made;
}

Register qualificationRegister() {
    auto made = registerOf<model::Qualification>(
        "Qualifications", "New certificate",
        "People's certificates, one entry for each certificate and method.",
        {"person", "method", "level", "certificate", "expires_on", "state"});
    made.known = [](const model::Archive& archive) -> Asked {
        Known known;
        if (auto done = addPeople(known, archive, {"person"}); !done) return done.error();
        return known;
    };
    return made;
}

Register eyeTestRegister() {
    auto made = registerOf<model::EyeTest>("Eye tests", "New eye test",
                                           "Near vision and colour perception, one entry for each "
                                           "test.",
                                           {"person", "kind", "tested_on", "result", "chart"});
    made.known = [](const model::Archive& archive) -> Asked {
        Known known;
        if (auto done = addPeople(known, archive, {"person"}); !done) return done.error();
        return known;
    };
    return made;
}

Register authorisationRegister() {
    auto made = registerOf<model::Authorisation>(
        "Authorisations", "New authorisation",
        "The employer's written permission to test, one entry for each person and method.",
        {"person", "method", "granted_on", "until", "state"});
    made.known = [](const model::Archive& archive) -> Asked {
        Known known;
        if (auto done = addPeople(known, archive, {"person", "by"}); !done) return done.error();
        auto allowed = procedures(archive, false);
        if (!allowed) return allowed.error();
        known["procedures"] = std::move(*allowed);
        return known;
    };
    return made;
}

}  // namespace app
