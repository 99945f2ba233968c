// SPDX-License-Identifier: Apache-2.0
// The scripts of schema/, embedded at build: sqlite_1.sql makes schema 1, sqlite_2.sql turns it
// into schema 2, and so on.
#pragma once

#include <span>

#include "base/embedded_file.h"

namespace model {

/// In the order of their numbers.
std::span<const EmbeddedFile> schemaScripts();

}  // namespace model
