// SPDX-License-Identifier: Apache-2.0
#include "trust/key_secret.h"

#include <gtest/gtest.h>
#include <type_traits>
#include <utility>

#include "trust/key_signing.h"

namespace model {
namespace {

static_assert(!std::is_copy_constructible_v<SecretBytes>);
static_assert(!std::is_copy_assignable_v<SecretBytes>);
static_assert(!std::is_copy_constructible_v<SigningKey>);
static_assert(!std::is_copy_assignable_v<SigningKey>);

TEST(SecretBytes, TakingWipesTheSource) {
    std::string typed = "a passphrase longer than a short string's own buffer";
    const char* where = typed.data();
    const std::size_t size = typed.size();
    const SecretBytes taken = SecretBytes::takeFrom(typed);
    EXPECT_EQ(taken.view(), "a passphrase longer than a short string's own buffer");
    EXPECT_TRUE(typed.empty());
    // The string keeps its memory after clear(); all but the end mark's place is looked at.
    for (std::size_t i = 0; i < size; ++i) EXPECT_EQ(where[i], '\0');
}

TEST(SecretBytes, MovingLeavesNothingBehind) {
    SecretBytes first("one two three");
    SecretBytes second(std::move(first));
    EXPECT_EQ(second.view(), "one two three");
    EXPECT_TRUE(
        first.view().empty());  // NOLINT(bugprone-use-after-move,clang-analyzer-cplusplus.Move)
    SecretBytes third("other");
    third = std::move(second);
    EXPECT_EQ(third.view(), "one two three");
    EXPECT_TRUE(
        second.view().empty());  // NOLINT(bugprone-use-after-move,clang-analyzer-cplusplus.Move)
}

}  // namespace
}  // namespace model
