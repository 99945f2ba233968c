// SPDX-License-Identifier: Apache-2.0
#include "archive/transaction.h"

#include <algorithm>
#include <cassert>

#include "archive/dialect.h"
#include "archive/history_store.h"
#include "archive/sign_in.h"
#include "archive/signed_acts.h"
#include "trust/signature.h"

namespace model {
namespace {

bool mayDo(const SignedIn& signer, const std::string& action) {
    const std::set<Role>* roles = rolesForAct(action);
    return roles != nullptr && (roles->empty() || std::ranges::any_of(*roles, [&](Role role) {
                                    return signer.has(role);
                                }));
}

}  // namespace

WriteTransaction::WriteTransaction(const Connection& connection, std::string person, UtcTime moment)
    : connection_(connection), person_(std::move(person)), moment_(moment), time_(toText(moment)) {}

Result<std::unique_ptr<WriteTransaction>> WriteTransaction::begin(const Connection& connection,
                                                                  ArchiveKey& key,
                                                                  const Clock& clock,
                                                                  const Actor& actor) {
    auto transaction = beginUnsealed(connection, clock, actor);
    if (!transaction) return transaction;
    const auto seal = key.forSealing(connection);
    if (!seal) return seal.error();
    (*transaction)->sealWith(**seal);
    return transaction;
}

Result<std::unique_ptr<WriteTransaction>> WriteTransaction::beginUnsealed(
    const Connection& connection, const Clock& clock, const Actor& actor) {
    if (actor.name.find_first_not_of(" \t\r\n") == std::string::npos)
        return inputError(connection.place(), "is not written without the name of a person");
    if (connection.isReadOnly())
        return refusal(connection.place(),
                       "was opened for reading only: nothing was written to it");
    const bool inBatch = connection.batch() != Connection::Batch::None;
    if (connection.batch() == Connection::Batch::Broken ||
        (inBatch && !dialect::isWriting(connection)))
        return refusal(connection.place(), "undid the writes that this one belongs to");
    const auto begun =
        inBatch ? connection.execute("SAVEPOINT one_write") : dialect::beginWriting(connection);
    if (!begun) return begun.error();
    std::unique_ptr<WriteTransaction> transaction(
        new WriteTransaction(connection, actor.name, clock.now()));
    transaction->inBatch_ = inBatch;
    return transaction;
}

WriteTransaction::~WriteTransaction() {
    if (!open_) return;
    // Where this fails the database has rolled back by itself already.
    if (!inBatch_)
        static_cast<void>(connection_.execute("ROLLBACK"));
    else if (!connection_.execute("ROLLBACK TO one_write") ||
             !connection_.execute("RELEASE one_write"))
        connection_.setBatch(Connection::Batch::Broken);
}

Result<void> WriteTransaction::record(const std::string& action, const std::string& subject,
                                      Canonical::Object content) {
    if (!seal_) return refusal(connection_.place(), "is not written without the archive's own key");
    if (isSignedAct(action) != content.contains("signer"))
        return refusal(connection_.place(), "does not take \"%1\" without a signature", {action});
    const auto added =
        appendHistory(connection_, time_, person_, action, subject, std::move(content));
    if (!added) return added.error();
    if (auto sealed = appendSeal(connection_, *added, *seal_); !sealed) return sealed;
    head_ = *added;
    recorded_ = true;
    return {};
}

Result<void> WriteTransaction::recordSigned(const std::string& action, const std::string& subject,
                                            Canonical::Object content, const SignedIn& signer) {
    assert(person_ == signer.person().name);
    if (person_ != signer.person().name)
        return refusal(connection_.place(), "takes a signed act only in the signer's own name");
    if (auto may = checkMaySign(connection_, signer, moment_); !may) return may;
    if (!mayDo(signer, action))
        return refusal(connection_.place(), "takes no \"%1\" of %2, who has not the role for it",
                       {action, person_});
    content["signer"] = signer.person().id;
    if (auto recorded = record(action, subject, std::move(content)); !recorded) return recorded;
    const std::string_view hash(reinterpret_cast<const char*>(head_.hash.data()),
                                head_.hash.size());
    const auto signature = signBeside(hash, signer.key(), moment_);
    if (!signature) return signature.error();
    return appendSignature(connection_, head_.sequence, signer.identity(), *signature);
}

Result<void> WriteTransaction::commit() {
    if (leftAsIs_ && !recorded_) return {};
    assert(recorded_);
    if (!recorded_)
        return refusal(connection_.place(), "is not written without a row of the history");
    if (auto done = connection_.execute(inBatch_ ? "RELEASE one_write" : "COMMIT"); !done)
        return done;
    open_ = false;
    return {};
}

Result<std::unique_ptr<ReadTransaction>> ReadTransaction::begin(const Connection& connection) {
    const bool inBatch = connection.batch() != Connection::Batch::None;
    if (!inBatch)
        if (auto begun = connection.execute("BEGIN"); !begun) return begun.error();
    return std::unique_ptr<ReadTransaction>(new ReadTransaction(connection, inBatch));
}

ReadTransaction::~ReadTransaction() {
    if (!inBatch_) static_cast<void>(connection_.execute("COMMIT"));
}

}  // namespace model
