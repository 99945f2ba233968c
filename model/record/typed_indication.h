// SPDX-License-Identifier: Apache-2.0
// An indication as typed: text in every field, so that half-typed rows are kept and inch values
// are shown again as they were entered.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/field_error.h"
#include "base/result.h"
#include "judge/sheet.h"
#include "quantity/entry.h"

namespace model {

struct TypedIndication {
    std::string id;
    std::string x, y, length, width, removed;  ///< in `unit`
    std::string angle;                         ///< degrees; empty: 0
    std::string area;                          ///< mm2; empty: not measured
    std::string kind;                          ///< contract word; empty: not stated
    std::string stated;                        ///< "", "linear" or "non-linear"
    std::string relevance;                     ///< "" (relevant), "non-relevant" or "false"
    std::string reason;
    LengthUnit unit = LengthUnit::Millimetre;

    friend bool operator==(const TypedIndication&, const TypedIndication&) = default;
};

/// The indication, or everything that is wrong with the row.
struct ReadIndication {
    std::optional<Indication> value;
    std::vector<FieldError> errors;
};

ReadIndication read(const TypedIndication& row);

/// What each field's text stands for by itself, whatever is wrong with the rest of the row; none
/// where it is empty or no number.
struct ExactFields {
    std::optional<Length> x, y, length, width, removed;
    std::optional<Angle> angle;
    std::optional<Area> area;

    friend bool operator==(const ExactFields&, const ExactFields&) = default;
};

ExactFields exactFields(const TypedIndication& row);

/// A row with no text (spaces are none) in any field but the id: not an indication yet.
bool isBlank(const TypedIndication& row);

}  // namespace model
