// SPDX-License-Identifier: Apache-2.0
// The signs that stand beside a result's word; they differ in shape, not only in colour.
#pragma once

#include "certificate/document.h"
#include "pdf/canvas.h"

namespace reports {

/// A tick in a circle, a cross in a filled square, a question mark in a diamond, or for a caution
/// an exclamation mark in a triangle; `size` mm high and wide, around `centre`.
void drawSign(Canvas& canvas, Mark mark, PaperPoint centre, double size);

}  // namespace reports
