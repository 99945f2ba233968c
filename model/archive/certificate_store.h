// SPDX-License-Identifier: Apache-2.0
// Certificates in the database, and their files beside it.
#pragma once

#include <set>

#include "archive/transaction.h"

namespace model {

Result<std::int64_t> reserveNumber(WriteTransaction& transaction);

/// `folder`: where the files are.
Result<std::int64_t> storeCertificate(WriteTransaction& transaction, const std::string& folder,
                                      const CertificateFacts& facts, std::string_view pdf,
                                      std::optional<std::int64_t> number);

/// The newest first.
Result<std::vector<Certificate>> loadCertificates(const Connection& connection,
                                                  const CertificateFilter& filter);
Result<Certificate> loadCertificate(const Connection& connection, std::int64_t number);

/// Every number that was given out.
Result<std::set<std::int64_t>> reservedNumbers(const Connection& connection);

}  // namespace model
