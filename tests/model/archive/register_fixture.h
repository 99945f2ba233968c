// SPDX-License-Identifier: Apache-2.0
// A casting with an entry in every register, everything that they name being there.
#pragma once

#include "archive/registers.h"
#include "foundry/filled.h"
#include "lifecycle_fixture.h"
#include "registers/every_register.h"

namespace model {

class RegisterTest : public LifecycleTest {
protected:
    /// order() and a person's number for each entry that needs one.
    RegisterTest() { order(); }

    /// An entry with a text in every field, of casting S-17; what it names is what fillAll() saves.
    template <class T>
    T sample() const {
        T entry = foundry::filled<T>();
        set(entry, "casting", "S-17");
        set(entry, "person", foundry::kInspector);
        set(entry, "file_sha256", file_);
        set(entry, "sha256", std::string(64, 'b'));
        set(entry, "record", "");
        set(entry, "parent_procedure", "");
        set(entry, "bytes", "9");
        if (T::kRegister == EquipmentCheck::kRegister)
            set(entry, "equipment", keyOf(sample<Equipment>()));
        if (T::kRegister == Procedure::kRegister) {
            set(entry, "approved_by", foundry::kLevel3);
            set(entry, "method", "MT");
        }
        if constexpr (!std::is_same_v<T, Nonconformance>)
            if (textOf(entry, "nonconformance"))
                set(entry, "nonconformance", keyOf(sample<Nonconformance>()));
        if (T::kRegister == Excavation::kRegister)
            set(entry, "cavity_record", keyOf(foundry::filled<OtherResult>()));
        if (T::kRegister == WeldRepair::kRegister)
            set(entry, "excavation", keyOf(foundry::filled<Excavation>()));
        set(entry, "weld_repairs", "W-1");
        if (T::kRegister == WeldRepair::kRegister) set(entry, "number", "W-1");
        return entry;
    }

    /// By whoever may sign it.
    template <class T>
    Result<std::int64_t> save(const T& entry, std::int64_t knownVersion = 0) {
        if (signersOf(T::kRegister).empty())
            return saveEntry(*archive_, entry, knownVersion, actor_);
        return saveEntry(*archive_, entry, knownVersion,
                         T::kRegister == Procedure::kRegister ? level3_ : qaManager_);
    }
    using LifecycleTest::save;

    /// One entry in every register.
    void fillAll() {
        const auto kept = keepFile(*archive_, "some file");
        ASSERT_THAT(kept, Succeeds());
        file_ = *kept;
        // Of the casting tests first, as excavations name them.
        ASSERT_THAT(save(sample<OtherResult>()), Succeeds());
        forEachRegister([&]<class T>() {
            if (T::kRegister == OtherResult::kRegister) return;
            ASSERT_THAT(save(sample<T>()), Succeeds()) << T::kRegister;
        });
    }

    template <class T>
    static void set(T& entry, std::string_view key, const std::string& text) {
        for (const Field<T>& field : T::fields())
            if (field.info.key == key) entry.*field.text = text;
    }

    std::string file_ = std::string();
};

}  // namespace model
