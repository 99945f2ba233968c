// SPDX-License-Identifier: Apache-2.0
// A place on a page where the PDF will be signed.
#pragma once

#include <cstddef>
#include <string>

namespace reports {

struct SignatureField {
    std::string name;      ///< UTF-8, unique in the file; no full stop, which parts names
    std::size_t page = 0;  ///< from 0
    double leftMm = 0;     ///< from the page's lower left corner
    double bottomMm = 0;
    double widthMm = 0;  ///< 0 with heightMm 0: nothing is seen
    double heightMm = 0;

    friend bool operator==(const SignatureField&, const SignatureField&) = default;
};

/// The boxes that a document offers for signatures are this large.
inline constexpr double kSignatureBoxWidthMm = 81;
inline constexpr double kSignatureBoxHeightMm = 30;

}  // namespace reports
