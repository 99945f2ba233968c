// SPDX-License-Identifier: Apache-2.0
// Which capsules lie near which, on a flat or a round surface, without looking at every pair.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "surface/capsule.h"

namespace model {

/// A neighbour of a capsule: its index, how many periods to the right its nearest image lies, and
/// the unrounded distance to that image, mm.
struct Neighbour {
    std::size_t index = 0;
    int turns = 0;
    Real distance = 0;
};

class Neighbours {
public:
    /// Keeps copies; `period`, mm, closes the surface in x.
    Neighbours(std::span<const Capsule> capsules, std::optional<Real> period);

    /// Calls `found` for every other capsule (each of its images, on a round surface) whose
    /// distance to capsule `index` is at most `within` mm.
    void forEach(std::size_t index, Real within,
                 const std::function<void(const Neighbour&)>& found) const;

    /// Capsule `index` moved by `turns` periods.
    [[nodiscard]] Capsule image(std::size_t index, int turns) const;

private:
    struct Entry {
        Real x;
        std::size_t index;
    };
    std::vector<Capsule> capsules_;
    std::vector<Real> extents_;  // half of each capsule's length, mm
    std::vector<Entry> byX_;     // by the centre's x
    Real largestExtent_ = 0;
    std::optional<Real> period_;
};

}  // namespace model
