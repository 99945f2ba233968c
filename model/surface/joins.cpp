// SPDX-License-Identifier: Apache-2.0
#include "surface/joins.h"

#include <algorithm>
#include <deque>
#include <numeric>

#include "surface/neighbours.h"

namespace model {
namespace {

/// The sets while they grow. Every member knows how many periods its image in the set lies from
/// its own place.
class GrowingSets {
public:
    GrowingSets(std::span<const Capsule> capsules, std::span<const Length> singleLengths,
                std::optional<Length> period)
        : neighbours_(capsules,
                      period ? std::optional<Real>(millimetresOf(*period)) : std::nullopt),
          setOf_(capsules.size()),
          turnsOf_(capsules.size(), 0),
          members_(capsules.size()),
          longest_(singleLengths.begin(), singleLengths.end()),
          lengths_(singleLengths.begin(), singleLengths.end()),
          closed_(capsules.size(), false),
          period_(period) {
        std::iota(setOf_.begin(), setOf_.end(), std::size_t{0});
        for (std::size_t i = 0; i < capsules.size(); ++i) members_[i] = {i};
    }

    [[nodiscard]] const Neighbours& neighbours() const { return neighbours_; }
    [[nodiscard]] std::size_t setOf(std::size_t member) const { return setOf_[member]; }
    [[nodiscard]] const std::vector<std::size_t>& members(std::size_t set) const {
        return members_[set];
    }
    [[nodiscard]] Length longestMember(std::size_t set) const { return longest_[set]; }
    [[nodiscard]] Length lengthOf(std::size_t set) const { return lengths_[set]; }

    /// Links a member with a neighbour's image; true if two sets became one, or one closed round.
    bool link(std::size_t member, const Neighbour& to) {
        std::size_t kept = setOf_[member];
        std::size_t merged = setOf_[to.index];
        // Where the neighbour's image lies in the coordinates of the member's set.
        const int turns = turnsOf_[member] + to.turns;
        if (kept == merged) {
            if (turnsOf_[to.index] == turns || closed_[kept]) return false;
            closed_[kept] = true;
            return true;
        }
        int shift = turns - turnsOf_[to.index];
        if (members_[kept].size() < members_[merged].size()) {
            std::swap(kept, merged);
            shift = -shift;
        }
        for (const std::size_t moved : members_[merged]) {
            setOf_[moved] = kept;
            turnsOf_[moved] += shift;
            members_[kept].push_back(moved);
        }
        members_[merged].clear();
        longest_[kept] = std::max(longest_[kept], longest_[merged]);
        closed_[kept] = closed_[kept] || closed_[merged];
        return true;
    }

    /// Recomputes a set's length; needed only where it matters while the sets still grow.
    void measure(std::size_t set) {
        lengths_[set] = greatestExtent(unrolled(set));
        if (closed_[set]) lengths_[set] = std::max(lengths_[set], *period_);
    }

    [[nodiscard]] std::vector<Capsule> unrolled(std::size_t set) const {
        std::vector<Capsule> images;
        images.reserve(members_[set].size());
        for (const std::size_t member : members_[set])
            images.push_back(neighbours_.image(member, turnsOf_[member]));
        return images;
    }

    std::vector<SurfaceGroup> groups() {
        std::vector<SurfaceGroup> found;
        for (std::size_t set = 0; set < members_.size(); ++set) {
            if (members_[set].size() < 2) continue;
            std::sort(members_[set].begin(), members_[set].end());
            measure(set);
            found.push_back({members_[set], unrolled(set), lengths_[set]});
        }
        std::sort(found.begin(), found.end(), [](const SurfaceGroup& a, const SurfaceGroup& b) {
            return a.members.front() < b.members.front();
        });
        return found;
    }

private:
    Neighbours neighbours_;
    std::vector<std::size_t> setOf_;
    std::vector<int> turnsOf_;
    std::vector<std::vector<std::size_t>> members_;
    std::vector<Length> longest_;
    std::vector<Length> lengths_;
    std::vector<bool> closed_;
    std::optional<Length> period_;
};

/// A set can only reach further once its longest member has changed: members are searched again
/// only then.
void joinByLongestMember(GrowingSets& sets, std::size_t count) {
    std::deque<std::size_t> waiting(count);
    std::iota(waiting.begin(), waiting.end(), std::size_t{0});
    std::vector<Length> searched(count);
    while (!waiting.empty()) {
        const std::size_t member = waiting.front();
        waiting.pop_front();
        const Length limit = sets.longestMember(sets.setOf(member));
        if (searched[member] >= limit) continue;
        searched[member] = limit;
        sets.neighbours().forEach(member, millimetresOf(limit), [&](const Neighbour& near) {
            if (roundedGap(near.distance) >= limit) return;
            const Length before = std::min(sets.longestMember(sets.setOf(member)),
                                           sets.longestMember(sets.setOf(near.index)));
            if (!sets.link(member, near)) return;
            const std::size_t set = sets.setOf(member);
            if (sets.longestMember(set) > before)
                for (const std::size_t other : sets.members(set))
                    if (searched[other] < sets.longestMember(set)) waiting.push_back(other);
        });
    }
}

void joinBySmallerSet(GrowingSets& sets, std::size_t count) {
    std::deque<std::size_t> waiting(count);  // sets that grew since they were last searched
    std::iota(waiting.begin(), waiting.end(), std::size_t{0});
    while (!waiting.empty()) {
        const std::size_t set = waiting.front();
        waiting.pop_front();
        if (sets.members(set).empty()) continue;
        bool grew = false;
        const std::vector<std::size_t> members = sets.members(set);
        for (const std::size_t member : members)
            sets.neighbours().forEach(
                member, millimetresOf(sets.lengthOf(set)), [&](const Neighbour& near) {
                    const Length gap = roundedGap(near.distance);
                    const std::size_t own = sets.setOf(member);
                    const std::size_t other = sets.setOf(near.index);
                    if (gap >= std::min(sets.lengthOf(own), sets.lengthOf(other))) return;
                    if (!sets.link(member, near)) return;
                    sets.measure(sets.setOf(member));
                    grew = true;
                });
        if (grew) waiting.push_back(sets.setOf(members.front()));
    }
}

void joinByConstant(GrowingSets& sets, std::size_t count, GapLimit limit) {
    for (std::size_t member = 0; member < count; ++member)
        sets.neighbours().forEach(member, millimetresOf(limit.gap) + 0.001L,
                                  [&](const Neighbour& near) {
                                      if (limit.links(roundedGap(near.distance)))
                                          sets.link(member, near);
                                  });
}

}  // namespace

std::vector<SurfaceGroup> joinedSets(std::span<const Capsule> capsules,
                                     std::span<const Length> singleLengths, JoinReach reach,
                                     GapLimit constant, std::optional<Length> period) {
    GrowingSets sets(capsules, singleLengths, period);
    switch (reach) {
        case JoinReach::LongestMember:
            joinByLongestMember(sets, capsules.size());
            break;
        case JoinReach::SmallerSet:
            joinBySmallerSet(sets, capsules.size());
            break;
        case JoinReach::Constant:
            joinByConstant(sets, capsules.size(), constant);
            break;
    }
    return sets.groups();
}

}  // namespace model
