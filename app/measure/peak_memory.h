// SPDX-License-Identifier: Apache-2.0
// The most memory that a part of the program held.
#pragma once

#include <optional>

namespace app {

/// From its making on: what the process came to hold beyond what it held then, by the kernel's
/// count of pages in memory.
class PeakMemory {
public:
    PeakMemory();
    /// MB; none where the system does not tell (it does on Linux, with /proc).
    [[nodiscard]] std::optional<double> megabytes() const;

private:
    std::optional<double> before_;
};

}  // namespace app
