// SPDX-License-Identifier: Apache-2.0
// The invented people of Quillmere, and what a demonstration authority gives them to sign with.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/people.h"
#include "archive/sign_in.h"

namespace demo {

/// Of everybody and of the authority. It is printed beside the demonstration and protects nothing.
inline constexpr const char* kPassphrase = "seven gates of Quillmere";

inline constexpr const char* kAdministrator = "Q-1";
inline constexpr const char* kQaManager = "Q-2";
inline constexpr const char* kThirdParty = "Q-3";

/// Administrator, QA manager, third party, and the inspectors of the scenario.
std::vector<model::Person> staff();

/// Those who are signed in, by name.
using SignedIns = std::map<std::string, model::SignedIn>;

/// Makes the authority, enters the staff, gives each an identity and signs everybody in. Takes some
/// seconds: every passphrase costs time on purpose.
model::Result<SignedIns> engageStaff(model::Archive& archive, const model::Clock& clock);

}  // namespace demo
