// SPDX-License-Identifier: Apache-2.0
#include "trust/key_attempts.h"

#include <algorithm>
#include <limits>

namespace model {

std::chrono::seconds waitAfter(int failures) {
    if (failures < kFreeAttempts) return std::chrono::seconds(0);
    constexpr int kMostDoublings = 20;  // far beyond kLongestWait, far from overflow
    const int doublings = std::min(failures - kFreeAttempts, kMostDoublings);
    return std::min(std::chrono::seconds(2LL << doublings), kLongestWait);
}

std::chrono::seconds remainingWait(const FailedAttempts& attempts, UtcTime now) {
    const std::chrono::seconds wait = waitAfter(attempts.count);
    if (now < attempts.last) return wait;
    return std::max(wait - (now - attempts.last), std::chrono::seconds(0));
}

FailedAttempts afterWrongPassphrase(const FailedAttempts& attempts, UtcTime now) {
    const int count =
        attempts.count < std::numeric_limits<int>::max() ? attempts.count + 1 : attempts.count;
    return {count, now};
}

}  // namespace model
