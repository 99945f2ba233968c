// SPDX-License-Identifier: Apache-2.0
#include "repair/severity.h"

#include <algorithm>
#include <optional>

#include "base/decimal.h"
#include "base/word_table.h"
#include "limits/words.h"

namespace model {
namespace {

using Of = MajorCriterion::Of;

constexpr WordEntry<Severity> kSeverities[] = {
    {Severity::Minor, "minor"},
    {Severity::Major, "major"},
    {Severity::NotKnown, "not known, treated as major"},
};

std::optional<std::int64_t> positive(const std::string& text) {
    const auto value = numberOf(text);
    return value && *value > 0 ? value : std::nullopt;
}

/// Whether `over` / `under` is beyond the limit, by exact products.
bool beyond(Int128 over, Int128 under, const MajorCriterion& criterion) {
    const Int128 left = over * criterion.limit.denominator;
    const Int128 right = under * criterion.limit.numerator;
    return left > right || (left == right && criterion.comparison == Comparison::AtLeast);
}

/// One criterion applied to a cavity: none where what it needs is not known.
struct Applied {
    std::optional<bool> major;
    std::string reason;  ///< why it is major, or what is not known
};

Applied shareOfWall(const Excavation& excavation, const MajorCriterion& criterion) {
    const auto depth = positive(excavation.depth);
    const auto wall = positive(excavation.wallBefore);
    if (!depth) return {std::nullopt, "the depth of the cavity is not measured"};
    if (!wall) return {std::nullopt, "the wall before the excavation is not measured"};
    return {beyond(Int128{*depth} * 100, *wall, criterion),
            "its depth of " + formatMillionths(*depth) + " mm in a wall of " +
                formatMillionths(*wall) + " mm is " + std::string(word(criterion.comparison)) +
                " " + criterion.written};
}

Applied depthOf(const Excavation& excavation, const MajorCriterion& criterion) {
    const auto depth = positive(excavation.depth);
    if (!depth) return {std::nullopt, "the depth of the cavity is not measured"};
    return {beyond(*depth, 1, criterion), "its depth of " + formatMillionths(*depth) + " mm is " +
                                              std::string(word(criterion.comparison)) + " " +
                                              criterion.written};
}

Applied areaOf(const Excavation& excavation, const MajorCriterion& criterion) {
    const auto length = positive(excavation.length);
    const auto width = positive(excavation.width);
    if (!length || !width) return {std::nullopt, "the size of the cavity is not measured"};
    return {beyond(Int128{*length} * *width, kMillion, criterion),
            "its area of " + formatMillionths(*length) + " x " + formatMillionths(*width) +
                " mm is " + std::string(word(criterion.comparison)) + " " + criterion.written};
}

/// A pressure test of the whole casting or of the cavity's zone.
Applied leakOf(const Excavation& excavation, const CastingFile& file) {
    bool leaked = false;
    bool open = false;
    for (const OtherResult& result : file.dossier.otherResults) {
        if (result.test != "pressure") continue;
        if (!result.zone.empty() && result.zone != excavation.zone) continue;
        leaked = leaked || result.verdict == "not acceptable";
        open = open || result.verdict == "not judged";
    }
    if (leaked) return {true, "the casting leaked at the pressure test"};
    if (open) return {std::nullopt, "the pressure test is not judged"};
    return {false, ""};
}

Applied apply(const MajorCriterion& criterion, const Excavation& excavation,
              const CastingFile& file) {
    switch (criterion.of) {
        case Of::ShareOfWall:
            return shareOfWall(excavation, criterion);
        case Of::Depth:
            return depthOf(excavation, criterion);
        case Of::SurfaceArea:
            return areaOf(excavation, criterion);
        case Of::Leak:
            return leakOf(excavation, file);
    }
    return {};
}

}  // namespace

std::string_view word(Severity severity) {
    return wordIn(kSeverities, severity);
}

RepairSeverity severityOf(const Excavation& excavation, const CastingFile& file,
                          const RepairRule* rule) {
    if (rule == nullptr) {
        const std::string& name = file.order.terms.repairRule;
        return {Severity::NotKnown,
                name.empty() ? "the order names no rule for major repairs"
                             : "the order's rule for major repairs \"" + name + "\" is not known",
                {}};
    }
    std::optional<RepairSeverity> unknown;
    for (const MajorCriterion& criterion : rule->major) {
        Applied applied = apply(criterion, excavation, file);
        if (applied.major == true)
            return {Severity::Major, std::move(applied.reason), criterion.source};
        if (!applied.major && !unknown)
            unknown = {Severity::NotKnown, std::move(applied.reason), criterion.source};
    }
    if (unknown) return *unknown;
    return {Severity::Minor, "no limit for major repairs is exceeded", {}};
}

}  // namespace model
