// SPDX-License-Identifier: Apache-2.0
#include "limits/ultrasonic_check.h"

#include <algorithm>

#include "limits/band_check.h"
#include "limits/words.h"

namespace model {
namespace {

using Failure = std::optional<Error>;

Failure checkRecording(const LimitTable& table, const RecordingLimit& limit) {
    const RecordingLimit::Row* previous = nullptr;
    for (const RecordingLimit::Row& row : limit.rows) {
        if (previous != nullptr)
            if (Failure failure =
                    follows(table, {&previous->band, previous->line}, {&row.band, row.line}))
                return failure;
        previous = &row;
    }
    const int line = limit.rows.front().line;
    if (limit.rows.size() > kMostBandsOfLevel)
        return failureAt(table, line, "a recording limit has more than %1 bands",
                         {std::to_string(kMostBandsOfLevel)});
    // Without its counterpart, an indication of the other sort would never be considered by it.
    if (limit.measurable && std::ranges::none_of(table.recording, [&](const RecordingLimit& other) {
            return other.of == limit.of && other.measurable != limit.measurable;
        }))
        return failureAt(table, line,
                         "this recording limit is for a %1 extent only; the one for the others is "
                         "missing",
                         {*limit.measurable ? "measurable" : "not measurable"});
    return {};
}

Failure checkClusters(const LimitTable& table, int line) {
    const bool ordered = table.keyOf(IndicationClass::Clustered) != nullptr;
    if (ordered && table.clusters.known == Known::Absent)
        return failureAt(table, line, "clusters are absent, but a key orders the class clustered");
    if (!ordered && table.clusters.known == Known::Given)
        return failureAt(table, line, "clusters are given, but no key orders the class clustered");
    return {};
}

/// Without a rim every indication lies in one and the same zone.
Failure checkRim(const LimitTable& table, const Rule& rule) {
    if (table.rim.known != Known::Absent || rule.classes.empty()) return {};
    const auto looksAt = [&](IndicationClass asked) {
        return std::ranges::find(rule.classes, asked) != rule.classes.end();
    };
    if (looksAt(IndicationClass::Rim) != looksAt(IndicationClass::Core))
        return failureAt(table, rule.line,
                         "the table has no rim, so a rule looks at rim and core together");
    return {};
}

}  // namespace

std::optional<Error> checkUltrasonic(const LimitTable& table,
                                     const std::map<std::string, int, std::less<>>& lineOf) {
    for (const RecordingLimit& limit : table.recording)
        if (Failure failure = checkRecording(table, limit)) return failure;
    if (Failure failure = checkClusters(table, lineOf.at("clusters"))) return failure;
    for (const Rule& rule : table.rules)
        if (Failure failure = checkRim(table, rule)) return failure;
    return {};
}

}  // namespace model
