// SPDX-License-Identifier: Apache-2.0
// What a change of an order touches, to be looked at before it is saved. Errors are those of
// archive.h.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "archive/archive.h"

namespace model {

/// A casting of the order, as far as the change matters to it. Examinations and tests are named as
/// everywhere: "Z1 MT as cast".
struct TouchedCasting {
    std::string serial;
    std::vector<std::string> drafts;      ///< not signed: they are judged by the order as changed
    std::vector<std::string> records;     ///< signed by the order as it was then, which they keep
    std::optional<std::int64_t> waiting;  ///< number: cannot be released, has to be returned
    std::optional<std::int64_t> certificate;  ///< released and standing: states the order of then
    /// Tests that it requires as changed, and that were not made or made to other criteria; with
    /// whether they are required by the stored order, too.
    struct Missing {
        std::string test;
        bool already = false;
    };
    std::vector<Missing> missing;
};

struct OrderImpact {
    std::vector<std::string> fields;  ///< labels of what changes: "Customer"; empty: nothing
    std::vector<std::string> errors;  ///< of terms that cannot be read as changed
    std::vector<TouchedCasting>
        castings;  ///< all of the order, by serial; none where nothing changes
};

/// Input: there is no order of that number.
Result<OrderImpact> whatOrderTouches(const Archive& archive, const Order& changed);

}  // namespace model
