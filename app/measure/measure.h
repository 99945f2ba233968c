// SPDX-License-Identifier: Apache-2.0
// The built-in measurements: how long the program's heavy parts take on this machine, each where
// possible against a plain yardstick run beside it in the same process.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"

namespace app {

/// One line of the result.
struct Measurement {
    std::string name;
    double value = 0;                 ///< in `unit`
    std::optional<double> yardstick;  ///< in `unit`; nothing where there is none
    std::string unit = "ms";
    std::size_t size = 0;          ///< of what was worked on: indications, records, pages ...
    std::optional<double> peakMb;  ///< the most memory that the measured part held, MB
    std::string note;              ///< what was measured, where the name does not say it; or empty

    /// value / yardstick.
    [[nodiscard]] std::optional<double> ratio() const {
        if (!yardstick || *yardstick <= 0) return std::nullopt;
        return value / *yardstick;
    }
};

/// A measurement that can be asked for by name; it may give several lines, all of which begin
/// with its name.
struct MeasurementMaker {
    std::string name;
    std::function<model::Result<std::vector<Measurement>>()> run;
    bool onlyByName = false;  ///< takes minutes: not among all, only where it is asked for
};

/// All built-in measurements, in the order in which they run.
std::vector<MeasurementMaker> builtInMeasurements();

/// Runs that of `makers` named `only`, or all that do not take minutes. An unknown name, or a
/// measurement that fails, is an Error.
model::Result<std::vector<Measurement>> runMeasurements(const std::vector<MeasurementMaker>& makers,
                                                        const std::optional<std::string>& only);

}  // namespace app
