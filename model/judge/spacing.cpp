// SPDX-License-Identifier: Apache-2.0
#include "judge/spacing.h"

#include <algorithm>

#include "surface/neighbours.h"

namespace model {

std::optional<ClosestPair> smallestGap(const ZoneView& view,
                                       const std::vector<std::size_t>& findings,
                                       const std::vector<Capsule>& capsules) {
    std::optional<Real> period;
    if (view.bundle->period) period = millimetresOf(*view.bundle->period);
    const Neighbours neighbours(capsules, period);
    std::optional<Real> smallest;
    std::pair<std::size_t, std::size_t> pair;
    const auto look = [&](Real within) {
        for (std::size_t i = 0; i < findings.size(); ++i) {
            if (!view.isOwn(findings[i])) continue;
            neighbours.forEach(i, within, [&](const Neighbour& near) {
                const auto group = view.grouped->groupOf[findings[i]];
                if (group && group == view.grouped->groupOf[findings[near.index]]) return;
                if (smallest && near.distance >= *smallest) return;
                smallest = near.distance;
                pair = {findings[i], findings[near.index]};
            });
        }
    };
    // Widen the search until a pair is found; the last look is wide enough for any sheet.
    for (Real within = 16; !smallest && within < 1e7L; within *= 8) look(within);
    if (!smallest) return std::nullopt;
    return ClosestPair{roundedGap(*smallest), std::min(pair.first, pair.second),
                       std::max(pair.first, pair.second)};
}

}  // namespace model
