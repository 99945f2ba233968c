// SPDX-License-Identifier: Apache-2.0
// What a signature looks like on the page.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "pdf/render.h"

namespace reports {

/// A PDF of one page, `widthMm` x `heightMm` (10 to 200 each), with the lines in a frame: the first
/// in bold, all in the largest size up to 9 pt that fits; long lines are broken. Fails where even
/// 4 pt does not fit, and as renderPdf() does.
model::Result<std::string> drawAppearance(const std::vector<std::string>& lines, double widthMm,
                                          double heightMm,
                                          const FontFiles& fonts = FontFiles::installed());

}  // namespace reports
