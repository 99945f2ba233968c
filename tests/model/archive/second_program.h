// SPDX-License-Identifier: Apache-2.0
// This test program, started again as a process of its own, for what only another process shows.
#pragma once

#include <string>
#include <vector>

namespace model {

/// Runs what `arguments` (after the program's name) ask for; the exit code, or -1 for nothing.
///   --write-orders PATH PREFIX COUNT  adds orders, printing each number once it is stored
///   --fill-small-disk PATH            saves growing drafts while no file may grow any more
///   --read-only PATH                  reads it as a user who may not write
///   --back-up-on-small-disk PATH FOLDER SIZE   while no file may become larger than SIZE
///   --restore-on-small-disk FOLDER PATH SIZE   the same
///   --make-database PATH              one of each record, for data/
///   --make-signed-database PATH       the same of what people sign, with its key file
int runAsSecondProgram(const std::vector<std::string>& arguments);

}  // namespace model
