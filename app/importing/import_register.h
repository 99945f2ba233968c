// SPDX-License-Identifier: Apache-2.0
// Takes a table into an archive: registers, orders, parts, zone plans, castings, people. All of it
// or nothing; a dry run does all of it and takes it back.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "archive/archive.h"
#include "archive/people.h"
#include "exchange/register_rows.h"

namespace app {

/// Whose signature the entries of a register need: one who has any of the roles; empty: nobody's.
std::set<model::Role> signersOfRegister(std::string_view registerName);

struct Import {
    std::string registerName;
    /// Entries that are there already with other content get their next version; what no column
    /// has stays as it is. Else such an entry is a problem. Never of zone plans.
    bool change = false;
    bool dryRun = false;
    std::size_t most = static_cast<std::size_t>(-1);  ///< entries that are taken at once
};

/// Whoever saves: signed in, or a name where nothing is to be signed.
struct Importer {
    const model::SignedIn* signer = nullptr;
    model::Actor actor{};
};

struct ImportReport {
    std::size_t rows = 0;                        ///< of the file
    std::size_t added = 0;                       ///< entries; of a file with problems those without
    std::size_t changed = 0;                     ///< got their next version
    std::size_t unchanged = 0;                   ///< are there already, as they are
    std::vector<model::ImportProblem> problems;  ///< empty: all of it is, or could be, stored
};

/// Texts are stored in NFC. Nothing is stored where there is any problem, or in a dry run. Input:
/// no such register.
/// Refused: `importer` may not save there; locked, disk full.
model::Result<ImportReport> importRegister(model::Archive& archive, model::CsvTable table,
                                           const Import& import, const Importer& importer);

}  // namespace app
