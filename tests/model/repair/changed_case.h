// SPDX-License-Identifier: Apache-2.0
// One thing of a finished repair is changed, and the case has to stand open for just that.
#pragma once

#include <functional>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "repaired/repaired_casting.h"

namespace model::test {

/// The case N-1, of a file that outlives it.
inline RepairCase caseOf(const CastingFile& file, std::string_view today = {}) {
    const auto cases = repairCasesOf(file, repaired::judged(file), today);
    EXPECT_FALSE(cases.empty());
    return cases.empty() ? RepairCase{} : cases.front();
}

/// What is open, a line each.
inline std::string openOf(const RepairCase& c) {
    std::string text;
    for (const Error& error : c.open) text += error.message() + "\n";
    return text;
}

struct Changed {
    const char* what;  ///< for messages
    std::function<void(CastingFile&)> change;
    std::string_view state;
    const char* open;  ///< part of what is open
};

/// Every change leaves the case of `whole` open, in its state and for its reason.
inline void expectOpen(const CastingFile& whole, const std::vector<Changed>& changes) {
    ASSERT_TRUE(caseOf(whole).closed) << openOf(caseOf(whole));
    for (const Changed& changed : changes) {
        CastingFile file = whole;
        changed.change(file);
        const RepairCase c = caseOf(file);
        EXPECT_FALSE(c.closed) << changed.what;
        EXPECT_EQ(c.state, changed.state) << changed.what << "\n" << openOf(c);
        EXPECT_THAT(openOf(c), testing::HasSubstr(changed.open)) << changed.what;
    }
}

}  // namespace model::test
