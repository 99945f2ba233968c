// SPDX-License-Identifier: Apache-2.0
// The units that a limit table may state a value in, besides the program's own.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "base/rational.h"

namespace model {

/// What a value is stated in, unless it names another unit of the same; only the signed one may be
/// below 0.
enum class Measured { Mm, SquareMm, SignedDecibel, Plain };

struct Unit {
    std::string_view word;  ///< "in"
    Measured of;
    Rational own;  ///< one of it, in mm or mm2: 127/5
};

/// By its word; null where there is none.
const Unit* unitFrom(std::string_view word);

/// A value in millionths of `unit` in millionths of mm or mm2; empty where it is no whole number of
/// them, or above a million mm or mm2.
std::optional<std::int64_t> inOwnUnit(std::int64_t millionths, const Unit& unit);

}  // namespace model
