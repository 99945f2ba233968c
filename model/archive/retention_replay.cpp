// SPDX-License-Identifier: Apache-2.0
#include "archive/retention_replay.h"

#include <cstdlib>

#include "archive/retention_store.h"
#include "archive/stored_words.h"

namespace model {
namespace {

constexpr char kAltered[] = "is not what the history says was written";
constexpr char kUnknown[] = "is stored, but not in the history";

Digest digestOf(const Canonical::Object& object) {
    const auto bytes = canonicalBytes(object);
    return bytes ? sha256(*bytes) : Digest{};
}

Canonical::Object disposalRow(std::int64_t sequence, const std::string& person,
                              const std::string& reason) {
    Canonical::Object row;
    row["sequence"] = sequence;
    row["signer"] = person;
    row["reason"] = reason;
    return row;
}

const std::string* textOf(const Canonical::Object& content, const char* key) {
    const auto found = content.find(key);
    return found == content.end() ? nullptr : found->second.text();
}

const Canonical::Array* listOf(const Canonical::Object& content, const char* key) {
    const auto found = content.find(key);
    return found == content.end() ? nullptr : found->second.array();
}

}  // namespace

bool RetentionReplay::follows(const std::string& action) {
    return action == action::kRetentionStated || action == action::kCertificateDisposed;
}

bool RetentionReplay::take(const HistoryEntry& entry, const Canonical::Object& content) {
    if (entry.action == action::kCertificateDisposed) return takeDisposal(entry, content);
    Canonical::Object stated;
    for (const char* key : {"version", "keep_until", "hold"})
        if (const auto found = content.find(key); found != content.end())
            stated[key] = found->second;
    retentions_[entry.subject] = digestOf(stated);
    return stated.contains("version");
}

bool RetentionReplay::takeDisposal(const HistoryEntry& entry, const Canonical::Object& content) {
    const std::string* signer = textOf(content, "signer");
    const std::string* reason = textOf(content, "reason");
    const Canonical::Array* files = listOf(content, "files");
    const Canonical::Array* records = listOf(content, "records");
    if (!signer || !reason || !files || !records) return false;
    Disposal disposal;
    disposal.number = std::atoll(entry.subject.c_str());
    for (const Canonical& digest : *files) {
        if (!digest.text()) return false;
        disposal.files.push_back(*digest.text());
    }
    for (const Canonical& record : *records) {
        const Canonical* id = record.member("record");
        const Canonical* digest = record.member("content_sha256");
        if (!id || !id->whole() || !digest || !digest->text()) return false;
        disposal.records[*id->whole()] = *digest->text();
    }
    const Digest row = digestOf(disposalRow(entry.sequence, *signer, *reason));
    if (!rows_.emplace(disposal.number, row).second) return false;
    disposals_.push_back(std::move(disposal));
    return true;
}

Result<void> RetentionReplay::compare(const Connection& connection, std::vector<Error>& findings) {
    const auto stored = loadRetentions(connection);
    if (!stored) return stored.error();
    for (const Retention& one : *stored) {
        const std::string name = "retention of order " + one.order;
        const auto expected = retentions_.find(one.order);
        if (expected == retentions_.end()) {
            findings.push_back(connection.damaged(name, kUnknown));
            continue;
        }
        if (digestOf(canonicalOf(one)) != expected->second)
            findings.push_back(connection.damaged(name, kAltered));
        retentions_.erase(expected);
    }
    for (const auto& [order, digest] : retentions_)
        findings.push_back(connection.damaged("retention of order " + order, "is gone"));
    return compareDisposals(connection, findings);
}

Result<void> RetentionReplay::compareDisposals(const Connection& connection,
                                               std::vector<Error>& findings) {
    SqlStatement statement(connection,
                           "SELECT number, history_sequence, person, reason FROM disposal");
    if (auto done = statement.run(); !done) return done;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        const std::string name = "disposal of certificate " + std::to_string(row.whole(0));
        const auto expected = rows_.find(row.whole(0));
        if (expected == rows_.end()) {
            findings.push_back(connection.damaged(name, kUnknown));
            return {};
        }
        if (digestOf(disposalRow(row.whole(1), row.text(2), row.text(3))) != expected->second)
            findings.push_back(connection.damaged(name, kAltered));
        rows_.erase(expected);
        return {};
    });
    if (!read) return read;
    for (const auto& [number, digest] : rows_)
        findings.push_back(
            connection.damaged("disposal of certificate " + std::to_string(number), "is gone"));
    std::map<std::int64_t, std::int64_t> expected;
    for (const Disposal& disposal : disposals_)
        for (const auto& [record, digest] : disposal.records) expected[record] = disposal.number;
    std::map<std::int64_t, std::int64_t> stored;
    SqlStatement records(connection, "SELECT record_id, number FROM disposed_record");
    if (auto done = records.run(); !done) return done;
    read = eachRow(records, [&](const SqlStatement& row) -> Result<void> {
        stored[row.whole(0)] = row.whole(1);
        return {};
    });
    if (read && stored != expected)
        findings.push_back(connection.damaged("contents of records that were disposed of",
                                              "are not those that the history names"));
    return read;
}

}  // namespace model
