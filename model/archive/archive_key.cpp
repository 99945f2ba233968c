// SPDX-License-Identifier: Apache-2.0
#include "archive/archive_key.h"

#include <cstdio>

#include "archive/disk.h"
#include "archive/history_store.h"
#include "archive/stored_words.h"
#include "archive/transaction.h"

namespace model {
namespace {

/// For its owner's eyes only. Under a name that nobody reads first, so that it is whole or not
/// there.
Result<void> writeKeyFile(const std::string& path, std::string_view pem) {
    const std::string temporary = path + ".new";
    ::unlink(temporary.c_str());
    Descriptor descriptor(temporary, O_WRONLY | O_CREAT | O_EXCL, 0600);
    if (!descriptor.ok()) return systemRefusal(temporary, "written");
    if (!writeAll(descriptor.number(), pem) || ::fsync(descriptor.number()) != 0 ||
        !descriptor.close() || std::rename(temporary.c_str(), path.c_str()) != 0) {
        Error error = systemRefusal(path, "written");
        ::unlink(temporary.c_str());
        return error;
    }
    return syncFolder(parentOf(path));
}

std::string hexOf(std::string_view bytes) {
    constexpr char kDigits[] = "0123456789abcdef";
    std::string text;
    for (const char byte : bytes) {
        text += kDigits[static_cast<unsigned char>(byte) >> 4U];
        text += kDigits[static_cast<unsigned char>(byte) & 15U];
    }
    return text;
}

Result<void> storeKey(const Connection& connection, const ArchivePublicKey& key) {
    SqlStatement statement(
        connection, "INSERT INTO archive_key (number, public_key, sealed_from) VALUES (?, ?, ?)");
    return statement.run(key.number, Blob{key.publicKey}, key.sealedFrom);
}

}  // namespace

Result<std::vector<ArchivePublicKey>> archivePublicKeys(const Connection& connection) {
    SqlStatement statement(
        connection, "SELECT number, public_key, sealed_from FROM archive_key ORDER BY number");
    if (auto done = statement.run(); !done) return done.error();
    std::vector<ArchivePublicKey> keys;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        keys.push_back({row.whole(0), row.blob(1), row.whole(2)});
        return {};
    });
    if (!read) return read.error();
    return keys;
}

Result<SealKey> ArchiveKey::read() const {
    auto bytes = readFile(file_);
    if (!bytes) return bytes.error();
    auto key = SealKey::fromPem(SecretBytes::takeFrom(*bytes));
    if (!key) return Error{key.error().kind, file_, key.error().reason, key.error().arguments};
    return key;
}

Result<const SealKey*> ArchiveKey::forSealing(const Connection& connection) {
    const auto known = archivePublicKeys(connection);
    if (!known) return known.error();
    if (known->empty()) return connection.damaged("archive key", "is missing from the database");
    const std::string& now = known->back().publicKey;
    if (key_ && key_->publicKey() == now) return &*key_;
    if (!isThere(file_))
        return refusal(file_,
                       "is missing: it holds the archive's own key, and nothing can be written "
                       "without it; put it back from the place where it was last kept");
    auto key = read();
    if (!key) return key.error();
    if (key->publicKey() != now)
        return Error{ErrorKind::Damaged,
                     file_,
                     "holds another key than the one of this archive; put the archive's own back",
                     {}};
    key_ = std::move(*key);
    return &*key_;
}

Result<const SealKey*> ArchiveKey::make() {
    if (isThere(file_)) {
        auto key = read();
        if (!key) return key.error();
        key_ = std::move(*key);
        return &*key_;
    }
    auto key = SealKey::make();
    if (!key) return key.error();
    const auto pem = key->toPem();
    if (!pem) return pem.error();
    if (auto written = writeKeyFile(file_, pem->view()); !written) return written.error();
    made_ = true;
    key_ = std::move(*key);
    return &*key_;
}

void ArchiveKey::discard() {
    if (made_) ::unlink(file_.c_str());
    made_ = false;
    key_.reset();
}

Canonical::Object canonicalOf(const ArchivePublicKey& key) {
    Canonical::Object content;
    content["public_key"] = hexOf(key.publicKey);
    content["sealed_from"] = key.sealedFrom;
    return content;
}

Result<void> addArchiveKey(WriteTransaction& transaction, const SealKey& key,
                           std::int64_t sealedFrom) {
    const ArchivePublicKey added{1, key.publicKey(), sealedFrom};
    if (auto done = storeKey(transaction.connection(), added); !done) return done;
    return transaction.record(action::kArchiveKeyMade, "1", canonicalOf(added));
}

Result<void> replaceKey(WriteTransaction& transaction, const SealKey& key,
                        const SignedIn& administrator) {
    const Connection& connection = transaction.connection();
    const auto known = archivePublicKeys(connection);
    if (!known) return known.error();
    const auto head = historyHead(connection);
    if (!head) return head.error();
    const ArchivePublicKey added{static_cast<std::int64_t>(known->size()) + 1, key.publicKey(),
                                 head->sequence + 1};
    if (auto done = storeKey(connection, added); !done) return done;
    return transaction.recordSigned(action::kArchiveKeyReplaced, std::to_string(added.number),
                                    canonicalOf(added), administrator);
}

}  // namespace model
