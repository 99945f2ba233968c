// SPDX-License-Identifier: Apache-2.0
#include "archive/lifecycle_replay.h"

#include <cstdlib>

#include "archive/lifecycle_actions.h"
#include "archive/stored_words.h"

namespace model {
namespace {

using Kind = LifecycleReplay::Kind;

enum class Held {
    Whole,
    Text,
    TextOrNone,  ///< left out where it is NULL
    Bytes,       ///< by their SHA-256
    LongText,    ///< by its SHA-256
};

struct Column {
    const char* key;  ///< in the expected content
    Held held;
};

/// How the rows of a kind are read: the first column is the row's key.
struct RowSource {
    Kind kind;
    const char* name;
    const char* select;
    std::vector<Column> columns;
};

const std::vector<RowSource>& sources() {
    static const Column sequence{"sequence", Held::Whole};
    static const Column signer{"signer", Held::Text};
    static const Column reason{"reason", Held::Text};
    static const std::vector<RowSource> all{
        {Kind::Record,
         "record",
         "SELECT id, examination_id, revision, casting_serial, person, word, "
         "rejection, content "
         "FROM record",
         {{"examination", Held::Whole},
          {"revision", Held::Whole},
          {"casting", Held::Text},
          signer,
          {"word", Held::Text},
          {"rejection", Held::TextOrNone},
          {"content_sha256", Held::Bytes}}},
        {Kind::Invalidation,
         "declaration that a record is invalid, of record",
         "SELECT record_id, history_sequence, person, reason FROM "
         "record_invalidation",
         {sequence, signer, reason}},
        {Kind::RecordReturn,
         "return of record",
         "SELECT record_id, history_sequence, person, reason FROM record_return",
         {sequence, signer, reason}},
        {Kind::Presentation,
         "presentation",
         "SELECT number, history_sequence, casting_serial, person, file_sha256, "
         "file_bytes, "
         "content, sheet, verdict FROM presentation",
         {sequence,
          {"casting", Held::Text},
          signer,
          {"file_sha256", Held::Text},
          {"file_bytes", Held::Whole},
          {"content_sha256", Held::Bytes},
          {"sheet_sha256", Held::LongText},
          {"verdict_sha256", Held::LongText}}},
        {Kind::PresentationReturn,
         "return of presentation",
         "SELECT number, history_sequence, person, reason FROM "
         "presentation_return",
         {sequence, signer, reason}},
        {Kind::Endorsement,
         "third party's signature on certificate",
         "SELECT number, history_sequence, person, file_sha256, file_bytes FROM "
         "endorsement",
         {sequence, signer, {"file_sha256", Held::Text}, {"file_bytes", Held::Whole}}},
        {Kind::Release,
         "release of certificate",
         "SELECT number, history_sequence, person FROM certificate_release",
         {sequence, signer}},
        {Kind::Withdrawal,
         "withdrawal of certificate",
         "SELECT number, history_sequence, person, reason FROM "
         "certificate_withdrawal",
         {sequence, signer, reason}},
        {Kind::Attestation,
         "attestation",
         "SELECT history_sequence, limit_table_sha256 FROM attestation",
         {{"sha256", Held::Text}}},
        {Kind::AttestationWithdrawal,
         "withdrawal of attestation",
         "SELECT attestation, history_sequence, person, reason FROM attestation_withdrawal",
         {sequence, signer, reason}}};
    return all;
}

Digest digestOf(const Canonical::Object& object) {
    const auto bytes = canonicalBytes(object);
    return bytes ? sha256(*bytes) : Digest{};
}

Canonical::Object objectFrom(const SqlStatement& row, const std::vector<Column>& columns) {
    Canonical::Object object;
    int index = 0;
    for (const Column& column : columns) {
        ++index;
        switch (column.held) {
            case Held::Whole:
                object[column.key] = row.whole(index);
                break;
            case Held::Text:
                object[column.key] = row.text(index);
                break;
            case Held::TextOrNone:
                if (!row.isNone(index)) object[column.key] = row.text(index);
                break;
            case Held::Bytes:
                object[column.key] = toHex(sha256(row.blob(index)));
                break;
            case Held::LongText:
                object[column.key] = toHex(sha256(row.text(index)));
                break;
        }
    }
    return object;
}

/// The members of `content` that are kept for comparing, where they are there.
Canonical::Object chosen(const Canonical::Object& content, std::int64_t sequence,
                         const std::vector<const char*>& keys) {
    Canonical::Object object;
    object["sequence"] = sequence;
    for (const char* key : keys)
        if (const auto found = content.find(key); found != content.end())
            object[key] = found->second;
    return object;
}

}  // namespace

bool LifecycleReplay::follows(const std::string& action) {
    for (const char* each :
         {action::kTableAttested, action::kAttestationWithdrawn, action::kRecordSigned,
          action::kRecordInvalidated, action::kCastingPresented, action::kPresentationReturned,
          action::kPresentationEndorsed, action::kCertificateReleased,
          action::kCertificateWithdrawn, action::kCastingReopened})
        if (action == each) return true;
    return false;
}

bool LifecycleReplay::expect(Kind kind, std::int64_t key, const Canonical::Object& content) {
    return expected_[static_cast<std::size_t>(kind)].emplace(key, digestOf(content)).second;
}

bool LifecycleReplay::takeReturns(const HistoryEntry& entry, const Canonical::Object& content) {
    const auto records = content.find("records");
    if (records == content.end() || !records->second.array()) return false;
    const Canonical::Object act = chosen(content, entry.sequence, {"signer", "reason"});
    for (const Canonical& record : *records->second.array())
        if (!record.whole() || !expect(Kind::RecordReturn, *record.whole(), act)) return false;
    if (entry.action == action::kCastingReopened) return true;
    const std::int64_t number = std::atoll(entry.subject.c_str());
    return waiting_.erase(number) == 1 && expect(Kind::PresentationReturn, number, act);
}

bool LifecycleReplay::take(const HistoryEntry& entry, const Canonical::Object& content) {
    const std::string& did = entry.action;
    const std::int64_t subject = std::atoll(entry.subject.c_str());
    if (did == action::kTableAttested)
        return content.contains("sha256") &&
               expect(Kind::Attestation, entry.sequence, {{"sha256", content.at("sha256")}});
    if (did == action::kAttestationWithdrawn) {
        const auto attestation = content.find("attestation");
        return attestation != content.end() && attestation->second.whole() &&
               expect(Kind::AttestationWithdrawal, *attestation->second.whole(),
                      chosen(content, entry.sequence, {"signer", "reason"}));
    }
    if (did == action::kRecordSigned) {
        Canonical::Object record = content;
        record["examination"] = subject;
        return expect(Kind::Record, entry.sequence, record);
    }
    if (did == action::kRecordInvalidated)
        return expect(Kind::Invalidation, subject,
                      chosen(content, entry.sequence, {"signer", "reason"}));
    if (did == action::kCastingPresented) {
        Canonical::Object presentation = content;
        presentation["sequence"] = entry.sequence;
        return waiting_.insert(subject).second && expect(Kind::Presentation, subject, presentation);
    }
    if (did == action::kPresentationEndorsed)
        return expect(Kind::Endorsement, subject,
                      chosen(content, entry.sequence, {"signer", "file_sha256", "file_bytes"}));
    if (did == action::kCertificateReleased)
        return waiting_.erase(subject) == 1 &&
               expect(Kind::Release, subject, chosen(content, entry.sequence, {"signer"}));
    if (did == action::kCertificateWithdrawn)
        return expect(Kind::Withdrawal, subject,
                      chosen(content, entry.sequence, {"signer", "reason"}));
    return takeReturns(entry, content);
}

bool LifecycleReplay::dispose(std::int64_t number,
                              const std::map<std::int64_t, std::string>& records) {
    for (const Kind kind : {Kind::Presentation, Kind::Endorsement, Kind::Release, Kind::Withdrawal})
        expected_[static_cast<std::size_t>(kind)].erase(number);
    disposed_.insert(records.begin(), records.end());
    return expected_[static_cast<std::size_t>(Kind::PresentationReturn)].erase(number) == 1;
}

Result<void> LifecycleReplay::compareQueue(const Connection& connection,
                                           std::vector<Error>& findings) const {
    SqlStatement statement(connection, "SELECT number FROM release_queue");
    if (auto done = statement.run(); !done) return done;
    std::set<std::int64_t> stored;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        stored.insert(row.whole(0));
        return {};
    });
    if (!read) return read;
    if (stored != waiting_)
        findings.push_back(connection.damaged(
            "release queue", "does not list what the history says is waiting for release"));
    return {};
}

