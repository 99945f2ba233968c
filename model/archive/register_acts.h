// SPDX-License-Identifier: Apache-2.0
// Whose signature the entries of a register need, and the actions of the history that save them:
// "register entry saved", or "disposition signed" where one is needed.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>

#include "archive/people.h"

namespace model {

/// The registers whose entries are signed, with the roles any one of which may sign.
const std::map<std::string_view, std::set<Role>>& signedRegisters();

/// The action that saves an entry of a register.
std::string savingAction(std::string_view registerName);
/// The register of signed entries that the action saves; empty: none.
std::string_view signedRegisterOf(std::string_view action);

}  // namespace model
