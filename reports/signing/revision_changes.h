// SPDX-License-Identifier: Apache-2.0
// What changed from one revision of a PDF to a later one. For the .cpp files of this folder only.
#pragma once

#include <qpdf/QPDF.hh>
#include <string>
#include <vector>

namespace reports::signing {

struct Change {
    std::string what;  ///< in plain English
    bool permitted = false;
};

/// Every object of `before` that is another one in `after`. Permitted are: an empty signature field
/// that was filled, and a signature field that was added without being seen.
std::vector<Change> changesBetween(QPDF& before, QPDF& after);

}  // namespace reports::signing
