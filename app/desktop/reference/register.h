// SPDX-License-Identifier: Apache-2.0
// Anything that the works keeps a list of, as the reference workplace handles it: entries made of
// texts, and how the archive gives and takes them. No widget.
#pragma once

#include <QString>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "archive/archive.h"
#include "archive/people.h"
#include "archive/sign_in.h"
#include "base/field_error.h"
#include "fields/entry_texts.h"

namespace app {

struct Entry {
    EntryTexts texts;
    std::map<std::string, std::vector<EntryTexts>> rows;  ///< by the key of their RowsInfo
    std::int64_t version = 0;                             ///< 0: not stored yet
    std::string file;  ///< path of a file that is to be kept with it; empty: none
    QString note;      ///< stands beside the version: "zone plan revision 2"

    friend bool operator==(const Entry&, const Entry&) = default;
};

/// One state that an entry had, and who made it so; time and person are empty where unknown.
struct EntryVersion {
    Entry entry;
    std::string time;
    std::string person;
};

/// A table of its own within every entry: the zones of a part.
struct RowsInfo {
    std::string key;  ///< in Entry::rows, and in the place of an error: "zones.2.name"
    QString title;    ///< "Zones"
    QString about;    ///< what is typed here, a sentence or two
    std::vector<model::FieldInfo> fields;
};

/// In whose name something is kept; `signer` is null while the archive has no people.
struct Keeper {
    model::Actor actor;
    std::shared_ptr<const model::SignedIn> signer;
};

/// What can be chosen in a field: the text that is stored, and what is shown for it.
using Known = std::map<std::string, std::vector<std::pair<std::string, QString>>>;

struct Register {
    std::string name;       ///< "eye test"
    QString title;          ///< "Eye tests"
    QString newTitle;       ///< "New eye test"
    QString versionsTitle;  ///< of the button for them; empty: "Versions…"
    QString about;          ///< what is kept here, a sentence or two
    std::vector<model::FieldInfo> fields;
    std::vector<std::string> columns;  ///< keys of the fields that the list shows
    std::vector<RowsInfo> rows;
    /// Names of what a file can hold for it, and what is shown for them; empty: nothing.
    std::vector<std::pair<std::string, QString>> files;
    /// Whose signature a save needs; empty: nobody's.
    std::set<model::Role> signers;

    // On the archive's thread:
    /// What the list shows; versions and rows may be left out.
    std::function<model::Result<std::vector<Entry>>(const model::Archive&)> all;
    /// The whole entry as it is now.
    std::function<model::Result<Entry>(const model::Archive&, const std::string& key)> load;
    /// Adds (version 0) or changes; returns its key.
    std::function<model::Result<std::string>(model::Archive&, const Entry&, const Keeper&)> save;
    /// Every version, rising; null: there are none to be shown.
    std::function<model::Result<std::vector<EntryVersion>>(const model::Archive&,
                                                           const std::string& key)>
        versions;
    /// What may be chosen beside typing, by field; of rows "tests.table". May be null.
    std::function<model::Result<Known>(const model::Archive&)> known;
    /// Whatever else a change touches, one line each; null: nothing.
    std::function<model::Result<std::vector<QString>>(const model::Archive&, const Entry&)> touches;

    // Anywhere:
    /// Everything that is wrong with an entry; its rows as "zones.2.name", from 0.
    std::function<std::vector<model::FieldError>(const Entry&)> wrong;
};

/// What names an entry: the texts of its key fields, parted by " / ".
std::string keyOf(const Register& of, const Entry& entry);

/// The same as it is shown.
QString nameOf(const Register& of, const Entry& entry);

/// What is wrong with texts by the kind and need of their fields; `place` goes before each key.
std::vector<model::FieldError> wrongTexts(const std::vector<model::FieldInfo>& fields,
                                          const EntryTexts& texts, const std::string& place = {});
/// The same of an entry with all its rows.
std::vector<model::FieldError> wrongEntry(const Register& of, const Entry& entry);

/// The text of a key; empty where it has none.
const std::string& textOf(const EntryTexts& texts, const std::string& key);

}  // namespace app
