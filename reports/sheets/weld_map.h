// SPDX-License-Identifier: Apache-2.0
// The weld map: every excavation and weld of a casting, zone by zone to scale, with what was found
// before and what was done and tested after it. Each entry names the one before it and those after.
#pragma once

#include "base/result.h"
#include "certificate/document.h"
#include "sheets/sheet_input.h"

namespace reports {

/// Input: nothing was taken out of the casting.
model::Result<Document> weldMapOf(const SheetInput& input);

}  // namespace reports
