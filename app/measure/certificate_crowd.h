// SPDX-License-Identifier: Apache-2.0
// An archive with very many certificates of invented castings, to be measured.
#pragma once

#include <QTemporaryDir>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "archive/search.h"

namespace app {

/// The archive; its files go with it.
class CertificateCrowd {
public:
    /// Certificates without casting, file or history: only good for being found.
    static model::Result<std::unique_ptr<CertificateCrowd>> make(std::int64_t count);

    [[nodiscard]] const model::Archive& archive() const { return *archive_; }
    [[nodiscard]] std::string path() const;
    [[nodiscard]] std::int64_t bytesOnDisk() const;
    /// A mix of searches, half of them hard: words that every certificate has, beside something
    /// rare; old dates; words that are only begun.
    [[nodiscard]] std::vector<model::CertificateSearch> searches() const;

private:
    explicit CertificateCrowd(std::int64_t count) : count_(count) {}
    model::Result<void> fill();

    std::int64_t count_;
    QTemporaryDir folder_;
    std::optional<model::Archive> archive_;
};

}  // namespace app
