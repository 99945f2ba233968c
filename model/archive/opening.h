// SPDX-License-Identifier: Apache-2.0
// From a path to a connection: what can be opened, and how it is read where nothing may be
// written.
#pragma once

#include <memory>
#include <string>

#include "archive/archive.h"
#include "archive/connection.h"

namespace model {

/// The path from the root, which stays true while the working folder changes. Input: no file name.
Result<std::string> absolutePath(const std::string& path);

/// Input: not there, or no file. Refused: unreadable. Opens nothing: closing the file again would
/// drop the locks that another connection of this process holds on it.
Result<void> checkThere(const std::string& path);

/// Input: the archive or a file that belongs to one of this name is there, or its folder is not.
Result<void> checkNothingThere(const std::string& path);

/// Refused where the file or its folder is read-only for this user or on this disk.
Result<void> checkWritable(const std::string& path);

/// A connection that is good for reading, of an archive of any schema; beside a file that cannot
/// be written nothing is made. Input: no archive. Refused: unreadable, or read-only with a log
/// beside it that cannot be read.
Result<std::unique_ptr<Connection>> openToRead(const std::string& path);

/// What the archive says it is. Damaged: it does not.
Result<ArchiveKind> kindIn(const Connection& connection);
/// The same from the history's first row where the archive's own table cannot be read.
Result<ArchiveKind> kindInAnyCase(const Connection& connection);

/// The word that is stored.
const char* wordOf(ArchiveKind kind);

}  // namespace model
