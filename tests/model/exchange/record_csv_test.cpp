// SPDX-License-Identifier: Apache-2.0
// A record as tables for a spreadsheet.
#include "exchange/record_csv.h"

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

namespace model {
namespace {

constexpr char kSheet[] = R"({"format": "fettlemark-sheet/1", "examinations": [
  {"zone": "Z1", "method": "MT", "indications": [
    {"id": "1", "x_mm": 10.125, "y_mm": -2, "length_mm": 3.000001, "width_mm": 0.5},
    {"id": "a,\"b\"\r\nc", "x_mm": 1, "y_mm": 2, "length_mm": 3, "class": "linear",
     "relevance": "false", "reason": "Zunder, \u00e9t\u00e9"}]},
  {"zone": "Z2", "method": "PT", "indications": []}]})";

constexpr char kVerdict[] = R"({"format": "fettlemark-verdict/1", "examinations": [
  {"zone": "Z1", "method": "MT", "stage": "as cast", "repair_cycle": 0, "repeat": 1,
   "table": {"id": "EN 1369:2012", "revision": 1},
   "indications": [
     {"id": "1", "class": "linear", "considered": true, "group": "A1"},
     {"id": "a,\"b\"\r\nc", "class": null, "considered": false, "group": null}],
   "checks": [
     {"rule": "cumulative length", "class": "linear and aligned", "key": "linear", "level": "LM 4",
      "locator": "Table 2", "grade": "M", "measured": 19.5, "comparison": "at most", "limit": 13.333333,
      "limit_exact": "40/3", "unit": "mm", "passes": false, "members": ["A1", "Z2/4"], "frame": null},
     {"rule": "count", "measured": null, "limit": 1500000, "passes": null, "members": [],
      "reason": "a cell is unknown"}]},
  {"zone": "Z2", "method": "PT", "stage": "as cast", "repair_cycle": 2, "repeat": 0,
   "table": {"id": "T", "revision": 2}, "indications": [], "checks": []}]})";

TEST(RecordCsv, ListsEveryIndicationWithWhatBecameOfIt) {
    const auto csv = indicationsCsv(kSheet, kVerdict);
    ASSERT_TRUE(csv.ok()) << csv.error().message();
    EXPECT_EQ(*csv,
              "zone,method,stage,repair_cycle,repeat,id,x_mm,y_mm,length_mm,width_mm,angle_deg,"
              "area_mm2,kind,class,removed_mm,relevance,reason,judged_class,considered,group,"
              "depth_mm,fbh_mm,through_wall_mm,not_measurable,back_wall_loss_db,"
              "back_wall_loss_explained,over_reference_db,wall_mm\r\n"
              "Z1,MT,as cast,0,1,1,10.125,-2,3.000001,0.5,,,,,,,,linear,true,A1,,,,,,,,\r\n"
              "Z1,MT,as cast,0,1,\"a,\"\"b\"\"\r\nc\",1,2,3,,,,,linear,,false,"
              "\"Zunder, \xc3\xa9t\xc3\xa9\",,false,,,,,,,,,\r\n");
}

TEST(RecordCsv, ListsWhatUltrasonicIndicationsHaveBehindTheOthers) {
    const auto csv = indicationsCsv(
        R"({"examinations": [{"indications": [
             {"id": "u1", "x_mm": 120, "y_mm": 80, "depth_mm": 45, "fbh_mm": 2.7, "length_mm": 22,
              "through_wall_mm": 4, "back_wall_loss_db": 6, "back_wall_loss_explained": "rib",
              "over_reference_db": -2.5, "wall_mm": 60, "not_measurable": ["width", "length"],
              "kind": "planar"}]}]})",
        R"({"examinations": [{"zone": "Z1", "method": "UT", "stage": "as cast", "repair_cycle": 0,
             "repeat": 0, "indications": [{"id": "u1", "class": "planar", "considered": true}]}]})");
    ASSERT_TRUE(csv.ok()) << csv.error().message();
    EXPECT_THAT(*csv, testing::EndsWith("\r\nZ1,UT,as cast,0,0,u1,120,80,22,,,,planar,,,,,planar,"
                                        "true,,45,2.7,4,width length,6,rib,-2.5,60\r\n"));
}

constexpr char kReadings[] = R"({"format": "fettlemark-readings/1", "examinations": [
  {"zone": "Z1", "method": "UT", "stage": "as cast", "repair_cycle": 0, "repeat": 1,
   "settings": [{"unit": "in", "name": "S24", "diameter": "1 3/8", "second_echo_gain": "41,5"}],
   "readings": [
     {"typed": {"unit": "mm", "id": "u1", "x": "1,5", "sound_path": "70", "reason": "a, b"},
      "size": {"format": "fettlemark-size/1", "wavelength_mm": 2.96, "leg": 1, "fbh_mm": 9.25,
               "fbh_method": "far field", "measurable": {"along": true}, "notes": ["one", "two"]}},
     {"typed": {"unit": "mm", "id": "u2"}, "size": null}]}]})";

