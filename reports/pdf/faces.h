// SPDX-License-Identifier: Apache-2.0
// The fonts of one PDF: which face draws a character, how wide it is. A font is read from disk and
// embedded only when a text needs it.
#pragma once

#include <array>
#include <hpdf.h>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "pdf/glyph.h"
#include "pdf/haru_file.h"
#include "pdf/render.h"

namespace reports {

class Faces {
public:
    /// Remembers where the fonts are. `file` must outlive this.
    Faces(HaruFile& file, const FontFiles& fonts);

    /// What is missing of the fonts that must be there, or was when a text first needed one.
    [[nodiscard]] std::optional<model::Error> error() const { return error_; }

    /// The characters of `text` to draw, see FontFiles. After an error some are left out.
    Glyphs lay(std::string_view text, Weight weight);

    /// The font of a laid glyph, embedded from now on; null after an error.
    HPDF_Font font(std::uint16_t face);

    /// To be called when nothing more will be drawn.
    void finish();

private:
    struct Face {
        FontFile source;
        HPDF_FontDef definition = nullptr;  ///< null: not read yet
        std::string name;                   ///< libharu's
        HPDF_Font font = nullptr;           ///< null: nothing was drawn with it yet
    };

    void append(Glyphs& glyphs, char16_t code, Weight weight);
    std::optional<Glyph> find(char16_t code, Weight weight);
    /// Reads the face's file if that was not done; false on an error.
    bool open(Face& face);

    HaruFile& file_;
    std::vector<Face> faces_;
    std::array<std::vector<std::uint16_t>, 2> chains_;  ///< by weight: faces in order
    std::array<std::unordered_map<char16_t, std::optional<Glyph>>, 2> known_;
    std::optional<model::Error> error_;
};

}  // namespace reports
