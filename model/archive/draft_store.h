// SPDX-License-Identifier: Apache-2.0
// Draft examinations in the database, row by row as typed.
#pragma once

#include "archive/transaction.h"

namespace model {

/// `known`: the stored draft where the caller holds it (its version is compared, then trusted);
/// null: it is read. A draft that changes nothing is not written and keeps its version.
Result<SavedDraft> saveDraft(WriteTransaction& transaction, const ExaminationDraft& draft,
                             const ExaminationDraft* known);

Result<ExaminationDraft> loadDraft(const Connection& connection, std::int64_t id);

/// By id.
Result<std::vector<ExaminationDraft>> loadDraftsOf(const Connection& connection,
                                                   const std::string& serial);

}  // namespace model
