// SPDX-License-Identifier: Apache-2.0
// An inch is 25.4 mm exactly (international yard and pound agreement, 1959; NIST SP 811, B.8).
#include "limits/units.h"

#include <gtest/gtest.h>

namespace model {
namespace {

std::optional<std::int64_t> own(std::int64_t millionths, std::string_view unit) {
    const Unit* found = unitFrom(unit);
    if (found == nullptr) {
        ADD_FAILURE() << unit;
        return std::nullopt;
    }
    return inOwnUnit(millionths, *found);
}

TEST(Units, InchesAreConvertedExactly) {
    EXPECT_EQ(own(1'000'000, "in"), 25'400'000);
    EXPECT_EQ(own(15'625, "in"), 396'875);          // 1/64 in = 0.396 875 mm
    EXPECT_EQ(own(800'000, "in2"), 516'128'000);    // 0.8 in2 = 516.128 mm2
    EXPECT_EQ(own(1'000'000, "in2"), 645'160'000);  // 25.4 x 25.4
    EXPECT_EQ(own(150'000, "in2"), 96'774'000);
    EXPECT_EQ(own(1'000'000, "cm2"), 100'000'000);
    EXPECT_EQ(own(7, "mm"), 7);
    EXPECT_EQ(own(7, "mm2"), 7);
}

TEST(Units, WhatIsNotExactOrTooLargeIsNotConverted) {
    EXPECT_EQ(own(1, "in"), std::nullopt);   // 25.4 nm
    EXPECT_EQ(own(5, "in"), 127);            // 127 nm
    EXPECT_EQ(own(1, "in2"), std::nullopt);  // 645.16 millionths of a mm2
    EXPECT_EQ(own(25, "in2"), 16'129);
    EXPECT_EQ(own(1'000'000'000'000, "in"), std::nullopt);
    EXPECT_EQ(own(10'000'000'000, "cm2"), 1'000'000'000'000);
    EXPECT_EQ(own(10'000'000'001, "cm2"), std::nullopt);
}

TEST(Units, OtherWordsAreNone) {
    for (const char* word : {"", "inch", "IN", "m", "cm", "dB", "mm3"})
        EXPECT_EQ(unitFrom(word), nullptr) << word;
}

}  // namespace
}  // namespace model
