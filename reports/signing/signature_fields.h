// SPDX-License-Identifier: Apache-2.0
// The places where a PDF will be signed. They are made before the first signature: signing then
// fills a field and changes nothing else of what was signed.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "pdf/signature_field.h"

namespace reports {

/// The file with empty signature fields as one more revision; `pdf` stays a byte-exact prefix.
/// Fails for a file that is signed already, encrypted, damaged, or with cross-reference streams,
/// and for a field that is there already, or whose page is not.
model::Result<std::string> addSignatureFields(std::string_view pdf,
                                              const std::vector<SignatureField>& fields);

}  // namespace reports
