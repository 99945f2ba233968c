// SPDX-License-Identifier: Apache-2.0
// Decimal text to whole millionths and back, without a binary fraction in between:
// 1.1 + 2.2 equals 3.3 here.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/rational.h"
#include "base/result.h"

namespace model {

/// One unit, in millionths.
inline constexpr std::int64_t kMillion = 1'000'000;

/// The value of `text` in millionths. `text` is a number in JSON's grammar (RFC 8259 section 6);
/// once exponent and trailing zeros are resolved it has at most 6 decimals and a magnitude of at
/// most 1 000 000. Fails with the reason, place left empty; takes time linear in the text.
Result<std::int64_t> parseMillionths(std::string_view text);

/// The shortest decimal text of a value in millionths: 3300000 -> "3.3".
std::string formatMillionths(std::int64_t millionths);

/// A fraction of millionths as decimal text; exact where 6 decimals suffice, else cut (towards
/// zero) to 6, so that a printed upper limit never promises more than the exact one.
std::string formatMillionths(Rational millionths);

}  // namespace model
