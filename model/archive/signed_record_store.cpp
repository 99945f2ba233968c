// SPDX-License-Identifier: Apache-2.0
#include "archive/signed_record_store.h"

#include <algorithm>

#include "archive/stored_words.h"
#include "judge/sheet_words.h"

namespace model {
namespace {

constexpr char kSelect[] =
    "SELECT record.id, record.examination_id, record.revision, "
    "record.casting_serial, record.word, "
    "record.id, record.person, signed_row.person, signed_row.happened_at, "
    "coalesce(record.rejection, ''), "
    "record_invalidation.history_sequence, record_invalidation.person, "
    "invalid_row.person, "
    "invalid_row.happened_at, record_invalidation.reason, "
    "record_return.history_sequence, record_return.person, return_row.person, "
    "return_row.happened_at, record_return.reason FROM record "
    "JOIN history AS signed_row ON signed_row.sequence = record.id "
    "LEFT JOIN record_invalidation ON record_invalidation.record_id = "
    "record.id "
    "LEFT JOIN history AS invalid_row "
    "ON invalid_row.sequence = record_invalidation.history_sequence "
    "LEFT JOIN record_return ON record_return.record_id = record.id "
    "LEFT JOIN history AS return_row ON return_row.sequence = "
    "record_return.history_sequence ";

Result<SignedRecord> recordFrom(const Connection& connection, const SqlStatement& row) {
    SignedRecord record;
    record.id = row.whole(0);
    record.examination = row.whole(1);
    record.revision = static_cast<int>(row.whole(2));
    record.casting = row.text(3);
    const auto word = known(connection, verdictFrom(row.text(4)),
                            "record " + std::to_string(record.id), row.text(4));
    if (!word) return word.error();
    record.word = *word;
    record.recorded = actFrom(row, 5);
    record.invalid = actOrNone(row, 10);
    record.givenBack = actOrNone(row, 15);
    return record;
}

Result<std::vector<SignedRecord>> loadWhere(const Connection& connection,
                                            const std::string& condition, const auto& value) {
    SqlStatement statement(connection, kSelect + condition);
    if (auto done = statement.run(value); !done) return done.error();
    std::vector<SignedRecord> records;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        auto record = recordFrom(connection, row);
        if (!record) return record.error();
        records.push_back(std::move(*record));
        return {};
    });
    if (!read) return read.error();
    return records;
}

}  // namespace

SignedAct actFrom(const SqlStatement& row, int column) {
    return {row.whole(column), row.text(column + 1), row.text(column + 2), row.text(column + 3),
            row.text(column + 4)};
}

std::optional<SignedAct> actOrNone(const SqlStatement& row, int column) {
    if (row.isNone(column)) return std::nullopt;
    return actFrom(row, column);
}

Result<std::vector<SignedRecord>> loadRecordsOf(const Connection& connection,
                                                const std::string& serial) {
    return loadWhere(connection,
                     "WHERE record.casting_serial = ? "
                     "ORDER BY record.examination_id, record.revision",
                     serial);
}

Result<SignedRecord> loadRecord(const Connection& connection, std::int64_t id) {
    auto found = loadWhere(connection, "WHERE record.id = ?", id);
    if (!found) return found.error();
    if (found->empty())
        return inputError(connection.place(), "has no signed record %1", {std::to_string(id)});
    return std::move(found->front());
}

Result<std::vector<std::int64_t>> examinationIds(const Connection& connection,
                                                 const std::string& serial) {
    SqlStatement casting(connection, "SELECT count(*) FROM casting WHERE serial = ?");
    const auto row = casting.first(serial);
    if (!row) return row.error();
    if (casting.whole(0) == 0) return inputError(connection.place(), "has no casting %1", {serial});
    SqlStatement statement(connection,
                           "SELECT id FROM examination WHERE casting_serial = ? ORDER BY id");
    if (auto done = statement.run(serial); !done) return done.error();
    std::vector<std::int64_t> ids;
    auto read = eachRow(statement, [&](const SqlStatement& each) -> Result<void> {
        ids.push_back(each.whole(0));
        return {};
    });
    if (!read) return read.error();
    return ids;
}

const SignedRecord* standingOf(const std::vector<SignedRecord>& records, std::int64_t examination) {
    const auto found = std::ranges::find_if(records, [&](const SignedRecord& record) {
        return record.examination == examination && !record.givenBack;
    });
    return found == records.end() ? nullptr : &*found;
}

std::vector<const SignedRecord*> standingAmong(const std::vector<SignedRecord>& records) {
    std::vector<const SignedRecord*> standing;
    for (const SignedRecord& record : records)
        if (!record.givenBack) standing.push_back(&record);
    std::ranges::sort(standing, {}, &SignedRecord::id);
    return standing;
}

Result<std::optional<SignedRecord>> loadStanding(const Connection& connection,
                                                 std::int64_t examination) {
    const auto records = loadWhere(
        connection, "WHERE record.examination_id = ? ORDER BY record.revision", examination);
    if (!records) return records.error();
    const SignedRecord* record = standingOf(*records, examination);
    return record ? std::optional(*record) : std::nullopt;
}

Result<void> addRecord(const Connection& connection, const SignedRecord& record,
                       std::string_view content) {
    std::optional<std::string> rejection;
    if (!record.recorded.reason.empty()) rejection = record.recorded.reason;
    SqlStatement add(connection,
                     "INSERT INTO record (id, examination_id, revision, "
                     "casting_serial, person, "
                     "word, rejection, content) VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
    return add.run(record.id, record.examination, record.revision, record.casting,
                   record.recorded.person, word(record.word), rejection, Blob{content});
}

Result<void> giveBack(const Connection& connection, const std::vector<std::int64_t>& records,
                      const SignedAct& act) {
    SqlStatement add(connection,
                     "INSERT INTO record_return (record_id, history_sequence, person, reason) "
                     "VALUES (?, ?, ?, ?)");
    for (const std::int64_t record : records)
        if (auto done = add.run(record, act.sequence, act.person, act.reason); !done) return done;
    return {};
}

Result<void> addInvalidation(const Connection& connection, std::int64_t record,
                             const SignedAct& act) {
    SqlStatement add(connection,
                     "INSERT INTO record_invalidation (record_id, history_sequence, person, "
                     "reason) VALUES (?, ?, ?, ?)");
    return add.run(record, act.sequence, act.person, act.reason);
}

}  // namespace model
