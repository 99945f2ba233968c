// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/number_text.h"

#include <cmath>

#include "base/decimal.h"

namespace model {
namespace {

std::string decimalText(double value, double parts) {
    // What is no number, or beyond a 64-bit count of millionths, is only ever shown in an error.
    if (!(std::abs(value) < 1e12)) return value > 0 ? "too large" : "not a number";
    return formatMillionths(std::llround(value * parts) *
                            static_cast<std::int64_t>(static_cast<double>(kMillion) / parts));
}

}  // namespace

std::string plainText(double value) {
    return decimalText(value, 1e6);
}

std::string tenthsText(double value) {
    return decimalText(value, 10);
}

}  // namespace model
