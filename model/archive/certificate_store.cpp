// SPDX-License-Identifier: Apache-2.0
#include "archive/certificate_store.h"

#include <algorithm>
#include <set>

#include "archive/canonical_records.h"
#include "archive/history_store.h"
#include "archive/stored_file.h"
#include "archive/stored_words.h"
#include "archive/table_store.h"
#include "judge/sheet_words.h"
#include "registers/field.h"

namespace model {
namespace {

constexpr char kColumns[] =
    "number, casting_serial, heat, part_number, order_number, customer, customer_reference, "
    "certificate_type, language, verdict, printed_head, supersedes, issued_at, issued_by, "
    "file_sha256, file_bytes, series";

Result<Certificate> certificateFrom(const Connection& connection, const SqlStatement& row) {
    const std::string what = "certificate " + std::to_string(row.whole(0));
    Certificate certificate;
    certificate.number = row.whole(0);
    IssueFacts& facts = certificate.facts;
    facts.serial = row.text(1);
    facts.heat = row.text(2);
    facts.part = row.text(3);
    facts.order = row.text(4);
    facts.customer = row.text(5);
    facts.customerOrder = row.text(6);
    facts.type = row.text(7);
    facts.language = row.text(8);
    const auto verdict = known(connection, verdictFrom(row.text(9)), what, row.text(9));
    if (!verdict) return verdict.error();
    facts.verdict = *verdict;
    if (const auto text = row.textOrNone(10)) {
        const auto head = parseHead(*text);
        if (!head) return connection.damaged(what, "has no readable head of the history");
        facts.printedHead = *head;
    }
    facts.supersedes = row.wholeOrNone(11);
    certificate.issuedAt = row.text(12);
    certificate.issuedBy = row.text(13);
    certificate.fileDigest = row.text(14);
    certificate.fileSize = row.whole(15);
    facts.series = row.text(16);
    return certificate;
}

std::set<std::string> serialsOf(const IssueFacts& facts) {
    const std::vector<std::string> serials = itemsOf(facts.series);
    return {serials.begin(), serials.end()};
}

/// There is none of this number, or none any more.
Error missing(const Connection& connection, std::int64_t number) {
    SqlStatement statement(connection,
                           "SELECT history.person, happened_at, reason FROM disposal JOIN history "
                           "ON sequence = history_sequence WHERE number = ?");
    const auto row = statement.first(number);
    if (row && *row)
        return inputError(
            connection.place(), "has certificate %1 no more: %2 disposed of it at %3: %4",
            {std::to_string(number), statement.text(0), statement.text(1), statement.text(2)});
    return inputError(connection.place(), "has no certificate %1", {std::to_string(number)});
}

/// The certificates that meet `condition`, the newest first.
Result<void> eachWhere(const Connection& connection, const std::string& condition,
                       const SqlStatement::Values& values,
                       const std::function<Result<void>(const Certificate&)>& take) {
    // One row for each of a certificate's tables, at least one for each certificate.
    SqlStatement statement(connection,
                           std::string("SELECT ") + kColumns +
                               ", table_sha256 FROM (SELECT * FROM certificate WHERE " + condition +
                               ") AS chosen LEFT JOIN certificate_table ON certificate = number "
                               "ORDER BY number DESC");
    if (auto done = statement.runWith(values); !done) return done;
    std::optional<Certificate> current;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        if (!current || current->number != row.whole(0)) {
            if (current)
                if (auto taken = take(*current); !taken) return taken;
            auto certificate = certificateFrom(connection, row);
            if (!certificate) return certificate.error();
            current = std::move(*certificate);
        }
        if (auto digest = row.textOrNone(17))
            current->facts.tableDigests.insert(std::move(*digest));
        return {};
    });
    if (!read || !current) return read;
    return take(*current);
}

Result<void> checkPrintedHead(const Connection& connection, const Head& head) {
    SqlStatement statement(connection, "SELECT hash FROM history WHERE sequence = ?");
    const auto row = statement.first(head.sequence);
    if (!row) return row.error();
    const std::string_view hash(reinterpret_cast<const char*>(head.hash.data()), head.hash.size());
    if (*row && statement.blob(0) == hash) return {};
    return inputError(connection.place(), "does not have the history's head that is printed: %1",
                      {toText(head)});
}

Result<void> checkFacts(const Connection& connection, const IssueFacts& facts) {
    const std::string& place = connection.place();
    if (facts.type.empty()) return inputError(place, "stores no certificate without its type");
    SqlStatement statement(connection,
                           "SELECT (SELECT count(*) FROM casting WHERE serial = ?), "
                           "(SELECT count(*) FROM certificate WHERE number = ?)");
    const auto row = statement.first(facts.serial, facts.supersedes);
    if (!row) return row.error();
    if (statement.whole(0) == 0) return inputError(place, "has no casting %1", {facts.serial});
    if (facts.supersedes && statement.whole(1) == 0)
        return inputError(place, "has no certificate %1 to supersede",
                          {std::to_string(*facts.supersedes)});
    if (facts.printedHead) return checkPrintedHead(connection, *facts.printedHead);
    return {};
}

