// SPDX-License-Identifier: Apache-2.0
#include <filesystem>

#include "archive/archive_access.h"
#include "archive/dialect.h"
#include "archive/disk.h"
#include "archive/given_reason.h"
#include "archive/leaving.h"
#include "archive/retention.h"
#include "archive/retention_store.h"
#include "archive/stored_file.h"
#include "archive/stored_words.h"

namespace model {
namespace {

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

Result<void> takeOut(const Connection& connection, const Leaving& leaving) {
    const std::int64_t number = leaving.number;
    SqlStatement add(connection, "INSERT INTO disposed_record (record_id, number) VALUES (?, ?)");
    SqlStatement empty(connection, "UPDATE record SET content = ? WHERE id = ?");
    for (const std::int64_t id : leaving.records) {
        if (auto done = add.run(id, number); !done) return done;
        if (auto done = empty.run(Blob{std::string_view("")}, id); !done) return done;
    }
    for (const char* sql : {"DELETE FROM certificate_release WHERE number = ?",
                            "DELETE FROM certificate_withdrawal WHERE number = ?",
                            "DELETE FROM certificate_table WHERE certificate = ?",
                            "DELETE FROM certificate WHERE number = ?",
                            "DELETE FROM presentation_return WHERE number = ?",
                            "DELETE FROM endorsement WHERE number = ?",
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
    auto leaving = leavingOf(connection, number);
    if (!leaving) return leaving.error();
    const auto stated = loadRetention(connection, leaving->order);
    if (!stated) return stated.error();
    if (auto due = checkIsDue(connection, *leaving, *stated, transaction.time().substr(0, 10));
        !due)
        return due;
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

Result<std::vector<Disposable>> disposables(const Archive& archive, const std::string& order) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    if (auto there = checkOrder(connection, order); !there) return there.error();
    const auto stated = loadRetention(connection, order);
    if (!stated) return stated.error();
    const std::string today = toText(ArchiveAccess::clock(archive).now()).substr(0, 10);
    SqlStatement statement(connection,
                           "SELECT number FROM certificate WHERE order_number = ? UNION ALL "
                           "SELECT presentation.number FROM presentation_return "
                           "JOIN presentation ON presentation.number = presentation_return.number "
                           "JOIN casting ON casting.serial = presentation.casting_serial "
                           "WHERE casting.order_number = ? ORDER BY 1 DESC");
    if (auto done = statement.run(order, order); !done) return done.error();
    std::vector<Disposable> all;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        auto leaving = leavingOf(connection, row.whole(0));
        if (!leaving) return leaving.error();
        Disposable one{leaving->number,   leaving->serial, leaving->type,   leaving->at,
                       leaving->returned, leaving->files,  leaving->records};
        if (auto due = checkIsDue(connection, *leaving, *stated, today); !due)
            one.stays = due.error();
        all.push_back(std::move(one));
        return {};
    });
    if (!read) return read.error();
    return all;
}

}  // namespace model
