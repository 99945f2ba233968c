// SPDX-License-Identifier: Apache-2.0
// What is signed of a presentation as canonical bytes; its keys are listed in HISTORY.md. For the
// .cpp files of this folder only.
#pragma once

#include <string_view>

#include "archive/presentation_store.h"

namespace model {

/// Facts, basis, what was missing and not judged; the rest is empty. Damaged where the bytes are
/// not those of canonicalOf().
Result<StoredPresentation> readPresentationContent(std::string_view bytes);

}  // namespace model
