// SPDX-License-Identifier: Apache-2.0
// Saving an entry of a register from the window: signed where somebody has signed in, else in the
// name of whoever sits here.
#pragma once

#include <QString>
#include <string>
#include <string_view>

#include "archive/registers.h"
#include "editing/session.h"

namespace app {

/// On the archive's thread. `version` 0: a new entry.
template <class T>
model::Result<void> keepEntry(model::Archive& archive, const T& entry, std::int64_t version,
                              const Signer& signer, const std::string& person) {
    const auto kept = signer ? model::saveEntry(archive, entry, version, *signer)
                             : model::saveEntry(archive, entry, version, model::Actor{person});
    if (!kept) return kept.error();
    return {};
}

/// The bytes of a file of this machine. Input: it cannot be read, is empty or too large to keep.
model::Result<std::string> bytesOf(const QString& path);

/// "C-1/N3": the first of this form that no entry of the archive has.
template <class T>
model::Result<std::string> freeNumber(const model::Archive& archive, const std::string& prefix) {
    for (int number = 1;; ++number) {
        const std::string key = prefix + std::to_string(number);
        const auto taken = model::entry<T>(archive, key);
        if (taken) continue;
        if (taken.error().kind != model::ErrorKind::Input) return taken.error();
        return key;
    }
}

}  // namespace app
