// SPDX-License-Identifier: Apache-2.0
// Strips laid on pages, and what stands on every page around them.
#pragma once

#include <vector>

#include "certificate/document.h"
#include "pdf/faces.h"
#include "pdf/haru_file.h"
#include "pdf/signature_field.h"
#include "pdf/strip.h"

namespace reports {

/// Draws all strips, each whole, in order, on as many pages as they need. Returns where the boxes
/// for signatures came to lie.
std::vector<SignatureField> drawPages(HaruFile& file, Faces& faces, const Document& document,
                                      const Strips& strips);

}  // namespace reports
