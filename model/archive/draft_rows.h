// SPDX-License-Identifier: Apache-2.0
// The rows of a draft in the database: each field as typed, beside it the exact value.
#pragma once

#include <vector>

#include "archive/connection.h"
#include "archive/draft_store.h"
#include "record/typed_indication.h"

namespace model {

/// Brings `before` stored rows to `rows`, which differ by `splice`.
Result<void> writeRows(const Connection& connection, std::int64_t examination, std::size_t before,
                       const std::vector<TypedIndication>& rows, const Splice& splice);

Result<std::vector<TypedIndication>> readRows(const Connection& connection,
                                              std::int64_t examination);

}  // namespace model
