// SPDX-License-Identifier: Apache-2.0
// What can be measured or stated of the conditions of a test. Condition sets limit these
// parameters; the bench offers them to be filled in.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "conditions/unit.h"

namespace model {

enum class ParameterKind {
    Number,  ///< with a unit of its dimension
    Choice,  ///< one of its choices
    YesNo,   ///< "yes" or "no"
    Moment,  ///< UTC, 2026-11-25T09:30:00Z
    Text     ///< anything
};

struct Parameter {
    std::string_view key;      ///< in Measurement::parameter and in condition sets: "uv_a"
    std::string_view label;    ///< "UV-A at the part"
    std::string_view methods;  ///< "MT|PT"
    ParameterKind kind = ParameterKind::Number;
    Dimension dimension = Dimension::None;  ///< of a number
    std::string_view unit;                  ///< offered first; empty: a plain number
    std::string_view choices;               ///< parted by "|"
    /// Kinds of equipment, parted by "|", that can measure it; empty: it is stated, without meter.
    std::string_view meters;
    /// Taken from the record itself (its zone, settings, scans, consumables), so it need not be
    /// entered as a measurement.
    bool fromRecord = false;
    std::string_view help;
};

std::span<const Parameter> parameters();
/// Null: there is none.
const Parameter* parameter(std::string_view key);
/// Those of a method, in the order of entry; some are taken from the record as well (fromRecord).
std::vector<const Parameter*> parametersOf(Method method);

/// The parts of "a|b|c".
std::vector<std::string_view> partsOf(std::string_view words);

}  // namespace model
