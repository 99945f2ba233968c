// SPDX-License-Identifier: Apache-2.0
// Rules about each ultrasonic indication and each group by itself.
#include <algorithm>
#include <set>
#include <string_view>

#include "judge/reflector_check.h"

namespace model {
namespace {

/// One indication against the limit for one wall of it.
struct Judged {
    AtRow at;
    std::optional<std::int64_t> measured;
    std::string name;
    double share = 0;  ///< of the limit, to find the one to show
};

class EachCheck {
public:
    EachCheck(const ReflectorView& view, const Rule& rule, const LevelOrder& order)
        : view_(view), rule_(rule), order_(order) {}

    RuleOutcome run();

private:
    void judge(const ReflectorItem& item, Certainty taken, Length wall);
    [[nodiscard]] std::optional<Extent> extentFor(const ReflectorItem& item) const;
    [[nodiscard]] std::string whyOpen(const ReflectorItem& item, Extent extent) const;
    [[nodiscard]] bool isNotMeasurable(const ReflectorItem& item) const;
    RuleOutcome conclude();

    const ReflectorView& view_;
    const Rule& rule_;
    const LevelOrder& order_;
    std::vector<Judged> judged_;
    bool outside_ = false;
};

/// What the rule measures of it; none where it does not look at groups, or at this loss.
std::optional<Extent> EachCheck::extentFor(const ReflectorItem& item) const {
    switch (rule_.kind) {
        case RuleKind::IndividualLength:
            return item.length;
        case RuleKind::IndividualArea:
            return item.area;
        case RuleKind::ThroughWallExtent:
            return item.throughWall;
        case RuleKind::EquivalentReflector:
            if (item.group) return std::nullopt;
            return extentOf(view_.reflector(item).fbh);
        default:
            if (item.group || !view_.reflector(item).backWallLossExplained.empty())
                return std::nullopt;
            return extentOf(view_.reflector(item).backWallLoss);
    }
}

bool EachCheck::isNotMeasurable(const ReflectorItem& item) const {
    if (item.group) return false;
    const Reflector& reflector = view_.reflector(item);
    if (rule_.kind == RuleKind::ThroughWallExtent) return reflector.throughWallNotMeasurable;
    if (rule_.kind == RuleKind::IndividualLength) return reflector.lengthNotMeasurable;
    return rule_.kind == RuleKind::IndividualArea &&
           (reflector.lengthNotMeasurable || reflector.widthNotMeasurable);
}

std::string EachCheck::whyOpen(const ReflectorItem& item, Extent extent) const {
    const std::string name = view_.nameOf(item);
    if (!extent.exact)
        return name + (isNotMeasurable(item)
                           ? " is not measurable, and the table does not say what it then counts as"
                       : item.group ? " is not measured in all its members"
                                    : " was not measured");
    return "whether the rule looks at " + name + " is open: its kind or a measure is missing";
}

void EachCheck::judge(const ReflectorItem& item, Certainty taken, Length wall) {
    const std::optional<Extent> extent = extentFor(item);
    if (!extent) return;
    Judged one;
    one.name = view_.nameOf(item);
    one.at.row = rowFor(rule_, order_.level, wall);
    if (one.at.row == nullptr) {
        outside_ = true;
        return;
    }
    const Cell& cell = one.at.row->limit;
    if (cell.type == Cell::Type::None) return;
    if (extent->exact || extent->atLeast > 0) one.measured = extent->atLeast;
    one.at.limit = view_.limitIn(cell, wall);
    if (!one.at.limit) {
        one.at.reason = whyNoLimit(cell, order_.level);
    } else {
        one.at.passes = passesAs(taken, *extent, rule_.passes, *one.at.limit);
        if (!one.at.passes) one.at.reason = whyOpen(item, *extent);
        const double limit = static_cast<double>(one.at.limit->numerator) /
                             static_cast<double>(one.at.limit->denominator);
        one.share = static_cast<double>(extent->atLeast) / std::max(limit, 1e-9);
    }
    judged_.push_back(std::move(one));
}

RuleOutcome EachCheck::conclude() {
    const Judged* worst = &judged_.front();
    for (const Judged& one : judged_) {
        const int severity = severityOf(one.at.passes);
        const int held = severityOf(worst->at.passes);
        if (severity > held || (severity == held && one.share > worst->share)) worst = &one;
    }
    Check check = beginCheck(rule_, order_);
    check.measured = worst->measured;
    std::set<std::string_view> names;
    for (const Judged& one : judged_) {
        const bool named = worst->at.passes == true
                               ? one.share == worst->share
                               : severityOf(one.at.passes) == severityOf(worst->at.passes);
        if (named && names.insert(one.name).second) check.members.push_back(one.name);
    }
    return concluded(std::move(check), rule_, order_, {worst->at});
}

RuleOutcome EachCheck::run() {
    const ClassSet classes = setOf(order_.classes);
    bool any = false;
    for (const std::size_t index : view_.lookedAt()) {
        const ReflectorItem& item = view_.items->items[index];
        if (!view_.isOwn(item)) continue;
        const Certainty taken = view_.takes(rule_, classes, item);
        if (taken == Certainty::No) continue;
        any = true;
        for (const Length wall : item.walls) judge(item, taken, wall);
    }
    const Length thickness = view_.examination().thickness;
    const RuleRow* zone = rowFor(rule_, order_.level, thickness);
    RuleOutcome outcome;
    if (!judged_.empty()) {
        outcome = conclude();
    } else if (zone != nullptr && !outside_) {
        Check check = beginCheck(rule_, order_);
        if (!any) check.measured = 0;
        outcome = concluded(std::move(check), rule_, order_,
                            {{zone, view_.limitIn(zone->limit, thickness), true, ""}});
    }
    outcome.outside = outcome.outside || outside_ || zone == nullptr;
    return outcome;
}

}  // namespace

RuleOutcome checkEachReflector(const ReflectorView& view, const Rule& rule,
                               const LevelOrder& order) {
    return EachCheck(view, rule, order).run();
}

}  // namespace model
