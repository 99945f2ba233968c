// SPDX-License-Identifier: Apache-2.0
// The files that were signed before a certificate's own. Each is the beginning of the next one,
// byte for byte. For the .cpp files of this folder only.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "archive/connection.h"

namespace model {

class PresentedFiles {
public:
    /// `folder`: where the files are.
    PresentedFiles(const Connection& connection, const std::string& folder)
        : connection_(connection), folder_(folder) {}

    /// What is wrong with those of one number; `certificate`: the released file's bytes, where it
    /// was released and they are whole. Nothing where it was not presented.
    Result<std::vector<Error>> check(std::int64_t number,
                                     std::optional<std::string_view> certificate);

    /// Numbers that were presented and are not released, rising.
    [[nodiscard]] Result<std::vector<std::int64_t>> unreleased() const;

private:
    const Connection& connection_;
    const std::string& folder_;
    SqlStatement digests_{connection_,
                          "SELECT presentation.file_sha256, endorsement.file_sha256 "
                          "FROM presentation LEFT JOIN endorsement "
                          "ON endorsement.number = presentation.number "
                          "WHERE presentation.number = ?"};
};

}  // namespace model
