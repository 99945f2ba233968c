// SPDX-License-Identifier: Apache-2.0
// The one way in which anything is written: whole or not at all, and never without its row of the
// history.
#pragma once

#include <memory>
#include <string>
#include <type_traits>

#include "archive/archive.h"
#include "archive/archive_key.h"
#include "archive/connection.h"
#include "trust/canonical.h"

namespace model {

class SignedIn;

class WriteTransaction {
public:
    /// Waits for another program's write; then this one alone may write until commit(). What is
    /// recorded is sealed with `key`. Fails with Input where `actor` has no name, and as
    /// ArchiveKey::forSealing().
    static Result<std::unique_ptr<WriteTransaction>> begin(const Connection& connection,
                                                           ArchiveKey& key, const Clock& clock,
                                                           const Actor& actor);
    /// The same without a key yet: for making an archive and bringing one up to date.
    static Result<std::unique_ptr<WriteTransaction>> beginUnsealed(const Connection& connection,
                                                                   const Clock& clock,
                                                                   const Actor& actor);
    WriteTransaction(const WriteTransaction&) = delete;
    WriteTransaction& operator=(const WriteTransaction&) = delete;
    /// Undoes everything unless it was committed.
    ~WriteTransaction();

    [[nodiscard]] const Connection& connection() const { return connection_; }
    [[nodiscard]] const std::string& person() const { return person_; }
    [[nodiscard]] const std::string& time() const { return time_; }  ///< of all in it, UTC
    [[nodiscard]] UtcTime moment() const { return moment_; }         ///< the same
    /// The row of the history that was recorded last.
    [[nodiscard]] const Head& head() const { return head_; }

    /// Seals from the next record() on.
    void sealWith(const SealKey& key) { seal_ = &key; }

    /// Adds the row of the history that says what was done to what, and what was written.
    Result<void> record(const std::string& action, const std::string& subject,
                        Canonical::Object content);
    /// The same, signed by a person, whose id becomes the content's "signer" and whose name must be
    /// the transaction's. Fails as checkMaySign() of sign_in.h; whether the person's roles allow
    /// the act is the caller's to ask before.
    Result<void> recordSigned(const std::string& action, const std::string& subject,
                              Canonical::Object content, const SignedIn& signer);

    /// Says that what was to be written is stored already: commit() then does nothing.
    void leaveAsIs() { leftAsIs_ = true; }

    /// Everything is on the disk when this returns. Refused where nothing was recorded.
    Result<void> commit();

private:
    WriteTransaction(const Connection& connection, std::string person, UtcTime moment);

    const Connection& connection_;
    std::string person_;
    UtcTime moment_;
    std::string time_;
    const SealKey* seal_ = nullptr;
    Head head_;
    bool recorded_ = false;
    bool leftAsIs_ = false;
    bool inBatch_ = false;  ///< a part of it, which ends with it
    bool open_ = true;
};

/// Reads as of one moment, whatever others write meanwhile.
class ReadTransaction {
public:
    static Result<std::unique_ptr<ReadTransaction>> begin(const Connection& connection);
    ReadTransaction(const ReadTransaction&) = delete;
    ReadTransaction& operator=(const ReadTransaction&) = delete;
    ~ReadTransaction();

private:
    ReadTransaction(const Connection& connection, bool inBatch)
        : connection_(connection), inBatch_(inBatch) {}
    const Connection& connection_;
    bool inBatch_ = false;  ///< which is a transaction already
};

/// Runs body(transaction), which returns a Result, and commits where it succeeded.
template <class Body>
auto writing(const Connection& connection, ArchiveKey& key, const Clock& clock, const Actor& actor,
             Body body) -> std::invoke_result_t<Body, WriteTransaction&> {
    auto transaction = WriteTransaction::begin(connection, key, clock, actor);
    if (!transaction) return transaction.error();
    auto result = body(**transaction);
    if (!result) return result;
    if (auto committed = (*transaction)->commit(); !committed) return committed.error();
    return result;
}

}  // namespace model
