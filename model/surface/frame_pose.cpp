// SPDX-License-Identifier: Apache-2.0
#include "surface/frame_pose.h"

#include <algorithm>
#include <cmath>

namespace model {
namespace {

// std::hypot guards against overflow, which lengths up to 10^6 mm cannot cause, and takes ten
// times as long.
double diagonal(double x, double y) {
    return std::sqrt(x * x + y * y);
}

double distanceToSegment(double pointX, double pointY, const SeenPart& segment) {
    const double dx = pointX - segment.x;
    const double dy = pointY - segment.y;
    const double squared = segment.alongX * segment.alongX + segment.alongY * segment.alongY;
    const double along =
        squared > 0 ? std::clamp((dx * segment.alongX + dy * segment.alongY) / squared, -1.0, 1.0)
                    : 0.0;
    return diagonal(dx - along * segment.alongX, dy - along * segment.alongY);
}

double distanceOutside(double x, double y, double halfWidth, double halfHeight) {
    return diagonal(std::max(std::abs(x) - halfWidth, 0.0),
                    std::max(std::abs(y) - halfHeight, 0.0));
}

// The axes that can separate a segment from a rectangle: the two of the rectangle and the
// segment's normal.
bool meets(const SeenPart& part, double halfWidth, double halfHeight) {
    const double alongX = std::abs(part.alongX);
    const double alongY = std::abs(part.alongY);
    return std::abs(part.x) <= halfWidth + alongX && std::abs(part.y) <= halfHeight + alongY &&
           std::abs(part.x * part.alongY - part.y * part.alongX) <=
               halfWidth * alongY + halfHeight * alongX;
}

}  // namespace

double FrameSize::reach() const {
    return circle ? halfWidth : std::hypot(halfWidth, halfHeight);
}

double distanceToPoint(const FramePart& part, double x, double y) {
    return distanceToSegment(x, y, {part.x, part.y, part.alongX, part.alongY});
}

double distanceToRectangle(const SeenPart& part, double halfWidth, double halfHeight) {
    if (meets(part, halfWidth, halfHeight)) return 0;
    double nearest = std::min(
        distanceOutside(part.x + part.alongX, part.y + part.alongY, halfWidth, halfHeight),
        distanceOutside(part.x - part.alongX, part.y - part.alongY, halfWidth, halfHeight));
    for (const double cornerX : {-halfWidth, halfWidth})
        for (const double cornerY : {-halfHeight, halfHeight})
            nearest = std::min(nearest, distanceToSegment(cornerX, cornerY, part));
    return nearest;
}

bool touches(const FrameSize& size, const FramePose& pose, const FramePart& part) {
    if (size.circle) return distanceToPoint(part, pose.x, pose.y) <= size.halfWidth + part.radius;
    const double dx = part.x - pose.x;
    const double dy = part.y - pose.y;
    const double c = pose.cosine;
    const double s = pose.sine;
    const SeenPart seen{c * dx + s * dy, c * dy - s * dx, c * part.alongX + s * part.alongY,
                        c * part.alongY - s * part.alongX};
    if (std::abs(seen.x) > size.halfWidth + part.extent() ||
        std::abs(seen.y) > size.halfHeight + part.extent())
        return false;
    if (meets(seen, size.halfWidth, size.halfHeight)) return true;
    return part.radius > 0 &&
           distanceToRectangle(seen, size.halfWidth, size.halfHeight) <= part.radius;
}

}  // namespace model
