// SPDX-License-Identifier: Apache-2.0
// Three faults of libharu 2.3.0 in embedded TrueType fonts, put right through its own structures.
#pragma once

#include <hpdf.h>
#include <map>
#include <string>

namespace reports {

/// libharu's ToUnicode map uses operators that are not allowed there, so that readers warn or
/// cannot search. Here every code stands for itself: codes are Unicode. To be called once, right
/// after HPDF_GetFont(..., "UTF-8").
void repairToUnicode(HPDF_Font font);

/// libharu embeds only the glyphs that were drawn, and forgets most of the glyphs that composite
/// ones are built from: a Chinese character then prints without one of its parts, as another
/// character. Marks every part of every drawn glyph as used, recursively. `file` holds the font
/// file's bytes. To be called when nothing more will be drawn.
void keepPartsOfGlyphs(HPDF_Font font, const std::string& file);

/// libharu writes the width of every character of the font, drawn or not: a list of thousands that
/// every reader has to go through, for a signature of six lines too. Leaves only `widths`, in
/// thousandths of the font size. To be called when nothing more will be drawn.
void keepWidths(HPDF_Font font, const std::map<char16_t, int>& widths);

}  // namespace reports
