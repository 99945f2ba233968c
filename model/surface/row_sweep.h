// SPDX-License-Identifier: Apache-2.0
// The longest row on any tangent of one capsule: the inner step of rows.h.
#pragma once

#include <cstdint>
#include <vector>

#include "surface/groups.h"

namespace model {

/// A capsule, or one of its images on a round surface.
struct RowNode {
    Capsule capsule;
    std::size_t index = 0;  ///< of the capsule that it is or shows
};

/// A candidate row; `nodes` in order along the line. Empty: none.
struct CandidateRow {
    Length length;
    std::vector<std::size_t> nodes;
    std::vector<std::size_t> members;  ///< the capsules' indices, ascending

    /// Longer, then more members, then earlier in the sheet.
    [[nodiscard]] bool isBetterThan(const CandidateRow& other) const;
};

/// The capsules that small gaps connect, with what the sweeps round them share.
class RowField {
public:
    /// `links` lists, for each node, the nodes to which its gap links. `closes`: some chain of
    /// links runs round the surface, whose period is `period`.
    RowField(std::vector<RowNode> nodes, std::vector<std::vector<std::size_t>> links,
             std::size_t leastMembers, bool closes, Length period);

    /// The best row among lines that are tangent to node `pivot`, of nodes still `alive`.
    CandidateRow longestRowAt(std::size_t pivot, const std::vector<bool>& alive);

    [[nodiscard]] const std::vector<RowNode>& nodes() const { return nodes_; }

private:
    struct Event {
        double angle;
        bool enters;
        std::size_t node;
    };

    void collectEvents(std::size_t pivot, std::size_t other, std::vector<Event>& events,
                       std::vector<std::size_t>& metAtZero) const;
    [[nodiscard]] bool isMet(std::size_t pivot, std::size_t other, double angle) const;
    void advance(std::vector<std::size_t>& order, double from, double to, bool grown,
                 CandidateRow& best);
    void sortAlong(std::vector<std::size_t>& order, double angle) const;
    void tryOrder(const std::vector<std::size_t>& order, CandidateRow& best);
    [[nodiscard]] CandidateRow rowThrough(const std::vector<std::size_t>& order, std::size_t from,
                                          std::size_t to) const;
    std::int64_t reachNm(std::size_t a, std::size_t b);

    std::vector<RowNode> nodes_;
    std::vector<std::vector<std::size_t>> links_;
    std::vector<std::vector<bool>> linked_;
    std::vector<std::vector<std::int64_t>> reaches_;  // nm, -1: not computed yet
    std::size_t leastMembers_;
    bool closes_;
    Length period_;

    // Work space of tryOrder.
    std::vector<int> ending_;
    std::vector<int> starting_;
    std::vector<int> path_;
};

}  // namespace model
