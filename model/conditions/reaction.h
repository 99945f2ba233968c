// SPDX-License-Identifier: Apache-2.0
// What follows from a condition that is not kept.
#pragma once

#include <optional>
#include <string_view>

#include "limits/limit_table.h"

namespace model {

/// What follows from a condition that is not kept. A limit whose grade is Partly or Memory warns at
/// most, until its set is attested.
enum class Reaction {
    Log,   ///< stored and printed
    Warn,  ///< may be signed with a typed reason, which is printed
    Block  ///< cannot be signed
};
std::string_view word(Reaction reaction);  ///< "noted", "needs a reason", "not to be signed"

/// What a limit's grade leaves of the reaction that its set asks for.
Reaction capped(Reaction reaction, Grade grade, bool attested);

}  // namespace model
