// SPDX-License-Identifier: Apache-2.0
// What people of Quillmere entered into the works' registers, as plain values.
#pragma once

#include <string>
#include <vector>

#include "archive/archive.h"
#include "base/result.h"
#include "demo_db/staff.h"
#include "exchange/json_fields.h"
#include "trust/canonical.h"

namespace demo {

/// One entry. Its fields are those of its register (registers/); a field "record" that is written
/// "@Z1 MT 0" names the signed record of that zone, method and repair cycle of its casting.
struct RegisterEntry {
    std::string on;  ///< date
    std::string by;  ///< name of who entered it
    std::string registerName;
    model::Canonical::Object fields;
    std::string picture;  ///< name of a file in pictures/ that it names by SHA-256; empty: none
};

/// Objects, arrays and texts as canonical values; anything else is reported.
model::Canonical canonicalFrom(const model::JsonFields& in, std::string_view name);

/// One entry; `casting` goes into its field of that name, where it is not empty.
RegisterEntry readRegisterEntry(const model::JsonValue& value, const std::string& path,
                                const std::string& casting, model::JsonProblem& problem);

/// The entries of works.json, in its order. Fails, naming file and JSON path, where it is wrong.
model::Result<std::vector<RegisterEntry>> readWorksEntries();

/// The number of the signed record that "@Z1 MT 0" names; any other text as it is. Input: there is
/// no such record.
model::Result<std::string> recordNamed(const model::Archive& archive, const std::string& casting,
                                       const std::string& text);

/// Enters it: signed where its register takes signed entries only, else in the person's name.
model::Result<void> enter(model::Archive& archive, const RegisterEntry& entry,
                          const SignedIns& staff);

}  // namespace demo
