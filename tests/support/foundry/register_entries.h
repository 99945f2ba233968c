// SPDX-License-Identifier: Apache-2.0
// An entry in every register with a text in every field, each naming the others rightly.
#pragma once

#include <optional>
#include <string>

#include "archive/registers.h"
#include "foundry/filled.h"
#include "foundry/people.h"
#include "registers/every_register.h"

namespace foundry {

template <class T>
void setText(T& entry, std::string_view key, const std::string& text) {
    for (const model::Field<T>& field : T::fields())
        if (field.info.key == key) entry.*field.text = text;
}

/// Of this casting, naming a file of `bytes` bytes by its SHA-256.
template <class T>
T entryOf(const std::string& casting, const std::string& file, std::size_t bytes) {
    using namespace model;
    T entry = filled<T>();
    setText(entry, "casting", casting);
    setText(entry, "person", kInspector);
    setText(entry, "file_sha256", file);
    setText(entry, "bytes", std::to_string(bytes));
    setText(entry, "record", "");
    setText(entry, "parent_procedure", "");
    setText(entry, "weld_repairs", "W-1");
    if (textOf(entry, "nonconformance"))
        setText(entry, "nonconformance", keyOf(filled<Nonconformance>()));
    const std::string_view name = T::kRegister;
    if (name == EquipmentCheck::kRegister) setText(entry, "equipment", keyOf(filled<Equipment>()));
    if (name == Procedure::kRegister) {
        setText(entry, "approved_by", kLevel3);
        setText(entry, "method", "MT");
    }
    if (name == Excavation::kRegister)
        setText(entry, "cavity_record", keyOf(filled<OtherResult>()));
    if (name == WeldRepair::kRegister) {
        setText(entry, "number", "W-1");
        setText(entry, "excavation", keyOf(filled<Excavation>()));
    }
    return entry;
}

/// Saves an entry by whoever may: nobody's signature, a Level 3's of MT, or a QA manager's.
template <class T>
model::Result<std::int64_t> saveEntryBy(model::Archive& archive, const T& entry,
                                        std::int64_t knownVersion, const model::Actor& actor,
                                        const model::SignedIn& level3,
                                        const model::SignedIn& qaManager) {
    if (model::signersOf(T::kRegister).empty())
        return model::saveEntry(archive, entry, knownVersion, actor);
    return model::saveEntry(archive, entry, knownVersion,
                            T::kRegister == model::Procedure::kRegister ? level3 : qaManager);
}

/// One entry in every register; the first error, or none.
inline std::optional<model::Error> fillRegisters(
    model::Archive& archive, const std::string& casting, const std::string& bytes,
    const model::Actor& actor, const model::SignedIn& level3, const model::SignedIn& qaManager) {
    const auto kept = model::keepFile(archive, bytes);
    if (!kept) return kept.error();
    std::optional<model::Error> error;
    const auto save = [&]<class T>(const T& entry) {
        const auto saved = saveEntryBy(archive, entry, 0, actor, level3, qaManager);
        if (!saved && !error) error = saved.error();
    };
    // Excavations name the test of their cavity.
    save(entryOf<model::OtherResult>(casting, *kept, bytes.size()));
    model::forEachRegister([&]<class T>() {
        if (T::kRegister != model::OtherResult::kRegister)
            save(entryOf<T>(casting, *kept, bytes.size()));
    });
    return error;
}

}  // namespace foundry
