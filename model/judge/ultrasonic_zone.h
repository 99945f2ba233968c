// SPDX-License-Identifier: Apache-2.0
// Judges the ultrasonic examination of one zone: what ZoneJudge asks of one.
#pragma once

#include "judge/reflector_check.h"

namespace model {

class UltrasonicZone {
public:
    /// `zone` and what it refers to outlive it; its levels are those ordered.
    UltrasonicZone(const ZoneView& zone, const ReflectorItems& items);

    void listIndications(ExaminationVerdict& verdict) const;
    void applyRules(ExaminationVerdict& verdict) const;
    void giveReasons(ExaminationVerdict& verdict) const;
    void findBestLevels(ExaminationVerdict& verdict) const;

private:
    [[nodiscard]] ReflectorView viewAt(const ZoneView& zone) const;
    /// Whether an indication of open kind fails some rule as each kind that it can be. `trial` is a
    /// view without anything that fails as each; what it tries is overwritten.
    [[nodiscard]] bool failsAsEach(ReflectorView& trial, std::size_t finding) const;
    /// Whether all rules pass that the key's level matters to, at `levels`; none where open.
    [[nodiscard]] std::optional<bool> passesAt(const Levels& levels, const std::string& key) const;

    const ZoneView& zone_;
    const ReflectorItems& items_;
    ReflectorView ordered_;
};

}  // namespace model
