// SPDX-License-Identifier: Apache-2.0
// An archive with very many signed records of invented castings, to be measured.
#pragma once

#include <QTemporaryDir>
#include <memory>
#include <optional>
#include <string>

#include "archive/archive.h"
#include "archive/sign_in.h"

namespace app {

/// The archive; its files go with it.
class RecordCrowd {
public:
    /// Records as an inspector signs them, a hundred to a casting: each has the row of the history
    /// that saved its draft and the one that signed it, both sealed. What an archive checks before
    /// it takes a signature is left out, and many are written at once.
    static model::Result<std::unique_ptr<RecordCrowd>> make(std::int64_t count);

    [[nodiscard]] const model::Archive& archive() const { return *archive_; }
    [[nodiscard]] std::int64_t bytesOnDisk() const;

private:
    RecordCrowd() = default;
    [[nodiscard]] std::string path() const { return folder_.filePath("crowd.db").toStdString(); }
    model::Result<model::SignedIn> setUp();
    model::Result<void> fill(std::int64_t count, const model::SignedIn& inspector);

    QTemporaryDir folder_;
    std::optional<model::Archive> archive_;
};

}  // namespace app
