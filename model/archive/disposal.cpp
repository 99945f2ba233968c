// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <filesystem>
#include <iterator>
#include <set>

#include "archive/archive_access.h"
#include "archive/canonical_records.h"
#include "archive/certificate_store.h"
#include "archive/dialect.h"
#include "archive/disk.h"
#include "archive/given_reason.h"
#include "archive/presentation_store.h"
#include "archive/retention.h"
#include "archive/retention_store.h"
#include "archive/stored_file.h"
#include "archive/stored_words.h"

namespace model {
namespace {

/// Everything of a certificate that goes.
struct Leaving {
    Certificate certificate;
    std::vector<std::string> files;     ///< SHA-256, the released one first
    std::vector<std::int64_t> records;  ///< that it alone was made from
    Canonical::Object said;             ///< for the history
};

Result<void> checkMayDispose(const SignedIn& signer) {
    if (signer.has(Role::QaManager) || signer.has(Role::Administrator)) return {};
    return refusal(signer.person().name,
                   "is neither QA manager nor administrator, who alone dispose of certificates");
}

Result<bool> isDisposed(const Connection& connection, std::int64_t number) {
    SqlStatement statement(connection, "SELECT count(*) FROM disposal WHERE number = ?");
    const auto row = statement.first(number);
    if (!row) return row.error();
    return statement.whole(0) != 0;
}

/// Why it has to stay on `day`; nothing: it need not.
Result<void> checkIsDue(const Connection& connection, const Certificate& certificate,
                        const Retention& stated, const std::string& day) {
    const std::string place = "certificate " + std::to_string(certificate.number);
    if (stated.hold)
        return refusal(place, "stays: its order %1 is on hold: %2", {stated.order, *stated.hold});
    if (!stated.keepUntil)
        return refusal(place,
                       "stays for ever: no day is stated for its order %1 until which its "
                       "certificates are kept",
                       {stated.order});
    if (day <= *stated.keepUntil)
        return refusal(place, "stays: its order %1 is to be kept until %2",
                       {stated.order, *stated.keepUntil});
    SqlStatement statement(connection, "SELECT min(number) FROM certificate WHERE supersedes = ?");
    const auto row = statement.first(certificate.number);
    if (!row) return row.error();
    if (const auto newer = statement.wholeOrNone(0))
        return refusal(place, "stays: certificate %1 supersedes it; dispose of that first",
                       {std::to_string(*newer)});
    return {};
}

/// Its records that no other presentation of the casting was made from.
Result<std::vector<std::int64_t>> recordsOfThisAlone(const Connection& connection,
                                                     const Certificate& certificate) {
    const auto presentations = loadPresentationsOf(connection, certificate.facts.serial);
    if (!presentations) return presentations.error();
    std::set<std::int64_t> records;
    std::set<std::int64_t> others;
    for (const StoredPresentation& one : *presentations) {
        auto& used = one.shown.number == certificate.number ? records : others;
        used.insert(one.basis.records.begin(), one.basis.records.end());
    }
    std::vector<std::int64_t> alone;
    std::ranges::set_difference(records, others, std::back_inserter(alone));
    return alone;
}

/// What was presented for it, if anything was.
Result<void> addPresented(const Connection& connection, Leaving& leaving) {
    SqlStatement statement(connection,
                           "SELECT presentation.file_sha256, endorsement.file_sha256, content, "
                           "sheet, verdict FROM presentation LEFT JOIN endorsement "
                           "ON endorsement.number = presentation.number "
                           "WHERE presentation.number = ?");
    const auto row = statement.first(leaving.certificate.number);
    if (!row) return row.error();
    if (!*row) return {};
    if (auto endorsed = statement.textOrNone(1)) leaving.files.push_back(std::move(*endorsed));
    leaving.files.push_back(statement.text(0));
    leaving.said["content_sha256"] = toHex(sha256(statement.blob(2)));
    leaving.said["sheet_sha256"] = toHex(sha256(statement.text(3)));
    leaving.said["verdict_sha256"] = toHex(sha256(statement.text(4)));
    auto records = recordsOfThisAlone(connection, leaving.certificate);
    if (!records) return records.error();
    leaving.records = std::move(*records);
    return {};
}

Result<void> addRecords(const Connection& connection, Leaving& leaving) {
    SqlStatement statement(connection, "SELECT content FROM record WHERE id = ?");
    Canonical::Array records;
    for (const std::int64_t id : leaving.records) {
        const auto row = statement.first(id);
        if (!row) return row.error();
        if (!*row) return connection.damaged("record " + std::to_string(id), "is gone");
        Canonical::Object record;
        record["record"] = id;
        record["content_sha256"] = toHex(sha256(statement.blob(0)));
        records.emplace_back(std::move(record));
    }
    leaving.said["records"] = std::move(records);
    return {};
}

/// Numbers, dates and digests; nothing of what the certificate states.
Result<Leaving> leavingOf(const Connection& connection, const Certificate& certificate) {
    Leaving leaving;
    leaving.certificate = certificate;
    leaving.files.push_back(certificate.fileDigest);
    const auto facts = canonicalBytes(canonicalOf(certificate));
    if (!facts) return facts.error();
    leaving.said["certificate_type"] = certificate.facts.type;
    leaving.said["issued_at"] = certificate.issuedAt;
    leaving.said["certificate_sha256"] = toHex(sha256(*facts));
    if (auto added = addPresented(connection, leaving); !added) return added.error();
    if (auto added = addRecords(connection, leaving); !added) return added.error();
    Canonical::Array files;
    for (const std::string& digest : leaving.files) files.emplace_back(digest);
    leaving.said["files"] = std::move(files);
    return leaving;
}

Result<void> takeOut(const Connection& connection, const Leaving& leaving) {
    const std::int64_t number = leaving.certificate.number;
    SqlStatement add(connection, "INSERT INTO disposed_record (record_id, number) VALUES (?, ?)");
    SqlStatement empty(connection, "UPDATE record SET content = ? WHERE id = ?");
    for (const std::int64_t id : leaving.records) {
        if (auto done = add.run(id, number); !done) return done;
        if (auto done = empty.run(Blob{std::string_view("")}, id); !done) return done;
    }
    for (const char* sql :
         {"DELETE FROM certificate_release WHERE number = ?",
          "DELETE FROM certificate_withdrawal WHERE number = ?",
          "DELETE FROM certificate_table WHERE certificate = ?",
          "DELETE FROM certificate WHERE number = ?", "DELETE FROM endorsement WHERE number = ?",
          "DELETE FROM presentation WHERE number = ?"}) {
        SqlStatement statement(connection, sql);
        if (auto done = statement.run(number); !done) return done;
    }
    return {};
}

/// The files that a disposal said go, as far as nothing else names them.
Result<void> deleteFiles(const Archive& archive, std::int64_t number) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto files = disposedFiles(connection, number);
    if (!files) return files.error();
    for (const DisposedFile& file : *files) {
        const std::string path = storedFilePath(ArchiveAccess::folder(archive), file.digest);
        std::error_code failure;
        std::filesystem::remove(path, failure);
        if (failure)
            return refusal(path,
                           "is disposed of, but could not be deleted: %1; dispose of certificate "
                           "%2 again once that is put right",
                           {failure.message(), std::to_string(number)});
    }
    return {};
}

Result<void> disposeIn(WriteTransaction& transaction, std::int64_t number,
                       const std::string& reason, const SignedIn& signer) {
    const Connection& connection = transaction.connection();
    const auto done = isDisposed(connection, number);
    if (!done) return done.error();
    if (*done) {
        transaction.leaveAsIs();
        return {};
    }
    const auto certificate = loadCertificate(connection, number);
    if (!certificate) return certificate.error();
    const auto stated = loadRetention(connection, certificate->facts.order);
    if (!stated) return stated.error();
    if (auto due = checkIsDue(connection, *certificate, *stated, transaction.time().substr(0, 10));
        !due)
        return due;
    auto leaving = leavingOf(connection, *certificate);
    if (!leaving) return leaving.error();
    leaving->said["kept_until"] = *stated->keepUntil;
    leaving->said["reason"] = reason;
    if (auto recorded = transaction.recordSigned(action::kCertificateDisposed,
                                                 std::to_string(number), leaving->said, signer);
        !recorded)
        return recorded;
    SqlStatement add(connection,
                     "INSERT INTO disposal (number, history_sequence, person, reason) "
                     "VALUES (?, ?, ?, ?)");
    if (auto added = add.run(number, transaction.head().sequence, signer.person().id, reason);
        !added)
        return added;
    return takeOut(connection, *leaving);
}

}  // namespace

Result<void> dispose(Archive& archive, std::int64_t number, const std::string& reason,
                     const SignedIn& signer) {
    if (auto may = checkMayDispose(signer); !may) return may;
    const auto why = givenReason(reason);
    if (!why) return why.error();
    const Connection& connection = ArchiveAccess::connection(archive);
    if (auto done = dialect::overwriteDeleted(connection); !done) return done;
    auto disposed =
        ArchiveAccess::write(archive, signer.actor(), [&](WriteTransaction& transaction) {
            return disposeIn(transaction, number, *why, signer);
        });
    if (!disposed) return disposed;
    return deleteFiles(archive, number);
}

}  // namespace model
