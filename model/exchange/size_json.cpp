// SPDX-License-Identifier: Apache-2.0
#include "exchange/size_json.h"

#include <cmath>

#include "base/word_table.h"

namespace model {
namespace {

constexpr WordEntry<SizingMethod> kMethods[] = {
    {SizingMethod::DistanceGainSize, "distance-gain-size"}, {SizingMethod::FarField, "far field"}};

/// Rounded half up to 0.001.
JsonValue number(double value) {
    // Within what a 64-bit count of millionths holds; only a mistake of ours lies beyond.
    if (!(std::abs(value) < 1e12)) return {};
    return JsonValue::number(std::llround(value * 1e3) * 1'000);
}

JsonValue number(const std::optional<double>& value) {
    return value ? number(*value) : JsonValue();
}

JsonValue truth(const std::optional<bool>& value) {
    return value ? JsonValue::boolean(*value) : JsonValue();
}

}  // namespace

JsonValue sizeToJson(const Size& size) {
    return JsonValue::object(
        {{"format", JsonValue::string(kSizeFormat)},
         {"wavelength_mm", number(size.wavelengthMm)},
         {"near_field_mm", number(size.nearFieldMm)},
         {"beam_width_mm", number(size.beamWidthMm)},
         {"depth_mm", number(size.depthMm)},
         {"surface_distance_mm", number(size.surfaceDistanceMm)},
         {"leg", JsonValue::count(size.leg)},
         {"echo_db", number(size.echoDb)},
         {"fbh_mm", number(size.fbhMm)},
         {"fbh_method",
          size.method ? JsonValue::string(wordIn(kMethods, *size.method)) : JsonValue()},
         {"far_field_fbh_mm", number(size.farFieldFbhMm)},
         {"length_mm", number(size.lengthMm)},
         {"width_mm", number(size.widthMm)},
         {"measurable", JsonValue::object({{"along", truth(size.alongMeasurable)},
                                           {"across", truth(size.acrossMeasurable)}})},
         {"notes", JsonValue::strings(size.notes)}});
}

}  // namespace model
