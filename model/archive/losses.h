// SPDX-License-Identifier: Apache-2.0
// What of a damaged archive is lost: everything that the history or the archive's own lists name
// and that cannot be read any more.
#pragma once

#include <vector>

#include "archive/archive.h"
#include "archive/connection.h"

namespace model {

/// In plain words, one Error (Damaged) each, its place naming the thing: rows of the history,
/// orders, parts, castings, examinations, certificates and their files; last, tables of which not
/// every entry can be read. Empty: everything can be read, which says nothing about whether it was
/// altered; verify() does. Refused where it was stopped.
Result<std::vector<Error>> whatIsLost(const Archive& archive, const Progress& progress = {});

/// The same on a connection; `folder`: where the certificates' files are.
Result<std::vector<Error>> findLosses(const Connection& connection, const std::string& folder,
                                      const Progress& progress);

}  // namespace model
