// SPDX-License-Identifier: Apache-2.0
// Made-up indications for measurements, the same on every machine.
#pragma once

#include <cstdint>
#include <vector>

#include "surface/frame.h"

namespace app {

/// Numbers from 0 to 1, the same everywhere for the same seed.
class SteadyRandom {
public:
    explicit SteadyRandom(std::uint64_t seed) : state_(seed) {}
    double between(double low, double high) { return low + (high - low) * next(); }

private:
    /// SplitMix64 (Steele, Lea and Flood 2014); the library's distributions differ by vendor.
    double next() {
        std::uint64_t mixed = (state_ += 0x9E3779B97F4A7C15U);
        mixed = (mixed ^ (mixed >> 30U)) * 0xBF58476D1CE4E5B9U;
        mixed = (mixed ^ (mixed >> 27U)) * 0x94D049BB133111EBU;
        return static_cast<double>((mixed ^ (mixed >> 31U)) >> 11U) * 0x1p-53;
    }
    std::uint64_t state_;
};

/// An indication 1 to 12 mm long, half of them hairlines, the others up to as wide as long.
struct RandomIndication {
    model::Capsule capsule;
    std::int64_t lengthNm = 0;
};

RandomIndication randomIndication(SteadyRandom& random, double widthMm, double heightMm);

/// `count` of them over a surface, as items that weigh their length.
class RandomIndications {
public:
    RandomIndications(std::size_t count, double widthMm, double heightMm, std::uint64_t seed);
    [[nodiscard]] const std::vector<RandomIndication>& all() const { return all_; }
    /// Valid as long as this object.
    [[nodiscard]] std::vector<model::FrameItem> items() const;

private:
    std::vector<RandomIndication> all_;
};

}  // namespace app
