// SPDX-License-Identifier: Apache-2.0
#include "surface/neighbours.h"

#include <algorithm>
#include <cmath>

namespace model {

Neighbours::Neighbours(std::span<const Capsule> capsules, std::optional<Real> period)
    : capsules_(capsules.begin(), capsules.end()), period_(period) {
    for (const Capsule& c : capsules_) {
        extents_.push_back(c.half + c.radius);
        largestExtent_ = std::max(largestExtent_, extents_.back());
    }
    for (std::size_t i = 0; i < capsules_.size(); ++i) byX_.push_back({capsules_[i].x, i});
    std::sort(byX_.begin(), byX_.end(), [](const Entry& a, const Entry& b) { return a.x < b.x; });
}

Capsule Neighbours::image(std::size_t index, int turns) const {
    return capsules_[index].movedBy(turns == 0 ? 0 : static_cast<Real>(turns) * *period_, 0);
}

void Neighbours::forEach(std::size_t index, Real within,
                         const std::function<void(const Neighbour&)>& found) const {
    const Capsule& self = capsules_[index];
    const Real window = extents_[index] + largestExtent_ + within;
    // On a round surface the window is laid over the others' images: those whole turns away that
    // bring some centre into it.
    int first = 0;
    int last = 0;
    if (period_ && !byX_.empty()) {
        first = static_cast<int>(std::floor((self.x - window - byX_.back().x) / *period_));
        last = static_cast<int>(std::ceil((self.x + window - byX_.front().x) / *period_));
    }
    for (int turns = first; turns <= last; ++turns) {
        const Real shift = turns == 0 ? 0 : static_cast<Real>(turns) * *period_;
        const auto from = std::lower_bound(byX_.begin(), byX_.end(), self.x - window - shift,
                                           [](const Entry& entry, Real x) { return entry.x < x; });
        for (auto at = from; at != byX_.end() && at->x + shift <= self.x + window; ++at) {
            if (at->index == index) continue;
            const Capsule& other = capsules_[at->index];
            if (std::fabs(other.y - self.y) > extents_[index] + extents_[at->index] + within)
                continue;
            const Real apart = distance(self, turns == 0 ? other : other.movedBy(shift, 0));
            if (apart <= within) found({at->index, turns, apart});
        }
    }
}

}  // namespace model
