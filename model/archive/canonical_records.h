// SPDX-License-Identifier: Apache-2.0
// Records as the history's content holds them; keys are listed in HISTORY.md. Empty optionals are
// left out.
#pragma once

#include "archive/archive.h"
#include "trust/canonical.h"

namespace model {

Canonical::Object canonicalOf(const Order& order);
Canonical::Object canonicalOf(const Part& part);
Canonical::Object canonicalOf(const ZonePlan& plan);
Canonical::Object canonicalOf(const Casting& casting);
/// All but id, version, conditions (test_conditions.h) and the lists of rows, whose canonicalOf()
/// is in typed_rows.h.
Canonical::Object canonicalHeader(const ExaminationDraft& draft);
Canonical::Object canonicalOf(const IssueFacts& facts);
/// All but the number, time and person, which the row of the history has itself.
Canonical::Object canonicalOf(const Certificate& certificate);

}  // namespace model
