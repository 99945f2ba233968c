// SPDX-License-Identifier: Apache-2.0
// What is JSON and what is not: RFC 8259, sections beside the tests. What the program refuses
// beyond it is its own rule, and said so.
#include "exchange/json_document.h"

#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

#include "base/decimal.h"

namespace model {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

JsonValue parsed(std::string_view text) {
    Result<JsonValue> value = parseJson(text, "t.json");
    EXPECT_TRUE(value.ok()) << text << ": " << (value.ok() ? "" : value.error().message());
    return value.ok() ? std::move(value).value() : JsonValue();
}

std::string refused(std::string_view text) {
    const Result<JsonValue> value = parseJson(text, "t.json");
    EXPECT_FALSE(value.ok()) << text;
    if (value.ok()) return "";
    EXPECT_EQ(value.error().kind, ErrorKind::Input) << text;
    std::string message = value.error().message();
    EXPECT_EQ(message.find('\n'), std::string::npos) << message;
    EXPECT_THAT(message, StartsWith("t.json: "));
    return message;
}

// RFC 8259 section 13, first example.
TEST(JsonDocument, ReadsTheObjectOfSection13) {
    const JsonValue document = parsed(R"(      {
        "Image": {
            "Width":  800,
            "Height": 600,
            "Title":  "View from 15th Floor",
            "Thumbnail": {
                "Url":    "http://www.example.com/image/481989943",
                "Height": 125,
                "Width":  100
            },
            "Animated" : false,
            "IDs": [116, 943, 234, 38793]
          }
      }
)");
    ASSERT_EQ(document.type(), JsonValue::Type::Object);
    const JsonValue* image = document.find("Image");
    ASSERT_NE(image, nullptr);
    std::vector<std::string> names;
    for (const JsonMember& member : image->members()) names.push_back(member.name);
    EXPECT_THAT(names,
                testing::ElementsAre("Width", "Height", "Title", "Thumbnail", "Animated", "IDs"));
    EXPECT_EQ(image->find("Width")->millionths(), 800 * kMillion);
    EXPECT_EQ(image->find("Title")->string(), "View from 15th Floor");
    EXPECT_FALSE(image->find("Animated")->boolean());
    ASSERT_EQ(image->find("IDs")->elements().size(), 4U);
    EXPECT_EQ(image->find("IDs")->elements()[3].millionths(), 38793 * kMillion);
    EXPECT_EQ(image->find("Depth"), nullptr);
}

// RFC 8259 section 13, second example (its numbers) and the three small texts after it.
TEST(JsonDocument, ReadsTheNumbersAndScalarsOfSection13Exactly) {
    const JsonValue document = parsed(R"([{"Latitude": 37.7668, "Longitude": -122.3959},
                                          {"Latitude": 37.371991, "Longitude": -122.026020}])");
    EXPECT_EQ(document.elements()[0].find("Latitude")->millionths(), 37'766'800);
    EXPECT_EQ(document.elements()[0].find("Longitude")->millionths(), -122'395'900);
    EXPECT_EQ(document.elements()[1].find("Latitude")->millionths(), 37'371'991);
    EXPECT_EQ(document.elements()[1].find("Longitude")->millionths(), -122'026'020);
    EXPECT_EQ(parsed("\"Hello world!\"").string(), "Hello world!");
    EXPECT_EQ(parsed("42").millionths(), 42 * kMillion);
    EXPECT_TRUE(parsed("true").boolean());
}

