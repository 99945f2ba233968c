// SPDX-License-Identifier: Apache-2.0
#include "limits/band_check.h"

#include "limits/table_lines.h"

namespace model {

Error failureAt(const LimitTable& table, int line, std::string reason,
                std::vector<std::string> arguments) {
    return inputError(placeInTable(table.file, line), std::move(reason), std::move(arguments));
}

std::optional<Error> follows(const LimitTable& table, BandAt previous, BandAt next) {
    const Band& below = *previous.band;
    const Band& above = *next.band;
    const std::string previousLine = std::to_string(previous.line);
    const auto fails = [&](std::string reason, std::vector<std::string> arguments) {
        return failureAt(table, next.line, std::move(reason), std::move(arguments));
    };
    if (!below.upper && !below.lower)
        return fails("line %1 already gives this level's cell", {previousLine});
    if (!below.upper || !above.lower || *above.lower < *below.upper)
        return fails("the band overlaps the one in line %1, or does not stand above it",
                     {previousLine});
    if (*above.lower > *below.upper)
        return fails("there is a gap between this band and the one in line %1", {previousLine});
    const bool belowTakesIt = below.upperComparison == Comparison::AtMost;
    const bool aboveTakesIt = above.lowerComparison == Comparison::AtLeast;
    if (belowTakesIt && aboveTakesIt)
        return fails("the band overlaps the one in line %1: both contain %2 mm",
                     {previousLine, toText(*above.lower)});
    if (!belowTakesIt && !aboveTakesIt)
        return fails(
            "there is a gap between this band and the one in line %1: neither contains %2 mm",
            {previousLine, toText(*above.lower)});
    return std::nullopt;
}

bool overlap(const Band& a, const Band& b) {
    const auto endsBefore = [](const Band& below, const Band& above) {
        if (!below.upper || !above.lower || *below.upper > *above.lower) return false;
        return *below.upper < *above.lower || below.upperComparison == Comparison::Less ||
               above.lowerComparison == Comparison::More;
    };
    return !endsBefore(a, b) && !endsBefore(b, a);
}

}  // namespace model
