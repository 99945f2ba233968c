// SPDX-License-Identifier: Apache-2.0
// The reason that a person has to give for an act.
#pragma once

#include <string>

#include "base/result.h"

namespace model {

/// Without blanks at its ends.
inline std::string trimmed(const std::string& text) {
    constexpr char kBlanks[] = " \t\r\n";
    const auto first = text.find_first_not_of(kBlanks);
    if (first == std::string::npos) return "";
    return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

/// trimmed(); Input where nothing is left.
inline Result<std::string> givenReason(const std::string& text) {
    std::string reason = trimmed(text);
    if (reason.empty()) return inputError("", "a reason is missing: say in a few words why");
    return reason;
}

}  // namespace model
