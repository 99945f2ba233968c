// SPDX-License-Identifier: Apache-2.0
// Certificates as archives of schema 1 hold them: signed by nobody. Today's come from release().
#pragma once

#include <optional>
#include <string_view>

#include "archive/archive.h"

namespace foundry {

/// Stores one under a number that was given out, or under a new one; the number.
model::Result<std::int64_t> addCertificate(model::Archive& archive, const model::IssueFacts& facts,
                                           std::string_view pdf, const model::Actor& actor,
                                           std::optional<std::int64_t> number = std::nullopt);

}  // namespace foundry
