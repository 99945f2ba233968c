// SPDX-License-Identifier: Apache-2.0
// Why an ultrasonic examination cannot be judged, whatever it found: what the casting or the
// scanning hid.
#pragma once

#include <string>
#include <vector>

#include "judge/reflector_view.h"

namespace model {

/// Testability not stated; a dead zone that is not stated or that no second direction covers; no
/// directions; a back-wall loss at the evaluation level without an explanation.
std::vector<std::string> uncoveredReasons(const ReflectorView& view);

/// Considered indications whose class has no ordered level or is looked at by no rule; groups that
/// the table leaves open, or that a missing length or width leaves open.
std::vector<std::string> unjudgedReasons(const ReflectorView& view);

}  // namespace model
