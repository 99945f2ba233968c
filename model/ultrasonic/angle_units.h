// SPDX-License-Identifier: Apache-2.0
// Angles are degrees in the trade's figures and radians in the library's functions.
#pragma once

#include <numbers>

namespace model {

constexpr double radians(double degrees) {
    return degrees * std::numbers::pi / 180;
}
constexpr double inDegrees(double radians) {
    return radians * 180 / std::numbers::pi;
}

}  // namespace model
