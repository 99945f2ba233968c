// SPDX-License-Identifier: Apache-2.0
// Returning, endorsing, releasing, withdrawing and reopening; see lifecycle.h.
#include "archive/archive_access.h"
#include "archive/certificate_store.h"
#include "archive/given_reason.h"
#include "archive/lifecycle.h"
#include "archive/lifecycle_actions.h"
#include "archive/presentation_store.h"
#include "archive/signed_record_store.h"
#include "archive/stored_file.h"

namespace model {
namespace {

/// One that waits; Conflict where somebody has released or returned it.
Result<StoredPresentation> waitingOne(const Connection& connection, std::int64_t number) {
    auto presentation = loadPresentation(connection, number);
    if (!presentation) return presentation;
    const Presented& shown = presentation->shown;
    if (shown.state() == CertificateState::Waiting) return presentation;
    const SignedAct& act = shown.returned ? *shown.returned : *shown.released;
    return Error{
        ErrorKind::Conflict,
        connection.place(),
        "has the certificate %1 %2 already, by %3 at %4",
        {std::to_string(number), shown.returned ? "returned" : "released", act.name, act.time}};
}

/// The presented file is the beginning of the next one, which adds a signature.
Result<void> checkFollows(const std::string& folder, const StoredPresentation& presentation,
                          std::string_view pdf) {
    const auto before = loadStoredFile(folder, presentation.shown.fileDigest);
    if (!before) return before.error();
    if (pdf.size() > before->size() && pdf.starts_with(*before)) return {};
    return inputError("", "the file is not that of certificate %1 with a signature added",
                      {std::to_string(presentation.shown.number)});
}

Result<void> takeFromQueue(const Connection& connection, std::int64_t number) {
    SqlStatement take(connection, "DELETE FROM release_queue WHERE number = ?");
    return take.run(number);
}

SignedAct actOf(const WriteTransaction& transaction, const SignedIn& signer,
                const std::string& reason) {
    return {transaction.head().sequence, signer.person().id, signer.person().name,
            transaction.time(), reason};
}

/// Adds a row of three columns, or of four with the reason.
Result<void> addAct(const Connection& connection, const char* table, std::int64_t number,
                    const SignedAct& act) {
    SqlStatement add(connection, std::string("INSERT INTO ") + table +
                                     " (number, history_sequence, person, reason) "
                                     "VALUES (?, ?, ?, ?)");
    return add.run(number, act.sequence, act.person, act.reason);
}

/// The reason, and the records given back, as the history has them.
Canonical::Object givenBackContent(const std::string& reason,
                                   const std::vector<std::int64_t>& records) {
    Canonical::Object content;
    content["reason"] = reason;
    Canonical::Array ids;
    for (const std::int64_t id : records) ids.emplace_back(id);
    content["records"] = std::move(ids);
    return content;
}

Result<std::vector<std::int64_t>> standingIds(const Connection& connection,
                                              const std::string& serial) {
    const auto records = loadRecordsOf(connection, serial);
    if (!records) return records.error();
    std::vector<std::int64_t> ids;
    for (const SignedRecord* record : standingAmong(*records)) ids.push_back(record->id);
    return ids;
}

Result<void> refuseFor(const Connection& connection, std::int64_t number, const char* act,
                       const std::vector<Obstacle>& obstacles) {
    if (obstacles.empty()) return {};
    return refusal(connection.place(), "does not let the certificate %1 be %2: %3",
                   {std::to_string(number), act, obstacles.front().sentence});
}

Result<void> checkThirdParty(const Connection& connection, const StoredPresentation& presentation,
                             const SignedIn& thirdParty, const std::string& today) {
    const Presented& shown = presentation.shown;
    const std::string number = std::to_string(shown.number);
    if (shown.facts.type != "3.2")
        return inputError(connection.place(),
                          "has the certificate %1 of type %2; only type 3.2 has a third party's "
                          "signature",
                          {number, shown.facts.type});
    if (shown.endorsed)
        return Error{ErrorKind::Conflict,
                     connection.place(),
                     "has the certificate %1 signed by %2 at %3 already",
                     {number, shown.endorsed->name, shown.endorsed->time}};
    const std::string& person = thirdParty.person().id;
    bool involved = shown.presented.person == person;
    for (const std::int64_t id : shown.records) {
        const auto record = loadRecord(connection, id);
        if (!record) return record.error();
        involved = involved || record->recorded.person == person;
    }
    if (involved)
        return refusal(connection.place(),
                       "does not let %1 sign the certificate %2 as third party: "
                       "they recorded or "
                       "presented it",
                       {thirdParty.person().name, number});
    const auto obstacles = obstaclesTo(connection, presentation, nullptr, today);
    if (!obstacles) return obstacles.error();
    return refuseFor(connection, shown.number, "signed", *obstacles);
}

}  // namespace

Result<void> returnCasting(Archive& archive, std::int64_t number, const std::string& reason,
                           const SignedIn& qaManager) {
    if (auto checked = checkRole(qaManager, Role::QaManager); !checked) return checked;
    const auto given = givenReason(reason);
    if (!given) return given.error();
    return ArchiveAccess::write(
        archive, qaManager.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const Connection& connection = transaction.connection();
            const auto presentation = waitingOne(connection, number);
            if (!presentation) return presentation.error();
            const auto records = standingIds(connection, presentation->shown.facts.serial);
            if (!records) return records.error();
            if (auto done =
                    transaction.recordSigned(action::kPresentationReturned, std::to_string(number),
                                             givenBackContent(*given, *records), qaManager);
                !done)
                return done;
            const SignedAct act = actOf(transaction, qaManager, *given);
            if (auto done = takeFromQueue(connection, number); !done) return done;
            if (auto done = addAct(connection, "presentation_return", number, act); !done)
                return done;
            return giveBack(connection, *records, act);
        });
}

