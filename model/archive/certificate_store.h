// SPDX-License-Identifier: Apache-2.0
// Certificates in the database, and their files beside it.
#pragma once

#include <functional>

#include "archive/transaction.h"

namespace model {

Result<std::int64_t> reserveNumber(WriteTransaction& transaction);

/// Adds the row of the history that stores a certificate, with this content.
using RecordCertificate = std::function<Result<void>(Canonical::Object content)>;

/// Stores a certificate and its file under a number that was given out. Limit tables that the
/// program ships and that it was judged by are added to the archive's own; Input where a table is
/// neither there nor shipped. `folder`: where the files are.
Result<void> storeCertificate(WriteTransaction& transaction, const std::string& folder,
                              const IssueFacts& facts, std::string_view pdf, std::int64_t number,
                              const RecordCertificate& record);

/// Input where the number was not given out, Conflict where it has a certificate.
Result<void> checkFreeNumber(const Connection& connection, std::int64_t number);

Result<Certificate> loadCertificate(const Connection& connection, std::int64_t number);

/// Gives every certificate to take(), the newest first, without holding them all; stops at its
/// first failure.
Result<void> eachCertificate(const Connection& connection,
                             const std::function<Result<void>(const Certificate&)>& take);

/// How many numbers were given out, where they are 1, 2, 3 ...; none where they are not.
Result<std::optional<std::int64_t>> reservedNumbers(const Connection& connection);

/// Certificates by whose series the table certificate_serial does not find them, or finds more.
Result<std::vector<Error>> wrongSerials(const Connection& connection);

}  // namespace model
