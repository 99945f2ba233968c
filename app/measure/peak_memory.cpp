// SPDX-License-Identifier: Apache-2.0
#include "measure/peak_memory.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <malloc.h>
#include <string>

namespace app {
namespace {

/// A line of /proc/self/status such as "VmHWM:     46816 kB" (proc(5)), in MB.
std::optional<double> statusMegabytes(const std::string& name) {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with(name + ":"))
            return std::strtod(line.c_str() + name.size() + 1, nullptr) * 1024 / 1'000'000;
    return std::nullopt;
}

}  // namespace

PeakMemory::PeakMemory() {
    // What was freed and kept for later is not held.
    ::malloc_trim(0);
    // "5" takes the peak back to what is held now (proc(5)).
    std::ofstream reset("/proc/self/clear_refs");
    reset << "5" << std::flush;
    if (reset) before_ = statusMegabytes("VmRSS");
}

std::optional<double> PeakMemory::megabytes() const {
    const auto peak = statusMegabytes("VmHWM");
    if (!before_ || !peak) return std::nullopt;
    return std::max(0.0, *peak - *before_);
}

}  // namespace app
