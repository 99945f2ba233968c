// SPDX-License-Identifier: Apache-2.0
// Clusters: ultrasonic indications of which two lie within a cube, two faces parallel to the
// surface, turned as it may be. Belonging to a cluster acquits of nothing.
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "judge/plan_hull.h"
#include "judge/reflector_check.h"
#include "surface/neighbours.h"

namespace model {
namespace {

/// Whether one cube's height takes a part of both: open where a depth or an extent is missing.
Certainty withinDepth(const ReflectorView& view, const ReflectorItem& a, const ReflectorItem& b,
                      Length cube) {
    const Reflector& first = view.reflector(a);
    const Reflector& second = view.reflector(b);
    if (!first.depth || !second.depth) return Certainty::Open;
    const bool firstAbove = *first.depth <= *second.depth;
    const Extent extent = firstAbove ? a.throughWall : b.throughWall;
    const std::int64_t top = (firstAbove ? first : second).depth->millionths();
    const std::int64_t below = (firstAbove ? second : first).depth->millionths();
    if (below - top - extent.atLeast <= cube.millionths()) return Certainty::Yes;
    return extent.exact ? Certainty::No : Certainty::Open;
}

struct Clusters {
    std::vector<Certainty> clustered;  // by finding
    std::vector<std::size_t> set;      // by finding: one that stands for its certain cluster
    bool open = false;                 // whether some belong together only perhaps

    std::size_t root(std::size_t finding) {
        while (set[finding] != finding) finding = set[finding] = set[set[finding]];
        return finding;
    }
    void link(std::size_t a, std::size_t b, Certainty certainty) {
        clustered[a] = std::max(clustered[a], certainty);
        clustered[b] = std::max(clustered[b], certainty);
        open = open || certainty == Certainty::Open;
        if (certainty == Certainty::Yes) set[root(a)] = root(b);
    }
};

Clusters clustersOf(const ReflectorView& view, const std::vector<std::size_t>& considered) {
    const Bundle& bundle = *view.zone->bundle;
    Clusters found;
    found.clustered.assign(bundle.findings.size(), Certainty::No);
    for (std::size_t i = 0; i < bundle.findings.size(); ++i) found.set.push_back(i);
    std::vector<Capsule> capsules;
    capsules.reserve(considered.size());
    for (const std::size_t finding : considered)
        capsules.push_back(bundle.findings[finding].capsule);
    std::optional<Real> period;
    if (bundle.period) period = millimetresOf(*bundle.period);
    const Neighbours neighbours(capsules, period);
    const Length cube = view.table().clusters.cube;
    const Real diagonal = millimetresOf(cube) * std::numbers::sqrt2_v<Real> + 1e-6L;
    for (std::size_t i = 0; i < considered.size(); ++i) {
        const ReflectorItem& item = view.items->items[considered[i]];
        neighbours.forEach(i, diagonal, [&](const Neighbour& near) {
            const ReflectorItem& other = view.items->items[considered[near.index]];
            const Certainty within = withinDepth(view, item, other, cube);
            if (within != Certainty::No) found.link(considered[i], considered[near.index], within);
        });
    }
    // One whose length or width was not measured may reach any other.
    const auto unbounded = std::ranges::find_if(
        considered, [&](std::size_t finding) { return view.items->items[finding].openShape; });
    if (unbounded != considered.end())
        for (const std::size_t finding : considered)
            if (finding != *unbounded) found.link(finding, *unbounded, Certainty::Open);
    return found;
}

/// Whether each cluster spreads over the table's area, whatever is still open.
bool allSpread(const ReflectorView& view, Clusters& clusters) {
    const std::optional<Area>& least = view.table().clusters.spread;
    if (!least) return true;
    if (clusters.open) return false;
    std::map<std::size_t, std::vector<Capsule>> plans;
    for (std::size_t i = 0; i < clusters.clustered.size(); ++i)
        if (clusters.clustered[i] != Certainty::No)
            plans[clusters.root(i)].push_back(view.zone->bundle->findings[i].capsule);
    return std::ranges::all_of(
        plans, [&](const auto& plan) { return innerHullArea(plan.second) >= *least; });
}

}  // namespace

RuleOutcome checkClusters(const ReflectorView& view, const Rule& rule, const LevelOrder& order) {
    std::vector<std::size_t> considered;
    for (std::size_t i = 0; i < view.items->singles; ++i)
        if (view.takes(rule, ClassSet{}.set(), view.items->items[i]) != Certainty::No)
            considered.push_back(i);
    Clusters clusters = clustersOf(view, considered);
    Check check = beginCheck(rule, order);
    Extent sure{0, true};
    Extent possible{0, true};
    bool own = false;
    for (const std::size_t i : considered) {
        if (clusters.clustered[i] == Certainty::No) continue;
        const Extent area = view.items->items[i].area;
        possible = possible + area;
        if (clusters.clustered[i] == Certainty::Yes) sure = sure + area;
        check.members.push_back(view.zone->nameOf(i));
        own = own || view.zone->isOwn(i);
    }
    const Length wall = view.examination().thickness;
    AtRow at{rowFor(rule, order.level, wall), std::nullopt, std::nullopt, ""};
    if (at.row != nullptr) at.limit = view.limitIn(at.row->limit, wall);
    if (!own) {
        check.members.clear();
        check.measured = 0;
        at.passes = true;
    } else if (rule.kind != RuleKind::TotalArea || view.table().clusters.known != Known::Given) {
        at.reason = "what the rule measures of clusters is unknown";
    } else if (at.row != nullptr && !at.limit) {
        at.reason = whyNoLimit(at.row->limit, order.level);
    } else if (at.limit) {
        if (possible.exact) check.measured = possible.atLeast;
        if (passesAs(Certainty::Yes, sure, rule.passes, *at.limit) == false) {
            at.passes = false;
            check.measured = sure.atLeast;
        } else if (passesAs(Certainty::Open, possible, rule.passes, *at.limit) != true) {
            at.reason = "a depth, an extent or an area of a cluster is missing";
        } else if (!allSpread(view, clusters)) {
            at.reason = "the limit is for clusters spread over " +
                        toText(*view.table().clusters.spread) +
                        " mm2, which one of them does not do for certain";
        } else {
            at.passes = true;
        }
    }
    return concluded(std::move(check), rule, order, {at});
}

}  // namespace model
