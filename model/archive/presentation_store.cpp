// SPDX-License-Identifier: Apache-2.0
#include "archive/presentation_store.h"

#include "archive/canonical_records.h"
#include "archive/presentation_content.h"
#include "archive/signed_record_store.h"
#include "archive/stored_words.h"

namespace model {
namespace {

constexpr char kSelect[] =
    "SELECT presentation.number, presentation.content, "
    "presentation.file_sha256, "
    "presentation.file_bytes, endorsement.file_sha256, endorsement.file_bytes, "
    "presentation.history_sequence, presentation.person, presented_row.person, "
    "presented_row.happened_at, '', "
    "endorsement.history_sequence, endorsement.person, endorsed_row.person, "
    "endorsed_row.happened_at, '', "
    "presentation_return.history_sequence, presentation_return.person, "
    "returned_row.person, "
    "returned_row.happened_at, presentation_return.reason, "
    "certificate_release.history_sequence, certificate_release.person, "
    "released_row.person, "
    "released_row.happened_at, '', "
    "certificate_withdrawal.history_sequence, certificate_withdrawal.person, "
    "withdrawn_row.person, withdrawn_row.happened_at, "
    "certificate_withdrawal.reason, "
    "(SELECT max(later.number) FROM certificate AS later "
    "WHERE later.supersedes = presentation.number) "
    "FROM presentation "
    "JOIN history AS presented_row ON presented_row.sequence = "
    "presentation.history_sequence "
    "LEFT JOIN endorsement ON endorsement.number = presentation.number "
    "LEFT JOIN history AS endorsed_row ON endorsed_row.sequence = "
    "endorsement.history_sequence "
    "LEFT JOIN presentation_return ON presentation_return.number = "
    "presentation.number "
    "LEFT JOIN history AS returned_row "
    "ON returned_row.sequence = presentation_return.history_sequence "
    "LEFT JOIN certificate_release ON certificate_release.number = "
    "presentation.number "
    "LEFT JOIN history AS released_row "
    "ON released_row.sequence = certificate_release.history_sequence "
    "LEFT JOIN certificate_withdrawal ON certificate_withdrawal.number = "
    "presentation.number "
    "LEFT JOIN history AS withdrawn_row "
    "ON withdrawn_row.sequence = certificate_withdrawal.history_sequence ";

Result<StoredPresentation> presentationFrom(const Connection& connection, const SqlStatement& row) {
    auto read = readPresentationContent(row.blob(1));
    if (!read)
        return connection.damaged("presentation " + std::to_string(row.whole(0)),
                                  "is not what was signed");
    StoredPresentation presentation = std::move(*read);
    Presented& shown = presentation.shown;
    shown.number = row.whole(0);
    presentation.firstFileDigest = row.text(2);
    presentation.firstFileSize = row.whole(3);
    shown.fileDigest = row.textOrNone(4).value_or(presentation.firstFileDigest);
    presentation.fileSize = row.wholeOrNone(5).value_or(presentation.firstFileSize);
    shown.presented = actFrom(row, 6);
    shown.endorsed = actOrNone(row, 11);
    shown.returned = actOrNone(row, 16);
    shown.released = actOrNone(row, 21);
    shown.withdrawn = actOrNone(row, 26);
    shown.supersededBy = row.wholeOrNone(31);
    return presentation;
}

template <class... Values>
Result<std::vector<StoredPresentation>> loadWhere(const Connection& connection,
                                                  const std::string& condition,
                                                  const Values&... values) {
    SqlStatement statement(connection, kSelect + condition + " ORDER BY presentation.number");
    if (auto done = statement.run(values...); !done) return done.error();
    std::vector<StoredPresentation> all;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        auto presentation = presentationFrom(connection, row);
        if (!presentation) return presentation.error();
        all.push_back(std::move(*presentation));
        return {};
    });
    if (!read) return read.error();
    return all;
}

Error notThere(const Connection& connection, std::int64_t number) {
    return inputError(connection.place(), "has no casting presented under the number %1",
                      {std::to_string(number)});
}

}  // namespace

Result<void> addPresentation(const Connection& connection, const StoredPresentation& presentation,
                             std::string_view content, const std::string& sheet,
                             const std::string& verdict) {
    const Presented& shown = presentation.shown;
    SqlStatement add(connection,
                     "INSERT INTO presentation (number, history_sequence, "
                     "casting_serial, person, "
                     "file_sha256, file_bytes, content, sheet, verdict) "
                     "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)");
    if (auto done = add.run(shown.number, shown.presented.sequence, shown.facts.serial,
                            shown.presented.person, presentation.firstFileDigest,
                            presentation.firstFileSize, Blob{content}, sheet, verdict);
        !done)
        return done;
    SqlStatement wait(connection, "INSERT INTO release_queue (number) VALUES (?)");
    return wait.run(shown.number);
}

Result<std::vector<StoredPresentation>> loadWaiting(const Connection& connection) {
    return loadWhere(connection, "WHERE presentation.number IN (SELECT number FROM release_queue)");
}

Result<std::vector<StoredPresentation>> loadPresentationsOf(const Connection& connection,
                                                            const std::string& serial) {
    return loadWhere(connection, "WHERE presentation.casting_serial = ?", serial);
}

Result<StoredPresentation> loadPresentation(const Connection& connection, std::int64_t number) {
    auto found = loadWhere(connection, "WHERE presentation.number = ?", number);
    if (!found) return found.error();
    if (found->empty()) return notThere(connection, number);
    return std::move(found->front());
}

Result<std::string> loadPresentedText(const Connection& connection, std::int64_t number,
                                      const char* column) {
    SqlStatement statement(connection,
                           std::string("SELECT ") + column + " FROM presentation WHERE number = ?");
    const auto row = statement.first(number);
    if (!row) return row.error();
    if (!*row) return notThere(connection, number);
    return statement.text(0);
}

}  // namespace model
