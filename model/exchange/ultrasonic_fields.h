// SPDX-License-Identifier: Apache-2.0
// The fields that only ultrasonic examinations and indications have in a sheet.
#pragma once

#include <string>

#include "exchange/json_fields.h"

namespace model {

/// Checks names, types, words and signs of the tested area, testability, dead zone and directions.
void checkUltrasonicExamination(const JsonFields& in);

/// Checks one indication at `path`.
void checkUltrasonicIndication(const JsonValue& value, const std::string& path,
                               JsonProblem& problem);

/// Checks the ordered forbidden kinds, which are words of ultrasonic testing here.
void checkUltrasonicKinds(const JsonFields& in);

}  // namespace model
