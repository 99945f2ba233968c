// SPDX-License-Identifier: Apache-2.0
#include "judge/counted.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "surface/bounding_box.h"

namespace model {
namespace {

bool contains(const std::vector<IndicationClass>& classes, IndicationClass classified) {
    return classes.empty() ||
           std::find(classes.begin(), classes.end(), classified) != classes.end();
}

/// The typed area, else that of the ellipse, pi/4 x length x width; none for a hairline.
std::optional<std::int64_t> areaOf(const Indication& indication) {
    if (indication.area) return indication.area->millionths();
    if (!indication.width) return std::nullopt;
    const Real length = millimetresOf(indication.length);
    const Real width = millimetresOf(*indication.width);
    return roundedArea(std::numbers::pi_v<Real> / 4 * length * width).millionths();
}

std::optional<std::int64_t> weightOf(const Finding& finding, Measure measure) {
    switch (measure) {
        case Measure::Number:
            return kMillion;
        case Measure::Areas:
            return areaOf(*finding.source);
        default:
            return finding.length().millionths();
    }
}

std::optional<std::int64_t> weightOf(const Bundle& bundle, const FindingGroup& group,
                                     Measure measure) {
    switch (measure) {
        case Measure::Number:
            return kMillion;
        case Measure::LengthSum:
            return group.counted.millionths();
        case Measure::EachLength:
            return group.length.millionths();
        case Measure::Areas:
            break;
    }
    std::int64_t sum = 0;
    for (const std::size_t finding : group.findings) {
        const auto area = areaOf(*bundle.findings[finding].source);
        if (!area) return std::nullopt;
        sum += *area;
    }
    return sum;
}

Real largestFrameDiagonal(const LimitTable& table) {
    Real largest = 0;
    const auto widen = [&](const FrameRule& frame) {
        if (frame.known != Known::Given) return;
        const Real width = frame.shape.width.approximately();
        const Real height = frame.shape.height.approximately();
        largest = std::max(largest, std::sqrt(width * width + height * height));
    };
    widen(table.frame);
    for (const Rule& rule : table.rules)
        for (const auto& [level, frame] : rule.frames) widen(frame);
    return largest;
}

class Selection {
public:
    Selection(const ZoneView& view, const std::vector<IndicationClass>& classes, Measure measure)
        : view_(view), classes_(classes), measure_(measure) {}

    [[nodiscard]] bool takesGroup(const FindingGroup& group) const {
        if (measure_ == Measure::Number && classes_.empty()) return false;
        return contains(classes_, group.classified) &&
               view_.considers(group.classified, group.length);
    }

    [[nodiscard]] bool takesSingle(std::size_t index) const {
        const Finding& finding = view_.bundle->findings[index];
        if (!view_.grouped->relevant[index] || !finding.classified) return false;
        if (!contains(classes_, *finding.classified)) return false;
        if (!view_.considers(*finding.classified, finding.length())) return false;
        if (finding.source->removed && isNonLinear(*finding.classified) &&
            !(measure_ == Measure::Number && classes_.empty()))
            return false;
        const auto group = view_.grouped->groupOf[index];
        return !group || !standsFor(view_.grouped->groups[*group], *finding.classified);
    }

private:
    /// Whether a group already stands for a member of class `single` in this measure.
    [[nodiscard]] bool standsFor(const FindingGroup& group, IndicationClass single) const {
        if (group.replaces) return true;
        if (!takesGroup(group)) return false;
        return group.classified == single || measure_ == Measure::LengthSum ||
               measure_ == Measure::Areas;
    }

    const ZoneView& view_;
    const std::vector<IndicationClass>& classes_;
    Measure measure_;
};

}  // namespace

Vicinity vicinityOf(const Bundle& bundle, std::size_t member, const Grouped& grouped) {
    const auto isOwnGroup = [&](const FindingGroup& group) {
        return std::any_of(group.findings.begin(), group.findings.end(), [&](std::size_t finding) {
            return bundle.findings[finding].member == member;
        });
    };
    BoundingBox own;
    for (const Finding& finding : bundle.findings)
        if (finding.member == member) own.add(finding.capsule);
    for (const FindingGroup& group : grouped.groups)
        if (isOwnGroup(group))
            for (const Capsule& part : group.unrolled) own.add(part);
    const Real reach = largestFrameDiagonal(*bundle.table) + 1;
    // Images on a round surface are left to the frame search.
    const auto isNear = [&](const BoundingBox& box) {
        return bundle.period.has_value() || own.isNear(box, reach);
    };
    Vicinity vicinity;
    for (std::size_t i = 0; i < bundle.findings.size(); ++i) {
        BoundingBox box;
        box.add(bundle.findings[i].capsule);
        if (isNear(box)) vicinity.findings.push_back(i);
    }
    for (std::size_t g = 0; g < grouped.groups.size(); ++g) {
        BoundingBox box;
        for (const Capsule& part : grouped.groups[g].unrolled) box.add(part);
        if (isNear(box)) vicinity.groups.push_back(g);
    }
    return vicinity;
}

std::string ZoneView::nameOf(std::size_t finding) const {
    const Finding& found = bundle->findings[finding];
    if (found.member == member) return found.id();
    return bundle->members[found.member].examination->zone + "/" + found.id();
}

std::string Counted::nameIn(const ZoneView& view) const {
    return group ? view.grouped->groups[*group].id : view.nameOf(finding);
}

std::vector<Counted> countedIn(const ZoneView& view, const std::vector<IndicationClass>& classes,
                               Measure measure, bool ownOnly) {
    const Selection selection(view, classes, measure);
    std::vector<Counted> counted;
    for (const std::size_t i : view.vicinity->findings) {
        if ((ownOnly && !view.isOwn(i)) || !selection.takesSingle(i)) continue;
        const Finding& finding = view.bundle->findings[i];
        counted.push_back(
            {std::nullopt, i, finding.length(), weightOf(finding, measure), view.isOwn(i)});
    }
    for (const std::size_t g : view.vicinity->groups) {
        const FindingGroup& group = view.grouped->groups[g];
        if (!selection.takesGroup(group)) continue;
        const bool own = std::any_of(group.findings.begin(), group.findings.end(),
                                     [&](std::size_t finding) { return view.isOwn(finding); });
        if (ownOnly && !own) continue;
        counted.push_back({g, 0, group.length, weightOf(*view.bundle, group, measure), own});
    }
    return counted;
}

}  // namespace model
