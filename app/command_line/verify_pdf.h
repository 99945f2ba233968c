// SPDX-License-Identifier: Apache-2.0
// verify FILE.pdf: what the signatures of a PDF prove.
#pragma once

#include "command.h"

namespace app {

/// Checks the operand's signatures. Trusted are the authorities of "--trust" and those of the
/// archive of "--db", which also says what it knows of the file.
model::Result<Outcome> verifyPdfFile(const Arguments& arguments);

}  // namespace app
