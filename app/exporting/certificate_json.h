// SPDX-License-Identifier: Apache-2.0
// A certificate's facts as JSON, as find and export print them.
#pragma once

#include "archive/search.h"
#include "exchange/json_value.h"

namespace app {

/// What is not there is null.
model::JsonValue::Members certificateMembers(const model::FoundCertificate& certificate);

}  // namespace app
