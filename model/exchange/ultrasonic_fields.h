// SPDX-License-Identifier: Apache-2.0
// The fields that only ultrasonic examinations and indications have in a sheet.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "exchange/json_fields.h"
#include "judge/sheet.h"

namespace model {

inline constexpr std::size_t kMostDirections = 1'000;  ///< of one examination

/// The examined area, testability, dead zone and directions. What is not there stays empty.
UltrasonicTest readUltrasonicTest(const JsonFields& in);

/// One indication at `path`. Checks names, types, words and signs, width against length, that no
/// dimension is both given and not measurable, and that a back-wall loss is there to be explained.
Reflector readReflector(const JsonValue& value, const std::string& path, JsonProblem& problem);

/// The ordered forbidden kinds, which are words of ultrasonic testing here; none where absent.
std::vector<Kind> readUltrasonicKinds(const JsonFields& in);

/// Adds what readUltrasonicTest() reads to an examination's members.
void addUltrasonicTest(JsonValue::Members& members, const UltrasonicTest& test);

JsonValue reflectorToJson(const Reflector& reflector);

/// Adds a member for a quantity in its own unit, or a text, that is there.
template <class Quantity>
void addIfGiven(JsonValue::Members& members, const char* name,
                const std::optional<Quantity>& quantity) {
    if (quantity) members.push_back({name, JsonValue::number(quantity->millionths())});
}
void addIfGiven(JsonValue::Members& members, const char* name, const std::string& text);

}  // namespace model
