// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "limits/table_set.h"

namespace model {
namespace {

TEST(ShippedTables, AllParse) {
    const auto set = TableSet::shipped();
    ASSERT_TRUE(set.ok()) << set.error().message();
    EXPECT_NE(set->find("EN 1369:2012"), nullptr);
}

}  // namespace
}  // namespace model
