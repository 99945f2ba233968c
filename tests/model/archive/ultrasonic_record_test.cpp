// SPDX-License-Identifier: Apache-2.0
// An ultrasonic examination on the way from draft to certificate.
#include <nlohmann/json.hpp>

#include "archive/rejudge.h"
#include "ultrasonic_fixture.h"

namespace model {
namespace {

using testing::IsEmpty;

class UltrasonicRecords : public UltrasonicLifecycleTest {
protected:
    void SetUp() override { ultrasonicOrder(); }
};

TEST_F(UltrasonicRecords, HoldSettingsReadingsAndWhatEachGave) {
    const std::int64_t record = sign(save(ultrasonicDraft()));
    const auto bytes = signedRecordContent(*archive_, record);
    ASSERT_THAT(bytes, Succeeds());
    // Read by another JSON reader.
    const auto content = nlohmann::json::parse(*bytes);
    EXPECT_EQ(content["header"]["ultrasonic"]["dead_zone_nm"], 10'000'000);
    EXPECT_EQ(content["header"]["ultrasonic"]["testability"]["smallest_fbh_nm"], 3'000'000);
    EXPECT_EQ(content["header"]["ultrasonic"]["directions"][1], "from inside, straight");
    EXPECT_EQ(content["settings"][0]["probe"], "S10-4, number 8");
    EXPECT_EQ(content["settings"][0]["reference_path"], "60");
    EXPECT_EQ(content["reflectors"][0]["sound_path"], "40");
    EXPECT_EQ(content["reflectors"][1]["fbh"], "1.5");
    ASSERT_EQ(content["sizes"].size(), 1U);
    const auto& size = content["sizes"][0];
    EXPECT_EQ(size["reflector"], 1);
    EXPECT_EQ(size["depth_mm"], "40");
    EXPECT_EQ(size["fbh_method"], "distance-gain-size");
    // By hand: 5600 m/s at 4 MHz are 1.4 mm; 22 dB below the back wall.
    EXPECT_EQ(size["wavelength_mm"], "1.4");
    EXPECT_EQ(size["echo_db"], "-22");
    EXPECT_EQ(content["word"], "acceptable");
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(UltrasonicRecords, ArePresentedReleasedAndJudgedAgainAlike) {
    sign(save(ultrasonicDraft()));
    const auto tables = archive_->tables();
    ASSERT_THAT(attest(*archive_, tables->find(kUltrasonicTable)->digest, "copy 1", qaManager_),
                Succeeds());
    const std::int64_t number = present();
    ASSERT_THAT(release(number, qaManager_), Succeeds());
    EXPECT_EQ(archive_->certificate(number)->facts.verdict, Word::Acceptable);
    const auto sheet = nlohmann::json::parse(*presentedSheet(*archive_, number));
    const auto& indications = sheet["examinations"][0]["indications"];
    ASSERT_EQ(indications.size(), 2U);
    EXPECT_EQ(indications[0]["depth_mm"], 40);
    EXPECT_EQ(indications[1]["fbh_mm"], 1.5);
    const auto again = rejudge(*archive_);
    ASSERT_THAT(again, Succeeds());
    EXPECT_EQ(again->count, 1);
    for (const auto& other : again->otherwise) ADD_FAILURE() << other.difference;
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(UltrasonicRecords, RefuseARowThatCannotBeSized) {
    ExaminationDraft draft = ultrasonicDraft();
    draft.reflectors[0].screen = "120";
    const std::int64_t id = save(draft);
    const auto record = signRecord(*archive_, id, 1, std::nullopt, inspector_);
    ASSERT_THAT(record, FailsWith(ErrorKind::Input));
    EXPECT_THAT(record.error().message(), testing::HasSubstr("row 1 (u1), echo.screen_percent"));
}

}  // namespace
}  // namespace model
