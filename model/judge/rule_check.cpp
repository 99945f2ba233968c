// SPDX-License-Identifier: Apache-2.0
#include "judge/rule_check.h"

#include <algorithm>

#include "judge/framing.h"
#include "judge/rule_limit.h"
#include "judge/spacing.h"

namespace model {
namespace {

/// The greatest whole number of millionths that still passes "at most" or "less than" `limit`.
std::int64_t largestPassing(Rational limit, Comparison comparison) {
    std::int64_t whole = limit.numerator / limit.denominator;
    if (limit.numerator % limit.denominator < 0) --whole;  // floor
    return comparison == Comparison::Less && Rational(whole) == limit ? whole - 1 : whole;
}

class Application {
public:
    Application(const ZoneView& view, const Rule& rule, const Rule* withRule, Want want)
        : view_(view), rule_(rule), want_(want), classes_(rule.classes), with_(withRule) {
        if (with_ != nullptr)
            classes_.insert(classes_.end(), with_->classes.begin(), with_->classes.end());
    }

    RuleOutcome run();

private:
    [[nodiscard]] const LimitTable& table() const { return *view_.bundle->table; }
    [[nodiscard]] std::optional<Rational> limitIn(const Cell& cell) const {
        return limitOf(cell, view_.examination().thickness, std::nullopt);
    }
    void chooseRow(RuleOutcome& outcome);
    void measure();
    void measureEach(Measure measure);
    void measureTogether(Measure measure);
    void measureLine();
    void measureSpacing();
    void cannotBeMade(std::string reason) {
        check_.passes = std::nullopt;
        check_.reason = std::move(reason);
    }
    /// Sets measured and decides; `needsLimit` says that something considered is there to judge.
    void decide(std::int64_t measured, bool needsLimit);
    [[nodiscard]] const FrameRule& frameRule() const;
    [[nodiscard]] std::vector<Counted> counted(Measure measure, bool ownOnly);
    [[nodiscard]] bool sieveAtMaximum(std::vector<Counted>& items);

