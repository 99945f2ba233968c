// SPDX-License-Identifier: Apache-2.0
#include "exchange/json_text.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "exchange/json_document.h"

namespace model {
namespace {

JsonValue sample() {
    return JsonValue::object({{"a", JsonValue::number(3'300'000)},
                              {"none", JsonValue()},
                              {"words", JsonValue::strings({"x", "y"})},
                              {"list", JsonValue::array({JsonValue::object({})})},
                              {"empty", JsonValue::array({})}});
}

TEST(JsonText, IsIndentedAndKeepsTheOrderOfMembers) {
    EXPECT_EQ(writeJson(sample()),
              "{\n"
              "  \"a\": 3.3,\n"
              "  \"none\": null,\n"
              "  \"words\": [\"x\", \"y\"],\n"
              "  \"list\": [\n"
              "    {}\n"
              "  ],\n"
              "  \"empty\": []\n"
              "}\n");
}

// The parser library as an independent reader of what was written.
TEST(JsonText, IsReadTheSameByAnotherParser) {
    const std::string awkward = "\"\\/\b\f\n\r\t\x01\x1f\x7f \xC3\xA4 \xF0\x9D\x84\x9E";
    const auto read = nlohmann::json::parse(writeJson(JsonValue::array(
        {JsonValue::string(awkward), JsonValue::number(-1), JsonValue::boolean(true), sample()})));
    EXPECT_EQ(read[0].get<std::string>(), awkward);
    EXPECT_DOUBLE_EQ(read[1].get<double>(), -0.000001);
    EXPECT_TRUE(read[2].get<bool>());
    EXPECT_TRUE(read[3]["none"].is_null());
    EXPECT_EQ(read[3]["words"], (nlohmann::json{"x", "y"}));
}

TEST(JsonText, ReplacesBytesThatAreNoUtf8) {
    EXPECT_EQ(writeJson(JsonValue::string("a\xE4z")), "\"a\xEF\xBF\xBDz\"\n");
}

}  // namespace
}  // namespace model
