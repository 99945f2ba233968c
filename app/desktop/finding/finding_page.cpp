// SPDX-License-Identifier: Apache-2.0
#include "finding/finding_page.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollBar>

#include "finding/certificate_life.h"
#include "finding/search_panel.h"
#include "looks/mark_label.h"
#include "looks/marked_lines.h"
#include "looks/notice_bar.h"
#include "looks/paper_view.h"
#include "looks/task_dialog.h"
#include "looks/text.h"

namespace app {
namespace {

MarkedEntry entryOf(const model::FoundCertificate& found) {
    MarkedEntry entry;
    entry.mark = markOf(found.verdict);
    entry.title = FindingPage::tr("%1 · %2").arg(found.number).arg(qt(found.serial));
    entry.word = wordText(found.verdict);
    if (found.state == model::CertificateState::Superseded) {
        entry.word = FindingPage::tr("superseded: %1").arg(entry.word);
        entry.muted = true;
    } else if (found.state == model::CertificateState::Withdrawn) {
        entry.word = FindingPage::tr("withdrawn: %1").arg(entry.word);
        entry.muted = true;
    }
    entry.details = {
        FindingPage::tr("heat %1 · part %2").arg(qt(found.heat), qt(found.part)),
        FindingPage::tr("%1 · %2").arg(localTime(found.issuedAt).left(10), qt(found.customer))};
    entry.key = QVariant::fromValue<qint64>(found.number);
    return entry;
}

}  // namespace

FindingPage::FindingPage(ArchiveThread& archive, Session& session, QWidget* parent)
    : QWidget(parent), archive_(archive), session_(session) {
    makeLayout();
    connect(search_, &SearchPanel::changed, this, [this] { ask(false); });
    connect(results_, &MarkedList::keyChosen, this, &FindingPage::showCurrent);
    connect(results_->verticalScrollBar(), &QScrollBar::valueChanged, this, [this](int value) {
        if (value == results_->verticalScrollBar()->maximum() && next_ && !asking_) ask(true);
    });
    connect(&search_->words(), &QLineEdit::returnPressed, results_,
            [this] { results_->setFocus(); });
    connect(&session_, &Session::changed, this, &FindingPage::refreshButtons);
    connect(save_, &QPushButton::clicked, this, &FindingPage::savePdf);
    connect(export_, &QPushButton::clicked, this, &FindingPage::exportIt);
    connect(verify_, &QPushButton::clicked, this, &FindingPage::verifyThis);
    connect(history_, &QPushButton::clicked, this, &FindingPage::showHistory);
    connect(withdraw_, &QPushButton::clicked, this, &FindingPage::withdraw);
    connect(keeping_, &QPushButton::clicked, this, &FindingPage::showKeeping);
    connect(verifyAll_, &QPushButton::clicked, this, &FindingPage::verifyAll);
    showNothing({});
}

FindingPage::~FindingPage() = default;

void FindingPage::setArchive(const ArchiveThread::Opened& opened) {
    path_ = opened.path;
    notice_->takeBack();
    search_->clear();
    results_->setEntries({});
    showNothing({});
    ask(false);
}

void FindingPage::reload() {
    ask(false);
}

void FindingPage::ask(bool more) {
    model::CertificateSearch search = search_->search();
    if (more) search.before = next_;
    asking_ = true;
    const quint64 ticket = ++ticket_;
    archive_.ask([search](model::Archive& held) { return model::findCertificates(held, search); },
                 this,
                 [this, more, ticket](const model::Result<model::CertificatePage>& page) {
                     if (ticket != ticket_) return;  // something else is asked for by now
                     asking_ = false;
                     if (!page) {
                         next_.reset();
                         search_->setSaid(sentence(page.error()), true);
                         emit found();
                         return;
                     }
                     std::vector<MarkedEntry> entries;
                     for (const auto& certificate : page->certificates) {
                         entries.push_back(entryOf(certificate));
                     }
                     next_ = page->next;
                     if (more) {
                         results_->append(entries);
                     } else {
                         results_->setEntries(entries);
                         if (!results_->currentKey().isValid() && !entries.empty()) {
                             results_->choose(entries.front().key);
                         }
                     }
                     const int count = results_->count();
                     search_->setSaid(count == 0 ? tr("No certificate agrees with this.")
                                      : next_    ? tr("The newest %1; scroll for more.").arg(count)
                                                 : tr("Certificates found: %1").arg(count),
                                      false);
                     if (count == 0) showNothing({});
                     emit found();
                 });
}

std::int64_t FindingPage::number() const {
    return looked_ ? looked_->certificate.number : 0;
}

void FindingPage::showNothing(const QString& why) {
    looked_.reset();
    paper_->showNothing(why.isEmpty() ? tr("The certificate that is chosen at the left is shown "
                                           "here, byte for byte as it was released.")
                                      : why);
    setMark(std::nullopt, {});
    state_->clear();
    facts_->clear();
    refreshButtons();
}

void FindingPage::showCurrent() {
    const QVariant key = results_->currentKey();
    if (!key.isValid()) {
        showNothing({});
        return;
    }
    const std::int64_t wanted = key.toLongLong();
    archive_.ask(
        [wanted](model::Archive& held) -> model::Result<std::shared_ptr<Looked>> {
            auto certificate = held.certificate(wanted);
            if (!certificate) return certificate.error();
            auto presented = model::presented(held, wanted);
            return std::make_shared<Looked>(
                Looked{std::move(*certificate),
                       presented ? std::optional(std::move(*presented)) : std::nullopt,
                       held.certificateFile(wanted)});
        },
        this,
        [this, wanted](const model::Result<std::shared_ptr<Looked>>& looked) {
            if (results_->currentKey().toLongLong() != wanted) return;
            if (!looked) {
                showNothing(sentence(looked.error()));
                return;
            }
            show(std::move(**looked));
        });
}

void FindingPage::show(Looked looked) {
    looked_ = std::make_unique<Looked>(std::move(looked));
    const auto& facts = looked_->certificate.facts;
    if (looked_->pdf) {
        paper_->show(*looked_->pdf);
    } else {
        paper_->showNothing(sentence(looked_->pdf.error()));
    }
    setMark(markOf(facts.verdict), wordText(facts.verdict));
    state_->setText(certificateState(looked_->certificate, looked_->presented));
    facts_->setText(certificateFacts(looked_->certificate).join('\n'));
    refreshButtons();
    emit shown();
}

void FindingPage::setMark(std::optional<Mark> mark, const QString& word) {
    mark_->setVisible(mark.has_value());
    word_->setText(word);
    if (!mark) return;
    mark_->setMark(*mark);
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, colourOf(*mark, colours.color(QPalette::Window)));
    word_->setPalette(colours);
}

void FindingPage::refreshButtons() {
    const bool any = looked_ != nullptr;
    const bool readable = any && looked_->pdf.ok();
    save_->setEnabled(readable);
    export_->setEnabled(readable);
    verify_->setEnabled(any);
    history_->setEnabled(any);
    keeping_->setEnabled(any);
    const bool stands = any && looked_->presented &&
                        looked_->presented->state() == model::CertificateState::Released;
    withdraw_->setVisible(session_.has(model::Role::QaManager));
    withdraw_->setEnabled(stands && !session_.onlyForReading());
}

QString FindingPage::stateText() const {
    return state_->text();
}
QString FindingPage::factsText() const {
    return facts_->text();
}

void FindingPage::tell(const model::Error& error) {
    notice_->say(Mark::Fails, sentence(error), {{tr("Close"), {}}});
}

}  // namespace app
