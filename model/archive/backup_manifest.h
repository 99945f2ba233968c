// SPDX-License-Identifier: Apache-2.0
// The list of what is in a backup. As text, `sha256sum -c manifest` reads it; its first lines are
// remarks to that program:
//
//     # fettlemark-backup/1
//     # made 2026-11-25T09:30:00Z
//     # schema 5
//     # head 17:0f3a...
//     0a1b...  archive
//     2c3d...  archive.files/ab/cdef....pdf
//     4e5f...  archive.key
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>

#include "base/result.h"
#include "trust/chain.h"

namespace model {

struct BackupManifest {
    std::string made;                          ///< UTC, 2026-11-25T09:30:00Z
    std::int64_t schema = 0;                   ///< of the database
    Head head;                                 ///< the history's last row
    std::map<std::string, std::string> files;  ///< name within the backup -> SHA-256, hexadecimal
};

// Names within a backup.
inline constexpr char kBackupManifest[] = "manifest";
inline constexpr char kBackupDatabase[] = "archive";
inline constexpr char kBackupKey[] = "archive.key";
inline constexpr char kBackupFiles[] = "archive.files";

std::string toText(const BackupManifest& manifest);

/// `place` is named in errors. Input: no manifest of a backup, or of a form that this program does
/// not know. A name that would lead out of the backup is refused too.
Result<BackupManifest> parseBackupManifest(std::string_view text, const std::string& place);

}  // namespace model
