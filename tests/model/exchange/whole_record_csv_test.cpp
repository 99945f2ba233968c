// SPDX-License-Identifier: Apache-2.0
// A whole record as tables, and what was signed as JSON.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "exchange/canonical_json.h"
#include "exchange/json_text.h"
#include "exchange/record_csv.h"

namespace model {
namespace {

constexpr char kRecord[] = R"({"format": "fettlemark-casting-record/1",
  "records": [
    {"id": 17, "revision": 2, "word": "not acceptable", "content_sha256": "ab",
     "recorded": {"person": "P-2", "name": "Ilse", "time": "2026-11-25T09:30:00Z"},
     "invalid": {"reason": "lamp, failed"},
     "content": {
       "header": {"zone": "Z1", "method": "MT", "stage": "as cast", "repair_cycle": 1,
                  "repeat": 0, "examined_by": "Ilse", "examined_on": "2026-11-24",
                  "procedure": "QM-MT-04", "remarks": "two\r\nlines"},
       "judged": {"word": "acceptable", "table": "EN 1369:2012", "table_revision": 1},
       "rejection": "rough", "inspector": {"id": "P-2", "name": "Ilse", "level": 2},
       "conditions": {"place": "Bay 2",
                      "measurements": [{"parameter": "UV-A", "value": "12"},
                                       {"parameter": "white light", "value": "8"}]},
       "findings": [{"id": "MT-10", "reason": "too weak"}],
       "used": {"equipment": [{"id": "Y-1", "kind": "yoke"}]}}}],
  "dossier": {"nonconformances": [{"number": "N-1", "finding": "crack"}]}})";

TEST(WholeRecordCsv, ListsEveryRecord) {
    const auto csv = recordsCsv(kRecord);
    ASSERT_TRUE(csv.ok()) << csv.error().message();
    EXPECT_EQ(*csv,
              "record,revision,zone,method,stage,repair_cycle,repeat,word,judged_word,table,"
              "table_revision,examined_by,examined_on,procedure,signed_by,signed_name,signed_level,"
              "signed_at,rejection,declared_invalid,given_back,remarks,content_sha256\r\n"
              "17,2,Z1,MT,as cast,1,0,not acceptable,acceptable,EN 1369:2012,1,Ilse,2026-11-24,"
              "QM-MT-04,P-2,Ilse,2,2026-11-25T09:30:00Z,rough,\"lamp, failed\",,\"two\r\nlines\","
              "ab\r\n");
}

TEST(WholeRecordCsv, ListsConditionsWithWhatWasFoundAboutThem) {
    const auto csv = conditionsCsv(kRecord);
    ASSERT_TRUE(csv.ok()) << csv.error().message();
    EXPECT_EQ(*csv,
              "record,zone,method,stage,repair_cycle,repeat,part,number,field,text\r\n"
              "17,Z1,MT,as cast,1,0,conditions,,place,Bay 2\r\n"
              "17,Z1,MT,as cast,1,0,measurements,1,parameter,UV-A\r\n"
              "17,Z1,MT,as cast,1,0,measurements,1,value,12\r\n"
              "17,Z1,MT,as cast,1,0,measurements,2,parameter,white light\r\n"
              "17,Z1,MT,as cast,1,0,measurements,2,value,8\r\n"
              "17,Z1,MT,as cast,1,0,findings,1,id,MT-10\r\n"
              "17,Z1,MT,as cast,1,0,findings,1,reason,too weak\r\n");
}

TEST(WholeRecordCsv, ListsTheCastingsEntriesAndWhatWasUsed) {
    const auto csv = registersCsv(kRecord);
    ASSERT_TRUE(csv.ok()) << csv.error().message();
    EXPECT_EQ(*csv,
              "record,register,number,field,text\r\n"
              ",nonconformances,1,finding,crack\r\n"
              ",nonconformances,1,number,N-1\r\n"
              "17,equipment,1,id,Y-1\r\n"
              "17,equipment,1,kind,yoke\r\n");
}

TEST(WholeRecordCsv, RefusesWhatIsNoRecord) {
    for (const char* other : {"", "{", "[]", "{}", R"({"records": [{}]})"}) {
        EXPECT_FALSE(recordsCsv(other).ok()) << other;
        EXPECT_FALSE(conditionsCsv(other).ok()) << other;
        EXPECT_FALSE(registersCsv(other).ok()) << other;
    }
}

// SI: 1 mm is a million nanometres.
TEST(CanonicalJson, OracleGivesQuantitiesInTheirUnits) {
    Canonical::Object place;
    place["x_nm"] = -2'500'000;
    place["angle_millionth_deg"] = 30'000'000;
    Canonical::Object object;
    object["surface"] = std::move(place);
    object["area_millionth_mm2"] = std::int64_t{400'250'000};
    object["signal_to_noise_millionth_db"] = 6'000'000;
    object["version"] = 3;
    object["seen"] = true;
    object["length_nm"] = "as typed";
    const Canonical value(std::move(object));
    EXPECT_EQ(writeJson(jsonInUnits(value)),
              "{\n  \"area_mm2\": 400.25,\n  \"length_nm\": \"as typed\",\n  \"seen\": true,\n"
              "  \"signal_to_noise_db\": 6,\n  \"surface\": {\n    \"angle_deg\": 30,\n"
              "    \"x_mm\": -2.5\n  },\n  \"version\": 3\n}\n");
    EXPECT_EQ(jsonOf(value).find("surface")->find("x_nm")->millionths(), -2'500'000'000'000);
}

TEST(CanonicalJson, ListsADossierUnderThePluralsOfItsRegisters) {
    Dossier dossier;
    EXPECT_EQ(writeJson(dossierToJson(dossier)), "{}\n");
    dossier.weldRepairs.emplace_back().number = "W-1";
    EXPECT_EQ(dossierToJson(dossier).find("weld_repairs")->elements()[0].find("number")->string(),
              "W-1");
}

}  // namespace
}  // namespace model
