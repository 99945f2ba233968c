// SPDX-License-Identifier: Apache-2.0
#include "base/decimal.h"

#include <gtest/gtest.h>
#include <string>

namespace model {
namespace {

std::int64_t valueOf(std::string_view text) {
    const auto result = parseMillionths(text);
    EXPECT_TRUE(result.ok()) << text << ": " << (result.ok() ? "" : result.error().message());
    return result.ok() ? result.value() : -1;
}

TEST(Decimal, AddsTenthsExactly) {
    EXPECT_EQ(valueOf("1.1") + valueOf("2.2"), valueOf("3.3"));
}

TEST(Decimal, ResolvesExponentsAndTrailingZerosBeforeCountingDecimals) {
    EXPECT_EQ(valueOf("1.50000000000"), 1'500'000);
    EXPECT_EQ(valueOf("15e-1"), 1'500'000);
    EXPECT_EQ(valueOf("0.0000015e6"), 1'500'000);
    EXPECT_EQ(valueOf("1e6"), 1'000'000'000'000);
    EXPECT_EQ(valueOf("0.000001"), 1);
    EXPECT_EQ(valueOf("-0"), 0);
    EXPECT_EQ(valueOf("0e999999999999999999999"), 0);
    EXPECT_EQ(valueOf("1000000e-6"), 1'000'000);
}

TEST(Decimal, RefusesWhatIsNoNumberOrOutOfRange) {
    for (const char* text :
         {"",    "-",         ".5",   "5.",  "01",   "+1", "1e",    "1e+",
          "NaN", "Infinity",  "1,5",  "0x1", " 1",   "1 ", "1e400", "1000000.000001",
          "1e7", "0.0000001", "1e-7", "--1", "1.2.3"})
        EXPECT_FALSE(parseMillionths(text).ok()) << text;
}

TEST(Decimal, ReadsAHugeTextInLinearTime) {
    EXPECT_FALSE(parseMillionths("1" + std::string(5'000'000, '0')).ok());
    EXPECT_EQ(valueOf("1." + std::string(5'000'000, '0')), kMillion);
}

TEST(Decimal, PrintsTheShortestText) {
    EXPECT_EQ(formatMillionths(3'300'000), "3.3");
    EXPECT_EQ(formatMillionths(-500'000), "-0.5");
    EXPECT_EQ(formatMillionths(std::int64_t{0}), "0");
    EXPECT_EQ(formatMillionths(1), "0.000001");
    EXPECT_EQ(formatMillionths(40'000'000), "40");
}

TEST(Rational, ComparesThirdsWithoutDividing) {
    const Rational third(40'000'000, 3);  // a third of 40 mm
    EXPECT_GT(third, Rational(13'333'333));
    EXPECT_LT(third, Rational(13'333'334));
    EXPECT_EQ(Rational(39'000'000, 3), Rational(13'000'000));
    EXPECT_EQ(formatMillionths(third), "13.333333");
}

}  // namespace
}  // namespace model
