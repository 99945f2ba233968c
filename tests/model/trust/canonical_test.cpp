// SPDX-License-Identifier: Apache-2.0
#include "trust/canonical.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <random>

namespace model {
namespace {

std::string bytesOf(const Canonical& value) {
    const auto bytes = canonicalBytes(value);
    return bytes ? *bytes : "refused: " + bytes.error().message();
}

// Source: RFC 8785, sections 3.2.2 and 3.2.4, the member "string" of the sample, as UTF-8 bytes
// (the sample's fractions and null do not exist here). Grade M; the escapes are those of
// section 3.2.2.2.
TEST(CanonicalOracle, EscapesTextAsRfc8785Does) {
    const Canonical::Object sample{{"string", std::string("\xe2\x82\xac$\x0f\x0a"
                                                          "A'B\"\\\\\"/")}};
    EXPECT_EQ(bytesOf(sample),
              "\x7b\x22\x73\x74\x72\x69\x6e\x67\x22\x3a\x22\xe2\x82\xac\x24\x5c\x75\x30\x30\x30"
              "\x66\x5c\x6e\x41\x27\x42\x5c\x22\x5c\x5c\x5c\x5c\x5c\x22\x2f\x22\x7d");
}

// Source: RFC 8785, section 3.2.3, the sorting example. Grade M; the order of these keys agrees
// with the test file weird.json that the RFC's author publishes.
TEST(CanonicalOracle, SortsKeysByUtf16CodeUnitsAsRfc8785Does) {
    const Canonical::Object sample{{"\xe2\x82\xac", "Euro Sign"},
                                   {"\r", "Carriage Return"},
                                   {"\xef\xac\xb3", "Hebrew Letter Dalet With Dagesh"},
                                   {"1", "One"},
                                   {"\xf0\x9f\x98\x80", "Emoji: Grinning Face"},
                                   {"\xc2\x80", "Control"},
                                   {"\xc3\xb6", "Latin Small Letter O With Diaeresis"}};
    EXPECT_EQ(bytesOf(sample),
              "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\xc2\x80\":\"Control\","
              "\"\xc3\xb6\":\"Latin Small Letter O With Diaeresis\","
              "\"\xe2\x82\xac\":\"Euro Sign\","
              "\"\xf0\x9f\x98\x80\":\"Emoji: Grinning Face\","
              "\"\xef\xac\xb3\":\"Hebrew Letter Dalet With Dagesh\"}");
}

// Source: RFC 8259, section 7, the two-character escapes; RFC 8785, 3.2.2.2, which of them are
// used.
TEST(CanonicalOracle, UsesTheShortEscapesAndLowerCaseDigits) {
    EXPECT_EQ(bytesOf(std::string("\b\t\n\f\r\"\\/\x1f\x00\x7f", 11)),
              "\"\\b\\t\\n\\f\\r\\\"\\\\/\\u001f\\u0000\x7f\"");
}

// Source: RFC 8785, section 3.2.2.3 and appendix D: whole numbers are exact in every reader up to
// 2^53 - 1.
TEST(CanonicalOracle, RefusesNumbersThatNotEveryReaderHoldsExactly) {
    EXPECT_EQ(bytesOf(std::int64_t{9'007'199'254'740'991}), "9007199254740991");
    EXPECT_EQ(bytesOf(std::int64_t{-9'007'199'254'740'991}), "-9007199254740991");
    for (const std::int64_t whole : {9'007'199'254'740'992, -9'007'199'254'740'992, INT64_MIN}) {
        const auto bytes = canonicalBytes(Canonical::Object{
            {"rows", Canonical::Array{0, Canonical::Object{{"length_nm", whole}}}}});
        ASSERT_FALSE(bytes.ok()) << whole;
        EXPECT_EQ(bytes.error().kind, ErrorKind::Input);
        EXPECT_EQ(bytes.error().place, "rows[1].length_nm");
    }
}

// Source: the table of well-formed sequences in RFC 3629, section 4.
TEST(CanonicalOracle, RefusesTextThatIsNotUtf8) {
    for (const char* text : {"\xc3", "\x80", "\xc0\x80", "\xc1\xbf", "\xe0\x9f\xbf", "\xed\xa0\x80",
                             "\xf0\x8f\xbf\xbf", "\xf4\x90\x80\x80", "\xf5\x80\x80\x80", "a\xff",
                             "\xe2\x82", "\xe2\x82z"}) {
        const auto bytes = canonicalBytes(Canonical::Object{{"reason", std::string(text)}});
        ASSERT_FALSE(bytes.ok()) << testing::PrintToString(std::string(text));
        EXPECT_EQ(bytes.error().place, "reason");
    }
    for (const char* text : {"\xc2\x80", "\xdf\xbf", "\xe0\xa0\x80", "\xed\x9f\xbf", "\xee\x80\x80",
                             "\xef\xbf\xbf", "\xf0\x90\x80\x80", "\xf4\x8f\xbf\xbf"})
        EXPECT_EQ(bytesOf(std::string(text)), '"' + std::string(text) + '"');
}

TEST(Canonical, WritesEveryKindOfValue) {
    const Canonical::Object value{{"b", true},
                                  {"a", false},
                                  {"empty", Canonical::Object{}},
                                  {"none", Canonical::Array{}},
                                  {"list", Canonical::Array{0, -1, "x", Canonical::Array{"y"}}}};
    EXPECT_EQ(bytesOf(value),
              R"({"a":false,"b":true,"empty":{},"list":[0,-1,"x",["y"]],"none":[]})");
    EXPECT_EQ(bytesOf(Canonical()), "{}");
}

TEST(Canonical, DoesNotNormaliseText) {
    const std::string composed = "\xc3\xa9";
    const std::string decomposed = "e\xcc\x81";
    EXPECT_NE(bytesOf(composed), bytesOf(decomposed));
}

TEST(Canonical, ReadsBackWhatItWrote) {
    const Canonical value(Canonical::Object{
        {"length_nm", std::int64_t{34'925'000}},
        {"typed", "1 3/8"},
        {"rows", Canonical::Array{Canonical::Object{{"relevant", true}}, "\xf0\x9f\x98\x80"}}});
    const auto again = parseCanonical(bytesOf(value));
    ASSERT_TRUE(again.ok());
    EXPECT_EQ(*again, value);
    ASSERT_TRUE(again->member("length_nm"));
    EXPECT_EQ(*again->member("length_nm")->whole(), 34'925'000);
    EXPECT_EQ(again->member("length"), nullptr);
}

TEST(Canonical, RefusesToReadWhatItWouldNotWrite) {
    for (const char* bytes : {"",
                              "{",
                              "null",
                              R"({"a":null})",
                              R"({"a":1.0})",
                              R"({"a":1e2})",
                              R"({"a":-0})",
                              R"({"b":1,"a":2})",
                              R"({"a":1,"a":1})",
                              R"({"a": 1})",
                              "{}\n",
                              "\xef\xbb\xbf{}",
                              R"(["\u0041"])",
                              R"(["\/"])",
                              R"(["\u001F"])",
                              R"([9007199254740992])",
                              "[01]",
                              "[1,]",
                              "[\"\xff\"]",
                              R"([18446744073709551615])"}) {
        const auto value = parseCanonical(bytes);
        ASSERT_FALSE(value.ok()) << bytes;
        EXPECT_EQ(value.error().kind, ErrorKind::Damaged);
    }
}

TEST(Canonical, RefusesNestingThatCouldExhaustTheStack) {
    const std::string deep = std::string(100'000, '[') + std::string(100'000, ']');
    EXPECT_FALSE(parseCanonical(deep).ok());
    EXPECT_TRUE(parseCanonical(std::string(64, '[') + std::string(64, ']')).ok());
    Canonical value;
    for (int i = 0; i < 100; ++i) value = Canonical::Array{value};
    EXPECT_FALSE(canonicalBytes(value).ok());
}

bool holdsOnlyOurKinds(const nlohmann::json& json) {
    if (json.is_structured()) return std::all_of(json.begin(), json.end(), holdsOnlyOurKinds);
    if (json.is_number_unsigned()) return json.get<std::uint64_t>() <= 9'007'199'254'740'991;
    if (json.is_number_integer()) return json.get<std::int64_t>() >= -9'007'199'254'740'991;
    return json.is_string() || json.is_boolean();
}

/// Whether another library for JSON reads the bytes and writes the same ones. It sorts keys by
/// their bytes, which for the characters used here is the order of RFC 8785.
bool isCanonicalElsewhere(const std::string& bytes) {
    const auto json = nlohmann::json::parse(bytes, nullptr, false);
    return !json.is_discarded() && holdsOnlyOurKinds(json) && json.dump() == bytes;
}

// Source: nlohmann JSON, on some ten thousand texts of which some are canonical.
TEST(CanonicalOracle, ReadsWhatAnotherLibraryReadsAndWritesAgainTheSame) {
    std::mt19937 random(8785);
    const auto below = [&](std::size_t count) { return random() % count; };
    const std::vector<std::string> pieces{
        "{",   "}", "[", "]",    ",",        ":",    "\"",      "\\",    "u00", "\\u001f",
        "\\n", "0", "1", "-",    ".",        "e",    "true",    "false", " ",   "\x01",
        "a",   "b", "z", "null", "\xc3\xa4", "\xc3", "\\u0041", "\"\""};
    int canonical = 0;
    int other = 0;
    for (int round = 0; round < 20'000; ++round) {
        std::string bytes =
            R"({"a":[1,-20,"x\u001f\"\\n",{}],"b":{"c":true,"d":false},"e":"","f":9007199254740991})";
        for (std::size_t change = below(3) + 1; change > 0; --change) {
            const std::size_t at = below(bytes.size() + 1);
            bytes.replace(at, below(3), below(4) == 0 ? "" : pieces[below(pieces.size())]);
        }
        const auto value = parseCanonical(bytes);
        ASSERT_EQ(value.ok(), isCanonicalElsewhere(bytes)) << bytes;
        ++(value.ok() ? canonical : other);
        if (!value) continue;
        ASSERT_EQ(bytesOf(*value), bytes);
    }
    EXPECT_GT(canonical, 1000);
    EXPECT_GT(other, 1000);
}

}  // namespace
}  // namespace model
