// SPDX-License-Identifier: Apache-2.0
#include "exchange/size_json.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "exchange/json_text.h"

namespace model {
namespace {

using Json = nlohmann::ordered_json;

Json written(const Size& size) {
    return Json::parse(writeJson(sizeToJson(size)));
}

/// The shape that the format prescribes, with its own example's numbers.
TEST(SizeJson, WritesEveryField) {
    Size size{.wavelengthMm = 2.96,
              .nearFieldMm = 48.6,
              .beamWidthMm = 25.2,
              .depthMm = 200,
              .surfaceDistanceMm = 0,
              .leg = 2,
              .echoDb = -10,
              .fbhMm = 9.2,
              .method = SizingMethod::DistanceGainSize,
              .farFieldFbhMm = 9.3,
              .lengthMm = 35,
              .widthMm = std::nullopt,
              .alongMeasurable = true,
              .acrossMeasurable = false,
              .notes = {"one", "two"}};
    EXPECT_EQ(written(size), Json::parse(R"({
        "format": "fettlemark-size/1", "wavelength_mm": 2.96, "near_field_mm": 48.6,
        "beam_width_mm": 25.2, "depth_mm": 200, "surface_distance_mm": 0, "leg": 2,
        "echo_db": -10, "fbh_mm": 9.2, "fbh_method": "distance-gain-size",
        "far_field_fbh_mm": 9.3, "length_mm": 35, "width_mm": null,
        "measurable": {"along": true, "across": false}, "notes": ["one", "two"]})"));
    size.method = SizingMethod::FarField;
    EXPECT_EQ(written(size)["fbh_method"], "far field");
}

TEST(SizeJson, WritesNullForWhatIsNotThere) {
    const Json json = written(Size());
    for (const char* name : {"beam_width_mm", "depth_mm", "surface_distance_mm", "echo_db",
                             "fbh_mm", "fbh_method", "far_field_fbh_mm", "length_mm", "width_mm"}) {
        ASSERT_TRUE(json.contains(name)) << name;
        EXPECT_TRUE(json[name].is_null()) << name;
    }
    EXPECT_TRUE(json["measurable"]["along"].is_null());
    EXPECT_TRUE(json["measurable"]["across"].is_null());
    EXPECT_EQ(json["notes"], Json::array());
}

TEST(SizeJson, RoundsToAThousandth) {
    Size size;
    size.wavelengthMm = 2.3604;
    size.nearFieldMm = 42.37288;
    size.echoDb = -10.12345;
    const Json json = written(size);
    EXPECT_EQ(json["wavelength_mm"].dump(), "2.36");
    EXPECT_EQ(json["near_field_mm"].dump(), "42.373");
    EXPECT_EQ(json["echo_db"].dump(), "-10.123");
}

}  // namespace
}  // namespace model
