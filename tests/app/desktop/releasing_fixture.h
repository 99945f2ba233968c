// SPDX-License-Identifier: Apache-2.0
// C-1 brought to release through the window, by people of their roles.
#pragma once

#include <QPushButton>
#include <QSignalSpy>

#include "looks/marked_lines.h"
#include "looks/paper_view.h"
#include "people_fixture.h"

namespace app {

class Releasing : public PeopleTest {
protected:
    /// C-1 presented by the inspector, in view at the release workplace for `person`.
    void lookAtPresented(const char* person) {
        attestTables();
        openCasting();
        signInAs(foundry::kInspector);
        signExamination();
        number_ = present();
        ASSERT_GT(number_, 0);
        signInAs(person);
        window_->goTo(MainWindow::Release);
        ASSERT_TRUE(eventually([&] { return window_->release().queue().count() == 1; }));
        QSignalSpy shown(&window_->release(), &ReleasePage::shown);
        window_->release().reload();
        ASSERT_TRUE(eventually([&] { return shown.count() > 0 && page().paper().pages() > 0; }));
    }

    ReleasePage& page() { return window_->release(); }

    void release() {
        lookAtPresented(foundry::kQaManager);
        ASSERT_TRUE(eventually([&] { return page().releaseButton().isEnabled(); }))
            << page().obstacleText().toStdString();
        page().releaseButton().click();
        auto* asked = dialog<TaskDialog>("releaseDialog");
        ASSERT_NE(asked, nullptr);
        ASSERT_TRUE(doIt(asked));
        ASSERT_TRUE(eventually([&] { return page().queue().count() == 0; }));
    }

    void lookAtReleased() {
        release();
        QSignalSpy shown(&window_->finding(), &FindingPage::shown);
        window_->goTo(MainWindow::Finding);
        window_->finding().reload();
        ASSERT_TRUE(eventually([&] { return shown.count() > 0; }));
    }

    qint64 number_ = 0;
};

}  // namespace app
