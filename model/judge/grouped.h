// SPDX-License-Identifier: Apache-2.0
// A bundle's findings after relevance and grouping, as one zone's levels see them.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "judge/bundle.h"
#include "surface/groups.h"

namespace model {

/// Level key -> level, as ordered or as tried.
using Levels = std::map<std::string, std::string>;

/// Findings that the table counts as one.
struct FindingGroup {
    std::string id;
    IndicationClass classified = IndicationClass::Aligned;
    std::vector<std::size_t> findings;  ///< indices into Bundle::findings
    std::vector<Capsule> unrolled;      ///< parallel to `findings`
    Length length;
    Length counted;         ///< in a sum: the larger of `length` and the members' sum
    bool replaces = false;  ///< its members leave every check
};

struct Grouped {
    std::vector<bool> relevant;  ///< by finding; all true where relevance comes after grouping
    std::vector<FindingGroup> groups;
    std::vector<std::optional<std::size_t>> groupOf;  ///< by finding
    std::vector<std::vector<std::size_t>> rows;       ///< every row, for the line rule
};

/// The relevance thresholds of a table at some levels, looked up once. An unknown or absent
/// threshold, a cell `none`, and a class without an ordered level take everything.
class RelevanceSieve {
public:
    RelevanceSieve(const LimitTable& table, const Levels& levels);

    /// Whether a length of this class is considered.
    [[nodiscard]] bool takes(IndicationClass classified, Length length) const;

private:
    Comparison comparison_;
    std::array<std::optional<std::int64_t>, kIndicationClasses> from_;  // by class, nanometres
};

/// Whether relevance is decided before grouping, so that grouping depends on the levels.
bool groupsAfterRelevance(const LimitTable& table);

/// Groups a bundle's findings. Row and join definitions that are unknown form no groups: the judge
/// then gives the reason why the zone cannot be judged.
Grouped groupFindings(const Bundle& bundle, const Levels& levels);

}  // namespace model
