// SPDX-License-Identifier: Apache-2.0
#include "archive/replay.h"

#include "archive/canonical_records.h"
#include "archive/certificate_store.h"
#include "archive/history_store.h"
#include "archive/lifecycle_actions.h"
#include "archive/plan_store.h"
#include "archive/positions.h"
#include "archive/record_store.h"
#include "archive/replay_digest.h"
#include "archive/retention_store.h"
#include "archive/table_store.h"

namespace model {
namespace {

using replayed::digestOf;
using replayed::kAltered;
using replayed::kUnknown;
using replayed::signedContent;

std::string revisionName(const char* what, const std::string& key, std::int64_t revision) {
    return std::string(what) + " " + key + " revision " + std::to_string(revision);
}

/// The name under which a row's content is expected; empty: an unknown action.
std::string nameOf(const HistoryEntry& entry, const Canonical& content) {
    const std::string& did = entry.action;
    if (did == action::kOrderSaved) return "order " + entry.subject;
    if (did == action::kPartSaved) return "part " + entry.subject;
    if (did == action::kCastingSaved) return "casting " + entry.subject;
    if (did == action::kArchiveCreated) return "archive";
    const Canonical* revision = content.member("revision");
    if (!revision || !revision->whole()) return "";
    if (did == action::kZonePlanAdded)
        return revisionName("zone plan of", entry.subject, *revision->whole());
    if (did == action::kTableAdded)
        return revisionName("limit table", entry.subject, *revision->whole());
    return "";
}

template <class T>
Canonical::Object contentOf(const Stored<T>& stored) {
    Canonical::Object content = canonicalOf(stored.value);
    content["version"] = stored.version;
    return content;
}

}  // namespace

bool Replay::take(const HistoryEntry& entry, const Canonical& row) {
    const Canonical* content = row.member("content");
    if (!content || !content->object()) return false;
    if (entry.action == action::kArchiveMigrated) return true;
    if (entry.action == action::kSearchIndexRebuilt)
        return entry.subject.empty() && content->object()->empty();
    if (IdentityReplay::follows(entry.action)) {
        Canonical::Object written = *content->object();
        written.erase("signer");
        return identities_.take(entry, written);
    }
    if (LifecycleReplay::follows(entry.action)) {
        if (!lifecycle_.take(entry, *content->object())) return false;
        if (entry.action != action::kCertificateReleased) return true;
        Canonical::Object written = *content->object();
        written.erase("signer");
        return takeCertificate(entry, written);
    }
    if (RegisterReplay::follows(entry.action)) return registers_.take(entry, *content->object());
    if (RetentionReplay::follows(entry.action)) return takeRetention(entry, *content->object());
    if (entry.action == action::kExaminationSaved) return drafts_.take(entry, *content);
    if (entry.action == action::kNumberReserved)
        return content->object()->empty() && entry.subject == std::to_string(++numbers_);
    if (entry.action == action::kCertificateAdded)
        return takeCertificate(entry, *content->object());
    const std::string name = nameOf(entry, *content);
    if (name.empty()) return false;
    expected_[name] = entry.action == action::kArchiveCreated
                          ? digestOf(signedContent(*content->object(), entry.time, entry.person))
                          : digestOf(*content);
    return true;
}

bool Replay::takeRetention(const HistoryEntry& entry, const Canonical::Object& content) {
    if (!retention_.take(entry, content)) return false;
    if (entry.action != action::kCertificateDisposed) return true;
    const Disposal& disposal = retention_.disposals().back();
    const bool wasReturned = lifecycle_.dispose(disposal.number, disposal.records);
    return (certificates_.erase(disposal.number) == 1) != wasReturned;
}

bool Replay::takeCertificate(const HistoryEntry& entry, const Canonical::Object& content) {
    const std::int64_t number = std::atoll(entry.subject.c_str());
    return certificates_.emplace(number, digestOf(signedContent(content, entry.time, entry.person)))
        .second;
}

void Replay::compareOne(const Connection& connection, const std::string& name,
                        const Canonical::Object& content) {
    const auto expected = expected_.find(name);
    if (expected == expected_.end()) {
        findings_.push_back(connection.damaged(name, kUnknown));
        return;
    }
    if (digestOf(content) != expected->second)
        findings_.push_back(connection.damaged(name, kAltered));
    expected_.erase(expected);
}

Result<void> Replay::comparePlans(const Connection& connection, const std::string& part) {
    const auto revisions = loadZonePlanRevisions(connection, part);
    if (!revisions) return revisions.error();
    for (const int revision : *revisions) {
        const auto plan = loadZonePlan(connection, part, revision);
        if (!plan) return plan.error();
        compareOne(connection, revisionName("zone plan of", part, revision), canonicalOf(*plan));
    }
    return {};
}

Result<void> Replay::compareRecords(const Connection& connection) {
    const auto orders = loadOrders(connection, std::nullopt);
    if (!orders) return orders.error();
    for (const auto& order : *orders)
        compareOne(connection, "order " + order.value.number, contentOf(order));
    const auto parts = loadParts(connection, std::nullopt);
    if (!parts) return parts.error();
    for (const auto& part : *parts) {
        compareOne(connection, "part " + part.value.number, contentOf(part));
        if (auto done = comparePlans(connection, part.value.number); !done) return done;
    }
    const auto castings = loadCastings(connection, std::nullopt);
    if (!castings) return castings.error();
    for (const auto& casting : *castings)
        compareOne(connection, "casting " + casting.value.serial, contentOf(casting));
    return {};
}

Result<void> Replay::compareDrafts(const Connection& connection) {
    return drafts_.compare(connection, findings_);
}

Result<void> Replay::comparePositions(const Connection& connection) {
    auto wrong = wrongPositions(connection);
    if (!wrong) return wrong.error();
    for (Error& error : *wrong) findings_.push_back(std::move(error));
    return {};
}

Result<void> Replay::compareTables(const Connection& connection) {
    const auto tables = loadLimitTables(connection);
    if (!tables) return tables.error();
    for (const StoredTable& table : *tables) {
        Canonical::Object content;
        content["revision"] = table.revision;
        content["sha256"] = table.digest;
        content["name"] = table.name;
        content["text"] = table.text;
        compareOne(connection, revisionName("limit table", table.id, table.revision), content);
    }
    return {};
}

Result<void> Replay::compareCertificates(const Connection& connection) {
    const auto numbers = reservedNumbers(connection);
    if (!numbers) return numbers.error();
    if (*numbers != numbers_)
        findings_.push_back(
            connection.damaged("certificate numbers", "are not those that were given out"));
    auto read = eachCertificate(connection, [&](const Certificate& certificate) -> Result<void> {
        const std::string name = "certificate " + std::to_string(certificate.number);
        const auto expected = certificates_.find(certificate.number);
        if (expected == certificates_.end())
            findings_.push_back(connection.damaged(name, kUnknown));
        else if (digestOf(signedContent(canonicalOf(certificate), certificate.issuedAt,
                                        certificate.issuedBy)) != expected->second)
            findings_.push_back(connection.damaged(name, kAltered));
        if (expected != certificates_.end()) certificates_.erase(expected);
        return {};
    });
    if (!read) return read;
    for (const auto& [number, digest] : certificates_)
        findings_.push_back(connection.damaged("certificate " + std::to_string(number), "is gone"));
    auto wrong = wrongSerials(connection);
    if (!wrong) return wrong.error();
    for (Error& error : *wrong) findings_.push_back(std::move(error));
    return {};
}

Result<void> Replay::compareArchive(const Connection& connection) {
    SqlStatement statement(connection,
                           "SELECT kind, archive.created_at, person FROM archive, history "
                           "WHERE sequence = 1");
    const auto row = statement.first();
    if (!row) return row.error();
    if (!*row) return {};
    Canonical::Object content;
    content["kind"] = statement.text(0);
    compareOne(connection, "archive",
               signedContent(std::move(content), statement.text(1), statement.text(2)));
    return {};
}

Result<void> Replay::compareIdentities(const Connection& connection) {
    return identities_.compare(connection, findings_);
}

Result<void> Replay::compareLifecycle(const Connection& connection) {
    return lifecycle_.compare(connection, findings_);
}

Result<void> Replay::compareRetention(const Connection& connection) {
    return retention_.compare(connection, findings_);
}

Result<void> Replay::compareRegisters(const Connection& connection) {
    return registers_.compare(connection, findings_);
}

Result<std::vector<Error>> Replay::compare(const Connection& connection) {
    for (const auto part :
         {&Replay::compareArchive, &Replay::compareRecords, &Replay::compareDrafts,
          &Replay::compareTables, &Replay::compareCertificates, &Replay::compareIdentities,
          &Replay::compareLifecycle, &Replay::compareRetention, &Replay::compareRegisters,
          &Replay::comparePositions}) {
        const auto done = (this->*part)(connection);
        if (done) continue;
        if (done.error().kind != ErrorKind::Damaged) return done.error();
        findings_.push_back(done.error());
    }
    for (const auto& [name, digest] : expected_)
        findings_.push_back(connection.damaged(name, "is gone"));
    return std::move(findings_);
}

}  // namespace model
