// SPDX-License-Identifier: Apache-2.0
// Truncated, altered and meaningless texts: the parser answers, and answers soon.
#include <chrono>
#include <gtest/gtest.h>
#include <random>

#include "limits/parser.h"
#include "limits/shipped_tables.h"
#include "limits/table_lines.h"
#include "limits/table_set.h"
#include "read_data.h"

namespace model {
namespace {

using Clock = std::chrono::steady_clock;

double secondsSince(Clock::time_point start) {
    return std::chrono::duration<double>(Clock::now() - start).count();
}

/// Either a table, or an error with a line of the text as place.
void expectAnswer(const std::string& text) {
    const auto table = parseTable(text, "t");
    if (table.ok()) return;
    const std::string& place = table.error().place;
    ASSERT_TRUE(place.starts_with("t:")) << place;
    const auto lines = std::count(text.begin(), text.end(), '\n') + 1;
    const int line = std::stoi(place.substr(2));
    EXPECT_GE(line, 1);
    EXPECT_LE(line, lines);
    EXPECT_FALSE(table.error().message().empty());
    EXPECT_LT(table.error().message().size(), 500U);
}

std::string shippedText(std::string_view file) {
    for (const EmbeddedFile& shipped : shippedTables())
        if (shipped.name == file) return std::string(shipped.text);
    ADD_FAILURE() << file;
    return {};
}

TEST(ParserGarbage, EveryTruncationIsAnswered) {
    const std::string good = readData("good.table");
    // Only the last newline can go without notice.
    const std::size_t whole = good.size() - 1;
    for (std::size_t size = 0; size < good.size(); ++size) {
        const std::string text = good.substr(0, size);
        expectAnswer(text);
        EXPECT_EQ(parseTable(text, "t").ok(), size >= whole) << size;
    }
    const std::string shipped = shippedText("asme_viii-1_2017_app_7_pt.table");
    for (std::size_t size = 0; size < shipped.size(); size += 7)
        expectAnswer(shipped.substr(0, size));
}

TEST(ParserGarbage, EveryByteAlteredIsAnswered) {
    const std::string good = readData("good.table");
    for (std::size_t at = 0; at < good.size(); ++at)
        for (const char byte : {'\0', '"', '#', '\n', ' ', '9', '%', '-', '\x7F', '\xFF'}) {
            std::string text = good;
            text[at] = byte;
            expectAnswer(text);
        }
}

TEST(ParserGarbage, ShuffledLinesAndWordsAreAnswered) {
    std::mt19937 random(20240229);  // fixed: every run tries the same texts
    const std::string good = shippedText("asme_b16.34_2020_app_ii.table");
    std::vector<std::string> words;
    std::istringstream in(good);
    for (std::string word; in >> word;) words.push_back(word);
    std::vector<std::string> lines;
    std::istringstream again(good);
    for (std::string line; std::getline(again, line);) lines.push_back(line);
    for (int round = 0; round < 2000; ++round) {
        std::string text = "fettlemark-table 1\n";
        for (int i = 0; i < 40; ++i) {
            const bool line = random() % 2 == 0;
            const auto& from = line ? lines : words;
            text += from[random() % from.size()];
            text += line || random() % 4 == 0 ? "\n" : " ";
        }
        expectAnswer(text);
    }
}

TEST(ParserGarbage, RandomBytesAreAnswered) {
    std::mt19937 random(1369);
    for (int round = 0; round < 2000; ++round) {
        std::string text(random() % 400, '\0');
        for (char& c : text) c = static_cast<char>(random());
        expectAnswer(text);
        expectAnswer("fettlemark-table 1\n" + text);
    }
}

/// The time of the fastest of three runs.
double fastest(const std::string& text) {
    double least = 1e9;
    for (int run = 0; run < 3; ++run) {
        const auto start = Clock::now();
        const auto table = parseTable(text, "t");
        least = std::min(least, secondsSince(start));
        EXPECT_TRUE(table.ok() || !table.error().reason.empty());
    }
    return least;
}

/// As many rules as a file may have, each of 32 levels with 16 bands.
std::string largeTable(std::size_t size) {
    std::string text =
        "fettlemark-table 1\nid \"X\"\nstandard \"X\"\nedition \"1\"\nrevision 1\nmethod MT\n"
        "materials \"grey iron\"\nlevels all of non-linear linear aligned are";
    for (int level = 0; level < 32; ++level) text += " \"" + std::to_string(level) + "\"";
    text +=
        "\nlinear unknown at \"a\" R\nthreshold unknown at \"a\" R\nrows unknown at \"a\" R\n"
        "joins unknown at \"a\" R\nframe unknown at \"a\" R\nsummed apart at \"a\" R\n"
        "forbidden none at \"a\" R\n";
    const char* kinds[] = {"individual length", "cumulative length",    "total area",
                           "individual area",   "area share",           "count",
                           "spacing",           "equivalent reflector", "through-wall extent",
                           "back-wall loss"};
    const char* classes[] = {"all",
                             "linear",
                             "non-linear",
                             "aligned",
                             "linear aligned",
                             "non-linear aligned",
                             "linear non-linear",
                             "linear non-linear aligned"};
    for (const char* ofClass : classes)
        for (const char* kind : kinds) {
            std::string rule = "rule " + std::string(kind) + "\nkey all\nclasses " + ofClass +
                               "\npasses at most\nframed no\n"
                               "columns level from to limit locator grade\n";
            for (int level = 0; level < 32; ++level)
                for (int band = 0; band < 16; ++band)
                    rule += "row \"" + std::to_string(level) + "\" >" + std::to_string(band) +
                            " <=" + std::to_string(band + 1) + " 5 \"a\" R\n";
            if (text.size() + rule.size() + 4 > size) return text + "end\n";
            text += rule;
        }
    return text + "end\n";
}

TEST(ParserGarbage, TheLargestTableIsReadSoon) {
    const std::string text = largeTable(kLargestTableFile);
    EXPECT_GT(text.size(), kLargestTableFile * 9 / 10);
    EXPECT_TRUE(parseTable(text, "t").ok());
    // It takes some hundredths of a second; the rest is room for sanitizers on a busy machine.
    EXPECT_LT(fastest(text), 3.0);
}

TEST(ParserGarbage, LargeTextsOfOneThingAreAnsweredSoon) {
    const auto repeated = [](const std::string& piece) {
        std::string text = "fettlemark-table 1\n";
        while (text.size() + piece.size() <= kLargestTableFile) text += piece;
        return text;
    };
    for (const std::string& text :
         {std::string(kLargestTableFile, '\n'), std::string(kLargestTableFile, ' '),
          std::string(kLargestTableFile, '"'), repeated("\n#"), repeated("remark \"x\"\n"),
          repeated("remark \"" + std::string(1900, 'x') + "\"\n"), repeated("a "),
          std::string(50U * kLargestTableFile, 'x')})
        EXPECT_LT(fastest(text), 3.0);
}

}  // namespace
}  // namespace model
