// SPDX-License-Identifier: Apache-2.0
// The lists of rows of a draft in the database. For the .cpp files of this folder only.
#pragma once

#include <algorithm>
#include <vector>

#include "archive/typed_rows.h"

namespace model {

/// The rows of two versions of a list between what they have in common at both ends: at `from`
/// (counted from 0) `removed` old rows give way to `added` new ones.
struct Splice {
    std::size_t from = 0;
    std::size_t removed = 0;
    std::size_t added = 0;

    [[nodiscard]] bool changes() const { return removed != 0 || added != 0; }
};

template <class Row>
Splice spliceBetween(const std::vector<Row>& before, const std::vector<Row>& after) {
    const auto firsts = std::ranges::mismatch(before, after);
    const auto from = static_cast<std::size_t>(firsts.in1 - before.begin());
    std::size_t common = 0;
    const std::size_t most = std::min(before.size(), after.size()) - from;
    while (common < most && before[before.size() - 1 - common] == after[after.size() - 1 - common])
        ++common;
    return {from, before.size() - from - common, after.size() - from - common};
}

/// Brings `before` stored rows to `rows`, which differ by `splice`.
template <class Row>
Result<void> writeRows(const Connection& connection, std::int64_t examination, std::size_t before,
                       const std::vector<Row>& rows, const Splice& splice);

/// All lists of the draft.
Result<void> readRows(const Connection& connection, ExaminationDraft& draft);

}  // namespace model
