// SPDX-License-Identifier: Apache-2.0
#include "judge/counted.h"

#include <algorithm>
#include <numbers>

namespace model {
namespace {

bool isNonLinear(IndicationClass classified) {
    return classified != IndicationClass::Linear && classified != IndicationClass::Aligned;
}

bool contains(const std::vector<IndicationClass>& classes, IndicationClass classified) {
    return classes.empty() ||
           std::find(classes.begin(), classes.end(), classified) != classes.end();
}

/// The typed area, else that of the ellipse, pi/4 x length x width; none for a hairline.
std::optional<std::int64_t> areaOf(const Indication& indication) {
    if (indication.area) return indication.area->millionths();
    if (!indication.width) return std::nullopt;
    const Real length = static_cast<Real>(indication.length.millionths()) / 1e6L;
    const Real width = static_cast<Real>(indication.width->millionths()) / 1e6L;
    return roundedArea(std::numbers::pi_v<Real> / 4 * length * width).millionths();
}

std::optional<std::int64_t> weightOf(const Finding& finding, Measure measure) {
    switch (measure) {
        case Measure::Number:
            return kMillion;
        case Measure::Areas:
            return areaOf(*finding.source);
        default:
            return finding.source->length.millionths();
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

class Selection {
public:
    Selection(const ZoneView& view, const std::vector<IndicationClass>& classes, Measure measure)
        : view_(view), classes_(classes), measure_(measure) {}

    [[nodiscard]] bool takesGroup(const FindingGroup& group) const {
        if (measure_ == Measure::Number && classes_.empty()) return false;
        return contains(classes_, group.classified) && considers(group.classified, group.length);
    }

    [[nodiscard]] bool takesSingle(std::size_t index) const {
        const Finding& finding = view_.bundle->findings[index];
        if (!view_.grouped->relevant[index] || !finding.classified) return false;
        if (!contains(classes_, *finding.classified)) return false;
        if (!considers(*finding.classified, finding.source->length)) return false;
        if (finding.source->removed && isNonLinear(*finding.classified) &&
            !(measure_ == Measure::Number && classes_.empty()))
            return false;
        const auto group = view_.grouped->groupOf[index];
        return !group || !standsFor(view_.grouped->groups[*group], *finding.classified);
    }

private:
    [[nodiscard]] bool considers(IndicationClass classified, Length length) const {
        return groupsAfterRelevance(*view_.bundle->table) ||
               isConsidered(*view_.bundle->table, classified, length, *view_.levels);
    }

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

std::string ZoneView::nameOf(std::size_t finding) const {
    const Finding& found = bundle->findings[finding];
    if (found.member == member) return found.source->id;
    return bundle->members[found.member].examination->zone + "/" + found.source->id;
}

std::string Counted::nameIn(const ZoneView& view) const {
    return group ? view.grouped->groups[*group].id : view.nameOf(finding);
}

std::vector<Counted> countedIn(const ZoneView& view, const std::vector<IndicationClass>& classes,
                               Measure measure, bool ownOnly) {
    const Selection selection(view, classes, measure);
    std::vector<Counted> counted;
    for (std::size_t i = 0; i < view.bundle->findings.size(); ++i) {
        if ((ownOnly && !view.isOwn(i)) || !selection.takesSingle(i)) continue;
        const Finding& finding = view.bundle->findings[i];
        counted.push_back(
            {std::nullopt, i, finding.source->length, weightOf(finding, measure), view.isOwn(i)});
    }
    for (std::size_t g = 0; g < view.grouped->groups.size(); ++g) {
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
