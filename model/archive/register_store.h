// SPDX-License-Identifier: Apache-2.0
// The entries of all registers in the database, whatever their fields are. For the .cpp files of
// this folder only.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "archive/transaction.h"
#include "registers/field.h"

namespace model {

/// One version of an entry.
struct StoredEntry {
    std::int64_t sequence = 0;  ///< of the row of the history that saved it
    std::string registerName;
    std::string key;
    std::int64_t version = 0;
    std::optional<std::string> casting;  ///< as stored beside the content
    std::optional<std::string> file;     ///< SHA-256, likewise
    Canonical::Object content;           ///< its fields
};

/// A text of an entry; empty where it has none.
std::string textIn(const Canonical::Object& content, std::string_view key);

/// Adds the version of `entry` that its field `version` says, within the write transaction that has
/// just recorded it.
Result<void> addEntry(const Connection& connection, const StoredEntry& entry);

/// Which entries to load: all that agree in everything that is given.
struct EntryChoice {
    std::optional<std::string> registerName = {};
    std::optional<std::string> key = {};
    /// Those whose key begins so: "Q-2 / ".
    std::optional<std::string> keysFrom = {};
    std::optional<std::string> casting = {};
    bool allVersions = false;  ///< else the current one of each
    bool byKey = false;        ///< else in the order in which they were first made
};
Result<std::vector<StoredEntry>> loadEntries(const Connection& connection,
                                             const EntryChoice& choice);

/// The entry as a T; Damaged: it is none.
template <class T>
Result<T> entryAs(const Connection& connection, const StoredEntry& stored) {
    auto entry = fromCanonicalFields<T>(stored.content);
    if (entry) return std::move(*entry);
    return connection.damaged(stored.registerName + " " + stored.key, "is not understood");
}

/// The current version of each that `choice` has, without its register, in the register of T.
template <class T>
Result<std::vector<Stored<T>>> loadEntriesAs(const Connection& connection, EntryChoice choice) {
    choice.registerName = std::string(T::kRegister);
    const auto stored = loadEntries(connection, choice);
    if (!stored) return stored.error();
    std::vector<Stored<T>> entries;
    for (const StoredEntry& one : *stored) {
        auto entry = entryAs<T>(connection, one);
        if (!entry) return entry.error();
        entries.push_back({std::move(*entry), one.version});
    }
    return entries;
}

}  // namespace model
