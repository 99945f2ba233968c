// SPDX-License-Identifier: Apache-2.0
// The places where a PDF will be signed. They are made before the first signature: signing then
// fills a field and changes nothing else of what was signed.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace reports {

struct SignatureField {
    std::string name;      ///< UTF-8, unique in the file; no full stop, which parts names
    std::size_t page = 0;  ///< from 0
    double leftMm = 0;     ///< from the page's lower left corner
    double bottomMm = 0;
    double widthMm = 0;  ///< 0 with heightMm 0: nothing is seen
    double heightMm = 0;
};

/// The file with empty signature fields as one more revision; `pdf` stays a byte-exact prefix.
/// Fails for a file that is signed already, encrypted, damaged, or with cross-reference streams,
/// and for a field that is there already, or whose page is not.
model::Result<std::string> addSignatureFields(std::string_view pdf,
                                              const std::vector<SignatureField>& fields);

}  // namespace reports
