// SPDX-License-Identifier: Apache-2.0
// Timing of repeated runs.
#pragma once

#include <algorithm>
#include <chrono>
#include <limits>

namespace app {

/// How long `work` takes, ms.
template <class Work>
double millisecondsOf(Work&& work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    const std::chrono::duration<double, std::milli> taken =
        std::chrono::steady_clock::now() - start;
    return taken.count();
}

/// The shortest of `runs` runs, ms: what the work itself costs; the rest is the machine's other
/// business.
template <class Work>
double shortestMilliseconds(int runs, Work&& work) {
    double shortest = std::numeric_limits<double>::infinity();
    for (int run = 0; run < runs; ++run) shortest = std::min(shortest, millisecondsOf(work));
    return shortest;
}

}  // namespace app
