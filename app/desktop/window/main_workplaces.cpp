// SPDX-License-Identifier: Apache-2.0
// The workplaces side by side, and what one tells the others.
#include <QLineEdit>
#include <QListWidget>
#include <QStackedWidget>
#include <QStatusBar>
#include <QVBoxLayout>

#include "archive/losses.h"
#include "bench/bench_page.h"
#include "bench/castings_panel.h"
#include "finding/finding_page.h"
#include "finding/search_panel.h"
#include "looks/marked_lines.h"
#include "looks/notice_bar.h"
#include "looks/report_dialog.h"
#include "looks/text.h"
#include "people/person_form.h"
#include "reference/reference_page.h"
#include "release/attestation_view.h"
#include "release/release_page.h"
#include "window/main_window.h"
#include "window/start_page.h"
#include "window/workplace_bar.h"

namespace app {

void MainWindow::makeWorkplaces() {
    auto* central = new QWidget(this);
    auto* layout = new QVBoxLayout(central);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(reading_);
    layout->addWidget(notice_);
    layout->addWidget(bar_);
    layout->addWidget(pages_, 1);
    setCentralWidget(central);
    pages_->addWidget(start_);
    pages_->addWidget(bench_);
    pages_->addWidget(release_);
    pages_->addWidget(finding_);
    pages_->addWidget(reference_);
    bar_->add(tr("Bench"));
    bar_->add(tr("Release"));
    bar_->add(tr("Archive"));
    bar_->add(tr("Reference"));
    bar_->hide();
    connect(bar_, &WorkplaceBar::chosen, this,
            [this](int index) { goTo(static_cast<Workplace>(index)); });
    connect(bar_, &WorkplaceBar::personButtonPressed, this,
            [this] { session_.signer() ? signOut() : signIn(); });
    connect(&session_, &Session::changed, this, &MainWindow::onSessionChanged);
    connect(&session_, &Session::leftAlone, this, [this](const QString& name) {
        notice_->say(Mark::Open,
                     tr("%1 was signed out: nobody has touched a key or the mouse for %2 min. "
                        "What was typed is kept as drafts.")
                         .arg(name)
                         .arg(session_.idleMinutes()),
                     {{tr("Sign in…"), [this] { signIn(); }}, {tr("Close"), {}}});
    });
    connect(bench_, &BenchPage::wanted, this, [this] { goTo(Bench); });
    connect(bench_, &BenchPage::presented, release_, [this] { release_->reload(); });
    connect(release_, &ReleasePage::waitingChanged, this,
            [this](int count) { bar_->setWaiting(Release, count); });
    connect(release_, &ReleasePage::queueChanged, this, [this] {
        finding_->reload();
        bench_->reloadLife();
    });
    connect(release_, &ReleasePage::tablesChanged, this, &MainWindow::reloadTables);
    connect(finding_, &FindingPage::changed, bench_, &BenchPage::reloadLife);
    connect(release_, &ReleasePage::tablesChanged, &reference_->limitTables(),
            &AttestationView::reload);
    connect(reference_, &ReferencePage::tablesChanged, &release_->attestation(),
            &AttestationView::reload);
    connect(reference_, &ReferencePage::tablesChanged, this, &MainWindow::reloadTables);
    connect(reference_, &ReferencePage::recordsChanged, this, &MainWindow::reloadCastings);
}

bool MainWindow::isOpen() const {
    return pages_->currentWidget() != start_;
}

void MainWindow::goTo(Workplace workplace) {
    if (opened_.path.empty()) return;
    QWidget* const page = workplace == Bench     ? static_cast<QWidget*>(bench_)
                          : workplace == Release ? static_cast<QWidget*>(release_)
                          : workplace == Finding ? static_cast<QWidget*>(finding_)
                                                 : static_cast<QWidget*>(reference_);
    const bool moved = pages_->currentWidget() != page;
    pages_->setCurrentWidget(page);
    bar_->setCurrent(workplace);
    if (!moved) return;
    // What others have done meanwhile is asked for on the way.
    switch (workplace) {
        case Bench:
            bench_->reloadLife();
            bench_->castings().setFocus();
            break;
        case Release:
            release_->reload();
            release_->queue().setFocus();
            break;
        case Finding:
            finding_->reload();
            finding_->search().words().setFocus();
            finding_->search().words().selectAll();
            break;
        case Reference:
            reference_->reload();
            reference_->places().setFocus();
            break;
    }
}

void MainWindow::afterReference(std::function<void()> go) {
    if (reference_->isChanged()) goTo(Reference);
    reference_->leave(go);
}

void MainWindow::reloadCastings() {
    archive_.ask([](model::Archive& held) { return held.castings(); }, this,
                 [this](const model::Result<std::vector<model::Casting>>& castings) {
                     if (castings) bench_->castings().setCastings(*castings);
                 });
}

void MainWindow::reloadTables() {
    archive_.ask([](model::Archive& held) { return held.tables(); }, this,
                 [this](model::Result<model::TableSet> tables) {
                     if (!tables) return;
                     opened_.tables = std::make_shared<const model::TableSet>(std::move(*tables));
                     bench_->setTables(opened_.tables);
                 });
}

void MainWindow::sayOnlyForReading(const model::Error& why) {
    const QString text = tr("This archive is open only for reading: nothing can be entered or "
                            "signed. %1")
                             .arg(sentence(why));
    reading_->say(Mark::Open, text, {{tr("Try again"), [this] { openArchive(qt(opened_.path)); }}},
                  true);
    if (why.kind == model::ErrorKind::Damaged) askWhatIsLost();
}

void MainWindow::askWhatIsLost() {
    if (long_.running()) return;
    long_.start(
        [path = opened_.path](
            const model::Progress& progress) -> model::Result<std::vector<model::Error>> {
            auto archive = model::Archive::openForReading(path);
            if (!archive) return archive.error();
            return model::whatIsLost(*archive, progress);
        },
        [this](const model::Result<std::vector<model::Error>>& lost) {
            if (!lost || !opened_.onlyForReading) return;
            QStringList lines;
            for (const auto& one : *lost) lines << sentence(one);
            const QString headline = lost->empty()
                                         ? tr("Everything that the archive lists can be read")
                                         : tr("Cannot be read any more: %1").arg(lost->size());
            const QString text = tr("This archive is damaged and open only for reading: nothing "
                                    "can be entered or signed. %1. Restore a backup to go on "
                                    "working.")
                                     .arg(headline);
            const auto show = [this, headline, lines] {
                sayOnlyForReading(*opened_.onlyForReading);  // the bar stays
                (new ReportDialog(tr("What is lost"), Mark::Fails, headline,
                                  tr("What is not named here can still be read."), lines, this))
                    ->open();
            };
            reading_->say(
                Mark::Fails, text,
                {{tr("What is lost…"), show}, {tr("Restore a backup…"), [this] { restore(); }}},
                true);
        });
}

void MainWindow::onSessionChanged() {
    QString text;
    QString button;
    if (session_.signer()) {
        const auto& person = *session_.person();
        const QString roles = rolesText(person);
        text = tr("%1 · %2").arg(qt(person.name), roles);
        button = tr("Sign out");
        notice_->takeBack();
    } else if (session_.hasPeople()) {
        text = session_.onlyForReading() ? tr("Only for reading") : tr("Nobody is signed in");
        button = session_.onlyForReading() ? QString() : tr("Sign in…");
    } else {
        text = bench_->person();
    }
    bar_->setPerson(text, button);
    reference_->setPerson(bench_->person());
    if (signInAction_) {
        const bool may = session_.hasPeople() && !session_.onlyForReading();
        signInAction_->setEnabled(may && !session_.signer());
        signOutAction_->setEnabled(session_.signer() != nullptr);
        passphraseAction_->setEnabled(session_.signer() != nullptr);
        peopleAction_->setEnabled(session_.hasPeople());
    }
    if (!session_.peopleKnown() || asked_ || opened_.path.empty() || session_.onlyForReading()) {
        return;
    }
    asked_ = true;
    if (session_.hasPeople()) return;
    notice_->say(Mark::Open,
                 tr("Nobody is set up in this archive yet: what is entered stays a draft under a "
                    "typed name, and nothing can be signed or released."),
                 {{tr("Set it up…"), [this] { setUp(); }}, {tr("Not now"), {}}});
    if (bench_->person().isEmpty()) welcome();  // drafts need a name
}

}  // namespace app
