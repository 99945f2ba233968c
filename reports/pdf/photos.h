// SPDX-License-Identifier: Apache-2.0
// A document's photos, decoded and put into the PDF as pictures of our own making.
#pragma once

#include <hpdf.h>
#include <vector>

#include "base/result.h"
#include "certificate/document.h"
#include "pdf/haru_file.h"

namespace reports {

struct LoadedPhoto {
    HPDF_Image image = nullptr;  ///< belongs to the file
    double heightToWidth = 1;
};

/// In the order of the document's photos.
model::Result<std::vector<LoadedPhoto>> loadedPhotos(HaruFile& file, const Document& document);

}  // namespace reports
