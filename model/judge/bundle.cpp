// SPDX-License-Identifier: Apache-2.0
#include "judge/bundle.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "judge/reflector_class.h"

namespace model {
namespace {

/// Whether a table orders isolated and clustered indications instead of non-linear ones.
bool splitsNonLinear(const LimitTable& table) {
    return table.keyOf(IndicationClass::NonLinear) == nullptr &&
           (table.keyOf(IndicationClass::Isolated) != nullptr ||
            table.keyOf(IndicationClass::Clustered) != nullptr);
}

void placeFindings(Bundle& bundle) {
    for (std::size_t m = 0; m < bundle.members.size(); ++m) {
        const Examination& examination = *bundle.members[m].examination;
        const Placement placement = placementOf(examination);
        for (std::size_t i = 0; i < examination.indications.size(); ++i) {
            const Indication& indication = examination.indications[i];
            if (indication.relevance != Relevance::Relevant) continue;
            bundle.findings.push_back({m, i, &indication, nullptr, capsuleOf(indication, placement),
                                       classify(*bundle.table, indication)});
        }
        for (std::size_t i = 0; i < examination.reflectors.size(); ++i) {
            const Reflector& reflector = examination.reflectors[i];
            if (reflector.relevance != Relevance::Relevant) continue;
            const Length wall = reflector.wall.value_or(examination.thickness);
            bundle.findings.push_back({m, i, nullptr, &reflector, capsuleOf(reflector, placement),
                                       classChoices(*bundle.table, reflector, wall).only()});
        }
    }
}

/// Of each zone the examination to set beside those with `repeat`.
std::vector<BundleMember> membersAt(const Sheet& sheet, const std::vector<std::size_t>& together,
                                    int repeat) {
    std::map<std::string, std::size_t> chosen;  // by zone
    for (const std::size_t index : together) {
        const Examination& candidate = sheet.examinations[index];
        const auto [at, first] = chosen.try_emplace(candidate.zone, index);
        if (first) continue;
        const int held = sheet.examinations[at->second].repeat;
        const bool closer = candidate.repeat <= repeat ? held > repeat || candidate.repeat > held
                                                       : held > repeat && candidate.repeat < held;
        if (closer) at->second = index;
    }
    std::vector<BundleMember> members;
    members.reserve(chosen.size());
    for (const auto& [zone, index] : chosen)
        members.push_back(
            {index, &sheet.examinations[index], sheet.examinations[index].repeat == repeat});
    std::sort(members.begin(), members.end(),
              [](const BundleMember& a, const BundleMember& b) { return a.index < b.index; });
    return members;
}

/// The members of each bundle that the examinations of one surface make.
std::vector<std::vector<BundleMember>> memberships(const Sheet& sheet,
                                                   const std::vector<std::size_t>& together) {
    std::vector<std::size_t> valid;
    std::vector<std::size_t> invalid;
    std::set<int> repeats;
    for (const std::size_t index : together) {
        const Examination& examination = sheet.examinations[index];
        (examination.invalid ? invalid : valid).push_back(index);
        if (!examination.invalid) repeats.insert(examination.repeat);
    }
    std::vector<std::vector<BundleMember>> all;
    all.reserve(repeats.size() + invalid.size());
    for (const int repeat : repeats) all.push_back(membersAt(sheet, valid, repeat));
    // What was declared invalid is no neighbour of anything, but is still shown as it was judged.
    for (const std::size_t index : invalid) {
        std::vector<std::size_t> beside{index};
        for (const std::size_t other : valid)
            if (sheet.examinations[other].zone != sheet.examinations[index].zone)
                beside.push_back(other);
        all.push_back(membersAt(sheet, beside, sheet.examinations[index].repeat));
        for (BundleMember& member : all.back()) member.judged = member.index == index;
    }
    return all;
}

}  // namespace

Placement placementOf(const Examination& examination) {
    return examination.surface ? examination.surface->placement : Placement{};
}

Capsule capsuleOf(const Indication& indication, const Placement& placement) {
    return makeCapsule(indication.x, indication.y, indication.length,
                       indication.width.value_or(Length{}), indication.angle, placement);
}

Capsule capsuleOf(const Reflector& reflector, const Placement& placement) {
    const Length length = reflector.length.value_or(Length{});
    const Length width = reflector.length ? reflector.width.value_or(Length{}) : Length{};
    return makeCapsule(reflector.x, reflector.y, length, width, reflector.angle, placement);
}

std::optional<bool> linearByRatio(const LimitTable& table, const Indication& indication) {
    if (table.ratio.known != Known::Given || !indication.width) return std::nullopt;
    const Rational factor = table.ratio.factor;
    return holds(Rational(indication.length.millionths() * factor.denominator),
                 table.ratio.comparison,
                 Rational(indication.width->millionths() * factor.numerator));
}

std::optional<IndicationClass> classify(const LimitTable& table, const Indication& indication) {
    if (indication.stated == StatedClass::Linear) return IndicationClass::Linear;
    const std::optional<bool> linear = linearByRatio(table, indication);
    if (!linear) return std::nullopt;
    if (*linear) return IndicationClass::Linear;
    if (!splitsNonLinear(table)) return IndicationClass::NonLinear;
    return indication.kind == Kind::Clustered ? IndicationClass::Clustered
                                              : IndicationClass::Isolated;
}

std::vector<Bundle> bundlesOf(const Sheet& sheet, const TableSet& tables) {
    // Ordered by first appearance, so that group numbers follow the sheet.
    using Together = std::tuple<std::string, Method, Stage, int, std::string>;
    std::map<Together, std::size_t> places;
    std::vector<std::vector<std::size_t>> sets;
    for (std::size_t i = 0; i < sheet.examinations.size(); ++i) {
        const Examination& e = sheet.examinations[i];
        if (!e.surface) {
            sets.push_back({i});
            continue;
        }
        const auto [at, first] = places.try_emplace(
            Together{e.surface->id, e.method, e.stage, e.repairCycle, e.table}, sets.size());
        if (first) sets.emplace_back();
        sets[at->second].push_back(i);
    }
    std::vector<Bundle> bundles;
    for (const std::vector<std::size_t>& together : sets)
        for (std::vector<BundleMember>& members : memberships(sheet, together)) {
            Bundle bundle;
            bundle.members = std::move(members);
            const Examination& first = *bundle.members.front().examination;
            bundle.table = tables.find(first.table);
            if (first.surface) bundle.period = first.surface->period;
            placeFindings(bundle);
            bundles.push_back(std::move(bundle));
        }
    return bundles;
}

}  // namespace model
