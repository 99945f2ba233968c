// SPDX-License-Identifier: Apache-2.0
#include "judge/reflector_items.h"

#include <algorithm>

#include "judge/plan_hull.h"
#include "judge/recording.h"

namespace model {
namespace {

ReflectorItem singleOf(const Bundle& bundle, std::size_t index, Certainty considered) {
    const LimitTable& table = *bundle.table;
    const Finding& finding = bundle.findings[index];
    const Reflector& reflector = *finding.reflector;
    ReflectorItem item;
    item.findings = {index};
    item.considered = considered;
    item.length = extentOf(reflector.length);
    item.lengthSum = item.length;
    item.area = areaExtent(table, reflector);
    item.throughWall = throughWallExtent(table, reflector);
    item.measured = measuredOf(reflector);
    item.walls = {wallAt(bundle, finding)};
    item.openShape = hasOpenShape(reflector);
    return item;
}

/// From the least depth of its members to the greatest; open where one is not known.
Extent throughWallOfGroup(const Bundle& bundle, const ReflectorItem& group,
                          const std::vector<ReflectorItem>& singles) {
    Extent spanned{0, true};
    std::optional<std::int64_t> least;
    std::int64_t greatest = 0;
    for (const std::size_t finding : group.findings) {
        const Reflector& reflector = *bundle.findings[finding].reflector;
        const Extent own = singles[finding].throughWall;
        spanned = larger(spanned, own);
        if (!reflector.depth) {
            spanned.exact = false;
            continue;
        }
        const std::int64_t top = reflector.depth->millionths();
        greatest = least ? std::max(greatest, top + own.atLeast) : top + own.atLeast;
        least = least ? std::min(*least, top) : top;
    }
    if (least) spanned.atLeast = std::max(spanned.atLeast, greatest - *least);
    return spanned;
}

/// What conditions see of a group: its length, and of each other measure the highest.
MeasuredAll measuredOfGroup(const ReflectorItem& group, const std::vector<ReflectorItem>& singles) {
    MeasuredAll all = singles[group.findings.front()].measured;
    for (const std::size_t finding : group.findings)
        for (std::size_t m = 0; m < all.size(); ++m) {
            const Measured& other = singles[finding].measured[m];
            all[m] = {std::max(all[m].atLeast, other.atLeast), all[m].exact && other.exact};
        }
    all[static_cast<std::size_t>(ReflectorMeasure::IndicationLength)] = {
        Rational(group.length.atLeast), group.length.exact};
    // How wide a group is has no definition.
    all[static_cast<std::size_t>(ReflectorMeasure::LengthToWidth)].exact = false;
    return all;
}

ReflectorItem groupOf(const Bundle& bundle, const Grouped& grouped, std::size_t index,
                      const std::vector<ReflectorItem>& singles) {
    const FindingGroup& group = grouped.groups[index];
    ReflectorItem item;
    item.group = index;
    item.findings = group.findings;
    item.considered = Certainty::No;
    Extent lengths{0, true};
    Extent areas{0, true};
    for (const std::size_t finding : group.findings) {
        const ReflectorItem& member = singles[finding];
        item.considered = std::max(item.considered, member.considered);
        item.openShape = item.openShape || member.openShape;
        lengths = lengths + member.length;
        areas = areas + member.area;
        if (std::ranges::find(item.walls, member.walls.front()) == item.walls.end())
            item.walls.push_back(member.walls.front());
    }
    item.length = {group.length.millionths(), lengths.exact && !item.openShape};
    for (const std::size_t finding : group.findings)
        item.length = larger(item.length, singles[finding].length);
    item.lengthSum = larger(item.length, lengths);
    const Extent hull{outerHullArea(group.unrolled).millionths(), !item.openShape};
    item.area = larger(hull, areas);
    item.throughWall = throughWallOfGroup(bundle, item, singles);
    item.measured = measuredOfGroup(item, singles);
    return item;
}

}  // namespace

Length wallAt(const Bundle& bundle, const Finding& finding) {
    return finding.reflector->wall.value_or(bundle.members[finding.member].examination->thickness);
}

ReflectorItems reflectorItemsOf(const Bundle& bundle, const Grouped& grouped) {
    ReflectorItems all;
    for (std::size_t i = 0; i < bundle.findings.size(); ++i) {
        const Finding& finding = bundle.findings[i];
        const Length wall = wallAt(bundle, finding);
        all.classes.push_back(classChoices(*bundle.table, *finding.reflector, wall));
        all.considered.push_back(recorded(*bundle.table, *finding.reflector, wall));
        all.items.push_back(singleOf(bundle, i, all.considered.back()));
    }
    all.singles = all.items.size();
    for (std::size_t g = 0; g < grouped.groups.size(); ++g) {
        ReflectorItem group = groupOf(bundle, grouped, g, all.items);
        all.items.push_back(std::move(group));
    }
    return all;
}

}  // namespace model
