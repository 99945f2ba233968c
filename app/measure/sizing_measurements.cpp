// SPDX-License-Identifier: Apache-2.0
#include "measure/sizing_measurements.h"

#include <algorithm>
#include <array>
#include <cstdio>

#include "measure/random_indications.h"
#include "measure/stopwatch.h"
#include "ultrasonic/distance_gain_size.h"
#include "ultrasonic/size.h"

namespace app {
namespace {

constexpr std::size_t kReadings = 400;

/// 24 mm, 2 MHz on steel of 2 m, against its back wall: the near field is 49 mm long.
model::Reading reading(SteadyRandom& random) {
    constexpr double kThicknessMm = 2000;
    model::Reading reading;
    reading.probe.diameterMm = 24;
    reading.probe.frequencyMhz = 2;
    reading.medium = {5920, 2};
    reading.part.thicknessMm = kThicknessMm;
    reading.reference.medium = reading.medium;
    reading.reference.echo = {kThicknessMm, 40, 80};
    reading.echo = {random.between(35, kThicknessMm), random.between(10, 90), 80};
    reading.movement = model::ProbeMovement{6, random.between(0, 200), random.between(0, 200)};
    return reading;
}

std::string microseconds(double milliseconds) {
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "%.1f", milliseconds * 1000);
    return text.data();
}

}  // namespace

model::Result<std::vector<Measurement>> measureSizeReading() {
    constexpr int kRuns = 5;
    SteadyRandom random(11);
    double longest = 0;
    double total = 0;
    std::size_t sized = 0;
    for (std::size_t number = 0; number < kReadings; ++number) {
        const model::Reading read = reading(random);
        bool hasSize = false;
        std::optional<model::Error> failure;
        const double taken = shortestMilliseconds(kRuns, [&] {
            const auto size = model::sizeOf(read);
            if (size)
                hasSize = size->fbhMm.has_value();
            else
                failure = size.error();
        });
        if (failure) return *failure;
        longest = std::max(longest, taken);
        total += taken;
        sized += hasSize ? 1 : 0;
    }
    if (sized < kReadings)
        return model::inputError("size-reading", "%1 of %2 readings came out without a size",
                                 {std::to_string(kReadings - sized), std::to_string(kReadings)});
    Measurement line;
    line.name = "size-reading";
    line.value = longest;
    line.size = kReadings;
    line.note = "longest of the readings, each the shortest of 5 runs; on average " +
                microseconds(total / kReadings) + " us";
    return std::vector{line};
}

model::Result<std::vector<Measurement>> measureDiagram() {
    model::Diagram drawn;
    Measurement line;
    line.name = "diagram";
    line.value = millisecondsOf([&] { drawn = model::diagram(); });
    line.size = drawn.a.size() * (drawn.curves.size() + 1);
    line.note = "first call in this process; " + std::to_string(drawn.curves.size()) +
                " discs and the back wall at " + std::to_string(drawn.a.size()) + " distances";
    return std::vector{line};
}

}  // namespace app
