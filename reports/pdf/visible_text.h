// SPDX-License-Identifier: Apache-2.0
// Text made fit for drawing character by character, with nothing dropped silently.
#pragma once

#include <string>
#include <string_view>

namespace reports {

/// `utf8` in NFC, as UTF-16 of the basic plane. "\r\n" becomes "\n", a tab a space. What cannot be
/// shown as it is becomes its code point in brackets, such as [U+202E]: control, format and
/// direction characters, private and unassigned ones, those beyond the basic plane, and scripts
/// that need shaping or run from right to left. Malformed UTF-8 becomes U+FFFD.
std::u16string visibleText(std::string_view utf8);

/// "[U+0007]".
std::u16string codePointText(char32_t character);

std::string toUtf8(std::u16string_view text);

}  // namespace reports
