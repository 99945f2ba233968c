// SPDX-License-Identifier: Apache-2.0
#include "judge/validate_reflectors.h"

#include <set>

#include "limits/words.h"

namespace model {
namespace {

struct Size {
    const char* field;
    const std::optional<Length>& value;
};

/// A size is above 0, and not both given and not measurable.
Result<void> validateSizes(const Reflector& r, const std::string& path) {
    for (const Size& size :
         {Size{".fbh_mm", r.fbh}, Size{".length_mm", r.length}, Size{".width_mm", r.width},
          Size{".through_wall_mm", r.throughWall}, Size{".wall_mm", r.wall}})
        if (size.value && *size.value <= Length{})
            return inputError(path + size.field,
                              "must be above 0; leave out what was not measured");
    if (r.area && *r.area <= Area{})
        return inputError(path + ".area_mm2", "must be above 0; leave out what was not measured");
    if (r.length && r.width && *r.width > *r.length)
        return inputError(path + ".width_mm", "is above the length");
    const auto both = [&](const std::optional<Length>& given, bool notMeasurable) {
        return given && notMeasurable;
    };
    if (both(r.length, r.lengthNotMeasurable) || both(r.width, r.widthNotMeasurable) ||
        both(r.throughWall, r.throughWallNotMeasurable))
        return inputError(path + ".not_measurable",
                          "names a dimension that is given as well; leave out one of them");
    return {};
}

Result<void> validateDepth(const Examination& e, const Reflector& r, const std::string& path) {
    if (!r.depth) return {};
    if (*r.depth < Length{}) return inputError(path + ".depth_mm", "must not be negative");
    if (*r.depth > r.wall.value_or(e.thickness))
        return inputError(
            path + ".depth_mm",
            r.wall ? "is %1, below the wall of %2 mm"
                   : "is %1, below the zone's thickness of %2 mm; state wall_mm where it is more",
            {toText(*r.depth), toText(r.wall.value_or(e.thickness))});
    return {};
}

Result<void> validateReflector(const Examination& e, const Reflector& r, const std::string& path) {
    if (r.id.empty()) return inputError(path + ".id", "is empty");
    if (auto valid = validateSizes(r, path); !valid) return valid;
    if (auto valid = validateDepth(e, r, path); !valid) return valid;
    if (r.backWallLoss && *r.backWallLoss < GainStep{})
        return inputError(path + ".back_wall_loss_db", "must not be negative");
    if (!r.backWallLossExplained.empty() && !r.backWallLoss)
        return inputError(path + ".back_wall_loss_explained",
                          "explains a loss that back_wall_loss_db does not give");
    if (r.kind && !isUltrasonic(*r.kind))
        return inputError(path + ".kind", "\"%1\" is no kind of ultrasonic indications",
                          {std::string(word(*r.kind))});
    if (r.relevance != Relevance::Relevant && r.reason.empty())
        return inputError(path + ".reason", "is needed for what is not relevant");
    if (e.surface) {
        const SurfacePlace& place = *e.surface;
        if (r.x < Length{} || r.x > place.width || r.y < Length{} || r.y > place.height)
            return inputError(path, "is centred outside zone %1", {e.zone});
    }
    return {};
}

Result<void> validateTest(const Examination& e, const std::string& path) {
    const UltrasonicTest& test = e.ultrasonic;
    if (test.zoneArea) {
        if (*test.zoneArea <= Area{}) return inputError(path + ".zone_area_mm2", "must be above 0");
        Area left;
        for (const NotExamined& area : e.notExamined) left += area.area;
        if (left > *test.zoneArea)
            return inputError(path + ".zone_area_mm2",
                              "is %1, below the %2 mm2 that were not examined",
                              {toText(*test.zoneArea), toText(left)});
    }
    if (test.testability && test.testability->smallestFbh &&
        *test.testability->smallestFbh <= Length{})
        return inputError(path + ".testability.smallest_fbh_mm", "must be above 0");
    if (test.deadZone && *test.deadZone < Length{})
        return inputError(path + ".dead_zone_mm", "must not be negative");
    return {};
}

}  // namespace

Result<void> validateUltrasonic(const Examination& e, const std::string& path) {
    const bool ultrasonic = e.method == Method::Ultrasonic;
    for (std::size_t i = 0; i < e.forbiddenKinds.size(); ++i)
        if (isUltrasonic(e.forbiddenKinds[i]) != ultrasonic)
            return inputError(
                path + ".forbidden_kinds[" + std::to_string(i) + "]",
                "\"%1\" is no kind of %2 indications",
                {std::string(word(e.forbiddenKinds[i])), std::string(word(e.method))});
    if (ultrasonic ? !e.indications.empty() : !e.reflectors.empty())
        return inputError(path + ".indications", "are not those of %1",
                          {std::string(word(e.method))});
    if (!ultrasonic) return {};
    if (auto valid = validateTest(e, path); !valid) return valid;
    std::set<std::string_view> ids;
    for (std::size_t i = 0; i < e.reflectors.size(); ++i) {
        const std::string place = path + ".indications[" + std::to_string(i) + "]";
        if (auto valid = validateReflector(e, e.reflectors[i], place); !valid) return valid;
        if (!ids.insert(e.reflectors[i].id).second)
            return inputError(place + ".id", "\"%1\" is used twice in this examination",
                              {e.reflectors[i].id});
    }
    return {};
}

}  // namespace model
