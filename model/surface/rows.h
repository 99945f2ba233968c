// SPDX-License-Identifier: Apache-2.0
// Rows: capsules that lie in a line with small gaps.
//
// A row is a set of at least `leastMembers` capsules met by one straight line such that, in the
// order of their centres along it, each gap to the next links. The longest row (rounded length,
// then members, then earliest) is taken first, its members leave the search, and so on.
//
// Exact: a line that meets every member can be moved sideways, which changes no order, until it is
// about to leave one of them; so only tangents of single capsules are tried. Round each capsule the
// tangent turns once through 360 degrees. The angles at which another capsule begins or ceases to
// be met have closed forms, and so have those at which two centres change their order; between
// them nothing changes. In each such interval the rows are the paths of a small acyclic graph:
// capsule -> later capsule where the gap links. A row's length is the reach of some pair of its
// members; the greatest reach over all pairs that a path connects is the longest row.
// A line counts as meeting a capsule within 1e-6 mm, so that exact tangents are rows: the tolerance
// acts only against acceptance.
#pragma once

#include <span>

#include "surface/groups.h"

namespace model {

/// The rows, in the order in which they are taken.
std::vector<SurfaceGroup> rowsOf(std::span<const Capsule> capsules, GapLimit limit,
                                 std::size_t leastMembers, std::optional<Length> period);

}  // namespace model
