// SPDX-License-Identifier: Apache-2.0
#include <chrono>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <map>
#include <regex>
#include <sstream>

#include "certificate/certificate.h"
#include "pdf/render.h"
#include "sample/sample_casting.h"
#include "tools.h"

namespace {

using reports::Heading;
using reports::Paragraph;
using testing::HasSubstr;
using tools::documentOf;
using tools::PdfOnDisk;
using tools::rendered;

/// How often each word that matches is in the text.
std::map<std::string, int> counted(const std::string& text, const std::string& pattern) {
    std::map<std::string, int> counts;
    const std::regex expression(pattern);
    for (std::sregex_iterator it(text.begin(), text.end(), expression), end; it != end; ++it)
        ++counts[it->str()];
    return counts;
}

TEST(Pages, HaveEveryTableRowOnceAndTheHeadingsOnEveryPage) {
    reports::Table table{{{"Kolumna", reports::Align::Left, 1}, {"Text", reports::Align::Left, 3}},
                         {}};
    constexpr int kRows = 400;
    for (int i = 0; i < kRows; ++i)
        table.rows.push_back({{"row" + std::to_string(i) + "."},
                              {std::string(static_cast<std::size_t>(i % 97) * 4 + 1, 'x') + " y"}});
    const PdfOnDisk pdf(rendered(documentOf({table})));
    const auto rows = counted(pdf.text(), R"(row\d+\.)");
    EXPECT_EQ(rows.size(), static_cast<std::size_t>(kRows));
    for (const auto& [row, count] : rows) EXPECT_EQ(count, 1) << row;
    const int pages = pdf.pages();
    ASSERT_GT(pages, 4);
    for (int page = 1; page <= pages; ++page) {
        EXPECT_THAT(pdf.text(page), HasSubstr("Kolumna")) << page;
        EXPECT_EQ(counted(pdf.text(page), "continued").size(), page == 1 ? 0U : 1U) << page;
    }
}

TEST(Pages, ContinueACellThatIsHigherThanAPage) {
    std::ostringstream text;
    constexpr int kWords = 6000;
    for (int i = 0; i < kWords; ++i) text << "w" << i << "; ";
    const PdfOnDisk pdf(rendered(documentOf(
        {reports::Table{{{"A", reports::Align::Left, 1}, {"B", reports::Align::Left, 2}},
                        {{{"before"}, {"-"}}, {{"short"}, {text.str()}}, {{"after"}, {"-"}}}},
         reports::Fields{{{"", "Long value", text.str()}}, 1}, Paragraph{{}, text.str()},
         reports::Statement{reports::Mark::NotJudged, "WORD", text.str()}})));
    const auto words = counted(pdf.text(), R"(w\d+;)");
    EXPECT_EQ(words.size(), static_cast<std::size_t>(kWords));
    for (const auto& [word, count] : words) EXPECT_EQ(count, 4) << word;
    EXPECT_GT(pdf.pages(), 10);
}

TEST(Pages, KeepAHeadingWithWhatFollows) {
    std::vector<reports::Block> blocks;
    constexpr int kSections = 150;
    for (int i = 0; i < kSections; ++i) {
        const std::string number = std::to_string(i);
        blocks.push_back(Heading{1 + i % 3, "Head" + number + "."});
        if (i % 2 == 0) {
            blocks.push_back(Paragraph{
                {},
                "Body" + number + ". " + std::string(static_cast<std::size_t>(i % 7) * 90, 'x')});
        } else {
            blocks.push_back(reports::Table{{{"Column"}}, {{{"Body" + number + "."}}}});
        }
    }
    const PdfOnDisk pdf(rendered(documentOf(blocks)));
    const int pages = pdf.pages();
    ASSERT_GT(pages, 5);
    int found = 0;
    for (int page = 1; page <= pages; ++page) {
        const std::string text = pdf.text(page);
        for (const auto& [head, count] : counted(text, R"(Head\d+\.)")) {
            ++found;
            EXPECT_THAT(text, HasSubstr("Body" + head.substr(4))) << "page " << page;
        }
    }
    EXPECT_EQ(found, kSections);
}

TEST(Pages, NeverHoldTheEndMarkAlone) {
    for (int lines = 45; lines < 75; ++lines) {
        std::string text;
        for (int i = 0; i < lines; ++i) text += "line" + std::to_string(i) + "\n";
        const PdfOnDisk pdf(rendered(documentOf({Paragraph{{}, text + "last"}})));
        EXPECT_THAT(pdf.text(pdf.pages()), testing::AllOf(HasSubstr("last"), HasSubstr("The end")))
            << lines;
    }
}

TEST(Pages, OfALargeCastingHoldEveryIndicationInReasonableTime) {
    const sample::Sample sample = sample::largeCasting(200, 10);
    const auto start = std::chrono::steady_clock::now();
    const auto document = reports::certificateOf(sample.input());
    ASSERT_TRUE(document.ok());
    const std::string bytes = rendered(*document);
    const auto took = std::chrono::steady_clock::now() - start;
    EXPECT_LT(took, std::chrono::seconds(30));  // some 0.6 s on a plain desktop machine

    const PdfOnDisk pdf(bytes);
    EXPECT_EQ(tools::run("qpdf", {"--check", pdf.path()}).code, 0);
    const std::string text = pdf.text();
    EXPECT_EQ(counted(text, R"(Z\d+ MT, heat treated\n)").size(), 200U);
    // Only the indications' rows have this: length, width, angle, no area, class.
    const auto rows = counted(text, R"(3\.2 2\.9 0 – non-linear)");
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows.begin()->second, 2000);
    const int pages = pdf.pages();
    EXPECT_THAT(pdf.text(pages),
                HasSubstr("Page " + std::to_string(pages) + " of " + std::to_string(pages)));
}

TEST(Pages, ShowChaptersAndSectionsInTheOutline) {
    const PdfOnDisk pdf(rendered(documentOf({Heading{1, "Chapter Ω"}, Heading{2, "Section 鋳"},
                                             Heading{3, "Deeper"}, Paragraph{{}, "x"}})));
    const auto shown = tools::run("qpdf", {"--json", "--json-key=outlines", pdf.path()});
    EXPECT_THAT(shown.output, HasSubstr("Chapter Ω"));
    EXPECT_THAT(shown.output, HasSubstr("Section 鋳"));
    EXPECT_THAT(shown.output, testing::Not(HasSubstr("Deeper")));
}

}  // namespace
