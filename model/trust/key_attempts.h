// SPDX-License-Identifier: Apache-2.0
// Wrong passphrases slow down: how long the next try has to wait. Common practice, no source. It
// hinders guessing at the screen; against a stolen database stands only the passphrase's strength
// and the cost of the key derivation.
#pragma once

#include <chrono>

#include "base/clock.h"

namespace model {

/// What is kept of one identity between tries.
struct FailedAttempts {
    int count = 0;   ///< wrong passphrases since the last right one, >= 0
    UtcTime last{};  ///< the time of the last one; without meaning for count 0

    friend bool operator==(const FailedAttempts&, const FailedAttempts&) = default;
};

/// So many mistypings cost nothing.
inline constexpr int kFreeAttempts = 3;
/// No wait is longer, so that nobody is locked out for good by somebody else's guessing.
inline constexpr std::chrono::seconds kLongestWait = std::chrono::minutes(15);

/// After the third wrong passphrase 2 s, doubled by each further one up to kLongestWait.
std::chrono::seconds waitAfter(int failures);

/// What is left of the wait at `now`; zero: a try is allowed. A clock that was set back gains
/// nothing: the whole wait then starts at `now`.
std::chrono::seconds remainingWait(const FailedAttempts& attempts, UtcTime now);

/// The state after one more wrong passphrase. After a right one it is FailedAttempts{}.
FailedAttempts afterWrongPassphrase(const FailedAttempts& attempts, UtcTime now);

}  // namespace model
