// SPDX-License-Identifier: Apache-2.0
// measure: the shape of what it prints; how fast a machine is, no test decides.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

class MeasureOne : public testing::TestWithParam<const char*> {};

TEST_P(MeasureOne, PrintsItsFormat) {
    const Finished finished = runCli({"measure", "--json", "--only", GetParam()});
    ASSERT_EQ(finished.exitCode, 0) << finished.error;
    const Json document = Json::parse(finished.output);
    EXPECT_EQ(document["format"], "fettlemark-measure/1");
    ASSERT_FALSE(document["results"].empty());
    for (const Json& result : document["results"]) {
        EXPECT_THAT(result["name"].get<std::string>(), testing::StartsWith(GetParam()));
        EXPECT_GT(result["value"].get<double>(), 0);
        EXPECT_GT(result["size"].get<int>(), 0);
        EXPECT_TRUE(result["unit"].is_string());
        EXPECT_TRUE(result.contains("peak_mb"));
        if (result["yardstick"].is_null()) {
            EXPECT_TRUE(result["ratio"].is_null());
        } else {
            EXPECT_NEAR(result["ratio"].get<double>(),
                        result["value"].get<double>() / result["yardstick"].get<double>(), 0.01);
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Measure, MeasureOne,
                         testing::Values("frame-spread", "size-reading", "diagram"));

TEST(Measure, RefusesANameThatItDoesNotHave) {
    const Finished finished = runCli({"measure", "--only", "frame-round"});
    EXPECT_EQ(finished.exitCode, 2);
    EXPECT_EQ(finished.output, "");
    EXPECT_THAT(finished.error, testing::HasSubstr("frame-spread"));
}

}  // namespace
}  // namespace app
