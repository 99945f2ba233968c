// SPDX-License-Identifier: Apache-2.0
// A real archive in a folder of its own with one casting of three zones, none examined yet: Z1 and
// Z2 side by side on one surface, to EN 1369:2012 SM 2, LM 4, AM 4 by MT; Z3 by PT.
#pragma once

#include <QTemporaryDir>
#include <functional>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

#include "archive/archive.h"

namespace app {

model::CastingFile sampleFile();
model::TypedIndication row(const std::string& id, const std::string& x, const std::string& y,
                           const std::string& length, const std::string& width);

/// Lets events run until `condition` holds; false after five seconds.
bool eventually(const std::function<bool()>& condition);

class FoundryTest : public testing::Test {
protected:
    explicit FoundryTest(const model::CastingFile& file = sampleFile());

    [[nodiscard]] QString path() const { return folder_.filePath("foundry.fettlemark"); }
    [[nodiscard]] QString pathOf(const QString& name) const { return folder_.filePath(name); }
    /// Another program's view of the archive.
    [[nodiscard]] model::Archive openAgain() const;
    [[nodiscard]] model::CastingFile stored() const;

private:
    QTemporaryDir folder_;
};

}  // namespace app
