// SPDX-License-Identifier: Apache-2.0
// Checking a time-stamp token. For the .cpp files of this folder only.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "base/digest.h"
#include "trust/signature.h"

namespace model::openssl {

/// Whether `token` (DER) is about `digest`, and whether `anchors` (DER) make it trusted at `at`.
TimeStampReport verifyToken(std::string_view token, const Digest& digest,
                            std::span<const std::string> anchors, UtcTime at);

}  // namespace model::openssl
