// SPDX-License-Identifier: Apache-2.0
// What a person typed, with its unit, beside the exact value it stands for. A value entered in
// inch is stored and shown again as typed; it is converted once, exactly, and never re-rounded.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "quantity/quantities.h"

namespace model {

enum class LengthUnit { Millimetre, Inch };

/// A length as typed. An entry from a program's JSON has the JSON number's text.
struct LengthEntry {
    Length value;
    std::string text;
    LengthUnit unit = LengthUnit::Millimetre;
};

/// Reads a decimal number (point or comma), or in inch also a fraction such as "3/64" or
/// "1 3/64". An exponent, more than 6 decimals, a magnitude above 1 000 000 mm and an inch value
/// that is no whole number of nanometres are refused with the reason, place left empty.
Result<LengthEntry> parseLength(std::string_view text, LengthUnit unit);

/// `length` in `unit` as the shortest exact decimal; in inch, where no finite decimal of at most
/// 6 digits exists, the nearest one with a leading "~", as the value is then not the typed one.
std::string formatLength(Length length, LengthUnit unit);

/// "mm" or "in".
std::string_view symbol(LengthUnit unit);

}  // namespace model
