// SPDX-License-Identifier: Apache-2.0
// The ultrasonic part of a scenario's examination: what the test states as a whole, the settings,
// and the rows as typed.
#pragma once

#include <string>

#include "exchange/json_fields.h"
#include "record/records.h"

namespace demo {

/// Reads "ultrasonic", "settings" and "reflectors" of `in`, where they are there, into `draft`.
void readUltrasonic(const model::JsonFields& in, model::JsonProblem& problem,
                    model::LengthUnit unit, model::ExaminationDraft& draft);

}  // namespace demo
