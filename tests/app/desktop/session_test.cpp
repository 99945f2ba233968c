// SPDX-License-Identifier: Apache-2.0
// Signing in at the window, and who may do what without and with it.
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QSignalSpy>
#include <QTest>

#include "bench/examination_pane.h"
#include "bench/indication_model.h"
#include "bench/record_strip.h"
#include "looks/notice_bar.h"
#include "people/people_dialog.h"
#include "people/person_form.h"
#include "people/sign_in_dialog.h"
#include "people_fixture.h"
#include "window/welcome_dialog.h"
#include "window/workplace_bar.h"

namespace app {
namespace {

using testing::HasSubstr;

using SigningIn = PeopleTest;

SignInDialog* choose(MainWindow& window, SignInDialog* dialog, const char* person) {
    dialog->person().setCurrentIndex(dialog->person().findData(person));
    EXPECT_EQ(dialog->person().currentData().toString(), person);
    EXPECT_TRUE(eventually([&] { return !dialog->working(); }));
    (void)window;
    return dialog;
}

TEST_F(SigningIn, TheRightPassphraseSignsInAndTheWindowSaysWho) {
    EXPECT_EQ(window_->workplaces().personText(), "Nobody is signed in");
    window_->signIn();
    auto* asked = choose(*window_, dialog<SignInDialog>(), foundry::kInspector);
    QTest::keyClicks(&asked->passphrase(), foundry::kPassphrase);
    asked->actButton().click();
    EXPECT_TRUE(asked->passphrase().text().isEmpty()) << "it is taken out of the field at once";
    ASSERT_TRUE(eventually([&] { return window_->session().signer() != nullptr; }));
    EXPECT_EQ(window_->session().person()->id, foundry::kInspector);
    EXPECT_THAT(window_->workplaces().personText().toStdString(), HasSubstr("Ilse Bröker"));
    EXPECT_THAT(window_->workplaces().personText().toStdString(), HasSubstr("inspector"));
    window_->workplaces().personButton().click();
    EXPECT_EQ(window_->session().signer(), nullptr);
    EXPECT_EQ(window_->workplaces().personText(), "Nobody is signed in");
}

TEST_F(SigningIn, AWrongPassphraseSaysSoAndAfterThreeTheWaitIsCountedDown) {
    window_->signIn();
    auto* asked = choose(*window_, dialog<SignInDialog>(), foundry::kAuditor);
    for (int attempt = 1; attempt <= 3; ++attempt) {
        asked->passphrase().setText("not the right one");
        ASSERT_TRUE(asked->actButton().isEnabled()) << attempt;
        asked->actButton().click();
        ASSERT_TRUE(asked->working());
        ASSERT_TRUE(eventually(
            [&] { return !asked->working() && asked->trouble().contains("passphrase is wrong"); }));
        EXPECT_EQ(window_->session().signer(), nullptr);
    }
    // model/trust/key_attempts.h: 2 s after the third.
    ASSERT_TRUE(eventually([&] { return asked->trouble().contains("next try is possible in"); }));
    EXPECT_LE(asked->secondsLeft(), 2);
    asked->passphrase().setText(foundry::kPassphrase);
    EXPECT_EQ(asked->actButton().isEnabled(), asked->secondsLeft() == 0);
    QTest::keyClick(asked, Qt::Key_Escape);
    EXPECT_EQ(window_->session().signer(), nullptr);
}

TEST_F(SigningIn, WhoLeavesTheDialogWhileItWorksIsNotSignedIn) {
    window_->signIn();
    auto* asked = choose(*window_, dialog<SignInDialog>(), foundry::kInspector);
    asked->passphrase().setText(foundry::kPassphrase);
    asked->actButton().click();
    ASSERT_TRUE(asked->working());
    asked->reject();
    QSignalSpy changed(&window_->session(), &Session::changed);
    window_->session().reloadPeople();  // answered after the sign-in is
    ASSERT_TRUE(eventually([&] { return changed.count() > 0; }));
    EXPECT_EQ(window_->session().signer(), nullptr);
}

TEST_F(SigningIn, WithoutItTheBenchIsOnlyToRead) {
    openCasting();
    EXPECT_FALSE(window_->session().mayEnter());
    window_->bench().begin();
    EXPECT_EQ(window_->bench().desk()->editor().examinations(), 0);
    EXPECT_THAT(window_->bench().recordStrip().text().toStdString(), HasSubstr("sign in"));
    signInAs(foundry::kAuditor);
    window_->bench().begin();
    EXPECT_EQ(window_->bench().desk()->editor().examinations(), 0) << "an auditor only reads";
    EXPECT_THAT(window_->bench().recordStrip().text().toStdString(), HasSubstr("Aud Itur"));
    signInAs(foundry::kInspector);
    window_->bench().begin();
    EXPECT_EQ(window_->bench().desk()->editor().examinations(), 1);
}

TEST_F(SigningIn, WhatWasTypedStaysWhenNobodyTouchesAnythingAndIsLockedThen) {
    openCasting();
    signInAs(foundry::kInspector);
    EXPECT_GT(window_->session().idleLeft(), 14 * 60'000);
    EXPECT_LT(window_->session().idleLeft(), 16 * 60'000) << "15 min, by a coarse timer";
    window_->bench().begin();
    auto& rows = window_->bench().examination().rows();
    ASSERT_TRUE(rows.setData(rows.index(0, static_cast<int>(Column::X)), "12", Qt::EditRole));
    window_->session().endUnattended();
    EXPECT_EQ(window_->session().signer(), nullptr);
    EXPECT_THAT(window_->notice().text().toStdString(), HasSubstr("Ilse Bröker was signed out"));
    EXPECT_FALSE(rows.setData(rows.index(0, static_cast<int>(Column::X)), "13", Qt::EditRole));
    ASSERT_TRUE(eventually([&] { return !window_->bench().unsaved(); }));
    const auto history = model::Archive::open(archivePath().toStdString())->history();
    ASSERT_TRUE(history);
    EXPECT_EQ(history->back().action, "examination saved");
    EXPECT_EQ(history->back().person, "Ilse Bröker");
    EXPECT_EQ(window_->bench().desk()->editor().draft(0).rows.at(0).x, "12");
}

TEST_F(SigningIn, AnAdministratorAddsAPersonAndOthersCannot) {
    signInAs(foundry::kInspector);
    window_->showPeople();
    auto* people = dialog<PeopleDialog>();
    ASSERT_NE(people, nullptr);
    EXPECT_FALSE(people->findChild<QPushButton*>("add")->isEnabled());
    people->close();
    signInAs(foundry::kAdministrator);
    window_->showPeople();
    people = dialog<PeopleDialog>();
    people->addPerson();
    QTest::keyClicks(&people->form().name(), "Nora Quell");
    EXPECT_EQ(people->form().person().id, "nora.quell");
    people->save();
    ASSERT_TRUE(eventually([&] { return window_->session().people().size() == 9; }));
    const auto stored =
        model::person(*model::Archive::open(archivePath().toStdString()), "nora.quell");
    ASSERT_TRUE(stored) << stored.error().message();
    EXPECT_TRUE(stored->value.roles.contains(model::Role::Inspector));
    ASSERT_TRUE(eventually([&] { return people->identityText().contains("No identity in use"); }))
        << people->identityText().toStdString();
}

TEST_F(SigningIn, AnAdministratorChangesTheAuthoritysPassphrase) {
    signInAs(foundry::kInspector);
    window_->showPeople();
    auto* people = dialog<PeopleDialog>();
    ASSERT_NE(people, nullptr);
    EXPECT_FALSE(people->findChild<QPushButton*>("authority")->isEnabled());
    people->close();
    signInAs(foundry::kAdministrator);
    window_->showPeople();
    people = dialog<PeopleDialog>();
    people->findChild<QPushButton*>("authority")->click();
    auto* asked = dialog<TaskDialog>();
    ASSERT_NE(asked, nullptr);
    EXPECT_EQ(asked->windowTitle(), "Change the authority's passphrase");
    asked->findChild<QLineEdit*>("authorityPassphrase")->setText("not the ladle");
    const auto typeNew = [&] {
        asked->findChild<QLineEdit*>("newPassphrase")->setText("two ladles of iron");
        asked->findChild<QLineEdit*>("newPassphraseAgain")->setText("two ladles of iron");
    };
    typeNew();
    asked->actButton().click();
    ASSERT_TRUE(eventually([&] { return asked->trouble().contains("passphrase is wrong"); }));
    asked->findChild<QLineEdit*>("authorityPassphrase")->setText(foundry::kAuthorityPassphrase);
    typeNew();
    ASSERT_TRUE(doIt(asked));
    auto archive = model::Archive::open(archivePath().toStdString());
    ASSERT_TRUE(archive);
    const auto issue = [&](const char* passphrase) {
        return model::issueIdentity(*archive, foundry::kTrainee, model::KeyKind::P256,
                                    foundry::validUntil(), foundry::passphrase(),
                                    model::SecretBytes(passphrase),
                                    foundry::signedIn(*archive, foundry::kAdministrator));
    };
    EXPECT_FALSE(issue(foundry::kAuthorityPassphrase));
    const auto issued = issue("two ladles of iron");
    EXPECT_TRUE(issued) << issued.error().message();
}

TEST_F(SigningIn, APersonChangedByTwoIsShownAnewAndNotOverwritten) {
    signInAs(foundry::kAdministrator);
    window_->showPeople();
    auto* people = dialog<PeopleDialog>();
    ASSERT_TRUE(eventually([&] { return people->form().person().id == foundry::kAdministrator; }));
    {
        auto other = model::Archive::open(archivePath().toStdString());
        auto stored = model::person(*other, foundry::kAdministrator);
        stored->value.body = "";
        stored->value.roles.insert(model::Role::QaManager);
        const auto saved = model::savePerson(*other, stored->value, stored->version,
                                             foundry::signedIn(*other, foundry::kAdministrator));
        ASSERT_TRUE(saved) << saved.error().message();
    }
    people->form().findChild<QCheckBox*>("role auditor")->click();
    people->save();
    ASSERT_TRUE(eventually([&] { return people->notice().text().startsWith("Not saved"); }));
    const auto stored =
        model::person(*model::Archive::open(archivePath().toStdString()), foundry::kAdministrator);
    EXPECT_FALSE(stored->value.roles.contains(model::Role::Auditor));
    EXPECT_TRUE(stored->value.roles.contains(model::Role::QaManager));
}

TEST_F(SigningIn, WhereThereArePeopleTheWelcomeAsksForNoNameButToSignIn) {
    window_->welcome();
    auto* welcome = dialog<WelcomeDialog>();
    ASSERT_NE(welcome, nullptr);
    EXPECT_FALSE(welcome->findChild<QLineEdit*>("name")->isVisible());
    EXPECT_EQ(welcome->findChild<QLabel*>("whoSitsHere")->text(),
              "To enter or sign anything, sign in next.");
    welcome->findChild<QPushButton*>("understood")->click();
    EXPECT_NE(dialog<SignInDialog>(), nullptr);
}

class FirstStart : public FoundryTest {
protected:
    void SetUp() override { QSettings().remove("bench/person"); }
    void TearDown() override { QSettings().remove("bench/person"); }
};

TEST_F(FirstStart, ANameIsAskedForOnlyOnceAnArchiveWithoutPeopleIsOpen) {
    MainWindow window;
    window.show();
    window.welcome();
    auto* welcome = window.findChild<WelcomeDialog*>();
    ASSERT_NE(welcome, nullptr);
    auto* name = welcome->findChild<QLineEdit*>("name");
    auto* understood = welcome->findChild<QPushButton*>("understood");
    EXPECT_FALSE(name->isVisible());
    EXPECT_TRUE(understood->isEnabled());
    window.openArchive(path());
    ASSERT_TRUE(eventually([&] { return name->isVisible(); }));
    EXPECT_EQ(window.findChildren<WelcomeDialog*>().size(), 1);
    EXPECT_FALSE(understood->isEnabled());
    QTest::keyClicks(name, "Ada Ferrous");
    ASSERT_TRUE(understood->isEnabled());
    understood->click();
    EXPECT_EQ(window.bench().person(), "Ada Ferrous");
    EXPECT_EQ(window.workplaces().personText(), "Ada Ferrous");
}

TEST_F(FirstStart, AnArchiveWithoutPeopleOffersToSetThemUpAndThenSomebodyCanSignIn) {
    MainWindow window;
    window.show();
    QSignalSpy opened(&window, &MainWindow::archiveOpened);
    window.openArchive(path());
    ASSERT_TRUE(eventually([&] { return opened.count() == 1; }));
    ASSERT_TRUE(eventually([&] { return window.notice().text().contains("Nobody is set up"); }));
    EXPECT_TRUE(window.session().mayEnter()) << "drafts go on under a typed name";
    window.setUp();
    auto* dialog = window.findChild<TaskDialog*>();
    ASSERT_NE(dialog, nullptr);
    EXPECT_FALSE(dialog->actButton().isEnabled());
    const auto fill = [&](const char* name, const QString& text) {
        auto* line = dialog->findChild<QLineEdit*>(name);
        ASSERT_NE(line, nullptr) << name;
        line->setText(text);
    };
    fill("company", "Quillmere Foundry");
    fill("authorityPassphrase", "one ladle of iron");
    fill("authorityPassphraseAgain", "one ladle of iron");
    fill("name", "Ada Ferrous");
    fill("id", "ada");
    fill("passphrase", "green sand and clay");
    fill("passphraseAgain", "green sand and cloy");
    EXPECT_FALSE(dialog->actButton().isEnabled()) << "the two are not the same";
    fill("passphraseAgain", "green sand and clay");
    ASSERT_TRUE(dialog->actButton().isEnabled()) << dialog->actButton().toolTip().toStdString();
    dialog->actButton().click();
    ASSERT_TRUE(eventually([&] { return window.session().hasPeople(); }));
    EXPECT_FALSE(window.session().mayEnter());
    window.signIn();
    auto* signIn = window.findChild<SignInDialog*>();
    ASSERT_NE(signIn, nullptr);
    EXPECT_EQ(signIn->person().currentText(), "Ada Ferrous");
    signIn->passphrase().setText("green sand and clay");
    signIn->actButton().click();
    ASSERT_TRUE(eventually([&] { return window.session().signer() != nullptr; }));
    EXPECT_TRUE(window.session().has(model::Role::Administrator));
}

TEST(IdleTime, AKeyBeginsItAnew) {
    ArchiveThread archive;
    Session session(archive);
    EXPECT_EQ(session.idleMinutes(), Session::kUsualIdleMinutes);
    EXPECT_EQ(session.idleLeft(), -1) << "nobody is signed in";
    session.setIdleMinutes(0);
    EXPECT_EQ(session.idleMinutes(), 0);
    session.setIdleMinutes(Session::kUsualIdleMinutes);
}

}  // namespace
}  // namespace app