Result<void> checkMayEndorse(const Archive& archive, std::int64_t number,
                             const SignedIn& thirdParty) {
    if (auto checked = checkRole(thirdParty, Role::ThirdParty); !checked) return checked;
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    const auto presentation = waitingOne(connection, number);
    if (!presentation) return presentation.error();
    const std::string today = toText(ArchiveAccess::clock(archive).now()).substr(0, 10);
    return checkThirdParty(connection, *presentation, thirdParty, today);
}

Result<void> endorse(Archive& archive, std::int64_t number, std::string_view pdf,
                     const SignedIn& thirdParty) {
    if (auto checked = checkRole(thirdParty, Role::ThirdParty); !checked) return checked;
    const std::string& folder = ArchiveAccess::folder(archive);
    return ArchiveAccess::write(
        archive, thirdParty.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const Connection& connection = transaction.connection();
            const auto presentation = waitingOne(connection, number);
            if (!presentation) return presentation.error();
            const std::string today = transaction.time().substr(0, 10);
            if (auto may = checkThirdParty(connection, *presentation, thirdParty, today); !may)
                return may;
            if (auto follows = checkFollows(folder, *presentation, pdf); !follows) return follows;
            return withStoredFile(folder, pdf, [&](const std::string& digest) -> Result<void> {
                Canonical::Object content;
                content["file_sha256"] = digest;
                content["file_bytes"] = static_cast<std::int64_t>(pdf.size());
                if (auto done = transaction.recordSigned(action::kPresentationEndorsed,
                                                         std::to_string(number), std::move(content),
                                                         thirdParty);
                    !done)
                    return done;
                SqlStatement add(connection,
                                 "INSERT INTO endorsement (number, history_sequence, person, "
                                 "file_sha256, file_bytes) VALUES (?, ?, ?, ?, ?)");
                return add.run(number, transaction.head().sequence, thirdParty.person().id, digest,
                               static_cast<std::int64_t>(pdf.size()));
            });
        });
}

