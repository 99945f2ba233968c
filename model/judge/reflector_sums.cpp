// SPDX-License-Identifier: Apache-2.0
// Rules about sums, shares and counts of ultrasonic indications.
//
// What certainly counts gives the value that can fail; what perhaps counts beside it, the value
// that must pass.
#include <algorithm>

#include "judge/framing.h"
#include "judge/reflector_check.h"

namespace model {
namespace {

constexpr std::int64_t kMost = std::int64_t{1} << 61;

class SumCheck {
public:
    SumCheck(const ReflectorView& view, const Rule& rule, const LevelOrder& order)
        : view_(view), rule_(rule), order_(order), check_(beginCheck(rule, order)) {}

    RuleOutcome run();

private:
    [[nodiscard]] bool isCount() const { return rule_.kind == RuleKind::Count; }
    [[nodiscard]] const FrameRule& frameRule() const;
    [[nodiscard]] Extent weightOf(const ReflectorItem& item) const;
    [[nodiscard]] bool groupStandsFor(const ReflectorItem& single, Certainty taken) const;
    void gather();
    void sumAll();
    void searchFrames(const FrameShape& shape);
    /// The value in the rule's unit: an area as its share where the rule asks for one.
    [[nodiscard]] std::optional<std::int64_t> inUnit(std::int64_t value) const;
    void decide(AtRow& at) const;
    [[nodiscard]] std::string whyOpen() const;
    [[nodiscard]] std::vector<const RuleRow*> rows() const;

