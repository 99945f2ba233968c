// SPDX-License-Identifier: Apache-2.0
// Which examinations are grouped and framed together, and their findings on one surface.
#pragma once

#include <optional>
#include <vector>

#include "judge/sheet.h"
#include "limits/table_set.h"
#include "surface/capsule.h"

namespace model {

/// A relevant indication, placed on the surface of its bundle: of MT and PT a `source`, of UT a
/// `reflector`.
struct Finding {
    std::size_t member = 0;      ///< index into Bundle::members
    std::size_t indication = 0;  ///< index into its examination's indications (or reflectors)
    const Indication* source = nullptr;
    const Reflector* reflector = nullptr;
    Capsule capsule;
    std::optional<IndicationClass> classified;  ///< none: open, or the table's ratio is unknown

    [[nodiscard]] const std::string& id() const { return source ? source->id : reflector->id; }
    /// What is known of its length: of a reflector that has none it is at least 0.
    [[nodiscard]] Length length() const {
        return source ? source->length : reflector->length.value_or(Length{});
    }
    [[nodiscard]] std::optional<Kind> kind() const {
        return source ? source->kind : reflector->kind;
    }
};

struct BundleMember {
    std::size_t index = 0;  ///< in the sheet
    const Examination* examination = nullptr;
    bool judged = true;  ///< false: a neighbour only, judged in another bundle
};

/// Examinations of one surface, method, stage, repair cycle and table. Each zone is in it once: of
/// a zone examined again without repair between, the examination with the same repeat as the one
/// judged, or the last one before it. A zone without a surface is a bundle of its own; so is an
/// examination that was declared invalid, with its neighbours beside it.
struct Bundle {
    const LimitTable* table = nullptr;
    std::vector<BundleMember> members;
    std::optional<Length> period;
    std::vector<Finding> findings;  ///< in the sheet's order
};

/// The bundles of a valid sheet; each examination is judged in exactly one of them.
std::vector<Bundle> bundlesOf(const Sheet& sheet, const TableSet& tables);

/// The class of an indication by the table's ratio, split for tables that order isolated and
/// clustered; a statement of linear stands. None where the ratio is unknown and linear not stated.
std::optional<IndicationClass> classify(const LimitTable& table, const Indication& indication);

/// Whether the ratio alone makes it linear; none where ratio or width is not there.
std::optional<bool> linearByRatio(const LimitTable& table, const Indication& indication);

/// The zone's place on its surface; the identity for a zone without one.
Placement placementOf(const Examination& examination);

/// An indication's capsule on its surface; a hairline without a width is a segment.
Capsule capsuleOf(const Indication& indication, const Placement& placement);
/// A reflector's; without a width a segment, without a length a point.
Capsule capsuleOf(const Reflector& reflector, const Placement& placement);

}  // namespace model
