// SPDX-License-Identifier: Apache-2.0
// What an archive knows of a file, by its SHA-256.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "archive/archive.h"
#include "archive/signed_files.h"

namespace app {

struct KnownFile {
    std::string text;  ///< which certificate it is and what became of that, in plain English
    /// Those that the history has in it; none: it is no certificate's, or nobody signed it.
    std::optional<std::vector<model::ExpectedSignature>> signatures;
};

model::Result<KnownFile> findKnownFile(const model::Archive& archive, std::string_view bytes);

}  // namespace app
