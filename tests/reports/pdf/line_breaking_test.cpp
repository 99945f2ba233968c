// SPDX-License-Identifier: Apache-2.0
#include "pdf/line_breaking.h"

#include <gtest/gtest.h>
#include <string>

namespace {

using reports::brokenLines;
using reports::Glyphs;

constexpr int kAdvance = 10;

/// Every character 10 wide; "_" stands for a no-break space.
Glyphs glyphsOf(std::u16string_view text) {
    Glyphs glyphs;
    for (const char16_t c : text)
        glyphs.push_back({c == u'_' ? u' ' : c, 0, c == u'\n' ? 0 : kAdvance, c == u'_'});
    return glyphs;
}

std::vector<std::u16string> linesOf(std::u16string_view text, int characters) {
    const Glyphs glyphs = glyphsOf(text);
    std::vector<std::u16string> lines;
    for (const reports::Line line : brokenLines(glyphs, characters * kAdvance)) {
        std::u16string text16;
        for (const auto& glyph : line) text16 += glyph.code;
        lines.push_back(text16);
    }
    return lines;
}

using Lines = std::vector<std::u16string>;

TEST(LineBreaking, BreaksAtTheLastSpaceThatFits) {
    EXPECT_EQ(linesOf(u"one two three", 7), (Lines{u"one two", u"three"}));
    EXPECT_EQ(linesOf(u"one two three", 6), (Lines{u"one", u"two", u"three"}));
    EXPECT_EQ(linesOf(u"one two three", 13), (Lines{u"one two three"}));
}

TEST(LineBreaking, KeepsALineThatFitsExactlyAndASpaceBeyondIt) {
    EXPECT_EQ(linesOf(u"abcd efgh", 4), (Lines{u"abcd", u"efgh"}));
}

TEST(LineBreaking, EndsLinesWhereTheTextDoes) {
    EXPECT_EQ(linesOf(u"a\n\nb", 5), (Lines{u"a", u"", u"b"}));
    EXPECT_EQ(linesOf(u"", 5), (Lines{u""}));
}

TEST(LineBreaking, NeverBreaksAtANoBreakSpace) {
    EXPECT_EQ(linesOf(u"limit 18_mm", 9), (Lines{u"limit", u"18 mm"}));
}

TEST(LineBreaking, CutsAWordOnlyWhenNoLineCanHoldItAndAtAHyphenFirst) {
    EXPECT_EQ(linesOf(u"to QP-MT-04 end", 8), (Lines{u"to", u"QP-MT-04", u"end"}));
    EXPECT_EQ(linesOf(u"QP-MT-04", 7), (Lines{u"QP-MT-", u"04"}));
    EXPECT_EQ(linesOf(u"abcdefghij", 4), (Lines{u"abcd", u"efgh", u"ij"}));
}

TEST(LineBreaking, BreaksEastAsianTextAnywhereButBeforeClosingMarks) {
    EXPECT_EQ(linesOf(u"鋳造検査記録", 4), (Lines{u"鋳造検査", u"記録"}));
    EXPECT_EQ(linesOf(u"鋳造検査。記録", 4), (Lines{u"鋳造検", u"査。記録"}));
}

TEST(LineBreaking, KeepsACombiningMarkWithItsLetter) {
    EXPECT_EQ(linesOf(u"abcx\u0302d", 4), (Lines{u"abc", u"x\u0302d"}));
}

TEST(LineBreaking, LosesAndRepeatsNothing) {
    std::u16string text;
    for (int i = 0; i < 2000; ++i) text += static_cast<char16_t>(u'a' + i % 26);
    for (int i = 0; i < 900; i += 7) text[static_cast<std::size_t>(i)] = u' ';
    for (const int width : {1, 2, 3, 5, 8, 40, 3000}) {
        std::u16string again;
        for (const auto& line : linesOf(text, width)) {
            EXPECT_LE(line.size(), static_cast<std::size_t>(width));
            again += line;
        }
        const auto withoutSpaces = [](std::u16string all) {
            std::erase(all, u' ');
            return all;
        };
        EXPECT_EQ(withoutSpaces(again), withoutSpaces(text)) << width;
    }
}

TEST(WidestWord, IsTheLeastWidthThatCutsNone) {
    EXPECT_EQ(reports::widestWord(glyphsOf(u"one three_x two")), 7 * kAdvance);
    EXPECT_EQ(reports::widestWord(glyphsOf(u"ab\nabc")), 3 * kAdvance);
    EXPECT_EQ(reports::widestWord(glyphsOf(u"")), 0);
}

}  // namespace
