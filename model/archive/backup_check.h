// SPDX-License-Identifier: Apache-2.0
// What backUp() and restore() share: a copy of an archive in a folder, and whether it is one.
#pragma once

#include <string>
#include <vector>

#include "archive/backup.h"
#include "archive/backup_manifest.h"
#include "archive/connection.h"

namespace model {

/// FOLDER/NAME.
inline std::string within(const std::string& folder, const std::string& name) {
    return folder + "/" + name;
}

/// FOLDER/archive.files/ab/cdef....pdf without FOLDER/.
std::string nameInBackup(const std::string& digest);

/// Checks the copy in `folder`, which is on the disk: all that verify() checks, that its history
/// ends with the manifest's head, and that every file is what the manifest says. `place` is named
/// where it is not.
Result<BackupContent> checkCopy(const std::string& folder, const BackupManifest& manifest,
                                const std::string& place, const Clock& clock,
                                const Progress& progress);

}  // namespace model