TEST(RecordCsv, ListsEverySetting) {
    const auto csv = settingsCsv(kReadings);
    ASSERT_TRUE(csv.ok()) << csv.error().message();
    EXPECT_THAT(*csv,
                testing::StartsWith("zone,method,stage,repair_cycle,repeat,name,unit,probe,"));
    EXPECT_THAT(*csv, testing::EndsWith(",second_echo_number,second_echo_gain\r\n"
                                        "Z1,UT,as cast,0,1,S24,in,,,,1 3/8" +
                                        std::string(27, ',') + "\"41,5\"\r\n"));
}

TEST(RecordCsv, ListsEveryReadingWithWhatItGave) {
    const auto csv = readingsCsv(kReadings);
    ASSERT_TRUE(csv.ok()) << csv.error().message();
    EXPECT_THAT(*csv, testing::StartsWith("zone,method,stage,repair_cycle,repeat,id,unit,x,y,"));
    EXPECT_THAT(*csv,
                testing::EndsWith(",reason,computed_wavelength_mm,computed_near_field_mm,"
                                  "computed_beam_width_mm,computed_depth_mm,"
                                  "computed_surface_distance_mm,computed_leg,computed_echo_db,"
                                  "computed_fbh_mm,computed_fbh_method,computed_length_mm,"
                                  "computed_width_mm,computed_far_field_fbh_mm,computed_notes\r\n"
                                  "Z1,UT,as cast,0,1,u1,mm,\"1,5\",,,,70" +
                                  std::string(20, ',') +
                                  "\"a, b\",2.96,,,,,1,,9.25,far field,,,,\"one\ntwo\"\r\n"
                                  "Z1,UT,as cast,0,1,u2,mm" +
                                  std::string(38, ',') + "\r\n"));
    for (const char* other : {"", "{}", R"({"examinations": [{}]})"}) {
        EXPECT_FALSE(readingsCsv(other).ok()) << other;
        EXPECT_FALSE(settingsCsv(other).ok()) << other;
    }
}

TEST(RecordCsv, ListsEveryCheck) {
    const auto csv = checksCsv(kVerdict);
    ASSERT_TRUE(csv.ok()) << csv.error().message();
    EXPECT_EQ(
        *csv,
        "zone,method,stage,repair_cycle,repeat,table,table_revision,rule,class,key,level,"
        "locator,grade,measured,comparison,limit,limit_exact,unit,passes,members,reason,note\r\n"
        "Z1,MT,as cast,0,1,EN 1369:2012,1,cumulative length,linear and aligned,linear,LM 4,"
        "Table 2,M,19.5,at most,13.333333,40/3,mm,false,A1 Z2/4,,\r\n"
        "Z1,MT,as cast,0,1,EN 1369:2012,1,count,,,,,,,,1500000,,,,,a cell is unknown,\r\n");
}

TEST(RecordCsv, RefusesWhatIsNoRecord) {
    const std::string sheet = kSheet;
    for (const char* other : {"", "{", "[]", "{}", R"({"examinations": 1})",
                              R"({"examinations": []})", R"({"examinations": [{}, {}]})"}) {
        const auto indications = indicationsCsv(sheet, other);
        ASSERT_FALSE(indications.ok()) << other;
        EXPECT_EQ(indications.error().kind, ErrorKind::Damaged);
    }
    for (const char* other : {"", "{", "[]", "{}", R"({"examinations": [{}]})"})
        EXPECT_FALSE(checksCsv(other).ok()) << other;
}

// Python's csv module reads the fields back.
TEST(RecordCsv, OracleFieldsAreReadBackByAnotherReader) {
    const auto csv = indicationsCsv(kSheet, kVerdict);
    ASSERT_TRUE(csv.ok());
    const std::string path = testing::TempDir() + "record_csv_" + std::to_string(::getpid());
    std::ofstream(path, std::ios::binary) << *csv;
    const std::string command =
        "python3 -c 'import csv,sys\n"
        "rows=list(csv.DictReader(open(sys.argv[1],newline=\"\",encoding=\"utf-8\"),strict=True))\n"
        "print(len(rows),ascii(rows[1][\"id\"]),ascii(rows[1][\"reason\"]),rows[1][\"judged_"
        "class\"]"
        "==\"\",len(rows[1]),rows[0][\"length_mm\"])' " +
        path;
    FILE* pipe = ::popen(command.c_str(), "r");
    ASSERT_NE(pipe, nullptr);
    std::array<char, 512> printed{};
    const std::size_t size = std::fread(printed.data(), 1, printed.size() - 1, pipe);
    EXPECT_EQ(::pclose(pipe), 0);
    std::filesystem::remove(path);
    EXPECT_EQ(std::string(printed.data(), size),
              "2 'a,\"b\"\\r\\nc' 'Zunder, \\xe9t\\xe9' True 28 3.000001\n");
}

}  // namespace
}  // namespace model
