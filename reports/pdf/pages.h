// SPDX-License-Identifier: Apache-2.0
// Strips laid on pages, and what stands on every page around them.
#pragma once

#include "certificate/document.h"
#include "pdf/faces.h"
#include "pdf/haru_file.h"
#include "pdf/strip.h"

namespace reports {

/// Draws all strips, each whole, in order, on as many pages as they need.
void drawPages(HaruFile& file, Faces& faces, const Document& document, const Strips& strips);

}  // namespace reports
