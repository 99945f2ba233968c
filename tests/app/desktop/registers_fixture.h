// SPDX-License-Identifier: Apache-2.0
// The whole window on the archive of people_fixture.h, whose registers hold what a test by MT
// needs: a procedure in two revisions, meters, an ink, and the inspector's certificate and sight.
#pragma once

#include <QDate>

#include "archive/registers.h"
#include "fields/entry_dialog.h"
#include "fields/entry_table.h"
#include "fields/field_form.h"
#include "people_fixture.h"

namespace app {

/// A day so many after today, as texts of the registers have it.
inline std::string inDays(int days) {
    return QDate::currentDate().addDays(days).toString(Qt::ISODate).toStdString();
}

class RegistersTest : public PeopleTest {
protected:
    RegistersTest() { fillRegisters(); }

    [[nodiscard]] model::Archive openAgain() const {
        auto archive = model::Archive::open(archivePath().toStdString());
        EXPECT_TRUE(archive) << archive.error().message();
        return std::move(*archive);
    }
    [[nodiscard]] model::CastingFile stored() const {
        auto file = openAgain().casting("C-1");
        EXPECT_TRUE(file) << file.error().message();
        return *file;
    }
    BenchPage& bench() { return window_->bench(); }
    CastingEditor& editor() { return bench().desk()->editor(); }
    bool saved() {
        return eventually([&] { return !bench().unsaved(); });
    }
    /// Waits until what the registers hold is on the bench.
    template <class Condition>
    bool onTheBench(Condition condition) {
        return eventually([&] { return condition(editor().file()); });
    }

    /// Types into a field of a form and leaves it.
    static void enter(FieldForm& form, const std::string& key, const QString& text);
    /// Types into the cell of a table's row and leaves it.
    static void enter(EntryTable& table, int row, const std::string& key, const QString& text);

    void fillRegisters();
};

}  // namespace app
