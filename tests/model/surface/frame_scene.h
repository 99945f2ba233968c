// SPDX-License-Identifier: Apache-2.0
// Items for the frame search, and a judge of its frames that shares nothing with it: distances
// come from Boost.Geometry.
#pragma once

#define BOOST_ALLOW_DEPRECATED_HEADERS  // Boost.Geometry 1.74 includes one itself
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/geometries.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <cmath>
#include <deque>
#include <numbers>
#include <random>
#include <vector>

#include "surface/frame_search.h"

namespace model {

inline constexpr double kDegree = std::numbers::pi / 180;

inline Capsule capsuleAt(double x, double y, double length = 0, double width = 0,
                         double angleDegrees = 0) {
    Capsule capsule;
    capsule.x = x;
    capsule.y = y;
    capsule.along = {std::cos(angleDegrees * kDegree), std::sin(angleDegrees * kDegree)};
    capsule.half = (length - width) / 2;
    capsule.radius = width / 2;
    return capsule;
}

inline FrameShape rectangle(double width, double height) {
    return {nanometres(std::llround(width * 1e6)), nanometres(std::llround(height * 1e6)), false};
}
inline FrameShape circle(double diameter) {
    FrameShape shape = rectangle(diameter, diameter);
    shape.circle = true;
    return shape;
}

/// Items with their capsules.
class FrameScene {
public:
    FrameScene& add(std::vector<Capsule> parts, std::int64_t weight = 1, bool own = true) {
        capsules_.push_back(std::move(parts));
        items_.push_back({capsules_.back(), weight, own});
        return *this;
    }
    FrameScene& add(const Capsule& part, std::int64_t weight = 1, bool own = true) {
        return add(std::vector<Capsule>{part}, weight, own);
    }
    [[nodiscard]] const std::vector<FrameItem>& items() const { return items_; }

private:
    std::deque<std::vector<Capsule>> capsules_;
    std::vector<FrameItem> items_;
};

/// Whether the frame, every side moved outwards by `enlarged`, touches the capsule moved by `shift`
/// in x.
inline bool boostTouches(const FoundFrame& frame, const FrameShape& shape, double enlarged,
                         const Capsule& capsule, double shift = 0) {
    namespace bg = boost::geometry;
    using Point = bg::model::d2::point_xy<double>;
    const double centreX = static_cast<double>(frame.x);
    const double centreY = static_cast<double>(frame.y);
    const double x = static_cast<double>(capsule.x) + shift;
    const double y = static_cast<double>(capsule.y);
    const double alongX = static_cast<double>(capsule.half * capsule.along.x);
    const double alongY = static_cast<double>(capsule.half * capsule.along.y);
    const bg::model::segment<Point> segment(Point(x - alongX, y - alongY),
                                            Point(x + alongX, y + alongY));
    constexpr double kRounding = 1e-9;
    const double radius = static_cast<double>(capsule.radius) + kRounding;
    if (shape.circle)
        return bg::distance(Point(centreX, centreY), segment) <=
               shape.width.approximately() / 2 + enlarged + radius;
    const double angle = static_cast<double>(frame.angleDegrees) * kDegree;
    bg::model::polygon<Point> outline;
    for (const auto& [acrossWidth, acrossHeight] :
         {std::pair{-1, -1}, {-1, 1}, {1, 1}, {1, -1}, {-1, -1}}) {
        const double u = acrossWidth * (shape.width.approximately() / 2 + enlarged);
        const double v = acrossHeight * (shape.height.approximately() / 2 + enlarged);
        bg::append(outline, Point(centreX + u * std::cos(angle) - v * std::sin(angle),
                                  centreY + u * std::sin(angle) + v * std::cos(angle)));
    }
    return bg::distance(segment, outline) <= radius;
}

/// What the frame counts by that judge, on a surface that closes after `period` if there is one.
inline std::vector<std::size_t> boostCounted(const std::vector<FrameItem>& items,
                                             const FoundFrame& frame, const FrameShape& shape,
                                             double enlarged,
                                             std::optional<double> period = std::nullopt) {
    std::vector<std::size_t> counted;
    const int images =
        period ? 2 + static_cast<int>((shape.width + shape.height).approximately() / *period) : 0;
    for (std::size_t item = 0; item < items.size(); ++item) {
        bool touched = false;
        for (const Capsule& part : items[item].parts)
            for (int image = -images; image <= images && !touched; ++image)
                touched = boostTouches(frame, shape, enlarged, part, image * period.value_or(0));
        if (touched) counted.push_back(item);
    }
    return counted;
}

inline std::int64_t weightOf(const std::vector<FrameItem>& items,
                             const std::vector<std::size_t>& counted) {
    std::int64_t sum = 0;
    for (const std::size_t item : counted) sum += items[item].weight;
    return sum;
}

}  // namespace model
