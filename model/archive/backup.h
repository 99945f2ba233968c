// SPDX-License-Identifier: Apache-2.0
// Copies of a whole archive: its database, the files of its certificates, its own key. A backup is
// a folder that any program can check with `sha256sum -c manifest`; the archive in it can be
// opened for reading where it lies.
#pragma once

#include <cstdint>
#include <string>

#include "archive/archive.h"
#include "base/clock.h"
#include "base/result.h"
#include "trust/chain.h"

namespace model {

/// What a backup holds.
struct BackupContent {
    std::string made;               ///< UTC, 2026-11-25T09:30:00Z
    Head head;                      ///< the history's last row; whoever notes it elsewhere can show
                                    ///< later that the archive still contains this one
    std::string headTime;           ///< of that row
    std::int64_t certificates = 0;  ///< how many
    std::int64_t lastNumber = 0;    ///< the last certificate number that was given out
    bool hasKey = false;  ///< the archive's own key; without it a restored archive can only be read
};

/// Makes the folder `folder` with a copy of the archive as of one moment, while others use it, and
/// checks the copy whole: every byte, and all that verify() checks. There is no folder unless all
/// of it succeeded.
///
/// Input: no archive, or the folder is there already. Refused: the disk is full, stopped ...
/// Damaged: the archive is, so that no good copy can be made; verify() says what.
Result<BackupContent> backUp(const std::string& path, const std::string& folder,
                             const Clock& clock = systemClock(), const Progress& progress = {});

/// Checks the backup in `folder` against its manifest, makes the archive `path` from it, and checks
/// that whole. Nothing is there unless all of it succeeded. One of an older schema stays as it is
/// until it is opened.
///
/// Input: no backup, one of a newer program, or there is something of the archive's names already.
/// Damaged: the backup is not what was written.
Result<BackupContent> restore(const std::string& folder, const std::string& path,
                              const Clock& clock = systemClock(), const Progress& progress = {});

}  // namespace model