    const ReflectorView& view_;
    const Rule& rule_;
    const LevelOrder& order_;
    Check check_;
    bool framed_ = false;
    std::vector<Counted> all_;            // what perhaps counts
    std::vector<bool> certain_;           // by all_
    std::vector<std::string> openNames_;  // what counts only perhaps
    std::vector<std::string> unmeasured_;
    std::vector<Length> walls_;
    bool openShape_ = false;
    std::int64_t sure_ = 0;
    std::int64_t possible_ = 0;
};

const FrameRule& SumCheck::frameRule() const {
    const auto own = rule_.frames.find(order_.level);
    return own == rule_.frames.end() ? view_.table().frame : own->second;
}

Extent SumCheck::weightOf(const ReflectorItem& item) const {
    if (isCount()) return {kMillion, true};
    return rule_.kind == RuleKind::CumulativeLength ? item.lengthSum : item.area;
}

/// Whether its group is summed in its place, no less surely than it would be itself.
bool SumCheck::groupStandsFor(const ReflectorItem& single, Certainty taken) const {
    const auto group = view_.zone->grouped->groupOf[single.findings.front()];
    if (!group || isCount() || view_.trial) return false;
    const ReflectorItem& item = view_.items->items[view_.items->singles + *group];
    return view_.takes(rule_, setOf(order_.classes), item) >= taken;
}

void SumCheck::gather() {
    const ClassSet classes = setOf(order_.classes);
    for (const std::size_t index : view_.lookedAt()) {
        const ReflectorItem& item = view_.items->items[index];
        const bool own = view_.isOwn(item);
        if ((!framed_ && !own) || (item.group && (isCount() || view_.trial))) continue;
        const Certainty taken = view_.takes(rule_, classes, item);
        if (taken == Certainty::No || (!item.group && groupStandsFor(item, taken))) continue;
        const Extent weight = weightOf(item);
        all_.push_back({item.group, item.findings.front(), Length{}, weight.atLeast, own});
        certain_.push_back(taken == Certainty::Yes);
        if (taken == Certainty::Open) openNames_.push_back(view_.nameOf(item));
        if (!weight.exact) unmeasured_.push_back(view_.nameOf(item));
        openShape_ = openShape_ || item.openShape;
        if (own) walls_.insert(walls_.end(), item.walls.begin(), item.walls.end());
    }
}

void SumCheck::sumAll() {
    Extent sure;
    Extent possible;
    for (std::size_t i = 0; i < all_.size(); ++i) {
        const Extent weight{*all_[i].weight, true};
        possible = possible + weight;
        if (certain_[i]) sure = sure + weight;
        check_.members.push_back(all_[i].nameIn(*view_.zone));
    }
    sure_ = sure.atLeast;
    possible_ = possible.atLeast;
}

void SumCheck::searchFrames(const FrameShape& shape) {
    std::vector<Counted> sure;
    for (std::size_t i = 0; i < all_.size(); ++i)
        if (certain_[i]) sure.push_back(all_[i]);
    const auto worstSure = worstFrameOf(*view_.zone, sure, shape);
    sure_ = worstSure ? worstSure->value : 0;
    if (openShape_) {
        // How far a frame must go to touch it is open: no frame counts more than there is.
        check_.note = "with a length or width missing, all that the surface has is counted";
        return;
    }
    const auto worst = worstFrameOf(*view_.zone, all_, shape);
    if (!worst) return;
    possible_ = worst->value;
    check_.members.clear();
    for (const std::size_t counted : worst->counted)
        check_.members.push_back(all_[counted].nameIn(*view_.zone));
    check_.frame = worst->frame;
}

std::optional<std::int64_t> SumCheck::inUnit(std::int64_t value) const {
    if (rule_.kind != RuleKind::AreaShare) return value;
    const auto examined = view_.examinedArea();
    if (!examined) return std::nullopt;
    // Percent, rounded up: against acceptance, and exact against any limit of 6 decimals.
    const Int128 scaled = static_cast<Int128>(value) * 100 * kMillion;
    const Int128 share = (scaled + examined->millionths() - 1) / examined->millionths();
    return static_cast<std::int64_t>(std::min<Int128>(share, kMost));
}

std::string SumCheck::whyOpen() const {
    const auto listed = [](const std::vector<std::string>& names) {
        std::string text;
        for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
        return text;
    };
    if (!unmeasured_.empty()) return "not measured: " + listed(unmeasured_);
    if (!openNames_.empty())
        return "whether it counts is open, as its kind or a measure is missing: " +
               listed(openNames_);
    if (framed_ && frameRule().known == Known::Unknown) return "the table's frame is unknown";
    return "a length or width is missing, so that no frame can be laid over it";
}

void SumCheck::decide(AtRow& at) const {
    if (!at.limit) {
        at.reason = whyNoLimit(at.row->limit, order_.level);
        return;
    }
    const auto sure = inUnit(sure_);
    const auto possible = inUnit(possible_);
    if (!sure || !possible) {
        at.reason = "the examined area is not stated, or nothing of it was examined";
        return;
    }
    const bool upper = rule_.passes == Comparison::AtMost || rule_.passes == Comparison::Less;
    if (upper && !holds(Rational(*sure), rule_.passes, *at.limit))
        at.passes = false;
    else if (upper && unmeasured_.empty() && holds(Rational(*possible), rule_.passes, *at.limit))
        at.passes = true;
    else
        at.reason = whyOpen();
}

/// The row of the zone's thickness and those of the walls that are counted, each once.
std::vector<const RuleRow*> SumCheck::rows() const {
    std::vector<const RuleRow*> rows{rowFor(rule_, order_.level, view_.examination().thickness)};
    for (const Length wall : walls_)
        if (const RuleRow* row = rowFor(rule_, order_.level, wall);
            std::ranges::find(rows, row) == rows.end())
            rows.push_back(row);
    return rows;
}

RuleOutcome SumCheck::run() {
    framed_ = rule_.framed && frameRule().known != Known::Absent;
    gather();
    const bool anyOwn = std::ranges::any_of(all_, &Counted::own);
    if (anyOwn) {
        sumAll();
        if (framed_ && frameRule().known == Known::Given) searchFrames(frameRule().shape);
        if (framed_ && frameRule().known == Known::Unknown) sure_ = 0;
    }
    std::vector<AtRow> at;
    for (const RuleRow* row : rows()) {
        AtRow& here = at.emplace_back(AtRow{row, std::nullopt, std::nullopt, ""});
        if (row == nullptr) continue;
        here.limit = view_.limitIn(row->limit, view_.examination().thickness);
        if (anyOwn)
            decide(here);
        else
            here.passes = true;
    }
    // Shown is what decided: what fails by what is certain, else all that may count.
    const bool fails =
        std::ranges::any_of(at, [](const AtRow& one) { return one.passes == false; });
    if (fails)
        check_.measured = inUnit(sure_);
    else if (unmeasured_.empty())
        check_.measured = anyOwn ? inUnit(possible_) : 0;
    return concluded(std::move(check_), rule_, order_, at);
}

}  // namespace

RuleOutcome checkReflectorSum(const ReflectorView& view, const Rule& rule,
                              const LevelOrder& order) {
    return SumCheck(view, rule, order).run();
}

}  // namespace model
