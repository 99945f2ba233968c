// SPDX-License-Identifier: Apache-2.0
// Breaking text into lines: at spaces and between East Asian characters; where a word is longer
// than a line after a hyphen or slash in it, else anywhere.
#pragma once

#include <vector>

#include "pdf/glyph.h"

namespace reports {

/// The lines of `text`, none wider than `width` (thousandths of the font size) unless a single
/// character is. Every character but a space at a break and the line ends themselves is in exactly
/// one line, in order. At least one line. The lines refer to `text`.
std::vector<Line> brokenLines(const Glyphs& text, double width);

/// The width of the widest word (thousandths of the font size): a line that wide breaks none.
double widestWord(const Glyphs& text);

}  // namespace reports