Result<void> release(Archive& archive, std::int64_t number, std::string_view pdf,
                     const SignedIn& qaManager) {
    if (auto checked = checkRole(qaManager, Role::QaManager); !checked) return checked;
    const std::string& folder = ArchiveAccess::folder(archive);
    return ArchiveAccess::write(
        archive, qaManager.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const Connection& connection = transaction.connection();
            const auto presentation = waitingOne(connection, number);
            if (!presentation) return presentation.error();
            const std::string today = transaction.time().substr(0, 10);
            const auto obstacles =
                obstaclesTo(connection, *presentation, &qaManager.person(), today);
            if (!obstacles) return obstacles.error();
            if (auto free = refuseFor(connection, number, "released", *obstacles); !free)
                return free;
            if (auto follows = checkFollows(folder, *presentation, pdf); !follows) return follows;
            if (auto done = takeFromQueue(connection, number); !done) return done;
            const auto record = [&](Canonical::Object content) {
                return transaction.recordSigned(action::kCertificateReleased,
                                                std::to_string(number), std::move(content),
                                                qaManager);
            };
            const IssueFacts& facts = presentation->shown.facts;
            if (auto done = storeCertificate(transaction, folder, facts, pdf, number, record);
                !done)
                return done;
            SqlStatement add(connection,
                             "INSERT INTO certificate_release (number, "
                             "history_sequence, person) "
                             "VALUES (?, ?, ?)");
            return add.run(number, transaction.head().sequence, qaManager.person().id);
        });
}

Result<void> withdraw(Archive& archive, std::int64_t number, const std::string& reason,
                      const SignedIn& qaManager) {
    if (auto checked = checkRole(qaManager, Role::QaManager); !checked) return checked;
    const auto given = givenReason(reason);
    if (!given) return given.error();
    return ArchiveAccess::write(
        archive, qaManager.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const Connection& connection = transaction.connection();
            if (const auto there = loadCertificate(connection, number); !there)
                return there.error();
            SqlStatement withdrawn(connection,
                                   "SELECT history.person, history.happened_at "
                                   "FROM certificate_withdrawal JOIN history "
                                   "ON sequence = history_sequence WHERE number = ?");
            const auto row = withdrawn.first(number);
            if (!row) return row.error();
            if (*row)
                return Error{ErrorKind::Conflict,
                             connection.place(),
                             "has the certificate %1 withdrawn already, by %2 at %3",
                             {std::to_string(number), withdrawn.text(0), withdrawn.text(1)}};
            Canonical::Object content;
            content["reason"] = *given;
            if (auto done =
                    transaction.recordSigned(action::kCertificateWithdrawn, std::to_string(number),
                                             std::move(content), qaManager);
                !done)
                return done;
            return addAct(connection, "certificate_withdrawal", number,
                          actOf(transaction, qaManager, *given));
        });
}

Result<void> reopen(Archive& archive, const std::string& serial, const std::string& reason,
                    const SignedIn& qaManager) {
    if (auto checked = checkRole(qaManager, Role::QaManager); !checked) return checked;
    const auto given = givenReason(reason);
    if (!given) return given.error();
    return ArchiveAccess::write(
        archive, qaManager.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const Connection& connection = transaction.connection();
            const auto presentations = loadPresentationsOf(connection, serial);
            if (!presentations) return presentations.error();
            for (const StoredPresentation& presentation : *presentations)
                if (presentation.shown.state() == CertificateState::Waiting)
                    return inputError(connection.place(),
                                      "has the casting %1 waiting for release as number %2; return "
                                      "that one instead",
                                      {serial, std::to_string(presentation.shown.number)});
            const auto records = standingIds(connection, serial);
            if (!records) return records.error();
            if (records->empty())
                return inputError(connection.place(),
                                  "has no signed examination of the casting %1 to give back",
                                  {serial});
            if (auto done = transaction.recordSigned(action::kCastingReopened, serial,
                                                     givenBackContent(*given, *records), qaManager);
                !done)
                return done;
            return giveBack(connection, *records, actOf(transaction, qaManager, *given));
        });
}

}  // namespace model
