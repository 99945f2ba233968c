// SPDX-License-Identifier: Apache-2.0
#include "surface/rows.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <map>

#include "surface/neighbours.h"
#include "surface/row_sweep.h"

namespace model {
namespace {

using Links = std::vector<std::vector<Neighbour>>;

Links linksOf(const Neighbours& neighbours, std::size_t count, GapLimit limit) {
    Links links(count);
    for (std::size_t i = 0; i < count; ++i)
        neighbours.forEach(i, millimetresOf(limit.gap) + 0.001L, [&](const Neighbour& near) {
            if (limit.links(roundedGap(near.distance))) links[i].push_back(near);
        });
    return links;
}

/// Capsules that links connect, each with the periods that its image lies from its own place.
struct Component {
    std::vector<std::size_t> members;
    std::vector<int> turns;
    bool closes = false;
};

std::vector<Component> componentsOf(const Links& links) {
    std::vector<Component> components;
    std::vector<bool> seen(links.size(), false);
    std::vector<int> turnsOf(links.size(), 0);
    for (std::size_t start = 0; start < links.size(); ++start) {
        if (seen[start]) continue;
        Component component;
        std::deque<std::size_t> waiting{start};
        seen[start] = true;
        while (!waiting.empty()) {
            const std::size_t at = waiting.front();
            waiting.pop_front();
            component.members.push_back(at);
            component.turns.push_back(turnsOf[at]);
            for (const Neighbour& near : links[at]) {
                if (!seen[near.index]) {
                    seen[near.index] = true;
                    turnsOf[near.index] = turnsOf[at] + near.turns;
                    waiting.push_back(near.index);
                } else if (turnsOf[near.index] != turnsOf[at] + near.turns) {
                    component.closes = true;
                }
            }
        }
        components.push_back(std::move(component));
    }
    return components;
}

/// The field of one component. A chain that runs round the surface is given as many images of each
/// capsule as its members could ever fill, laid end to end.
RowField fieldOf(const Component& component, const Links& links, const Neighbours& neighbours,
                 std::span<const Capsule> capsules, GapLimit limit, std::size_t leastMembers,
                 std::optional<Length> period) {
    int copies = 1;
    if (component.closes) {
        Real filled = 0;
        for (const std::size_t member : component.members)
            filled +=
                2 * (capsules[member].half + capsules[member].radius) + millimetresOf(limit.gap);
        copies = static_cast<int>(std::floor(filled / millimetresOf(*period))) + 2;
    }
    std::vector<RowNode> nodes;
    std::map<std::pair<std::size_t, int>, std::size_t> nodeOf;
    for (std::size_t i = 0; i < component.members.size(); ++i)
        for (int copy = 0; copy < copies; ++copy) {
            const int turns = component.turns[i] + copy;
            nodeOf[{component.members[i], turns}] = nodes.size();
            nodes.push_back({neighbours.image(component.members[i], turns), component.members[i]});
        }
    std::vector<std::vector<std::size_t>> nodeLinks(nodes.size());
    for (const auto& [key, node] : nodeOf)
        for (const Neighbour& near : links[key.first])
            if (const auto to = nodeOf.find({near.index, key.second + near.turns});
                to != nodeOf.end())
                nodeLinks[node].push_back(to->second);
    return {std::move(nodes), std::move(nodeLinks), leastMembers, component.closes,
            period.value_or(Length{})};
}

/// Takes the rows of one field, best first. Removing capsules can only shorten what a tangent
/// offers, so a tangent whose best row is untouched needs no second look.
std::vector<CandidateRow> takeRows(RowField& field, std::vector<bool>& alive) {
    const std::size_t count = field.nodes().size();
    std::vector<CandidateRow> offered(count);
    for (std::size_t i = 0; i < count; ++i) offered[i] = field.longestRowAt(i, alive);
    std::vector<CandidateRow> taken;
    while (true) {
        std::size_t best = count;
        for (std::size_t i = 0; i < count; ++i)
            if (!offered[i].nodes.empty() &&
                (best == count || offered[i].isBetterThan(offered[best])))
                best = i;
        if (best == count) return taken;
        const CandidateRow row = offered[best];
        const bool stale = std::any_of(row.members.begin(), row.members.end(),
                                       [&](std::size_t member) { return !alive[member]; });
        if (!stale) {
            for (const std::size_t member : row.members) alive[member] = false;
            taken.push_back(row);
        }
        // Every row lies on a tangent of one of its own members: a dead pivot offers nothing.
        offered[best] =
            alive[field.nodes()[best].index] ? field.longestRowAt(best, alive) : CandidateRow{};
    }
}

}  // namespace

std::vector<SurfaceGroup> rowsOf(std::span<const Capsule> capsules, GapLimit limit,
                                 std::size_t leastMembers, std::optional<Length> period) {
    const Neighbours neighbours(
        capsules, period ? std::optional<Real>(millimetresOf(*period)) : std::nullopt);
    const Links links = linksOf(neighbours, capsules.size(), limit);
    std::vector<bool> alive(capsules.size(), true);
    std::vector<std::pair<CandidateRow, SurfaceGroup>> rows;
    for (const Component& component : componentsOf(links)) {
        if (component.members.size() < leastMembers) continue;
        RowField field =
            fieldOf(component, links, neighbours, capsules, limit, leastMembers, period);
        for (CandidateRow& row : takeRows(field, alive)) {
            SurfaceGroup group;
            for (const std::size_t node : row.nodes) {
                group.members.push_back(field.nodes()[node].index);
                group.unrolled.push_back(field.nodes()[node].capsule);
            }
            group.length = row.length;
            rows.emplace_back(std::move(row), std::move(group));
        }
    }
    std::stable_sort(rows.begin(), rows.end(),
                     [](const auto& a, const auto& b) { return a.first.isBetterThan(b.first); });
    std::vector<SurfaceGroup> groups;
    groups.reserve(rows.size());
    for (auto& [row, group] : rows) groups.push_back(std::move(group));
    return groups;
}

}  // namespace model
