// SPDX-License-Identifier: Apache-2.0
// Signed records in the database. For the .cpp files of this folder only.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "archive/connection.h"
#include "archive/signed_record.h"

namespace model {

/// Five columns of a row, from `column` on: history sequence, person's id, name, time, reason.
SignedAct actFrom(const SqlStatement& row, int column);
/// The same; none where they are empty (an outer join).
std::optional<SignedAct> actOrNone(const SqlStatement& row, int column);

/// Of a casting, by examination and revision.
Result<std::vector<SignedRecord>> loadRecordsOf(const Connection& connection,
                                                const std::string& serial);
/// Input where there is none.
Result<SignedRecord> loadRecord(const Connection& connection, std::int64_t id);
/// Ids of all examinations of a casting, signed or not, rising. Input where there is no such
/// casting.
Result<std::vector<std::int64_t>> examinationIds(const Connection& connection,
                                                 const std::string& serial);

/// Of an examination among all records of its casting; null: it is a draft.
const SignedRecord* standingOf(const std::vector<SignedRecord>& records, std::int64_t examination);
/// Those that stand, of all examinations, by id.
std::vector<const SignedRecord*> standingAmong(const std::vector<SignedRecord>& records);

/// The record of one examination that stands; none: it is a draft.
Result<std::optional<SignedRecord>> loadStanding(const Connection& connection,
                                                 std::int64_t examination);

/// Within the write transaction that has just recorded its signing as row `record.id`.
Result<void> addRecord(const Connection& connection, const SignedRecord& record,
                       std::string_view content);
/// Gives back the records that stand of a casting by the act `act`.
Result<void> giveBack(const Connection& connection, const std::vector<std::int64_t>& records,
                      const SignedAct& act);
Result<void> addInvalidation(const Connection& connection, std::int64_t record,
                             const SignedAct& act);

}  // namespace model
