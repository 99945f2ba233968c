// SPDX-License-Identifier: Apache-2.0
#include "exchange/reading_json.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "exchange/json_document.h"

namespace model {
namespace {

using Json = nlohmann::ordered_json;
using testing::HasSubstr;

/// A reading with every field of the format.
Json fullReading() {
    return Json::parse(R"({
        "format": "fettlemark-reading/1",
        "probe": {"kind": "angle", "element": "rectangular",
                  "diameter_mm": 24, "width_mm": 8.5, "length_mm": 9,
                  "frequency_mhz": 4.05, "angle_deg": 45.2, "front_mm": 12},
        "material": {"velocity_m_s": 3080, "attenuation_db_per_m": 7.25},
        "part": {"thickness_mm": 60, "surface": "outer", "radius_mm": 500},
        "reference": {"kind": "side-drilled hole", "on": "block", "velocity_m_s": 3255,
                      "attenuation_db_per_m": 0.5, "sound_path_mm": 100, "diameter_mm": 3,
                      "gain_db": 30.5, "screen_percent": 80},
        "transfer_db": -2.5,
        "echo": {"sound_path_mm": 42.000001, "gain_db": 1.1, "screen_percent": 65},
        "movement": {"drop_db": 20, "along_mm": 35, "across_mm": 12.5}})");
}

Result<Reading> readText(const std::string& text) {
    const Result<JsonValue> document = parseJson(text, "r.json");
    if (!document) return document.error();
    return readingFromJson(*document, "r.json");
}

Reading readingOf(const Json& json) {
    const Result<Reading> reading = readText(json.dump());
    EXPECT_TRUE(reading.ok()) << (reading.ok() ? "" : reading.error().message());
    return reading.ok() ? *reading : Reading{};
}

std::string refused(const std::string& text) {
    const Result<Reading> reading = readText(text);
    EXPECT_FALSE(reading.ok()) << text;
    if (reading.ok()) return "";
    EXPECT_EQ(reading.error().kind, ErrorKind::Input);
    return reading.error().message();
}

TEST(ReadingJson, ReadsEveryField) {
    const Reading reading = readingOf(fullReading());
    EXPECT_EQ(reading.probe.kind, ProbeKind::AngleBeam);
    EXPECT_EQ(reading.probe.element, ElementShape::Rectangular);
    EXPECT_EQ(reading.probe.diameterMm, 24.0);
    EXPECT_EQ(reading.probe.widthMm, 8.5);
    EXPECT_EQ(reading.probe.lengthMm, 9.0);
    EXPECT_EQ(reading.probe.frequencyMhz, 4.05);
    EXPECT_EQ(reading.probe.angleDeg, 45.2);
    EXPECT_EQ(reading.probe.frontMm, 12.0);
    EXPECT_EQ(reading.medium.velocityMPerS, 3080.0);
    EXPECT_EQ(reading.medium.attenuationDbPerM, 7.25);
    EXPECT_EQ(reading.part.thicknessMm, 60.0);
    EXPECT_EQ(reading.part.surface, ScanSurface::Outer);
    EXPECT_EQ(reading.part.radiusMm, 500.0);
    EXPECT_EQ(reading.reference.kind, ReferenceKind::SideDrilledHole);
    EXPECT_EQ(reading.reference.on, ReferencePlace::Block);
    EXPECT_EQ(reading.reference.medium.velocityMPerS, 3255.0);
    EXPECT_EQ(reading.reference.medium.attenuationDbPerM, 0.5);
    EXPECT_EQ(reading.reference.diameterMm, 3.0);
    EXPECT_EQ(reading.reference.echo.soundPathMm, 100.0);
    EXPECT_EQ(reading.reference.echo.gainDb, 30.5);
    EXPECT_EQ(reading.reference.echo.screenPercent, 80.0);
    EXPECT_EQ(reading.transferDb, -2.5);
    EXPECT_EQ(reading.echo.soundPathMm, 42.000001);
    EXPECT_EQ(reading.echo.gainDb, 1.1);
    EXPECT_EQ(reading.echo.screenPercent, 65.0);
    ASSERT_TRUE(reading.movement);
    EXPECT_EQ(reading.movement->dropDb, 20.0);
    EXPECT_EQ(reading.movement->alongMm, 35.0);
    EXPECT_EQ(reading.movement->acrossMm, 12.5);
}

TEST(ReadingJson, ReadsEveryWord) {
    const auto with = [](const char* pointer, const char* word) {
        Json json = fullReading();
        json[Json::json_pointer(pointer)] = word;
        return readingOf(json);
    };
    EXPECT_EQ(with("/probe/kind", "straight").probe.kind, ProbeKind::StraightBeam);
    EXPECT_EQ(with("/probe/kind", "twin").probe.kind, ProbeKind::TwinCrystal);
    EXPECT_EQ(with("/probe/element", "round").probe.element, ElementShape::Round);
    EXPECT_EQ(with("/part/surface", "flat").part.surface, ScanSurface::Flat);
    EXPECT_EQ(with("/part/surface", "inner").part.surface, ScanSurface::Inner);
    EXPECT_EQ(with("/reference/kind", "back wall").reference.kind, ReferenceKind::BackWall);
    EXPECT_EQ(with("/reference/kind", "flat-bottomed hole").reference.kind,
              ReferenceKind::FlatBottomedHole);
    EXPECT_EQ(with("/reference/on", "casting").reference.on, ReferencePlace::Casting);
}

TEST(ReadingJson, TakesTheReferencesMediumFromTheMaterial) {
    Json json = fullReading();
    json["reference"].erase("velocity_m_s");
    json["reference"].erase("attenuation_db_per_m");
    Reading reading = readingOf(json);
    EXPECT_EQ(reading.reference.medium.velocityMPerS, 3080.0);
    EXPECT_EQ(reading.reference.medium.attenuationDbPerM, 7.25);
    // An attenuation that is not given is not 0.
    json["material"].erase("attenuation_db_per_m");
    reading = readingOf(json);
    EXPECT_FALSE(reading.medium.attenuationDbPerM);
    EXPECT_FALSE(reading.reference.medium.attenuationDbPerM);
}

TEST(ReadingJson, LeavesOutWhatMayBeLeftOut) {
    Json json = fullReading();
    for (const char* name : {"diameter_mm", "width_mm", "length_mm", "angle_deg", "front_mm"})
        json["probe"].erase(name);
    for (const char* name : {"on", "diameter_mm"}) json["reference"].erase(name);
    for (const char* name : {"surface", "radius_mm"}) json["part"].erase(name);
    json.erase("transfer_db");
    json.erase("movement");
    const Reading reading = readingOf(json);
    EXPECT_FALSE(reading.probe.diameterMm || reading.probe.widthMm || reading.probe.lengthMm);
    EXPECT_FALSE(reading.probe.angleDeg || reading.probe.frontMm);
    EXPECT_FALSE(reading.reference.diameterMm || reading.part.radiusMm);
    EXPECT_EQ(reading.reference.on, ReferencePlace::Casting);
    EXPECT_EQ(reading.part.surface, ScanSurface::Flat);
    EXPECT_EQ(reading.transferDb, 0.0);
    EXPECT_FALSE(reading.movement);

    Json still = fullReading();
    still["movement"].erase("across_mm");
    ASSERT_TRUE(readingOf(still).movement);
    EXPECT_FALSE(readingOf(still).movement->acrossMm);
}

TEST(ReadingJson, RefusesEveryMissingField) {
    for (const char* pointer : {"/format",
                                "/probe",
                                "/probe/kind",
                                "/probe/element",
                                "/probe/frequency_mhz",
                                "/material",
                                "/material/velocity_m_s",
                                "/part",
                                "/part/thickness_mm",
                                "/part/surface",
                                "/reference",
                                "/reference/kind",
                                "/reference/sound_path_mm",
                                "/reference/gain_db",
                                "/reference/screen_percent",
                                "/transfer_db",
                                "/echo",
                                "/echo/sound_path_mm",
                                "/echo/gain_db",
                                "/echo/screen_percent",
                                "/movement/drop_db"}) {
        Json json = fullReading();
        const Json::json_pointer at(pointer);
        json[at.parent_pointer()].erase(at.back());
        std::string path(pointer + 1);
        std::ranges::replace(path, '/', '.');
        EXPECT_EQ(refused(json.dump()), "r.json: " + path + ": is missing");
    }
}

TEST(ReadingJson, RefusesAnUnknownFieldInEveryObject) {
    for (const char* object :
         {"", "/probe", "/material", "/part", "/reference", "/echo", "/movement"}) {
        Json json = fullReading();
        json[Json::json_pointer(std::string(object) + "/gain")] = 1;
        std::string path = std::string(object) + "/gain";
        std::ranges::replace(path, '/', '.');
        EXPECT_EQ(refused(json.dump()),
                  "r.json: " + path.substr(1) + ": is not a field that is known here");
    }
}

TEST(ReadingJson, RefusesTheWrongTypeAndTheWrongWord) {
    const auto with = [](const char* pointer, const Json& value) {
        Json json = fullReading();
        json[Json::json_pointer(pointer)] = value;
        return refused(json.dump());
    };
    EXPECT_EQ(with("/echo/gain_db", "40"), "r.json: echo.gain_db: must be a number, not a string");
    EXPECT_EQ(with("/probe", 5), "r.json: probe: must be an object, not a number");
    EXPECT_EQ(with("/movement", Json::array()),
              "r.json: movement: must be an object, not an array");
    EXPECT_EQ(with("/probe/kind", "TOFD"), "r.json: probe.kind: \"TOFD\" is not a word for it");
    EXPECT_EQ(with("/part/surface", "curved"),
              "r.json: part.surface: \"curved\" is not a word for it");
    EXPECT_EQ(with("/reference/on", true),
              "r.json: reference.on: must be a string, not true or false");
    EXPECT_EQ(with("/format", "fettlemark-sheet/1"),
              "r.json: format: must be \"fettlemark-reading/1\", not \"fettlemark-sheet/1\"");
    EXPECT_THAT(with("/transfer_db", nullptr), HasSubstr("r.json: transfer_db: must not be null"));
}

TEST(ReadingJson, RefusesAFieldGivenTwiceAndMoreThanSixDecimals) {
    std::string text = fullReading().dump();
    const std::string field = "\"gain_db\":1.1";
    ASSERT_NE(text.find(field), std::string::npos);
    std::string twice = text;
    twice.replace(twice.find(field), field.size(), field + "," + field);
    EXPECT_THAT(refused(twice), HasSubstr("r.json: echo.gain_db: is given twice"));
    std::string fine = text;
    fine.replace(fine.find(field), field.size(), "\"gain_db\":1.1000001");
    EXPECT_THAT(refused(fine), HasSubstr("r.json: echo.gain_db: "));
    EXPECT_THAT(refused(fine), HasSubstr("more than 6 decimals"));
}

}  // namespace
}  // namespace model
