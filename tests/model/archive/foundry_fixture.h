// SPDX-License-Identifier: Apache-2.0
// An archive that is set up, with the people of foundry/people.h.
#pragma once

#include <QFile>

#include "archive_fixture.h"
#include "foundry/foundry.h"
#include "raw_database.h"

namespace model {

class FoundryTest : public ArchiveTest {
protected:
    FoundryTest() {
        archive_.reset();
        for (const char* suffix : {"", ".key"})
            QFile::remove(QString::fromStdString(path() + suffix));
        foundry::copyTo(path());
        archive_ = reopened();
    }

    [[nodiscard]] SignedIn signedIn(const std::string& personId) const {
        return foundry::signedIn(*archive_, personId);
    }
    [[nodiscard]] SignedIn administrator() const { return signedIn(foundry::kAdministrator); }

    /// Runs `sql` with all triggers gone and put back, as a careful forger would.
    void alter(const std::string& sql) const {
        RawDatabase raw(path());
        const auto triggers = raw.column("SELECT sql FROM sqlite_schema WHERE type = 'trigger'");
        raw.dropTriggers();
        ASSERT_EQ(raw.run(sql), SQLITE_OK) << raw.message() << "\n" << sql;
        for (const std::string& trigger : triggers) ASSERT_EQ(raw.run(trigger), SQLITE_OK);
    }
};

}  // namespace model
