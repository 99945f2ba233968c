// SPDX-License-Identifier: Apache-2.0
#include "release/release_page.h"

#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QTabBar>
#include <algorithm>
#include <utility>

#include "editing/works.h"
#include "looks/mark_label.h"
#include "looks/marked_lines.h"
#include "looks/notice_bar.h"
#include "looks/paper_view.h"
#include "looks/task_dialog.h"
#include "looks/text.h"
#include "release/attestation_view.h"

namespace app {
namespace {

constexpr auto kThirdPartyType = "3.2";

QString titleOf(const model::Presented& waiting) {
    return ReleasePage::tr("%1 · %2").arg(waiting.number).arg(qt(waiting.facts.serial));
}

MarkedEntry entryOf(const model::Presented& waiting) {
    MarkedEntry entry;
    entry.mark = markOf(waiting.facts.verdict);
    entry.title = titleOf(waiting);
    entry.word = wordText(waiting.facts.verdict);
    entry.details = {
        ReleasePage::tr("part %1 · %2").arg(qt(waiting.facts.part), qt(waiting.facts.customer)),
        ReleasePage::tr("type %1 · %2, %3")
            .arg(qt(waiting.facts.type), qt(waiting.presented.name),
                 localTime(waiting.presented.time))};
    entry.key = QVariant::fromValue<qint64>(waiting.number);
    return entry;
}

}  // namespace

/// What is asked about one certificate at once.
struct ReleasePage::Looked {
    std::int64_t number = 0;
    std::string pdf;
    std::vector<model::Obstacle> obstacles;
};

ReleasePage::ReleasePage(ArchiveThread& archive, Session& session, QWidget* parent)
    : QWidget(parent), archive_(archive), session_(session) {
    makeLayout();
    connect(queue_, &MarkedList::keyChosen, this, [this] {
        looked_ = false;
        showCurrent();
    });
    connect(&session_, &Session::changed, this, [this] {
        looked_ = false;
        showCurrent();
    });
    connect(views_, &QTabBar::currentChanged, pages_, &QStackedWidget::setCurrentIndex);
    connect(release_, &QPushButton::clicked, this, &ReleasePage::releaseIt);
    connect(return_, &QPushButton::clicked, this, &ReleasePage::returnIt);
    connect(endorse_, &QPushButton::clicked, this, &ReleasePage::endorseIt);
    connect(attestation_, &AttestationView::attested, this, [this] {
        emit tablesChanged();
        showCurrent();
    });
    connect(attestation_, &AttestationView::taskShown, this, &ReleasePage::taskShown);
    showNothing();
}

void ReleasePage::setArchive(const ArchiveThread::Opened& opened) {
    kind_ = opened.kind;
    notice_->takeBack();
    fillQueue({});
    attestation_->reload();
    reload();
}

void ReleasePage::reload() {
    archive_.ask([](model::Archive& held) { return model::presented(held); }, this,
                 [this](model::Result<std::vector<model::Presented>> waiting) {
                     if (!waiting) {
                         notice_->say(Mark::Fails, sentence(waiting.error()), {{tr("Close"), {}}});
                         return;
                     }
                     fillQueue(std::move(*waiting));
                 });
}

void ReleasePage::fillQueue(std::vector<model::Presented> waiting) {
    waiting_ = std::move(waiting);
    std::vector<MarkedEntry> entries;
    for (const auto& one : waiting_) entries.push_back(entryOf(one));
    queue_->setEntries(entries);
    empty_->setVisible(entries.empty());
    queue_->setVisible(!entries.empty());
    if (!entries.empty() && !queue_->currentKey().isValid()) queue_->choose(entries.front().key);
    emit waitingChanged(static_cast<int>(waiting_.size()));
    showCurrent();
}

const model::Presented* ReleasePage::current() const {
    const QVariant key = queue_->currentKey();
    const auto found = std::ranges::find(waiting_, key.toLongLong(), &model::Presented::number);
    return !key.isValid() || found == waiting_.end() ? nullptr : &*found;
}

void ReleasePage::showNothing() {
    shownDigest_.clear();
    paper_->showNothing(
        tr("What inspectors present for release is shown here, page by page, as "
           "it would be released."));
    mark_->hide();
    word_->clear();
    facts_->clear();
    obstacles_.clear();
    obstacleTitle_->clear();
    obstaclesText_->clear();
    looked_ = false;
    refreshButtons();
}

void ReleasePage::showCurrent() {
    const auto* waiting = current();
    if (!waiting) {
        showNothing();
        return;
    }
    refreshButtons();
    // For whoever is not signed in: what stands in the way of any QA manager.
    model::Person person;
    person.roles = {model::Role::QaManager};
    if (session_.person()) person = *session_.person();
    archive_.ask(
        [number = waiting->number, person](model::Archive& held) -> model::Result<Looked> {
            auto pdf = model::presentedFile(held, number);
            if (!pdf) return pdf.error();
            auto obstacles = model::obstacles(held, number, person);
            if (!obstacles) return obstacles.error();
            return Looked{number, std::move(*pdf), std::move(*obstacles)};
        },
        this,
        [this, number = waiting->number](const model::Result<Looked>& looked) {
            if (!current() || current()->number != number) return;
            if (!looked) {
                shownDigest_.clear();
                paper_->showNothing(sentence(looked.error()));
                return;
            }
            show(*looked);
        });
}

void ReleasePage::show(const Looked& looked) {
    const auto& waiting = *current();
    // What is in view stays where somebody has scrolled to.
    if (std::exchange(shownDigest_, waiting.fileDigest) != waiting.fileDigest) {
        paper_->show(looked.pdf);
    }
    const Mark mark = markOf(waiting.facts.verdict);
    mark_->show();
    mark_->setMark(mark);
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, colourOf(mark, colours.color(QPalette::Window)));
    word_->setPalette(colours);
    word_->setText(wordText(waiting.facts.verdict));
    QStringList lines;
    lines << tr("Certificate %1, type %2").arg(waiting.number).arg(qt(waiting.facts.type));
    lines << tr("Casting %1, heat %2").arg(qt(waiting.facts.serial), qt(waiting.facts.heat));
    lines << tr("Part %1").arg(qt(waiting.facts.part));
    lines << tr("%1, order %2").arg(qt(waiting.facts.customer), qt(waiting.facts.order));
    lines << tr("Presented by %1, %2")
                 .arg(qt(waiting.presented.name), localTime(waiting.presented.time));
    if (waiting.endorsed) {
        lines << tr("Signed by the third party, %1, %2")
                     .arg(qt(waiting.endorsed->name), localTime(waiting.endorsed->time));
    }
    if (waiting.facts.supersedes) {
        lines << tr("Replaces certificate %1").arg(*waiting.facts.supersedes);
    }
    facts_->setText(lines.join('\n'));
    obstacles_ = looked.obstacles;
    looked_ = true;
    QStringList sentences;
    if (!session_.signer()) {
        sentences << tr("• Nobody is signed in: sign in as a QA manager to release.");
    }
    for (const auto& obstacle : obstacles_) sentences << "• " + qt(obstacle.sentence);
    obstacleTitle_->setText(sentences.isEmpty() ? tr("Nothing stands in the way.")
                                                : tr("What stands in the way of release"));
    obstaclesText_->setText(sentences.join('\n'));
    obstaclesText_->setVisible(!sentences.isEmpty());
    refreshButtons();
    emit shown();
}

