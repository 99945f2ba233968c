// SPDX-License-Identifier: Apache-2.0
// What an archived certificate states and what became of it, in words.
#pragma once

#include <QStringList>
#include <optional>

#include "archive/lifecycle.h"

namespace app {

/// "Released by Q. Marsh on 2026-11-27 10:12." and what followed, with its reason. `presented`:
/// none for one that was issued before there was a release.
QString certificateState(const model::Certificate& certificate,
                         const std::optional<model::Presented>& presented);

QStringList certificateFacts(const model::Certificate& certificate);

/// Everything that was signed about a casting, in the order in which it happened.
model::Result<QStringList> castingHistory(const model::Archive& archive, const std::string& serial);

}  // namespace app
