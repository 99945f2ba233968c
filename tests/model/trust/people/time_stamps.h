// SPDX-License-Identifier: Apache-2.0
// A time-stamp service on this machine: `openssl ts`.
#pragma once

#include <string>

#include "people/shell.h"
#include "trust/signature_time_stamp.h"

namespace people {

class LocalTimeStamps {
public:
    LocalTimeStamps();

    /// Answers by `openssl ts -reply`.
    [[nodiscard]] model::Result<std::string> answer(const std::string& request) const;
    [[nodiscard]] model::Rfc3161Service service() const;
    /// DER.
    [[nodiscard]] std::string authority() const;
    [[nodiscard]] const Folder& folder() const { return folder_; }

private:
    Folder folder_;
};

}  // namespace people
