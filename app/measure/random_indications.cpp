// SPDX-License-Identifier: Apache-2.0
#include "measure/random_indications.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace app {

RandomIndication randomIndication(SteadyRandom& random, double widthMm, double heightMm) {
    RandomIndication indication;
    model::Capsule& capsule = indication.capsule;
    capsule.x = random.between(0, widthMm);
    capsule.y = random.between(0, heightMm);
    const double angle = random.between(0, std::numbers::pi);
    capsule.along = {std::cos(angle), std::sin(angle)};
    const auto tenths = std::llround(random.between(10, 120));
    const auto length = static_cast<double>(tenths) / 10;
    const double width = length * std::max(random.between(-1, 1), 0.0);
    capsule.half = (length - width) / 2;
    capsule.radius = width / 2;
    indication.lengthNm = tenths * 100'000;
    return indication;
}

RandomIndications::RandomIndications(std::size_t count, double widthMm, double heightMm,
                                     std::uint64_t seed) {
    SteadyRandom random(seed);
    all_.reserve(count);
    for (std::size_t index = 0; index < count; ++index)
        all_.push_back(randomIndication(random, widthMm, heightMm));
}

std::vector<model::FrameItem> RandomIndications::items() const {
    std::vector<model::FrameItem> items;
    items.reserve(all_.size());
    for (const RandomIndication& indication : all_)
        items.push_back({{&indication.capsule, 1}, indication.lengthNm, true});
    return items;
}

}  // namespace app
