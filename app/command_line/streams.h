// SPDX-License-Identifier: Apache-2.0
// Standard input, output and error of the process.
#pragma once

#include <string>

#include "base/result.h"

namespace app {

/// Makes the three streams safe to use: one that the caller closed fails when it is used, instead
/// of being the next file that the program opens; and a reader that goes away makes writing fail
/// instead of ending the process.
void prepareStreams();

/// Writes all of `text` to standard output and closes it. Fails (Refused) if any of it may be lost.
model::Result<void> writeOutput(const std::string& text);

/// Writes `message` to standard error as exactly one line of UTF-8 of bounded length.
void writeErrorLine(const std::string& message);

/// `message` as one line: what is no UTF-8 becomes U+FFFD, what could end a line a blank, and what
/// is longer than 4000 bytes is cut.
std::string asOneLine(const std::string& message);

}  // namespace app
