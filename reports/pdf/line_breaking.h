// SPDX-License-Identifier: Apache-2.0
// Breaking text into lines: at spaces, after hyphens and slashes, between East Asian characters,
// and inside a word that is longer than a line.
#pragma once

#include <vector>

#include "pdf/glyph.h"

namespace reports {

/// The lines of `text`, none wider than `width` (thousandths of the font size) unless a single
/// character is. Every character but a space at a break and the line ends themselves is in exactly
/// one line, in order. At least one line. The lines refer to `text`.
std::vector<Line> brokenLines(const Glyphs& text, double width);

}  // namespace reports
