// SPDX-License-Identifier: Apache-2.0
// Checks a whole archive; see Archive::verify().
#pragma once

#include "archive/archive.h"
#include "archive/connection.h"

namespace model {

/// `folder`: where the certificates' files are.
Result<Verification> verifyArchive(const Connection& connection, const std::string& folder,
                                   const std::optional<Head>& held, const Progress& progress);

}  // namespace model
