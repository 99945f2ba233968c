// SPDX-License-Identifier: Apache-2.0
// Everything that a certificate rests on, in one document.
#pragma once

#include <string>

#include "archive/archive.h"
#include "archive/lifecycle.h"
#include "archive/search.h"
#include "exchange/json_value.h"

namespace app {

/// What a certificate states: the members of fettlemark-certificate/1 behind its format.
model::JsonValue::Members statedMembers(const model::FoundCertificate& found,
                                        const model::Certificate& certificate);

/// fettlemark-casting-record/1 (schemas/casting-record.schema.json): what the certificate states;
/// the signed records that it was made from, each as it was signed, with order, part, casting,
/// conditions, what was used and what was found about the conditions as they were then; the
/// casting's entries in the registers as they were when it was presented; the sheet that was judged
/// and its verdict.
model::Result<std::string> recordJson(const model::Archive& archive,
                                      const model::FoundCertificate& found,
                                      const model::Certificate& certificate,
                                      const model::Presented& presented);

}  // namespace app
