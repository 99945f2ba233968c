// SPDX-License-Identifier: Apache-2.0
// Whether the entries of every stored list are numbered without a gap. Lists are read in the order
// of their numbers, so that a number of its own says nothing, and a changed one would not show. For
// the .cpp files of this folder only.
#pragma once

#include <vector>

#include "archive/connection.h"

namespace model {

/// The lists that are not numbered 1, 2, 3 ...; Damaged, each with its table and what it belongs
/// to.
Result<std::vector<Error>> wrongPositions(const Connection& connection);

}  // namespace model