QString ReleasePage::obstacleText() const {
    return obstaclesText_->text();
}

void ReleasePage::refreshButtons() {
    const auto* waiting = current();
    const bool may = waiting && looked_ && session_.signer() && !session_.onlyForReading();
    const bool manager = may && session_.has(model::Role::QaManager);
    release_->setEnabled(manager && obstacles_.empty());
    return_->setEnabled(manager);
    const bool third = waiting && waiting->facts.type == kThirdPartyType;
    endorse_->setVisible(third);
    endorse_->setEnabled(may && third && !waiting->endorsed &&
                         session_.has(model::Role::ThirdParty));
    release_->setToolTip(release_->isEnabled() ? QString()
                                               : tr("What stands in the way is said above."));
}

void ReleasePage::run(const Work& work, TaskDialog* dialog,
                      const std::function<void(model::Result<void>)>& then, const QString& done) {
    const Signer signer = session_.signer();
    if (!signer) {
        then(model::inputError("", "nobody is signed in any more; sign in again"));
        return;
    }
    archive_.ask([signer, work](model::Archive& held) { return work(held, *signer); }, dialog,
                 [this, then, done](const model::Result<void>& result) {
                     if (result) {
                         notice_->say(Mark::Passes, done, {{tr("Close"), {}}});
                         emit queueChanged();
                     }
                     // Somebody else may have been quicker: what waits is asked for anyway.
                     reload();
                     then(result);
                 });
}

