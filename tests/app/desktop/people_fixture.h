// SPDX-License-Identifier: Apache-2.0
// The whole window on a working archive with the people of the invented foundry Quillmere and one
// casting, C-1, of the sample in foundry_fixture.h: type 3.1, one zone by MT.
#pragma once

#include "bench/bench_page.h"
#include "finding/finding_page.h"
#include "foundry/foundry.h"
#include "foundry_fixture.h"
#include "looks/task_dialog.h"
#include "release/release_page.h"
#include "window/main_window.h"

namespace app {

class PeopleTest : public FoundryTest {
protected:
    PeopleTest();

    [[nodiscard]] QString archivePath() const { return pathOf("quillmere.fettlemark"); }
    void openWindow();
    /// Signs in without waiting for the passphrase to be tried.
    void signInAs(const char* person);
    /// Opens C-1 at the bench and the first zone.
    void openCasting();
    /// Attests the tables of the sample, by the archive's own face.
    void attestTables();
    /// States "no indications found" in the first zone and signs it, through the window.
    void signExamination();
    /// Presents C-1 through the window; its number.
    qint64 present();
    /// Presses the button that does what the dialog is there for, and lets it end.
    bool doIt(TaskDialog* dialog);
    /// The dialog of this class or object name that is open; null: there is none.
    template <class Dialog>
    Dialog* dialog(const QString& name = {}) {
        Dialog* shown = nullptr;
        EXPECT_TRUE(eventually([&] {
            shown = nullptr;
            for (auto* one : window_->findChildren<Dialog*>(name)) {
                if (one->isVisible()) shown = one;
            }
            return shown != nullptr;
        }));
        return shown;
    }

    std::unique_ptr<MainWindow> window_;
};

}  // namespace app
