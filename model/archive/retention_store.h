// SPDX-License-Identifier: Apache-2.0
// Retention and disposals in the database. For the .cpp files of this folder only.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "archive/connection.h"
#include "archive/retention.h"
#include "trust/canonical.h"

namespace model {

namespace action {
inline constexpr char kRetentionStated[] = "retention stated";
inline constexpr char kCertificateDisposed[] = "certificate disposed";
}  // namespace action

/// Input: no such order.
Result<void> checkOrder(const Connection& connection, const std::string& order);
/// Version 0 where nothing was stated.
Result<Retention> loadRetention(const Connection& connection, const std::string& order);
/// All that was ever stated, by order.
Result<std::vector<Retention>> loadRetentions(const Connection& connection);
Result<void> storeRetention(const Connection& connection, const Retention& retention);

/// As in the history's content, without the order, which is its subject.
Canonical::Object canonicalOf(const Retention& retention);

/// SHA-256 of every file that the database names, each once, sorted: those in the columns
/// `file_sha256` of its tables.
Result<std::vector<std::string>> namedFiles(const Connection& connection);

/// A file that a disposal said goes.
struct DisposedFile {
    std::int64_t number = 0;  ///< of the certificate
    std::string digest;       ///< SHA-256
};
/// Those that no row names any more; `number`: those of one certificate. Damaged: a row of the
/// history that says so is not understood.
Result<std::vector<DisposedFile>> disposedFiles(const Connection& connection,
                                                std::optional<std::int64_t> number);

}  // namespace model
