// SPDX-License-Identifier: Apache-2.0
// The actions of the history that are signing acts, and whose. A row of one of them without a
// signature, or by a person who had none of the roles, is no such act.
#pragma once

#include <set>
#include <string_view>

#include "archive/people.h"

namespace model {

/// The roles any one of which allows the act; empty: everybody may. Null: no signing act.
const std::set<Role>* rolesForAct(std::string_view action);

inline bool isSignedAct(std::string_view action) {
    return rolesForAct(action) != nullptr;
}

}  // namespace model
