// SPDX-License-Identifier: Apache-2.0
#include "pdf/faces.h"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>

#include "pdf/font_repairs.h"
#include "pdf/visible_text.h"

namespace reports {

namespace {

constexpr char16_t kNoBreakSpace = 0x00A0;
constexpr char16_t kNarrowNoBreakSpace = 0x202F;
constexpr char16_t kNoBreakHyphen = 0x2011;

model::Error missing(const FontFile& font) {
    return model::refusal(font.path, "the font is missing; install the package %1", {font.package});
}

bool isThere(const std::string& path) {
    std::error_code ignored;
    return std::filesystem::is_regular_file(path, ignored);
}

}  // namespace

FontFiles FontFiles::installed() {
    const std::string folder = "/usr/share/fonts/truetype/";
    return {{{folder + "noto/NotoSans-Regular.ttf", "fonts-noto-core"},
             {folder + "dejavu/DejaVuSans.ttf", "fonts-dejavu-core"}},
            {{folder + "noto/NotoSans-Bold.ttf", "fonts-noto-core"},
             {folder + "dejavu/DejaVuSans-Bold.ttf", "fonts-dejavu-core"}},
            {folder + "wqy/wqy-microhei.ttc", "fonts-wqy-microhei"}};
}

Faces::Faces(HaruFile& file, const FontFiles& fonts) : file_(file) {
    const auto add = [this](const FontFile& font) {
        faces_.push_back({font, nullptr, {}, nullptr});
        return static_cast<std::uint16_t>(faces_.size() - 1);
    };
    for (const auto& [files, weight] :
         {std::pair{&fonts.regular, Weight::Regular}, std::pair{&fonts.bold, Weight::Bold}})
        for (const FontFile& font : *files) {
            if (!isThere(font.path) && !error_) error_ = missing(font);
            chains_[static_cast<std::size_t>(weight)].push_back(add(font));
        }
    const std::uint16_t wide = add(fonts.wide);
    for (auto& chain : chains_) chain.push_back(wide);
}

bool Faces::open(Face& face) {
    if (face.definition != nullptr) return true;
    if (error_ || file_.get() == nullptr) return false;
    if (!isThere(face.source.path)) {
        error_ = missing(face.source);
        return false;
    }
    const bool collection = face.source.path.ends_with(".ttc");
    const char* name =
        collection ? HPDF_LoadTTFontFromFile2(file_.get(), face.source.path.c_str(), 0, HPDF_TRUE)
                   : HPDF_LoadTTFontFromFile(file_.get(), face.source.path.c_str(), HPDF_TRUE);
    if (name != nullptr) {
        face.name = name;
        face.definition = HPDF_GetFontDef(file_.get(), name);
    }
    if (face.definition == nullptr) {
        error_ = file_.error("reading a font");
        if (!error_) error_ = model::refusal("", "the font cannot be used");
        error_->place = face.source.path;
    }
    return face.definition != nullptr;
}

std::optional<Glyph> Faces::find(char16_t code, Weight weight) {
    auto& known = known_[static_cast<std::size_t>(weight)];
    const auto found = known.find(code);
    if (found != known.end()) return found->second;
    std::optional<Glyph> glyph;
    for (const std::uint16_t index : chains_[static_cast<std::size_t>(weight)]) {
        if (!open(faces_[index])) break;
        HPDF_FontDef definition = faces_[index].definition;
        if (HPDF_TTFontDef_GetGlyphid(definition, code) == 0) continue;
        glyph = Glyph{code, index, HPDF_TTFontDef_GetCharWidth(definition, code), false};
        break;
    }
    known.emplace(code, glyph);
    return glyph;
}

void Faces::append(Glyphs& glyphs, char16_t code, Weight weight) {
    if (code == u'\n') {
        glyphs.push_back({code, 0, 0, false});
        return;
    }
    // Drawn, and found by a search, as the plain character; it only keeps a line together.
    const bool sticky =
        code == kNoBreakSpace || code == kNarrowNoBreakSpace || code == kNoBreakHyphen;
    if (sticky) code = code == kNoBreakHyphen ? u'-' : u' ';
    if (std::optional<Glyph> glyph = find(code, weight)) {
        glyph->sticky = sticky;
        glyphs.push_back(*glyph);
        return;
    }
    for (const char16_t part : codePointText(code))
        if (const std::optional<Glyph> glyph = find(part, weight)) glyphs.push_back(*glyph);
}

Glyphs Faces::lay(std::string_view text, Weight weight) {
    Glyphs glyphs;
    for (const char16_t code : visibleText(text)) append(glyphs, code, weight);
    return glyphs;
}

HPDF_Font Faces::font(std::uint16_t index) {
    Face& face = faces_[index];
    if (face.font == nullptr && open(face)) {
        face.font = HPDF_GetFont(file_.get(), face.name.c_str(), "UTF-8");
        if (face.font != nullptr) repairToUnicode(face.font);
    }
    return face.font;
}

void Faces::finish() {
    for (std::size_t index = 0; index < faces_.size(); ++index) {
        const Face& face = faces_[index];
        if (face.font == nullptr) continue;
        std::map<char16_t, int> widths;
        for (const auto& known : known_)
            for (const auto& [code, glyph] : known)
                if (glyph && glyph->face == index) widths[code] = glyph->advance;
        keepWidths(face.font, widths);
        std::ifstream stream(face.source.path, std::ios::binary);
        const std::string bytes{std::istreambuf_iterator<char>(stream), {}};
        keepPartsOfGlyphs(face.font, bytes);
    }
}

}  // namespace reports