    const ZoneView& view_;
    const Rule& rule_;
    Want want_;
    std::vector<IndicationClass> classes_;
    const Rule* with_;
    const RuleRow* row_ = nullptr;
    Check check_;
    std::optional<Rational> limit_;
};

/// Finds the row and fills in what the check says of its limit.
void Application::chooseRow(RuleOutcome& outcome) {
    const Examination& examination = view_.examination();
    check_.level = view_.levels->at(rule_.key);
    row_ = rowFor(rule_, check_.level, examination.thickness);
    if (row_ != nullptr && with_ != nullptr) {
        // Summed together: an unknown cell of either leaves the limit unknown, else the lower.
        const RuleRow* other = rowFor(*with_, view_.levels->at(with_->key), examination.thickness);
        if (other == nullptr) {
            row_ = nullptr;
        } else if (const auto mine = limitIn(row_->limit), theirs = limitIn(other->limit);
                   (mine && !theirs && other->limit.type != Cell::Type::None) ||
                   (mine && theirs && *theirs < *mine) ||
                   (!mine && theirs && row_->limit.type == Cell::Type::None)) {
            row_ = other;
        }
    }
    if (row_ == nullptr) {
        outcome.outside = true;
        return;
    }
    if (row_->limit.type == Cell::Type::None) {
        outcome.leftOut = leftOutText(rule_, classes_, check_.level);
        return;
    }
    check_.key = rule_.key;
    check_.classText = classText(classes_);
    limit_ = limitIn(row_->limit);
    stateRow(check_, rule_, row_->limit, limit_);
}

RuleOutcome Application::run() {
    RuleOutcome outcome;
    chooseRow(outcome);
    if (outcome.outside || !outcome.leftOut.empty()) return outcome;
    measure();
    outcome.check = std::move(check_);
    return outcome;
}

void Application::measure() {
    switch (rule_.kind) {
        case RuleKind::IndividualLength:
            return measureEach(Measure::EachLength);
        case RuleKind::IndividualArea:
            return measureEach(Measure::Areas);
        case RuleKind::CumulativeLength:
            return measureTogether(Measure::LengthSum);
        case RuleKind::TotalArea:
            return measureTogether(Measure::Areas);
        case RuleKind::Count:
        case RuleKind::CountAtMaximum:
            return measureTogether(Measure::Number);
        case RuleKind::LineOfIndications:
            return measureLine();
        case RuleKind::Spacing:
            return measureSpacing();
        default:
            return cannotBeMade("needs an ultrasonic measurement");
    }
}

void Application::decide(std::int64_t measured, bool needsLimit) {
    check_.measured = measured;
    if (limit_)
        check_.passes = holds(Rational(measured), rule_.passes, *limit_);
    else if (!needsLimit)
        check_.passes = true;
    else
        cannotBeMade(whyNoLimit(row_->limit, check_.level));
}

std::vector<Counted> Application::counted(Measure measure, bool ownOnly) {
    return countedIn(view_, classes_, measure, ownOnly);
}

void Application::measureEach(Measure measure) {
    const std::vector<Counted> items = counted(measure, true);
    std::int64_t largest = 0;
    for (const Counted& item : items) {
        if (!item.weight) return cannotBeMade("an area was not measured");
        largest = std::max(largest, *item.weight);
    }
    decide(largest, !items.empty());
    for (const Counted& item : items) {
        const bool exceeds = limit_ && !holds(Rational(*item.weight), rule_.passes, *limit_);
        if (exceeds || (check_.passes != false && *item.weight == largest))
            check_.members.push_back(item.nameIn(view_));
    }
}

const FrameRule& Application::frameRule() const {
    const auto own = rule_.frames.find(check_.level);
    return own == rule_.frames.end() ? table().frame : own->second;
}

/// Keeps what is at the maximum; false where the maximum itself is not known.
bool Application::sieveAtMaximum(std::vector<Counted>& items) {
    const Rule* lengths = nullptr;
    for (const Rule& other : table().rules)
        if (other.kind == RuleKind::IndividualLength && other.key == rule_.key) lengths = &other;
    const RuleRow* maximum = lengths == nullptr
                                 ? nullptr
                                 : rowFor(*lengths, check_.level, view_.examination().thickness);
    const std::optional<Rational> longest =
        maximum == nullptr ? std::nullopt : limitIn(maximum->limit);
    if (!longest || row_->margin.type != Cell::Type::Number) return items.empty();
    const Rational from(longest->numerator - row_->margin.number * longest->denominator,
                        longest->denominator);
    std::erase_if(
        items, [&](const Counted& item) { return !(Rational(item.length.millionths()) > from); });
    if (!row_->margin.note.empty())
        check_.note += (check_.note.empty() ? "" : "; ") + row_->margin.note;
    return true;
}

void Application::measureTogether(Measure measure) {
    const bool framed = rule_.framed && frameRule().known != Known::Absent;
    std::vector<Counted> items = counted(measure, !framed);
    if (rule_.kind == RuleKind::CountAtMaximum && !sieveAtMaximum(items))
        return cannotBeMade("the longest length at " + check_.level + " is unknown in the table");
    const bool anyOwn =
        std::any_of(items.begin(), items.end(), [](const Counted& item) { return item.own; });
    if (!anyOwn) return decide(0, false);
    if (std::any_of(items.begin(), items.end(), [](const Counted& item) { return !item.weight; }))
        return cannotBeMade("an area was not measured");

    if (!framed || frameRule().known == Known::Unknown) {
        // Without a frame all of the zone counts. Where the frame is unknown that is the most any
        // frame could count: enough to pass, not enough to fail.
        std::int64_t sum = 0;
        for (const Counted& item : items) {
            sum += *item.weight;
            check_.members.push_back(item.nameIn(view_));
        }
        decide(sum, true);
        if (framed && check_.passes == false) cannotBeMade("the table's frame is unknown");
        return;
    }
    const FrameShape& shape = frameRule().shape;
    if (want_ == Want::Decided) {
        if (!limit_) return decide(0, true);
        check_.passes =
            !someFrameExceeds(view_, items, shape, largestPassing(*limit_, rule_.passes));
        return;
    }
    const auto worst = worstFrameOf(view_, items, shape);
    decide(worst ? worst->value : 0, true);
    if (!worst) return;
    for (const std::size_t item : worst->counted)
        check_.members.push_back(items[item].nameIn(view_));
    check_.frame = worst->frame;
}

void Application::measureLine() {
    const std::vector<std::size_t>* longest = nullptr;
    for (const std::vector<std::size_t>& row : view_.grouped->rows)
        if (std::any_of(row.begin(), row.end(), [&](std::size_t f) { return view_.isOwn(f); }) &&
            (longest == nullptr || row.size() > longest->size()))
            longest = &row;
    if (longest == nullptr) return decide(0, false);
    decide(static_cast<std::int64_t>(longest->size()) * kMillion, true);
    for (const std::size_t finding : *longest) check_.members.push_back(view_.nameOf(finding));
}

/// The smallest gap between two considered indications of which one lies in the zone.
void Application::measureSpacing() {
    std::vector<std::size_t> findings;
    std::vector<Capsule> capsules;
    for (std::size_t i = 0; i < view_.bundle->findings.size(); ++i) {
        const Finding& finding = view_.bundle->findings[i];
        const bool named = finding.classified &&
                           (classes_.empty() || std::find(classes_.begin(), classes_.end(),
                                                          *finding.classified) != classes_.end());
        const bool considered =
            view_.grouped->relevant[i] && named &&
            (view_.grouped->groupOf[i] || view_.considers(*finding.classified, finding.length()));
        if (!considered) continue;
        findings.push_back(i);
        capsules.push_back(finding.capsule);
    }
    const auto closest = smallestGap(view_, findings, capsules);
    if (!closest) {
        check_.passes = true;
        return;
    }
    decide(closest->gap.millionths(), true);
    check_.members = {view_.nameOf(closest->first), view_.nameOf(closest->second)};
}

}  // namespace

bool sumsTogether(const LimitTable& table, const Levels& levels) {
    if (!table.summedTogether) return false;
    const LevelKey* linear = table.keyOf(IndicationClass::Linear);
    const LevelKey* aligned = table.keyOf(IndicationClass::Aligned);
    if (linear == nullptr || aligned == nullptr || linear == aligned) return false;
    const auto first = levels.find(linear->name);
    const auto second = levels.find(aligned->name);
    return first != levels.end() && second != levels.end() &&
           levelNumber(first->second) == levelNumber(second->second);
}

RuleOutcome applyRule(const ZoneView& view, const Rule& rule, const Rule* withRule, Want want) {
    return Application(view, rule, withRule, want).run();
}

}  // namespace model
