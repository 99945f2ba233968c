// SPDX-License-Identifier: Apache-2.0
#include "judge/zone_places.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <string>
#include <vector>

namespace model {
namespace {

constexpr Real kTouching = 1e-6L;  // mm: edges that overlap by less only touch

std::string pathOf(std::size_t index) {
    return "examinations[" + std::to_string(index) + "].surface";
}

struct Corner {
    Real x;
    Real y;
};

struct ZoneRectangle {
    std::string zone;
    std::size_t index = 0;  // of the first examination that places it
    std::array<Corner, 4> corners{};
    Direction along;
    Real left = 0;
    Real right = 0;
};

ZoneRectangle rectangleOf(const Examination& examination, std::size_t index) {
    const SurfacePlace& place = *examination.surface;
    const Direction along = directionOf(place.placement.angle);
    const Real x = millimetresOf(place.placement.x);
    const Real y = millimetresOf(place.placement.y);
    const Real w = millimetresOf(place.width);
    const Real h = millimetresOf(place.height);
    ZoneRectangle rectangle;
    rectangle.zone = examination.zone;
    rectangle.index = index;
    rectangle.along = along;
    rectangle.corners = {Corner{x, y}, Corner{x + w * along.x, y + w * along.y},
                         Corner{x + w * along.x - h * along.y, y + w * along.y + h * along.x},
                         Corner{x - h * along.y, y + h * along.x}};
    const auto byX = [](const Corner& a, const Corner& b) { return a.x < b.x; };
    rectangle.left = std::min_element(rectangle.corners.begin(), rectangle.corners.end(), byX)->x;
    rectangle.right = std::max_element(rectangle.corners.begin(), rectangle.corners.end(), byX)->x;
    return rectangle;
}

/// Two rectangles share no area if a side of one separates them.
bool shareArea(const ZoneRectangle& a, const ZoneRectangle& b, Real shift) {
    for (const Direction& along : {a.along, b.along})
        for (const Direction& axis : {along, Direction{-along.y, along.x}}) {
            const auto extent = [&](const ZoneRectangle& r, Real dx) {
                std::pair<Real, Real> ends{1e30L, -1e30L};
                for (const Corner& c : r.corners) {
                    const Real at = (c.x + dx) * axis.x + c.y * axis.y;
                    ends = {std::min(ends.first, at), std::max(ends.second, at)};
                }
                return ends;
            };
            const auto [lowA, highA] = extent(a, 0);
            const auto [lowB, highB] = extent(b, shift);
            if (highA <= lowB + kTouching || highB <= lowA + kTouching) return false;
        }
    return true;
}

bool samePlace(const std::optional<SurfacePlace>& a, const std::optional<SurfacePlace>& b) {
    if (!a || !b) return !a && !b;
    return a->id == b->id && a->placement.x == b->placement.x && a->placement.y == b->placement.y &&
           a->placement.angle == b->placement.angle && a->width == b->width &&
           a->height == b->height && a->period == b->period;
}

Result<void> validateOverlaps(std::vector<ZoneRectangle>& zones, std::optional<Length> period) {
    std::sort(zones.begin(), zones.end(), [](const ZoneRectangle& a, const ZoneRectangle& b) {
        return a.left != b.left ? a.left < b.left : a.index < b.index;
    });
    const auto overlap = [](const ZoneRectangle& a, const ZoneRectangle& b) {
        return inputError(pathOf(std::max(a.index, b.index)),
                          "zone %1 shares area with zone %2 of the same surface", {a.zone, b.zone});
    };
    for (std::size_t i = 0; i < zones.size(); ++i) {
        if (!period) {
            for (std::size_t j = i + 1; j < zones.size() && zones[j].left < zones[i].right; ++j)
                if (shareArea(zones[i], zones[j], 0)) return overlap(zones[i], zones[j]);
            continue;
        }
        const Real turn = millimetresOf(*period);
        for (std::size_t j = i; j < zones.size(); ++j) {
            const auto first =
                static_cast<std::int64_t>(std::floor((zones[i].left - zones[j].right) / turn));
            const auto last =
                static_cast<std::int64_t>(std::ceil((zones[i].right - zones[j].left) / turn));
            if (last - first > 1000)
                return inputError(pathOf(zones[i].index), "zone %1 goes round its surface",
                                  {zones[i].zone});
            for (std::int64_t turns = first; turns <= last; ++turns) {
                if (i == j && turns == 0) continue;
                if (!shareArea(zones[i], zones[j], static_cast<Real>(turns) * turn)) continue;
                if (i == j)
                    return inputError(pathOf(zones[i].index),
                                      "zone %1 is wider than the period of its surface",
                                      {zones[i].zone});
                return overlap(zones[i], zones[j]);
            }
        }
    }
    return {};
}

}  // namespace

Result<void> validatePlaces(const Sheet& sheet) {
    std::map<std::string, std::size_t> placedBy;  // zone -> first examination
    std::map<std::string, std::optional<Length>> periods;
    std::map<std::string, std::vector<ZoneRectangle>> surfaces;
    for (std::size_t i = 0; i < sheet.examinations.size(); ++i) {
        const Examination& e = sheet.examinations[i];
        const auto [at, first] = placedBy.try_emplace(e.zone, i);
        if (!first && !samePlace(sheet.examinations[at->second].surface, e.surface))
            return inputError(pathOf(i), "zone %1 is placed in another way by examinations[%2]",
                              {e.zone, std::to_string(at->second)});
        if (!e.surface) continue;
        const auto [period, unseen] = periods.try_emplace(e.surface->id, e.surface->period);
        if (!unseen && period->second != e.surface->period)
            return inputError(pathOf(i) + ".period_x_mm", "surface %1 has two periods",
                              {e.surface->id});
        if (first) surfaces[e.surface->id].push_back(rectangleOf(e, i));
    }
    for (auto& [id, zones] : surfaces)
        if (auto valid = validateOverlaps(zones, periods[id]); !valid) return valid;
    return {};
}

}  // namespace model
