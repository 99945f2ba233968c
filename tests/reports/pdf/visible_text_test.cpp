// SPDX-License-Identifier: Apache-2.0
#include "pdf/visible_text.h"

#include <gtest/gtest.h>

namespace {

using reports::visibleText;

TEST(VisibleText, IsComposed) {
    // Unicode Standard Annex 15, figure 4 and table 4: these pairs are canonically equivalent.
    EXPECT_EQ(visibleText("e\u0301"), u"\u00e9");
    EXPECT_EQ(visibleText("A\u030a"), u"\u00c5");
    EXPECT_EQ(visibleText("\u2126"), u"\u03a9");              // ohm sign, omega
    EXPECT_EQ(visibleText("\u1112\u1161\u11ab"), u"\ud55c");  // conjoining jamo
}

TEST(VisibleText, ShowsControlCharactersByTheirCodePoint) {
    EXPECT_EQ(visibleText(std::string_view("a\0b\x07\x1b\x7f", 6)),
              u"a[U+0000]b[U+0007][U+001B][U+007F]");
    EXPECT_EQ(visibleText("\u0085\u2028"), u"[U+0085][U+2028]");
    EXPECT_EQ(visibleText("a\rb"), u"a[U+000D]b");
}

TEST(VisibleText, KeepsLineEndsAndTurnsTabsIntoSpaces) {
    EXPECT_EQ(visibleText("a\r\nb\nc\td"), u"a\nb\nc d");
}

TEST(VisibleText, ShowsWhatCouldHideOrReorderText) {
    EXPECT_EQ(visibleText("a\u202eb"), u"a[U+202E]b");  // right-to-left override
    EXPECT_EQ(visibleText("a\u200bb\u2066\ufeff"), u"a[U+200B]b[U+2066][U+FEFF]");
    EXPECT_EQ(visibleText("a\u00adb"), u"a[U+00AD]b");  // soft hyphen
}

TEST(VisibleText, ShowsScriptsItCannotSetByTheirCodePoints) {
    EXPECT_EQ(visibleText("\u05d0\u0628\u0915"), u"[U+05D0][U+0628][U+0915]");
    EXPECT_EQ(visibleText("\U0001F600"), u"[U+1F600]");
    EXPECT_EQ(visibleText("\ue000"), u"[U+E000]");  // private use
}

TEST(VisibleText, LeavesTheTradesScriptsAlone) {
    EXPECT_EQ(visibleText("Łódź Ωμέγα Щукина 李雷 鋳造 カナ 한글 ≤ ≥ ø µ ²"),
              u"Łódź Ωμέγα Щукина 李雷 鋳造 カナ 한글 ≤ ≥ ø µ ²");
}

TEST(VisibleText, MarksMalformedBytes) {
    EXPECT_EQ(visibleText("a\xff\xc3"), u"a\ufffd\ufffd");
}

}  // namespace
