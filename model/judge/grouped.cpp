// SPDX-License-Identifier: Apache-2.0
#include "judge/grouped.h"

#include <algorithm>

#include "surface/joins.h"
#include "surface/rows.h"

namespace model {
namespace {

const Cell* thresholdCell(const LimitTable& table, const LevelKey& key, const Levels& levels) {
    const auto ordered = levels.find(key.name);
    if (ordered == levels.end()) return nullptr;
    for (const ThresholdRow& row : table.threshold.rows)
        if (row.key == key.name && row.level == ordered->second) return &row.cell;
    return nullptr;
}

/// Grouping works on some of the findings: their indices, capsules and lengths side by side.
struct Subset {
    std::vector<std::size_t> findings;
    std::vector<Capsule> capsules;
    std::vector<Length> lengths;

    void add(const Bundle& bundle, std::size_t finding) {
        findings.push_back(finding);
        capsules.push_back(bundle.findings[finding].capsule);
        lengths.push_back(bundle.findings[finding].length());
    }
};

FindingGroup makeGroup(const Bundle& bundle, const Subset& subset, SurfaceGroup&& found,
                       IndicationClass classified, bool replaces) {
    FindingGroup group;
    group.classified = classified;
    Length sum;
    for (const std::size_t member : found.members) {
        group.findings.push_back(subset.findings[member]);
        sum += bundle.findings[subset.findings[member]].length();
    }
    group.unrolled = std::move(found.unrolled);
    group.length = found.length;
    group.counted = std::max(found.length, sum);
    group.replaces = replaces;
    return group;
}

/// The class of a group that stays in the members' own classes; of reflectors, which count in each
/// class of a member, the one to name it by.
IndicationClass ownClass(const Bundle& bundle, const FindingGroup& group) {
    if (bundle.table->method == Method::Ultrasonic) {
        for (const IndicationClass named :
             {IndicationClass::Planar, IndicationClass::Rim, IndicationClass::Dross})
            for (const std::size_t finding : group.findings)
                if (bundle.findings[finding].classified == named) return named;
        return IndicationClass::Core;
    }
    IndicationClass classified = *bundle.findings[group.findings.front()].classified;
    for (const std::size_t finding : group.findings)
        if (*bundle.findings[finding].classified == IndicationClass::Linear)
            classified = IndicationClass::Linear;
    return classified;
}

void formRows(const Bundle& bundle, Grouped& grouped) {
    const RowRule& rule = bundle.table->rows;
    if (rule.known != Known::Given) return;
    Subset subset;
    for (std::size_t i = 0; i < bundle.findings.size(); ++i)
        if (grouped.relevant[i] && bundle.findings[i].classified &&
            isNonLinear(*bundle.findings[i].classified))
            subset.add(bundle, i);
    const GapLimit limit{rule.gap, rule.comparison == Comparison::AtMost};
    for (SurfaceGroup& row :
         rowsOf(subset.capsules, limit, static_cast<std::size_t>(rule.members), bundle.period)) {
        FindingGroup group =
            makeGroup(bundle, subset, std::move(row), IndicationClass::Aligned, !rule.membersStay);
        grouped.rows.push_back(group.findings);
        if (rule.becomes == RowRule::Becomes::LineOnly) continue;
        if (rule.becomes == RowRule::Becomes::NonLinear) group.classified = ownClass(bundle, group);
        grouped.groups.push_back(std::move(group));
    }
}

void formJoins(const Bundle& bundle, Grouped& grouped) {
    const JoinRule& rule = bundle.table->joins;
    if (rule.known != Known::Given) return;
    std::vector<bool> inRow(bundle.findings.size(), false);
    for (const FindingGroup& row : grouped.groups)
        for (const std::size_t finding : row.findings) inRow[finding] = true;
    Subset subset;
    for (std::size_t i = 0; i < bundle.findings.size(); ++i) {
        const Finding& finding = bundle.findings[i];
        const bool known = finding.classified || finding.reflector != nullptr;
        if (!grouped.relevant[i] || !known || inRow[i]) continue;
        if (rule.who == JoinRule::Who::Linear && *finding.classified != IndicationClass::Linear)
            continue;
        subset.add(bundle, i);
    }
    const JoinReach reach = rule.reach == JoinRule::Reach::LongestMember ? JoinReach::LongestMember
                            : rule.reach == JoinRule::Reach::SmallerSet  ? JoinReach::SmallerSet
                                                                         : JoinReach::Constant;
    const GapLimit limit{rule.gap, rule.comparison == Comparison::AtMost};
    for (SurfaceGroup& set :
         joinedSets(subset.capsules, subset.lengths, reach, limit, bundle.period)) {
        FindingGroup group =
            makeGroup(bundle, subset, std::move(set), IndicationClass::Aligned, false);
        if (rule.becomes == JoinRule::Becomes::Own || bundle.table->method == Method::Ultrasonic)
            group.classified = ownClass(bundle, group);
        grouped.groups.push_back(std::move(group));
    }
}

/// A1, A2 ... for aligned, L1 ... for linear, N1 ... for non-linear, J1 ... for joined ultrasonic
/// groups, by first finding.
char letterOf(IndicationClass classified) {
    switch (classified) {
        case IndicationClass::Aligned:
            return 'A';
        case IndicationClass::Linear:
            return 'L';
        case IndicationClass::Rim:
        case IndicationClass::Core:
        case IndicationClass::Planar:
        case IndicationClass::Dross:
            return 'J';
        default:
            return 'N';
    }
}

void nameGroups(Grouped& grouped) {
    std::sort(grouped.groups.begin(), grouped.groups.end(),
              [](const FindingGroup& a, const FindingGroup& b) {
                  return *std::min_element(a.findings.begin(), a.findings.end()) <
                         *std::min_element(b.findings.begin(), b.findings.end());
              });
    std::map<char, int> numbers;
    for (std::size_t g = 0; g < grouped.groups.size(); ++g) {
        FindingGroup& group = grouped.groups[g];
        const char letter = letterOf(group.classified);
        group.id = letter + std::to_string(++numbers[letter]);
        for (const std::size_t finding : group.findings) grouped.groupOf[finding] = g;
    }
}

}  // namespace

RelevanceSieve::RelevanceSieve(const LimitTable& table, const Levels& levels)
    : comparison_(table.threshold.comparison) {
    if (table.threshold.known != Known::Given) return;
    for (std::size_t i = 0; i < from_.size(); ++i) {
        const LevelKey* key = table.keyOf(static_cast<IndicationClass>(i));
        const Cell* cell = key == nullptr ? nullptr : thresholdCell(table, *key, levels);
        if (cell != nullptr && cell->type == Cell::Type::Number) from_[i] = cell->number;
    }
}

bool RelevanceSieve::takes(IndicationClass classified, Length length) const {
    const std::optional<std::int64_t>& from = from_[static_cast<std::size_t>(classified)];
    return !from || holds(Rational(length.millionths()), comparison_, Rational(*from));
}

bool groupsAfterRelevance(const LimitTable& table) {
    return table.method != Method::Ultrasonic && table.threshold.known == Known::Given &&
           !table.threshold.afterGrouping;
}

Grouped groupFindings(const Bundle& bundle, const Levels& levels) {
    Grouped grouped;
    grouped.relevant.assign(bundle.findings.size(), true);
    grouped.groupOf.assign(bundle.findings.size(), std::nullopt);
    if (groupsAfterRelevance(*bundle.table)) {
        const RelevanceSieve sieve(*bundle.table, levels);
        for (std::size_t i = 0; i < bundle.findings.size(); ++i) {
            const Finding& finding = bundle.findings[i];
            grouped.relevant[i] =
                sieve.takes(finding.classified.value_or(IndicationClass::Linear), finding.length());
        }
    }
    formRows(bundle, grouped);
    formJoins(bundle, grouped);
    nameGroups(grouped);
    return grouped;
}

}  // namespace model
