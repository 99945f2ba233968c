// SPDX-License-Identifier: Apache-2.0
// A document cut into strips as wide as the text: what is in one strip stays on one page.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "certificate/document.h"
#include "pdf/canvas.h"
#include "pdf/faces.h"
#include "pdf/photos.h"

namespace reports {

/// A box for a signature, as high as its strip.
struct SignatureBoxPlace {
    std::string field;
    double x = 0;  ///< mm from the page's left edge
    double width = 0;
    double height = 0;
};

struct Strip {
    double height = 0;          ///< mm, at most style::kHeight
    double gapBefore = 0;       ///< mm, left out at the top of a page
    bool keepWithNext = false;  ///< not last on a page
    /// Drawn again above this strip where it begins a page; null for none.
    std::shared_ptr<const Strip> headedBy;
    std::function<void(Canvas&, double top)> draw;
    std::string bookmark;  ///< an entry of the file's outline; empty for none
    int bookmarkLevel = 0;
    std::vector<SignatureBoxPlace> signatureBoxes;
};

using Strips = std::vector<Strip>;

/// The head of the first page, every block, and the end mark. `photos`: loadedPhotos(document).
Strips stripsOf(const Document& document, const std::vector<LoadedPhoto>& photos, Faces& faces);

}  // namespace reports
