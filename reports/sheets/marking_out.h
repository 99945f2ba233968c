// SPDX-License-Identifier: Apache-2.0
// The marking-out sheet: for whoever grinds, zone by zone to scale, what is to be taken out and
// where it lies from the datum, how much wall has to stay, and what to note.
#pragma once

#include <string>

#include "base/result.h"
#include "certificate/document.h"
#include "sheets/sheet_input.h"

namespace reports {

/// Of every zone in which an examination that counts found something not acceptable or a
/// nonconformance is open; of `zone` alone where it is not empty. What nobody has decided to take
/// out is marked to be left. Input: there is no such zone, nothing in it is to be taken out, or a
/// row cannot be read.
model::Result<Document> markingOutOf(const SheetInput& input, const std::string& zone = {});

}  // namespace reports