TaskDialog* ReleasePage::signingDialog(const QString& title, const QString& intro,
                                       const QString& act) {
    auto* dialog = new TaskDialog(title, intro, act, this);
    const auto& waiting = *current();
    auto* row = new QWidget(dialog);
    auto* mark = new MarkLabel(row);
    mark->setSide(32);
    mark->setMark(markOf(waiting.facts.verdict));
    auto* word = new QLabel(wordText(waiting.facts.verdict), row);
    QFont strong = word->font();
    strong.setBold(true);
    word->setFont(strong);
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText,
                     colourOf(markOf(waiting.facts.verdict), colours.color(QPalette::Window)));
    word->setPalette(colours);
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(mark);
    layout->addWidget(word, 1);
    dialog->form().addRow(row);
    auto* facts = new QLabel(
        tr("Casting %1, part %2, for %3")
            .arg(qt(waiting.facts.serial), qt(waiting.facts.part), qt(waiting.facts.customer)),
        dialog);
    facts->setWordWrap(true);
    dialog->form().addRow(facts);
    return dialog;
}

void ReleasePage::releaseIt() {
    if (!release_->isEnabled()) return;
    const auto number = current()->number;
    auto* dialog = signingDialog(
        tr("Release certificate %1").arg(number),
        current()->facts.verdict == model::Word::Acceptable
            ? tr("With your signature, as %1, this certificate is released. It can then no longer "
                 "be changed, only withdrawn or superseded.")
                  .arg(qt(session_.person()->name))
            : tr("This certificate says that the casting is not acceptable. With your signature, "
                 "as %1, it is released as it says. It can then no longer be changed, only "
                 "withdrawn or superseded.")
                  .arg(qt(session_.person()->name)),
        tr("&Release it"));
    dialog->setObjectName("releaseDialog");
    dialog->setWork([this, number, dialog](const TaskDialog::Then& then) {
        const auto means = IssueMeans::make(worksOf(kind_));
        if (!means) {
            then(means.error());
            return;
        }
        run(
            [number, issue = *means](model::Archive& held, const model::SignedIn& signer) {
                return releaseCertificate(held, number, signer, issue->settings());
            },
            dialog, then, tr("Certificate %1 is released. It is in the archive.").arg(number));
    });
    dialog->open();
    emit taskShown(dialog);
}

void ReleasePage::returnIt() {
    if (!return_->isEnabled()) return;
    const auto number = current()->number;
    auto* dialog = reasonDialog(
        tr("Return certificate %1").arg(number),
        tr("The examinations become drafts of their next revision, and the inspectors see your "
           "reason. The number stays used up, and the archive says why."),
        tr("&Return it"),
        [this, number](const std::string& reason, TaskDialog* asked, const TaskDialog::Then& then) {
            run(
                [number, reason](model::Archive& held, const model::SignedIn& signer) {
                    return model::returnCasting(held, number, reason, signer);
                },
                asked, then, tr("Certificate %1 was returned to the bench.").arg(number));
        },
        this);
    dialog->setObjectName("returnDialog");
    dialog->open();
    emit taskShown(dialog);
}

void ReleasePage::endorseIt() {
    if (!endorse_->isEnabled()) return;
    const auto number = current()->number;
    auto* dialog = signingDialog(
        tr("Sign certificate %1 as third party").arg(number),
        tr("With your signature, as %1 for %2, you confirm this certificate of type 3.2. The QA "
           "manager's signature comes last.")
            .arg(qt(session_.person()->name), qt(session_.person()->body)),
        tr("&Sign it"));
    dialog->setObjectName("endorseDialog");
    dialog->setWork([this, number, dialog](const TaskDialog::Then& then) {
        const auto means = IssueMeans::make(worksOf(kind_));
        if (!means) {
            then(means.error());
            return;
        }
        run(
            [number, issue = *means](model::Archive& held, const model::SignedIn& signer) {
                return endorseCertificate(held, number, signer, issue->settings());
            },
            dialog, then, tr("Certificate %1 is signed by the third party.").arg(number));
    });
    dialog->open();
    emit taskShown(dialog);
}

}  // namespace app
