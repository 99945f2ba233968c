// SPDX-License-Identifier: Apache-2.0
// How long an order is kept, legal holds and disposal, through the window.
#include <QDateEdit>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTableWidget>
#include <QTest>

#include "archive/retention.h"
#include "finding/keeping_dialog.h"
#include "looks/notice_bar.h"
#include "releasing_fixture.h"

namespace app {
namespace {

using testing::HasSubstr;

class Keeping : public Releasing {
protected:
    /// The dialog of the order of the released certificate in view, filled.
    void openKeeping() {
        window_->finding().findChild<QPushButton*>("keeping")->click();
        keeping_ = dialog<KeepingDialog>();
        ASSERT_NE(keeping_, nullptr);
        ASSERT_TRUE(eventually([&] { return keeping_->certificates().rowCount() == 1; }));
    }
    QPushButton& button(const QString& name) { return *keeping_->findChild<QPushButton*>(name); }
    bool says(const QString& text) {
        return eventually([&] { return keeping_->statedText().contains(text); });
    }
    static void give(TaskDialog& task, const QString& reason) {
        task.findChild<QPlainTextEdit*>("reason")->setPlainText(reason);
    }
    void stateLastDay(const QDate& day, const QString& reason) {
        button("lastDay").click();
        auto* task = dialog<TaskDialog>("lastDayDialog");
        ASSERT_NE(task, nullptr);
        task->findChild<QDateEdit*>("day")->setDate(day);
        give(*task, reason);
        ASSERT_TRUE(doIt(task));
        ASSERT_TRUE(says(day.toString("yyyy-MM-dd")));
    }
    [[nodiscard]] model::Archive openedAgain() const {
        auto archive = model::Archive::open(archivePath().toStdString());
        EXPECT_TRUE(archive) << archive.error().message();
        return std::move(*archive);
    }

    KeepingDialog* keeping_ = nullptr;
};

TEST_F(Keeping, ADayAndAHoldAreStatedAndADisposalTakesEverythingOut) {
    lookAtReleased();
    openKeeping();
    EXPECT_EQ(keeping_->statedText(), "For ever: no last day is stated.");
    EXPECT_THAT(keeping_->leavingText().toStdString(), HasSubstr("stays for ever"));
    EXPECT_FALSE(button("dispose").isEnabled());
    stateLastDay(QDate(2001, 5, 31), "");
    EXPECT_EQ(keeping_->statedText(), "Until 2001-05-31, that day included.");
    ASSERT_TRUE(eventually([&] { return button("dispose").isEnabled(); }));

    // An earlier day needs a reason, the same one is none.
    button("lastDay").click();
    auto* task = dialog<TaskDialog>("lastDayDialog");
    ASSERT_NE(task, nullptr);
    EXPECT_FALSE(task->actButton().isEnabled());
    task->findChild<QDateEdit*>("day")->setDate(QDate(2001, 5, 30));
    EXPECT_FALSE(task->actButton().isEnabled());
    give(*task, "typing error");
    EXPECT_TRUE(task->actButton().isEnabled());
    task->reject();

    button("hold").click();
    task = dialog<TaskDialog>("holdDialog");
    ASSERT_NE(task, nullptr);
    EXPECT_FALSE(task->actButton().isEnabled());
    give(*task, "claim 12");
    ASSERT_TRUE(doIt(task));
    ASSERT_TRUE(says("On legal hold: claim 12"));
    EXPECT_FALSE(button("dispose").isEnabled());
    EXPECT_THAT(keeping_->leavingText().toStdString(), HasSubstr("is on hold: claim 12"));
    ASSERT_TRUE(eventually([&] { return button("hold").text() == "End the legal &hold…"; }));
    button("hold").click();
    task = dialog<TaskDialog>("holdDialog");
    ASSERT_NE(task, nullptr);
    give(*task, "settled");
    ASSERT_TRUE(doIt(task));
    ASSERT_TRUE(eventually([&] { return button("dispose").isEnabled(); }));
    EXPECT_EQ(model::retention(openedAgain(), "O-1")->hold, std::nullopt);

    const auto before = openedAgain().certificate(number_);
    ASSERT_TRUE(before);
    // The released file and the presented one.
    EXPECT_THAT(keeping_->leavingText().toStdString(), HasSubstr("with its 2 PDF files"));
    EXPECT_THAT(keeping_->leavingText().toStdString(), HasSubstr("the signed examination that"));
    button("dispose").click();
    task = dialog<TaskDialog>("disposeDialog");
    ASSERT_NE(task, nullptr);
    EXPECT_THAT(task->findChild<QLabel*>("goingFiles")->text().toStdString(),
                HasSubstr(before->fileDigest));
    give(*task, "its day is over");
    EXPECT_FALSE(task->actButton().isEnabled()) << "without the passphrase";
    auto* passphrase = task->findChild<QLineEdit*>("passphrase");
    passphrase->setText("not the right one");
    task->actButton().click();
    EXPECT_TRUE(passphrase->text().isEmpty());
    ASSERT_TRUE(eventually([&] { return task->trouble().contains("passphrase is wrong"); }));
    EXPECT_TRUE(openedAgain().certificate(number_));
    passphrase->setText(foundry::kPassphrase);
    ASSERT_TRUE(doIt(task));
    ASSERT_TRUE(eventually([&] { return keeping_->certificates().rowCount() == 0; }));
    EXPECT_FALSE(button("dispose").isEnabled());
    const auto after = openedAgain().certificate(number_);
    ASSERT_FALSE(after);
    EXPECT_THAT(after.error().message(), HasSubstr("Quentin Marsh disposed of it"));
    EXPECT_THAT(after.error().message(), HasSubstr("its day is over"));
    ASSERT_TRUE(eventually([&] { return window_->finding().results().count() == 0; }));
    EXPECT_EQ(window_->finding().factsText(), "");
    EXPECT_TRUE(openedAgain().verify()->findings.empty());
}

TEST_F(Keeping, WhoIsNeitherQaManagerNorAdministratorOnlyReads) {
    lookAtReleased();
    for (const char* person : {foundry::kInspector, foundry::kAuditor, foundry::kAdministrator}) {
        signInAs(person);
        openKeeping();
        const bool may = person == std::string(foundry::kAdministrator);
        EXPECT_EQ(button("lastDay").isEnabled(), may) << person;
        EXPECT_EQ(button("hold").isEnabled(), may) << person;
        EXPECT_FALSE(button("dispose").isEnabled()) << "it is kept for ever";
        EXPECT_EQ(keeping_->findChild<QLabel*>("hint")->isVisible(), !may) << person;
        keeping_->close();
        QTest::qWait(0);
    }
}

}  // namespace
}  // namespace app
