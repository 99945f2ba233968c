// SPDX-License-Identifier: Apache-2.0
#include "judge/recording.h"

#include <algorithm>

#include "judge/reflector_measures.h"

namespace model {
namespace {

Certainty holdsIn(const RecordingLimit& limit, const MeasuredAll& measured, Length wall) {
    const auto row = std::ranges::find_if(limit.rows, [&](const RecordingLimit::Row& candidate) {
        return candidate.band.contains(wall);
    });
    if (row == limit.rows.end()) return Certainty::Open;
    if (row->cell.type == Cell::Type::None) return Certainty::No;
    if (row->cell.type != Cell::Type::Number) return Certainty::Open;
    const Rational value = limit.of == ReflectorMeasure::LengthToWidth
                               ? Rational(row->cell.number, kMillion)
                               : Rational(row->cell.number);
    return holdsFor(measured[static_cast<std::size_t>(limit.of)], limit.comparison, value);
}

}  // namespace

Certainty hasMeasurableExtent(const Reflector& reflector) {
    if (reflector.length || reflector.width || reflector.throughWall || reflector.area)
        return Certainty::Yes;
    if (reflector.lengthNotMeasurable && reflector.throughWallNotMeasurable) return Certainty::No;
    return Certainty::Open;
}

Certainty recorded(const LimitTable& table, const Reflector& reflector, Length wall) {
    if (table.recording.empty()) return Certainty::Yes;
    const MeasuredAll measured = measuredOf(reflector);
    const Certainty extended = hasMeasurableExtent(reflector);
    Certainty any = Certainty::No;
    for (const RecordingLimit& limit : table.recording) {
        Certainty here = holdsIn(limit, measured, wall);
        if (limit.measurable) {
            const Certainty concerned = *limit.measurable            ? extended
                                        : extended == Certainty::No  ? Certainty::Yes
                                        : extended == Certainty::Yes ? Certainty::No
                                                                     : Certainty::Open;
            here = std::min(here, concerned);
        }
        any = std::max(any, here);
    }
    return any;
}

Certainty reachesEvaluationLoss(const LimitTable& table, const Reflector& reflector, Length wall) {
    if (!reflector.backWallLoss) return Certainty::No;
    const MeasuredAll measured = measuredOf(reflector);
    Certainty any = Certainty::No;
    bool stated = false;
    for (const RecordingLimit& limit : table.recording) {
        if (limit.of != ReflectorMeasure::BackWallLoss) continue;
        stated = true;
        any = std::max(any, holdsIn(limit, measured, wall));
    }
    // Conditions of rules name the loss that matters where nothing else does.
    for (const Rule& rule : table.rules)
        for (const Condition& condition : rule.conditions) {
            if (stated || condition.of != ReflectorMeasure::BackWallLoss) continue;
            any = std::max(any, holdsFor(measured[static_cast<std::size_t>(condition.of)],
                                         condition.comparison, condition.value));
        }
    return any;
}

}  // namespace model
