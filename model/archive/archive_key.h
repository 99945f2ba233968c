// SPDX-License-Identifier: Apache-2.0
// The archive's own key: the private half in the file FILE.key beside the database, readable by
// its owner only and never in the database; the public half in the table archive_key and in the
// history. For the .cpp files of this folder only.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "archive/connection.h"
#include "trust/canonical.h"
#include "trust/seal_key.h"

namespace model {

class SignedIn;
class WriteTransaction;

/// A row of archive_key.
struct ArchivePublicKey {
    std::int64_t number = 0;
    std::string publicKey;        ///< DER
    std::int64_t sealedFrom = 0;  ///< the first row of the history that it seals
};

/// By number.
Result<std::vector<ArchivePublicKey>> archivePublicKeys(const Connection& connection);

/// As in the history's content; see HISTORY.md.
Canonical::Object canonicalOf(const ArchivePublicKey& key);

class ArchiveKey {
public:
    /// `databasePath`: FILE.
    explicit ArchiveKey(const std::string& databasePath) : file_(databasePath + ".key") {}

    /// The key for sealing now; read from its file when it is asked for first. Within a write
    /// transaction. Refused where the file is missing or cannot be read, Damaged where it holds no
    /// key or another one than the database names.
    Result<const SealKey*> forSealing(const Connection& connection);

    /// A new key, its file on the disk when this returns. Where there is a file already that holds
    /// a key which no archive uses yet, left behind by a program that was stopped, that is taken.
    Result<const SealKey*> make();
    /// Takes out a file that make() wrote, where it could not be used after all.
    void discard();
    /// It is used now: discard() leaves it.
    void keep() { made_ = false; }

    [[nodiscard]] const std::string& file() const { return file_; }

private:
    Result<SealKey> read() const;

    std::string file_;
    std::optional<SealKey> key_;
    bool made_ = false;  ///< the file is this object's
};

/// Names the first key in the database and in the history, for the rows from `sealedFrom` on; the
/// transaction must be sealing with it already.
Result<void> addArchiveKey(WriteTransaction& transaction, const SealKey& key,
                           std::int64_t sealedFrom);
/// The same of one that takes over from the row on that says so, which `administrator` signs.
Result<void> replaceKey(WriteTransaction& transaction, const SealKey& key,
                        const SignedIn& administrator);

}  // namespace model
