// SPDX-License-Identifier: Apache-2.0
// A limit table's values as words, for the person who holds them against the standard.
#pragma once

#include <string>

#include "limits/limit_table.h"

namespace model {

std::string inWords(Comparison comparison);  ///< "at most" ...
std::string plainText(Rational value);       ///< without a unit: "3", "1/3"
std::string bandText(const Band& band);      ///< "> 16, <= 30"
std::string frameText(const FrameShape& shape);
std::string rimText(const RimZone& rim);

std::string measureText(ReflectorMeasure measure);      ///< "flat-bottomed hole" ...
std::string conditionText(const Condition& condition);  ///< "length at most 10 mm"

/// The unit of a rule's limits or of a measure, behind a space; empty where it has none.
std::string unitOf(const Rule& rule);
std::string unitOf(ReflectorMeasure measure);

/// A cell's value, in the unit of the file.
std::string bareValue(const Cell& cell, const std::string& unit);
/// With the table's own remark on the cell.
std::string withNote(const std::string& value, const Cell& cell);
/// A number stands behind its comparison; "none", "unknown" and "as agreed" have none.
std::string limitText(const Cell& cell, Comparison comparison, const std::string& unit);

}  // namespace model
