// SPDX-License-Identifier: Apache-2.0
// A casting with an entry in every register, everything that they name being there.
#pragma once

#include "archive/registers.h"
#include "base/digest.h"
#include "foundry/register_entries.h"
#include "lifecycle_fixture.h"

namespace model {

class RegisterTest : public LifecycleTest {
protected:
    RegisterTest() { order(); }

    /// What fillAll() saves.
    template <class T>
    static T sample() {
        return foundry::entryOf<T>("S-17", toHex(sha256(kFile)), std::string_view(kFile).size());
    }
    /// By whoever may sign it.
    template <class T>
    Result<std::int64_t> save(const T& entry, std::int64_t knownVersion = 0) {
        return foundry::saveEntryBy(*archive_, entry, knownVersion, actor_, level3_, qaManager_);
    }
    using LifecycleTest::save;

    /// One entry in every register.
    void fillAll() {
        const auto error =
            foundry::fillRegisters(*archive_, "S-17", kFile, actor_, level3_, qaManager_);
        ASSERT_FALSE(error) << error->message();
    }

    static constexpr char kFile[] = "some file";
};

}  // namespace model
