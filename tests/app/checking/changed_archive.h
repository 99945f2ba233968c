// SPDX-License-Identifier: Apache-2.0
// A busy archive that is altered again and again: each change must be found, and is undone before
// the next one.
#pragma once

#include <QTemporaryDir>
#include <functional>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <optional>
#include <string>
#include <vector>

#include "checking/check_archive.h"
#include "forger.h"

namespace app {

/// The index of the words of certificates: made from the table of certificates, and can be made
/// anew from it at any time. It shows nothing but what that table says, so nothing in it is
/// evidence; that it agrees is checked all the same, and Archive::verify() says how to mend it.
/// Nothing else is left out.
inline const std::vector<std::string> kNoEvidence{
    "certificate_words", "certificate_words_config", "certificate_words_data",
    "certificate_words_docsize", "certificate_words_idx"};

class ChangedArchive : public testing::Test {
protected:
    /// Makes the archive, and checks that it is intact.
    void SetUp() override;

    [[nodiscard]] std::string path() const {
        return folder_.filePath("q.fettlemark").toStdString();
    }
    [[nodiscard]] std::string files() const { return path() + ".files"; }

    /// What is found in the archive as it is; what keeps it from being opened counts as found
    /// where it says that the archive is damaged.
    [[nodiscard]] std::vector<std::string> findings(
        const std::optional<model::Head>& held = std::nullopt) const;
    [[nodiscard]] model::Head head() const;

    using Change = std::function<std::optional<std::string>(Forger&)>;
    /// Makes the change, expects it to be found, and undoes it. False: it could not be made.
    bool isFound(const Change& change);
    /// The same for a change past the Forger, such as one of files.
    void expectFound(const std::string& what);
    /// Back to the archive as it was made.
    void undo() const;

    Random random_{20261127};
    int changes_ = 0;  ///< that were made and looked for

private:
    QTemporaryDir folder_;
};

}  // namespace app
