// SPDX-License-Identifier: Apache-2.0
// All of a draft but its rows, in the table examination and in the lists that belong to it. For the
// .cpp files of this folder only.
#pragma once

#include "archive/transaction.h"
#include "record/records.h"

namespace model {

Result<void> writeHeader(WriteTransaction& transaction, const ExaminationDraft& draft);

/// Levels, forbidden kinds, areas not examined, directions.
Result<void> writeLists(const Connection& connection, const ExaminationDraft& draft);
Result<void> readLists(const Connection& connection, ExaminationDraft& draft);

}  // namespace model
