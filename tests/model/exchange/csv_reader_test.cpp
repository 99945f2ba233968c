// SPDX-License-Identifier: Apache-2.0
// CSV as other programs write it, by RFC 4180, and what is no such table.
#include "exchange/csv_reader.h"

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <random>
#include <unistd.h>

namespace model {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::vector<std::vector<std::string>> fieldsOf(const std::string& text) {
    const auto table = readCsv(text, "t.csv");
    if (!table) return {{table.error().message()}};
    std::vector<std::vector<std::string>> all{table->names.fields};
    for (const CsvRow& row : table->rows) all.push_back(row.fields);
    return all;
}

std::string refused(const std::string& text) {
    const auto table = readCsv(text, "t.csv");
    return table ? "read" : table.error().message();
}

// RFC 4180, section 2, rules 1 to 7; each example with the rule's number.
TEST(CsvReader, OracleReadsTheExamplesOfRfc4180) {
    const auto abc = ElementsAre("aaa", "bbb", "ccc");
    EXPECT_THAT(fieldsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"),
                ElementsAre(abc, ElementsAre("zzz", "yyy", "xxx")));  // 1
    EXPECT_THAT(fieldsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx"),
                ElementsAre(abc, ElementsAre("zzz", "yyy", "xxx")));  // 2
    EXPECT_THAT(fieldsOf("field_name,field_name,field_name\r\naaa,bbb,ccc\r\n"),
                ElementsAre(ElementsAre("field_name", "field_name", "field_name"), abc));     // 3
    EXPECT_THAT(fieldsOf("aaa, bbb ,ccc"), ElementsAre(ElementsAre("aaa", " bbb ", "ccc")));  // 4
    EXPECT_THAT(fieldsOf("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"),
                ElementsAre(abc, ElementsAre("zzz", "yyy", "xxx")));  // 5
    EXPECT_THAT(
        fieldsOf("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
        ElementsAre(ElementsAre("aaa", "b\r\nbb", "ccc"), ElementsAre("zzz", "yyy", "xxx")));  // 6
    EXPECT_THAT(fieldsOf("\"aaa\",\"b\"\"bb\",\"ccc\""),
                ElementsAre(ElementsAre("aaa", "b\"bb", "ccc")));  // 7
}

TEST(CsvReader, TakesLineFeedsSemicolonsAndAByteOrderMark) {
    EXPECT_THAT(fieldsOf("a,b\n1,2\n"), ElementsAre(ElementsAre("a", "b"), ElementsAre("1", "2")));
    EXPECT_THAT(fieldsOf("\xEF\xBB\xBF"
                         "a;b\r\n1,5;2\r\n"),
                ElementsAre(ElementsAre("a", "b"), ElementsAre("1,5", "2")));
    // The first line says so, and quotes hide what is no separator.
    EXPECT_THAT(fieldsOf("\"a,x\";b\n1;2\n"),
                ElementsAre(ElementsAre("a,x", "b"), ElementsAre("1", "2")));
    EXPECT_THAT(fieldsOf("a,b;c\n1,2\n"),
                ElementsAre(ElementsAre("a", "b;c"), ElementsAre("1", "2")));
    EXPECT_THAT(fieldsOf("\n\r\na;b\n\n1;2\n\n"),
                ElementsAre(ElementsAre("a", "b"), ElementsAre("1", "2")));
}

TEST(CsvReader, KeepsEmptyFieldsAndTellsThemFromAnEmptyLine) {
    EXPECT_THAT(fieldsOf("a,b\n,\n1,\n"),
                ElementsAre(ElementsAre("a", "b"), ElementsAre("", ""), ElementsAre("1", "")));
    EXPECT_THAT(fieldsOf("a\n\"\"\n\n"), ElementsAre(ElementsAre("a"), ElementsAre("")));
    EXPECT_THAT(fieldsOf("a,b\n1,"), ElementsAre(ElementsAre("a", "b"), ElementsAre("1", "")));
}

TEST(CsvReader, SaysOnWhichLineARowStarts) {
    const auto table = readCsv("a,b\r\n\"1\n\n2\",x\r\n\r\n3,4\r\n", "t.csv");
    ASSERT_TRUE(table.ok());
    ASSERT_EQ(table->rows.size(), 2U);
    EXPECT_EQ(table->rows[0].line, 2U);
    EXPECT_EQ(table->rows[1].line, 6U);
}

TEST(CsvReader, RefusesWhatIsNoCsvWithItsPlace) {
    EXPECT_THAT(refused("a,b\n1,x\"y\n"),
                HasSubstr("t.csv: line 2, column 4: a quote stands within"));
    EXPECT_THAT(refused("a,b\n1,\"x\" \n"),
                HasSubstr("t.csv: line 2, column 6: text stands behind a closing quote"));
    EXPECT_THAT(refused("a,b\n1,\"x\n\n2,y\n"),
                HasSubstr("t.csv: line 2, column 3: a quote is never closed"));
    EXPECT_THAT(refused("a,b\r1,2\r"), HasSubstr("t.csv: line 1, column 4: a carriage return"));
    EXPECT_THAT(refused("a,b\n1,2\r"), HasSubstr("t.csv: line 2, column 4: a carriage return"));
    EXPECT_THAT(refused(std::string("a,b\n1,\0\n", 8)), HasSubstr("line 2, column 3: a byte is 0"));
    EXPECT_THAT(refused(""), HasSubstr("holds no line with the names"));
    EXPECT_THAT(refused("\xEF\xBB\xBF\r\n\n"), HasSubstr("holds no line with the names"));
}

TEST(CsvReader, RefusesOtherEncodings) {
    const std::string zero(1, '\0');
    EXPECT_THAT(refused("\xFF\xFE" + ("a" + zero) + ("," + zero)), HasSubstr("is UTF-16"));
    EXPECT_THAT(refused("\xFE\xFF" + zero + "a"), HasSubstr("is UTF-16"));
    // Latin-1, in which e with acute is one byte.
    EXPECT_THAT(refused("name\nRen\xE9;\n"), HasSubstr("t.csv: line 2, column 4: is no UTF-8"));
}

// The Unicode Standard, table 3-7: the ends of what is well-formed, and beside them.
TEST(CsvReader, OracleKnowsWellFormedUtf8) {
    for (const char* good :
         {"\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF", "\xEE\x80\x80",
          "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"})
        EXPECT_EQ(utf8End(good), std::string_view(good).size()) << good;
    for (const char* wrong : {"\x80", "\xC0\x80", "\xC1\xBF", "\xC2", "\xC2\x41", "\xE0\x9F\xBF",
                              "\xED\xA0\x80", "\xE1\x80", "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80",
                              "\xF5\x80\x80\x80", "\xF1\x80\x80", "\xFF"})
        EXPECT_EQ(utf8End(std::string("ab") + wrong), 2U) << wrong;
}

TEST(CsvReader, StopsAtItsLimits) {
    std::string wide = "a";
    for (std::size_t i = 1; i < kMostCsvColumns; ++i) wide += ",a";
    EXPECT_EQ(refused(wide + "\n"), "read");
    EXPECT_THAT(refused(wide + ",a\n"), HasSubstr("more than 256 columns"));
    EXPECT_EQ(refused("a\n" + std::string(kLongestCsvField, 'x')), "read");
    EXPECT_THAT(refused("a\n" + std::string(kLongestCsvField + 1, 'x')),
                HasSubstr("t.csv: line 2, column 1: the field is longer than 100000 bytes"));
    EXPECT_THAT(refused("a\n\"" + std::string(kLongestCsvField + 1, '\n') + "\""),
                HasSubstr("t.csv: line 2, column 1: the field is longer"));
    std::string tall = "a\n";
    for (std::size_t i = 0; i < kMostCsvRows; ++i) tall += "x\n";
    EXPECT_EQ(refused(tall), "read");
    EXPECT_THAT(refused(tall + "x\n"), HasSubstr("more than 200000 rows"));
    EXPECT_THAT(refused("a\n" + std::string(kLargestCsv, '\n')), HasSubstr("larger than"));
}

/// Rows as Python's csv module reads them in its strict mode, each field in hexadecimal.
std::string readByPython(const std::string& path, char separator) {
    const std::string command =
        "python3 -c 'import csv,sys\n"
        "for row in csv.reader(open(sys.argv[1],newline=\"\",encoding=\"utf-8-sig\"),strict=True,"
        "delimiter=sys.argv[2]):\n"
        " if row: print(\" \".join(\"x\"+f.encode().hex() for f in row))' " +
        path + " '" + separator + "'";
    FILE* pipe = ::popen(command.c_str(), "r");
    EXPECT_NE(pipe, nullptr);
    std::string printed;
    std::array<char, 4096> piece{};
    while (const std::size_t size = std::fread(piece.data(), 1, piece.size(), pipe))
        printed.append(piece.data(), size);
    EXPECT_EQ(::pclose(pipe), 0);
    return printed;
}

std::string inHexadecimal(const CsvRow& row) {
    constexpr char kHex[] = "0123456789abcdef";
    std::string line;
    for (const std::string& field : row.fields) {
        line += line.empty() ? "x" : " x";
        for (const char c : field) {
            const auto byte = static_cast<unsigned char>(c);
            (line += kHex[byte >> 4]) += kHex[byte & 15];
        }
    }
    return line + "\n";
}

// Python's csv module, which has nothing to do with this program, reads the same fields from tables
// of random fields full of separators, quotes and line ends.
TEST(CsvReader, OracleReadsWhatPythonsCsvModuleReads) {
    std::mt19937 random(4180);
    const std::vector<std::string> pieces{
        "a", "1.5", ",", ";", "\"", "\n", "\r\n", " ", "\xC3\xA9", "\xE9\x8B\xB3", "\t", ""};
    const auto any = [&](std::size_t count) { return random() % count; };
    const std::string path = testing::TempDir() + "csv_reader_" + std::to_string(::getpid());
    for (int round = 0; round < 12; ++round) {
        const char separator = round % 2 == 0 ? ',' : ';';
        const char* end = round % 3 == 0 ? "\n" : "\r\n";
        std::string text = round % 5 == 0 ? "\xEF\xBB\xBF" : "";
        text += std::string("a") + separator + "b" + separator + "c" + end;
        for (int row = 0; row < 80; ++row) {
            for (int column = 0; column < 3; ++column) {
                std::string field;
                for (std::size_t i = any(5); i > 0; --i) field += pieces[any(pieces.size())];
                const bool must = field.find_first_of(",;\"\r\n") != std::string::npos;
                if (must || any(4) == 0) {
                    std::string quoted;
                    for (const char c : field) quoted += c == '"' ? "\"\"" : std::string(1, c);
                    field = '"' + quoted + '"';
                }
                text += field;
                if (column < 2) text += separator;
            }
            text += end;
        }
        std::ofstream(path, std::ios::binary) << text;
        const auto table = readCsv(text, "t.csv");
        ASSERT_TRUE(table.ok()) << table.error().message() << text;
        EXPECT_EQ(table->separator, separator);
        std::string ours = inHexadecimal(table->names);
        for (const CsvRow& row : table->rows) ours += inHexadecimal(row);
        EXPECT_EQ(ours, readByPython(path, separator)) << text;
    }
    std::filesystem::remove(path);
}

TEST(CsvReader, ReadsBackWhatIsWritten) {
    const std::vector<std::string> fields{"", "a", "a,b", "a\"b", "\r\n", "\n", " x "};
    EXPECT_EQ(csvLine(fields), ",a,\"a,b\",\"a\"\"b\",\"\r\n\",\"\n\", x \r\n");
    EXPECT_THAT(fieldsOf(csvLine(fields)), ElementsAre(fields));
    EXPECT_THAT(readCsv(csvLine(fields), "t")->rows, IsEmpty());
}

}  // namespace
}  // namespace model
