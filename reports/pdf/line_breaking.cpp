// SPDX-License-Identifier: Apache-2.0
#include "pdf/line_breaking.h"

#include <algorithm>
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

/// How good it is to end a line between two characters.
enum class Break { Never, InsideWord, AtHyphen, BetweenWords };

Break breakBetween(const Glyph& before, const Glyph& after) {
    if (isCombining(after.code) || isSpace(after)) return Break::Never;
    if (isSpace(before)) return Break::BetweenWords;
    if (before.sticky || after.sticky) return Break::InsideWord;
    if (kNotLast.find(before.code) != kNone || kNotFirst.find(after.code) != kNone)
        return Break::InsideWord;
    if (isEastAsian(before.code) || isEastAsian(after.code)) return Break::BetweenWords;
    const bool hyphen = before.code == u'-' || before.code == u'/';
    return hyphen && isAlphanumeric(after.code) ? Break::AtHyphen : Break::InsideWord;
}

Line withoutTrailingSpaces(Line line) {
    while (!line.empty() && isSpace(line.back())) line = line.first(line.size() - 1);
    return line;
}

/// Where the line that begins at `start` ends: before the first character of the next one. The
/// best kind of break in it is taken, of these the last.
std::size_t endOfLine(Line text, std::size_t start, double width) {
    std::size_t end = start + 1;
    Break best = Break::Never;
    double used = text[start].advance;
    for (std::size_t i = start + 1; i < text.size(); ++i) {
        const Break here = breakBetween(text[i - 1], text[i]);
        if (here >= best && here != Break::Never) {
            best = here;
            end = i;
        }
        used += text[i].advance;
        if (used > width && !isSpace(text[i])) return end;
    }
    return text.size();
}

/// The lines of text that holds no line end.
void breakParagraph(Line text, double width, std::vector<Line>& lines) {
    std::size_t start = 0;
    do {
        const std::size_t end = text.empty() ? 0 : endOfLine(text, start, width);
        lines.push_back(withoutTrailingSpaces(text.subspan(start, end - start)));
        start = end;
    } while (start < text.size());
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

double widestWord(const Glyphs& text) {
    double widest = 0;
    double used = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool begins = i == 0 || text[i - 1].code == u'\n' ||
                            breakBetween(text[i - 1], text[i]) == Break::BetweenWords;
        if (begins) used = 0;
        if (text[i].code != u'\n' && !isSpace(text[i])) used += text[i].advance;
        widest = std::max(widest, used);
    }
    return widest;
}

}  // namespace reports
