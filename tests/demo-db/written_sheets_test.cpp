// SPDX-License-Identifier: Apache-2.0
// A casting's sheet, written and read back, is judged as before: what is kept of a presentation
// can be judged again.
#include <gtest/gtest.h>

#include "exchange/json_document.h"
#include "exchange/json_text.h"
#include "exchange/sheet_json.h"
#include "exchange/verdict_json.h"
#include "judge/judge.h"
#include "scenario_castings.h"

namespace {

TEST(WrittenSheets, OfEveryCastingAreJudgedAsTheCasting) {
    const auto tables = model::TableSet::shipped();
    ASSERT_TRUE(tables) << tables.error().message();
    const std::vector<model::CastingFile> castings = scenarioCastings();
    ASSERT_FALSE(castings.empty());
    for (const model::CastingFile& casting : castings) {
        const std::string& serial = casting.casting.serial;
        const model::Sheet sheet = scenarioSheet(serial);
        const std::string written = model::writeJson(model::sheetToJson(sheet));
        const auto document = model::parseJson(written, serial);
        ASSERT_TRUE(document) << document.error().message();
        const auto read = model::sheetFromJson(*document, serial);
        ASSERT_TRUE(read) << read.error().message();
        EXPECT_EQ(model::writeJson(model::sheetToJson(*read)), written) << serial;
        const auto before = model::judge(sheet, *tables);
        const auto after = model::judge(*read, *tables);
        ASSERT_TRUE(before) << before.error().message();
        ASSERT_TRUE(after) << after.error().message();
        EXPECT_EQ(model::writeJson(model::verdictToJson(*after)),
                  model::writeJson(model::verdictToJson(*before)))
            << serial;
    }
}

}  // namespace
