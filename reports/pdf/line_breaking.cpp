// SPDX-License-Identifier: Apache-2.0
#include "pdf/line_breaking.h"

#include <string_view>

namespace reports {

namespace {

using namespace std::string_view_literals;

// East Asian punctuation that must not begin, or end, a line.
constexpr std::u16string_view kNotFirst = u"、。，．・：；？！）］｝〉》」』】〕ー々〜’”"sv;
constexpr std::u16string_view kNotLast = u"（［｛〈《「『【〔‘“"sv;
constexpr auto kNone = std::u16string_view::npos;

bool isSpace(const Glyph& glyph) {
    return glyph.code == u' ' && !glyph.sticky;
}

/// Scripts written without spaces: kana, Han, and their punctuation; Hangul breaks at spaces.
bool isEastAsian(char16_t code) {
    return (code >= 0x2E80 && code <= 0x9FFF) || (code >= 0xF900 && code <= 0xFAFF) ||
           (code >= 0xFF00 && code <= 0xFFEF);
}

/// Marks that belong to the character before them.
bool isCombining(char16_t code) {
    return (code >= 0x0300 && code <= 0x036F) || (code >= 0x1AB0 && code <= 0x1AFF) ||
           (code >= 0x1DC0 && code <= 0x1DFF) || (code >= 0x20D0 && code <= 0x20FF) ||
           (code >= 0x3099 && code <= 0x309A) || (code >= 0xFE20 && code <= 0xFE2F);
}

bool isAlphanumeric(char16_t code) {
    return (code >= u'0' && code <= u'9') || (code >= u'A' && code <= u'Z') ||
           (code >= u'a' && code <= u'z') || code >= 0x00C0;
}

/// Whether a line may end after `before` when `after` follows.
bool mayBreak(const Glyph& before, const Glyph& after) {
    if (isCombining(after.code) || isSpace(after)) return false;
    if (isSpace(before)) return true;
    if (before.sticky || after.sticky) return false;
    if (kNotLast.find(before.code) != kNone || kNotFirst.find(after.code) != kNone) return false;
    if (isEastAsian(before.code) || isEastAsian(after.code)) return true;
    return (before.code == u'-' || before.code == u'/') && isAlphanumeric(after.code);
}

Line withoutTrailingSpaces(Line line) {
    while (!line.empty() && isSpace(line.back())) line = line.first(line.size() - 1);
    return line;
}

/// The lines of text that holds no line end.
void breakParagraph(Line text, double width, std::vector<Line>& lines) {
    std::size_t start = 0;
    std::size_t lastBreak = 0;  // a line may end before this glyph; == start: nowhere
    double used = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (i > start && mayBreak(text[i - 1], text[i])) lastBreak = i;
        used += text[i].advance;
        if (used <= width || isSpace(text[i]) || i == start) continue;
        std::size_t end = lastBreak;
        if (end <= start) {
            end = i;
            while (end > start + 1 && isCombining(text[end].code)) --end;
        }
        lines.push_back(withoutTrailingSpaces(text.subspan(start, end - start)));
        start = end;
        lastBreak = end;
        // Read what was carried over again: it may hold breaks, and may still be too wide.
        i = start;
        used = text[start].advance;
    }
    lines.push_back(withoutTrailingSpaces(text.subspan(start)));
}

}  // namespace

std::vector<Line> brokenLines(const Glyphs& text, double width) {
    std::vector<Line> lines;
    const Line all(text);
    std::size_t start = 0;
    for (std::size_t i = 0; i <= text.size(); ++i) {
        if (i < text.size() && text[i].code != u'\n') continue;
        breakParagraph(all.subspan(start, i - start), width, lines);
        start = i + 1;
    }
    return lines;
}

}  // namespace reports
