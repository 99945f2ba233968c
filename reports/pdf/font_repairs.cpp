// SPDX-License-Identifier: Apache-2.0
#include "pdf/font_repairs.h"

#include <algorithm>
#include <cstdint>
#include <iomanip>
#include <sstream>
#include <vector>

namespace reports {

namespace {

HPDF_TTFontDefAttr definitionOf(HPDF_Font font) {
    HPDF_FontDef definition = static_cast<HPDF_FontAttr>(font->attr)->fontdef;
    return static_cast<HPDF_TTFontDefAttr>(definition->attr);
}

/// Big-endian numbers of a font file; 0 beyond its end.
class FontBytes {
public:
    explicit FontBytes(const std::string& file) : file_(file) {}
    [[nodiscard]] std::uint16_t at(std::size_t offset) const {
        if (offset + 2 > file_.size()) return 0;
        const auto byte = [this](std::size_t i) { return static_cast<std::uint8_t>(file_[i]); };
        return static_cast<std::uint16_t>(byte(offset) << 8U | byte(offset + 1));
    }

private:
    const std::string& file_;
};

// Flags of a component (OpenType 1.9, table "glyf", composite glyph description).
constexpr unsigned kArgumentsAreWords = 0x0001;
constexpr unsigned kHasScale = 0x0008;
constexpr unsigned kMoreComponents = 0x0020;
constexpr unsigned kHasTwoScales = 0x0040;
constexpr unsigned kHasMatrix = 0x0080;
constexpr std::size_t kGlyphHeaderBytes = 10;

/// The glyphs that the one in bytes [begin, end) is built from.
std::vector<std::uint16_t> partsOf(const FontBytes& bytes, std::size_t begin, std::size_t end) {
    std::vector<std::uint16_t> parts;
    if (end < begin + kGlyphHeaderBytes) return parts;
    const bool composite = static_cast<std::int16_t>(bytes.at(begin)) < 0;
    if (!composite) return parts;
    std::size_t at = begin + kGlyphHeaderBytes;
    unsigned flags = kMoreComponents;
    while ((flags & kMoreComponents) != 0 && at + 4 <= end) {
        flags = bytes.at(at);
        parts.push_back(bytes.at(at + 2));
        at += 4;
        at += (flags & kArgumentsAreWords) != 0 ? 4 : 2;
        if ((flags & kHasScale) != 0)
            at += 2;
        else if ((flags & kHasTwoScales) != 0)
            at += 4;
        else if ((flags & kHasMatrix) != 0)
            at += 8;
    }
    return parts;
}

}  // namespace

void repairToUnicode(HPDF_Font font) {
    auto* attributes = static_cast<HPDF_FontAttr>(font->attr);
    if (attributes->cmap_stream == nullptr) return;
    HPDF_MemStream_FreeData(attributes->cmap_stream->stream);

    std::ostringstream map;
    map << "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
           "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
           "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
           "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n"
        << std::hex << std::uppercase << std::setfill('0');
    // A range may not cross a first byte, and a block holds at most 100 of them (ISO 32000-1 9.10.3
    // by way of Adobe Technical Note 5014).
    constexpr int kFirstBytes = 256;
    constexpr int kRangesInABlock = 100;
    for (int first = 0; first < kFirstBytes; first += kRangesInABlock) {
        const int last = std::min(first + kRangesInABlock, kFirstBytes);
        map << std::dec << last - first << std::hex << " beginbfrange\n";
        for (int byte = first; byte < last; ++byte)
            map << '<' << std::setw(2) << byte << "00> <" << std::setw(2) << byte << "FF> <"
                << std::setw(2) << byte << "00>\n";
        map << "endbfrange\n";
    }
    map << "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
    HPDF_Stream_WriteStr(attributes->cmap_stream->stream, map.str().c_str());
    HPDF_Dict_AddName(attributes->cmap_stream, "CMapName", "Adobe-Identity-UCS");
}

void keepPartsOfGlyphs(HPDF_Font font, const std::string& file) {
    HPDF_TTFontDefAttr definition = definitionOf(font);
    const FontBytes bytes(file);
    const HPDF_TTF_GryphOffsets& glyphs = definition->glyph_tbl;
    const bool shortOffsets = definition->header.index_to_loc_format == 0;
    const auto offset = [&](unsigned glyph) {
        const std::size_t stored = glyphs.offsets[glyph];
        return glyphs.base_offset + (shortOffsets ? stored * 2 : stored);
    };

    std::vector<unsigned> open;
    for (unsigned glyph = 0; glyph < definition->num_glyphs; ++glyph)
        if (glyphs.flgs[glyph] != 0) open.push_back(glyph);
    while (!open.empty()) {
        const unsigned glyph = open.back();
        open.pop_back();
        for (const unsigned part : partsOf(bytes, offset(glyph), offset(glyph + 1))) {
            if (part >= definition->num_glyphs || glyphs.flgs[part] != 0) continue;
            glyphs.flgs[part] = 1;
            open.push_back(part);
        }
    }
}

void keepWidths(HPDF_Font font, const std::map<char16_t, int>& widths) {
    HPDF_Font characters = static_cast<HPDF_FontAttr>(font->attr)->descendant_font;
    if (characters == nullptr) return;
    HPDF_Array list = HPDF_Array_New(characters->mmgr);
    if (list == nullptr) return;
    HPDF_Array run = nullptr;
    int next = -1;
    for (const auto& [code, width] : widths) {
        if (code != next) {
            run = HPDF_Array_New(characters->mmgr);
            if (run == nullptr) return;
            HPDF_Array_AddNumber(list, code);
            HPDF_Array_Add(list, run);
        }
        HPDF_Array_AddNumber(run, width);
        next = code + 1;
    }
    HPDF_Dict_Add(characters, "W", list);
}

}  // namespace reports