Result<void> writeRow(WriteTransaction& transaction, const Certificate& certificate,
                      const RecordCertificate& record) {
    const IssueFacts& facts = certificate.facts;
    std::optional<std::string> head;
    if (facts.printedHead) head = toText(*facts.printedHead);
    SqlStatement add(transaction.connection(),
                     std::string("INSERT INTO certificate (") + kColumns +
                         ") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    if (auto done = add.run(certificate.number, facts.serial, facts.heat, facts.part, facts.order,
                            facts.customer, facts.customerOrder, facts.type, facts.language,
                            word(facts.verdict), head, facts.supersedes, transaction.time(),
                            transaction.person(), certificate.fileDigest, certificate.fileSize,
                            facts.series);
        !done)
        return done;
    SqlStatement addTable(
        transaction.connection(),
        "INSERT INTO certificate_table (certificate, table_sha256) VALUES (?, ?)");
    for (const std::string& digest : facts.tableDigests)
        if (auto done = addTable.run(certificate.number, digest); !done) return done;
    SqlStatement addSerial(transaction.connection(),
                           "INSERT INTO certificate_serial (serial, certificate) VALUES (?, ?)");
    for (const std::string& serial : serialsOf(facts))
        if (auto done = addSerial.run(serial, certificate.number); !done) return done;
    return record(canonicalOf(certificate));
}

}  // namespace

Result<std::vector<Error>> wrongSerials(const Connection& connection) {
    std::set<std::pair<std::int64_t, std::string>> expected;
    SqlStatement series(connection, "SELECT number, series FROM certificate WHERE series <> ''");
    if (auto done = series.run(); !done) return done.error();
    auto read = eachRow(series, [&](const SqlStatement& row) -> Result<void> {
        IssueFacts facts;
        facts.series = row.text(1);
        for (const std::string& serial : serialsOf(facts)) expected.emplace(row.whole(0), serial);
        return {};
    });
    if (!read) return read.error();
    std::set<std::int64_t> wrong;
    SqlStatement stored(connection, "SELECT certificate, serial FROM certificate_serial");
    if (auto done = stored.run(); !done) return done.error();
    read = eachRow(stored, [&](const SqlStatement& row) -> Result<void> {
        if (expected.erase({row.whole(0), row.text(1)}) == 0) wrong.insert(row.whole(0));
        return {};
    });
    if (!read) return read.error();
    for (const auto& [number, serial] : expected) wrong.insert(number);
    std::vector<Error> errors;
    errors.reserve(wrong.size());
    for (const std::int64_t number : wrong)
        errors.push_back(connection.damaged("certificate " + std::to_string(number),
                                            "is not found by the serial numbers of its series"));
    return errors;
}

Result<void> checkFreeNumber(const Connection& connection, std::int64_t number) {
    SqlStatement statement(connection,
                           "SELECT (SELECT count(*) FROM certificate_number WHERE number = ?), "
                           "(SELECT count(*) FROM certificate WHERE number = ?)");
    const auto row = statement.first(number, number);
    if (!row) return row.error();
    if (statement.whole(0) == 0)
        return inputError(connection.place(), "has not given out the certificate number %1",
                          {std::to_string(number)});
    if (statement.whole(1) != 0)
        return Error{ErrorKind::Conflict,
                     connection.place(),
                     "has a certificate %1 already",
                     {std::to_string(number)}};
    return {};
}

Result<std::int64_t> reserveNumber(WriteTransaction& transaction) {
    const Connection& connection = transaction.connection();
    SqlStatement next(connection, "SELECT coalesce(max(number), 0) + 1 FROM certificate_number");
    const auto row = next.first();
    if (!row) return row.error();
    const std::int64_t number = next.whole(0);
    SqlStatement add(connection, "INSERT INTO certificate_number (number) VALUES (?)");
    if (auto done = add.run(number); !done) return done.error();
    if (auto done = transaction.record(action::kNumberReserved, std::to_string(number), {}); !done)
        return done.error();
    return number;
}

Result<void> storeCertificate(WriteTransaction& transaction, const std::string& folder,
                              const IssueFacts& facts, std::string_view pdf, std::int64_t number,
                              const RecordCertificate& record) {
    const Connection& connection = transaction.connection();
    if (pdf.empty()) return inputError(connection.place(), "stores no certificate without a PDF");
    if (auto checked = checkFacts(connection, facts); !checked) return checked;
    if (auto checked = checkFreeNumber(connection, number); !checked) return checked;
    for (const std::string& digest : facts.tableDigests)
        if (auto kept = keepLimitTable(transaction, digest); !kept) return kept;
    return withStoredFile(folder, pdf, [&](const std::string& digest) -> Result<void> {
        return writeRow(transaction,
                        {number, facts, "", "", digest, static_cast<std::int64_t>(pdf.size())},
                        record);
    });
}

Result<Certificate> loadCertificate(const Connection& connection, std::int64_t number) {
    std::optional<Certificate> found;
    auto read = eachWhere(connection, "number = ?", {number},
                          [&](const Certificate& certificate) -> Result<void> {
                              found = certificate;
                              return {};
                          });
    if (!read) return read.error();
    if (!found) return missing(connection, number);
    return std::move(*found);
}

Result<void> eachCertificate(const Connection& connection,
                             const std::function<Result<void>(const Certificate&)>& take) {
    return eachWhere(connection, "number >= 1", {}, take);
}

Result<std::optional<std::int64_t>> reservedNumbers(const Connection& connection) {
    SqlStatement statement(connection,
                           "SELECT count(*), coalesce(max(number), 0) FROM certificate_number");
    const auto row = statement.first();
    if (!row) return row.error();
    if (statement.whole(0) != statement.whole(1)) return std::optional<std::int64_t>();
    return std::optional(statement.whole(0));
}

}  // namespace model