// RFC 8259 section 6 (grammar); the bounds are the program's own.
TEST(JsonDocument, ReadsNumbersFromTheirText) {
    EXPECT_EQ(parsed("0.1").millionths(), 100'000);
    EXPECT_EQ(parsed("-0").millionths(), 0);
    EXPECT_EQ(parsed("1E+2").millionths(), 100 * kMillion);
    EXPECT_EQ(parsed("25e-1").millionths(), 2'500'000);
    EXPECT_EQ(parsed("1.000000000").millionths(), kMillion);
    EXPECT_EQ(parsed("0.000001").millionths(), 1);
    EXPECT_EQ(parsed("1e6").millionths(), 1'000'000 * kMillion);
    EXPECT_EQ(parsed("0e400").millionths(), 0);
    EXPECT_EQ(parsed("16.100001").millionths(), 16'100'001);
}

TEST(JsonDocument, RefusesNumbersBeyondItsRangeWithTheirPath) {
    EXPECT_EQ(refused(R"({"a": [0, 1e400]})"), "t.json: a[1]: is larger than 1000000");
    EXPECT_EQ(refused(R"({"a": [0, -1e400]})"), "t.json: a[1]: is larger than 1000000");
    EXPECT_EQ(refused(R"({"a": 1000001})"), "t.json: a: is larger than 1000000");
    EXPECT_EQ(refused(R"({"a": 99999999999999999999999})"), "t.json: a: is larger than 1000000");
    EXPECT_EQ(refused(R"({"a": 0.1234567})"), "t.json: a: has more than 6 decimals");
    EXPECT_EQ(refused(R"({"a": 1e-400})"), "t.json: a: has more than 6 decimals");
}

// RFC 8259 section 6: "Infinity and NaN are not permitted", no leading zeros, no plus, no bare dot.
TEST(JsonDocument, RefusesWhatIsNoNumber) {
    for (const char* text : {"NaN", "Infinity", "-Infinity", "nan", "01", "-", "+1", ".5", "5.",
                             "1e", "1e+", "0x10", "1,5", "1_000", "--1"})
        EXPECT_THAT(refused(text), HasSubstr("line 1, column ")) << text;
    EXPECT_THAT(refused("{\"a\":\n  NaN}"), StartsWith("t.json: line 2, column 3: is not JSON: "));
}

// RFC 8259 section 3: literal names are lower case; section 2: six structural characters and four
// blanks, nothing else.
TEST(JsonDocument, RefusesWhatIsNoJson) {
    for (const char* text : {" ",       "True",       "TRUE",      "nul",   "[1,]",    "[,1]",
                             "[1 2]",   "{\"a\":1,}", "{\"a\" 1}", "{a:1}", "{'a':1}", "{1:1}",
                             "[1",      "{\"a\":",    "{\"a\":1",  "\"a",   "]",       "}",
                             "[1}",     "[1] [2]",    "{} x",      "1 1",   "// c\n1", "/* c */ 1",
                             "[1]\x0b", "[\u00a01]"})
        EXPECT_THAT(refused(text), HasSubstr("line ")) << text;
    EXPECT_THAT(refused(std::string_view("[1]\0", 4)),
                HasSubstr("line 1, column 4: is not JSON in UTF-8: a byte is 0"));
}

// RFC 8259 section 7: escapes, and a surrogate pair for U+1D11E (G clef), the section's example.
TEST(JsonDocument, ReadsEscapesAsTheirCharacters) {
    EXPECT_EQ(parsed(R"("\"\\\/\b\f\n\r\t")").string(), "\"\\/\b\f\n\r\t");
    EXPECT_EQ(parsed(R"("\u005C")").string(), "\\");
    EXPECT_EQ(parsed(R"("\uD834\uDD1E")").string(), "\xF0\x9D\x84\x9E");
    EXPECT_EQ(parsed("\"\xC3\xA4\"").string(), "\xC3\xA4");
}

TEST(JsonDocument, RefusesStringsThatAreNone) {
    for (const char* text : {R"("\x")", R"("\u12")", R"("\uD834")", R"("\uDD1E")", "\"a\nb\"",
                             "\"a\tb\"", R"("\uD834\u0041")"})
        EXPECT_THAT(refused(text), HasSubstr("line 1")) << text;
    EXPECT_EQ(refused(R"({"a": "x\u0000y"})"), "t.json: a: must not hold the character U+0000");
}

// RFC 8259 section 8.1: UTF-8, no byte-order mark added.
TEST(JsonDocument, RefusesOtherEncodings) {
    EXPECT_EQ(refused("{\"a\":\n\"\xE4\"}"), "t.json: line 2, column 3: is not UTF-8");  // Latin-1
    for (const char* text : {"\"\xC0\xAF\"", "\"\xED\xA0\x80\"", "\"\xF4\x90\x80\x80\"", "\"\xC3\"",
                             "\"\x80\""})  // overlong, surrogate, beyond, cut, alone
        EXPECT_THAT(refused(text), HasSubstr("is not UTF-8"));
    EXPECT_EQ(refused("\xEF\xBB\xBF{}"),
              "t.json: starts with a byte-order mark; must be UTF-8 without one");
    EXPECT_THAT(refused(std::string_view("\xFE\xFF\0{\0}", 6)), HasSubstr("UTF-16"));
    EXPECT_THAT(refused(std::string_view("\xFF\xFE{\0}\0", 6)), HasSubstr("UTF-16"));
    EXPECT_THAT(refused(std::string_view("{\0}\0", 4)), HasSubstr("a byte is 0"));
}

// RFC 8259 section 4 leaves duplicate names open; here the second one is refused.
TEST(JsonDocument, RefusesAMemberGivenTwice) {
    EXPECT_EQ(refused(R"({"a": [{"b": 1, "c": 2, "b": 1}]})"), "t.json: a[0].b: is given twice");
    EXPECT_EQ(refused(R"({"a": 1, "\u0061": 2})"), "t.json: a: is given twice");
    EXPECT_EQ(refused(R"({"a b": 1, "a b": 2})"), R"(t.json: ["a b"]: is given twice)");
}

TEST(JsonDocument, RefusesNullWithItsPath) {
    EXPECT_EQ(
        refused(R"({"examinations": [{}, {"indications": [{"x_mm": null}]}]})"),
        "t.json: examinations[1].indications[0].x_mm: must not be null: leave out what is not "
        "known");
    EXPECT_THAT(refused("null"), StartsWith("t.json: line 1, column 4: must not be null"));
}

TEST(JsonDocument, TellsWhereATruncatedDocumentEnds) {
    EXPECT_EQ(refused(""), "t.json: is empty");
    EXPECT_THAT(refused("{\"a\": 1,\n \"b\": [1, 2"),
                AllOf(StartsWith("t.json: line 2, column 11: "), HasSubstr("end of input")));
    EXPECT_THAT(refused("{\"a\": \"abc"), HasSubstr("missing closing quote"));
}

TEST(JsonDocument, TakesNestingOf32AndRefusesDeeper) {
    EXPECT_EQ(parsed(std::string(32, '[') + std::string(32, ']')).type(), JsonValue::Type::Array);
    EXPECT_EQ(refused(std::string(33, '[') + std::string(33, ']')),
              "t.json: line 1, column 33: is nested deeper than 32 levels");
}

/// Seconds that `run` takes.
template <class Run>
double secondsOf(Run run) {
    const auto start = std::chrono::steady_clock::now();
    run();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

// Its own rule: whatever comes in, time and memory stay bounded. The bound of 20 s is far above
// what any of these takes and far below what an unbounded reader would.
TEST(JsonDocument, RefusesHugeInputInBoundedTime) {
    constexpr std::size_t kHuge = 200'000'000;
    EXPECT_LT(
        secondsOf([] {
            EXPECT_THAT(refused(std::string(kHuge, '[')), HasSubstr("nested deeper"));
            EXPECT_THAT(refused(std::string(kHuge, ' ')), HasSubstr("larger than 64000000"));
            EXPECT_THAT(refused(std::string(kHuge, '1')), HasSubstr("longer than 100000"));
            EXPECT_THAT(refused('"' + std::string(kHuge, 'a')), HasSubstr("longer than 100000"));
            EXPECT_THAT(refused('"' + std::string(kHuge, '\\')), HasSubstr("longer than 100000"));
            std::string numbers = "[1";
            while (numbers.size() < kHuge) numbers += ",1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1";
            EXPECT_THAT(refused(numbers), HasSubstr("at most 2000000"));
            std::string members = "{";
            for (int i = 0; i < 5'000'000; ++i) members += "\"" + std::to_string(i) + "\":1,";
            EXPECT_THAT(refused(members), HasSubstr("at most 256"));
        }),
        20.0);
}

TEST(JsonDocument, TakesStringsUpToItsLimit) {
    const std::string longest(kLongestJsonToken - 2, 'a');
    EXPECT_EQ(parsed('"' + longest + '"').string(), longest);
    EXPECT_THAT(refused('"' + longest + "a\""), HasSubstr("longer than 100000 bytes"));
    // Many shorter ones together are no long one.
    EXPECT_EQ(parsed("[\"" + longest + "\",\"" + longest + "\"]").elements().size(), 2U);
}

TEST(JsonDocument, ReadsAFileThatIsLongerThanItsBuffer) {
    const std::string path = testing::TempDir() + "fettlemark_long.json";
    std::string text = "[";
    for (int i = 0; i < 50'000; ++i) text += std::to_string(i) + ", ";
    text += "-1]";
    std::ofstream(path, std::ios::binary) << text;
    const Result<JsonValue> value = readJson(path);
    std::remove(path.c_str());
    ASSERT_TRUE(value.ok()) << value.error().message();
    ASSERT_EQ(value->elements().size(), 50'001U);
    for (int i = 0; i < 50'000; ++i)
        ASSERT_EQ(value->elements()[static_cast<std::size_t>(i)].millionths(), i * kMillion);
}

TEST(JsonDocument, TellsAMissingFileFromOneThatCannotBeRead) {
    const Result<JsonValue> missing = readJson("/nowhere/at/all.json");
    ASSERT_FALSE(missing.ok());
    EXPECT_EQ(missing.error().kind, ErrorKind::Input);
    EXPECT_EQ(missing.error().message(), "/nowhere/at/all.json: is not there");

    const Result<JsonValue> folder = readJson(testing::TempDir());
    ASSERT_FALSE(folder.ok());
    EXPECT_EQ(folder.error().kind, ErrorKind::Input);

    // There, but address 0 of the process cannot be read: an input/output error.
    const Result<JsonValue> unreadable = readJson("/proc/self/mem");
    ASSERT_FALSE(unreadable.ok());
    EXPECT_EQ(unreadable.error().kind, ErrorKind::Refused);
    EXPECT_THAT(unreadable.error().message(), HasSubstr("cannot be read"));
}

TEST(JsonDocument, ShowsAnUnreasonableNameShortened) {
    const std::string message = refused("{\"" + std::string(5'000, '.') + "\": null}");
    EXPECT_LT(message.size(), 200U);
    EXPECT_THAT(message, Not(HasSubstr(std::string(100, '.'))));
}

}  // namespace
}  // namespace model
