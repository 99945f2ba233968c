// SPDX-License-Identifier: Apache-2.0
#include "quantity/entry.h"

#include <gtest/gtest.h>

namespace model {
namespace {

// Source: 1 in = 25.4 mm exactly (international yard and pound agreement, 1959), so
// 1/64 in = 0.396875 mm.
TEST(LengthEntry, ConvertsInchExactly) {
    EXPECT_EQ(parseLength("1", LengthUnit::Inch)->value.millionths(), 25'400'000);
    EXPECT_EQ(parseLength("1/64", LengthUnit::Inch)->value.millionths(), 396'875);
    EXPECT_EQ(parseLength("1 3/8", LengthUnit::Inch)->value.millionths(), 34'925'000);
    EXPECT_EQ(parseLength(".0625", LengthUnit::Inch)->value.millionths(), 1'587'500);
    EXPECT_EQ(parseLength("0.00001", LengthUnit::Inch)->value.millionths(), 254);
}

TEST(LengthEntry, KeepsTheTextAsTyped) {
    const auto entry = parseLength(" 2,50 ", LengthUnit::Millimetre);
    ASSERT_TRUE(entry.ok());
    EXPECT_EQ(entry->text, "2,50");
    EXPECT_EQ(entry->value, nanometres(2'500'000));
}

TEST(LengthEntry, RefusesWhatItCannotHoldExactly) {
    for (const char* text : {"1/3", "0.000001", "1/0", "1//2", "a/2", "1 2",
                             "99999999999999999999/1", "", "1e3", "1000000"})
        EXPECT_FALSE(parseLength(text, LengthUnit::Inch).ok()) << text;
    for (const char* text : {"1/2", "0.0000001", "1000000.1", "nan", "1.2.3", "-", "1,2,3"})
        EXPECT_FALSE(parseLength(text, LengthUnit::Millimetre).ok()) << text;
}

TEST(LengthEntry, MarksAnInchValueThatIsNotExact) {
    EXPECT_EQ(formatLength(nanometres(34'925'000), LengthUnit::Inch), "1.375");
    EXPECT_EQ(formatLength(millimetres(10), LengthUnit::Inch), "~0.393701");
    EXPECT_EQ(formatLength(nanometres(2'500'000), LengthUnit::Millimetre), "2.5");
}

template <class A, class B>
concept Addable = requires(A a, B b) {
    a + b;
};
static_assert(Addable<Length, Length>);
static_assert(!Addable<Length, Area>);
static_assert(!Addable<EchoHeight, EchoHeight>);
static_assert(Addable<EchoHeight, GainStep>);

}  // namespace
}  // namespace model
