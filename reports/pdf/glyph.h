// SPDX-License-Identifier: Apache-2.0
// Text as it will be drawn: one entry a character, with the face that has it and its width.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace reports {

enum class Weight { Regular, Bold };

struct Glyph {
    char16_t code = 0;       ///< Unicode, basic plane; u'\n' ends a line
    std::uint16_t face = 0;  ///< index into Faces
    int advance = 0;         ///< thousandths of the font size
    bool sticky = false;     ///< a space that must not end a line
};

using Glyphs = std::vector<Glyph>;
using Line = std::span<const Glyph>;

/// The width of a line in thousandths of the font size.
inline double advanceOf(Line line) {
    double sum = 0;
    for (const Glyph& glyph : line) sum += glyph.advance;
    return sum;
}

}  // namespace reports