Result<void> LifecycleReplay::compare(const Connection& connection, std::vector<Error>& findings) {
    for (const RowSource& source : sources()) {
        auto& expected = expected_[static_cast<std::size_t>(source.kind)];
        SqlStatement statement(connection, source.select);
        if (auto done = statement.run(); !done) return done;
        auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
            const std::string name = std::string(source.name) + " " + std::to_string(row.whole(0));
            const auto found = expected.find(row.whole(0));
            if (found == expected.end()) {
                findings.push_back(connection.damaged(name, "is stored, but not in the history"));
                return {};
            }
            Canonical::Object stored = objectFrom(row, source.columns);
            if (const auto gone = disposed_.find(row.whole(0));
                source.kind == Kind::Record && gone != disposed_.end()) {
                if (stored["content_sha256"] != Canonical(toHex(sha256(""))))
                    findings.push_back(connection.damaged(
                        name, "has a content still, though that was disposed of"));
                stored["content_sha256"] = gone->second;
            }
            if (digestOf(stored) != found->second)
                findings.push_back(
                    connection.damaged(name, "is not what the history says was written"));
            expected.erase(found);
            return {};
        });
        if (!read) return read;
        for (const auto& [key, digest] : expected)
            findings.push_back(connection.damaged(
                std::string(source.name) + " " + std::to_string(key), "is gone"));
    }
    return compareQueue(connection, findings);
}

}  // namespace model
