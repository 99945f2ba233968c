// SPDX-License-Identifier: Apache-2.0
// Random indications for comparisons with independent methods; seeds are fixed.
#pragma once

#include <random>
#include <vector>

#include "surface/capsule.h"

namespace model::test {

struct RandomCapsules {
    std::vector<Capsule> capsules;
    std::vector<Length> lengths;
};

/// `count` capsules centred in a square of `side` mm, lengths up to `longest` mm in tenths; a
/// third of them round.
inline RandomCapsules randomCapsules(unsigned seed, std::size_t count, int side, int longest) {
    std::mt19937 random(seed);
    const auto tenths = [&](int from, int to) {
        return nanometres(100'000 * std::uniform_int_distribution<std::int64_t>(from, to)(random));
    };
    RandomCapsules made;
    for (std::size_t i = 0; i < count; ++i) {
        const Length length = tenths(5, 10 * longest);
        Length width = tenths(1, static_cast<int>(length.millionths() / 100'000));
        if (i % 3 == 0) width = length;
        const Angle angle = degrees(std::uniform_int_distribution<std::int64_t>(-90, 180)(random));
        made.capsules.push_back(
            makeCapsule(tenths(0, 10 * side), tenths(0, 10 * side), length, width, angle, {}));
        made.lengths.push_back(length);
    }
    return made;
}

}  // namespace model::test
