// SPDX-License-Identifier: Apache-2.0
#include "reference/conditions_view.h"

#include <QEvent>
#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollBar>
#include <QSplitter>
#include <QTableWidget>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>
#include <array>
#include <numeric>

#include "looks/heading.h"
#include "looks/marked_lines.h"
#include "looks/task_dialog.h"
#include "looks/text.h"
#include "reference/condition_lines.h"

namespace app {
namespace {

constexpr auto kAttested = "attested";
constexpr auto kWithdrawn = "withdrawn";

QString methodsOf(const model::ConditionSet& set) {
    if (set.methods.empty()) return ConditionsView::tr("people");
    QStringList methods;
    for (const auto method : set.methods) methods << methodText(method);
    return methods.join(", ");
}

enum Column { Id, What, Limit, When, Reaction, Place, Sure, Columns };

}  // namespace

ConditionsView::ConditionsView(ArchiveThread& archive, Session& session, QWidget* parent)
    : QWidget(parent),
      archive_(archive),
      session_(session),
      list_(new MarkedList(1, this)),
      title_(new Heading(1.25, this)),
      about_(new QLabel(this)),
      rules_(new QTableWidget(this)),
      state_(new QLabel(this)),
      attest_(new QPushButton(tr("&Attest this set…"), this)),
      withdraw_(new QPushButton(tr("&Withdraw the attestation…"), this)) {
    makeLayout();
    connect(list_, &MarkedList::keyChosen, this, &ConditionsView::showSet);
    connect(rules_->verticalScrollBar(), &QScrollBar::valueChanged, this, [this] { noteSeen(); });
    connect(&session_, &Session::changed, this, &ConditionsView::refreshState);
    connect(attest_, &QPushButton::clicked, this, &ConditionsView::attest);
    connect(withdraw_, &QPushButton::clicked, this, &ConditionsView::withdraw);
    rules_->viewport()->installEventFilter(this);
    fillList();
}

void ConditionsView::makeLayout() {
    list_->setAccessibleName(tr("Sets of test conditions"));
    for (auto* label : {about_, state_}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    }
    state_->setObjectName("conditionsState");
    const QStringList titles{tr("Rule"),    tr("What"),        tr("Limit"),
                             tr("When"),    tr("If not kept"), tr("Place in the standard"),
                             tr("How sure")};
    rules_->setColumnCount(Columns);
    rules_->setHorizontalHeaderLabels(titles);
    for (int column = 0; column < Columns; ++column) {
        rules_->horizontalHeaderItem(column)->setTextAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    }
    rules_->verticalHeader()->hide();
    rules_->horizontalHeader()->setHighlightSections(false);
    rules_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    rules_->setSelectionBehavior(QAbstractItemView::SelectRows);
    rules_->setAlternatingRowColors(true);
    rules_->setWordWrap(true);  // nothing may be cut off that somebody attests
    rules_->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    rules_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    rules_->setTabKeyNavigation(false);
    rules_->setAccessibleName(tr("Every rule of the set"));
    auto* right = new QWidget(this);
    auto* below = new QHBoxLayout;
    below->addWidget(state_, 1);
    below->addWidget(withdraw_);
    below->addWidget(attest_);
    auto* layout = new QVBoxLayout(right);
    layout->setContentsMargins(14, 10, 12, 10);
    layout->setSpacing(6);
    layout->addWidget(title_);
    layout->addWidget(about_);
    layout->addWidget(rules_, 1);
    layout->addLayout(below);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->addWidget(list_);
    split->addWidget(right);
    split->setStretchFactor(1, 1);
    split->setSizes({280, 960});
    split->setChildrenCollapsible(false);
    fitList();
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->addWidget(split);
}

/// Wide enough for the names in any size of type.
void ConditionsView::fitList() {
    list_->setMinimumWidth(fontMetrics().averageCharWidth() * 36);
}

void ConditionsView::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) fitList();
}

void ConditionsView::reload() {
    archive_.ask(
        [](model::Archive& held) { return model::entries<model::ConditionSetAttestation>(held); },
        this,
        [this](model::Result<std::vector<Stored>> attestations) {
            known_ = attestations.ok();
            trouble_ = known_ ? QString() : sentence(attestations.error());
            attestations_ = known_ ? std::move(*attestations) : std::vector<Stored>();
            fillList();
            emit shown();
        });
}

const ConditionsView::Stored* ConditionsView::storedOf(const model::ConditionSet& set) const {
    const auto found = std::ranges::find_if(attestations_, [&](const Stored& stored) {
        return stored.value.set == set.id && stored.value.sha256 == set.digest;
    });
    return found == attestations_.end() ? nullptr : &*found;
}

bool ConditionsView::isAttested(const model::ConditionSet& set) const {
    const auto* stored = storedOf(set);
    return stored && stored->value.state == kAttested;
}

void ConditionsView::fillList() {
    std::vector<MarkedEntry> entries;
    for (const auto& set : model::builtInConditionSets()) {
        const bool done = isAttested(set);
        MarkedEntry entry;
        entry.mark = done ? Mark::Passes : Mark::Open;
        entry.title = qt(set.id);
        entry.word = done ? tr("attested") : tr("not attested");
        entry.details = {tr("revision %1 · %2").arg(set.revision).arg(methodsOf(set))};
        entry.key = qt(set.id);
        entries.push_back(std::move(entry));
    }
    list_->setEntries(entries);
    if (!list_->currentKey().isValid() && !entries.empty()) list_->choose(entries.front().key);
    showSet();
}

const model::ConditionSet* ConditionsView::current() const {
    return model::conditionSet(list_->currentKey().toString().toStdString());
}

void ConditionsView::showSet() {
    const auto* set = current();
    const auto lines = set ? conditionLines(*set) : std::vector<ConditionLine>();
    title_->setText(set ? tr("%1, revision %2").arg(qt(set->id)).arg(set->revision) : QString());
    QStringList about;
    if (set) {
        for (const auto& remark : set->remarks) about << qt(remark);
        about << tr("SHA-256 %1").arg(qt(set->digest));
    }
    about_->setText(about.join('\n'));
    rules_->clearContents();
    rules_->setRowCount(static_cast<int>(lines.size()));
    for (int row = 0; row < rules_->rowCount(); ++row) {
        const auto& line = lines[static_cast<std::size_t>(row)];
        const QString what =
            line.note.isEmpty() ? line.what : tr("%1 (%2)").arg(line.what, line.note);
        const QStringList texts{line.id,       what,       line.limit, line.when,
                                line.reaction, line.place, line.sure};
        for (int column = 0; column < texts.size(); ++column) {
            auto* item = new QTableWidgetItem(texts[column]);
            item->setTextAlignment(Qt::AlignLeft | Qt::AlignTop);
            item->setToolTip(texts[column]);
            rules_->setItem(row, column, item);
        }
    }
    fit();
    rules_->scrollToTop();
    refreshState();
    QTimer::singleShot(0, this, [this] { noteSeen(); });
}

/// Wide enough for each word, as nothing may be cut off; what is left goes to what is mostly long.
void ConditionsView::fit() {
    constexpr int kShares[Columns] = {0, 4, 2, 2, 0, 2, 0};
    constexpr int kMargin = 14;  // px around a word
    const QFontMetrics metrics(rules_->font());
    int left = rules_->viewport()->width();
    std::array<int, Columns> widths{};
    for (int column = 0; column < Columns; ++column) {
        QStringList words{rules_->horizontalHeaderItem(column)->text()};
        for (int row = 0; row < rules_->rowCount(); ++row) {
            words << rules_->item(row, column)->text().split(' ');
        }
        for (const QString& word : words) {
            widths[column] = std::max(widths[column], metrics.horizontalAdvance(word) + kMargin);
        }
        left -= widths[column];
    }
    const int whole = std::accumulate(std::begin(kShares), std::end(kShares), 0);
    for (int column = 0; column < Columns; ++column) {
        rules_->setColumnWidth(column,
                               widths[column] + std::max(0, left) * kShares[column] / whole);
    }
    rules_->resizeRowsToContents();
}

bool ConditionsView::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Resize) QTimer::singleShot(0, this, [this] { fit(); });
    if (event->type() == QEvent::Paint) QTimer::singleShot(0, this, [this] { noteSeen(); });
    return QWidget::eventFilter(watched, event);
}

/// Only what is really on the screen counts: whole lines of a visible list.
void ConditionsView::noteSeen() {
    const auto* set = current();
    if (!set || !rules_->isVisible() || rules_->rowCount() == 0) return;
    auto& seen = seen_[set->digest];
    const auto before = seen.size();
    const int height = rules_->viewport()->height();
    for (int row = std::max(0, rules_->rowAt(0)); row < rules_->rowCount(); ++row) {
        const int top = rules_->rowViewportPosition(row);
        const int bottom = top + rules_->rowHeight(row);
        if (bottom > height) break;
        // One that is higher than the list was in view once its end is.
        if (top >= 0 || bottom - top > height) seen.insert(row);
    }
    if (seen.size() != before) refreshState();
}

void ConditionsView::refreshState() {
    const auto* set = current();
    const bool manager = session_.has(model::Role::QaManager) && !session_.onlyForReading();
    const bool done = set && isAttested(*set);
    withdraw_->setVisible(done && manager);
    attest_->setVisible(set && !done);
    attest_->setEnabled(false);
    if (!set || !known_) {
        state_->setText(trouble_);
        return;
    }
    if (done) {
        state_->setText(
            tr("✓ Attested, compared with: %1").arg(qt(storedOf(*set)->value.companyCopy)));
        return;
    }
    const auto* withdrawn = storedOf(*set);
    const QString open =
        withdrawn ? tr("The attestation was withdrawn: %1").arg(qt(withdrawn->value.remarks))
                  : tr("Not attested: rules that were partly read, or are from memory, only warn.");
    if (!manager) {
        state_->setText(tr("%1 A QA manager who has signed in can attest it.").arg(open));
        return;
    }
    const auto seen = seen_[set->digest].size();
    if (seen < set->rules.size()) {
        state_->setText(tr("%1 Rules that have been in view: %2 of %3. Go through them all, with "
                           "your copy of the standard beside you.")
                            .arg(open)
                            .arg(seen)
                            .arg(set->rules.size()));
        return;
    }
    state_->setText(tr("%1 Every rule has been in view.").arg(open));
    attest_->setEnabled(true);
}

QString ConditionsView::stateText() const {
    return state_->text();
}

void ConditionsView::sign(const model::ConditionSetAttestation& attestation, std::int64_t version,
                          TaskDialog* dialog,
                          const std::function<void(model::Result<void>)>& then) {
    const Signer signer = session_.signer();
    if (!signer) {
        then(model::inputError("", "nobody is signed in any more; sign in again"));
        return;
    }
    archive_.ask(
        [signer, attestation, version](model::Archive& held) {
            return model::saveEntry(held, attestation, version, *signer);
        },
        dialog,
        [this, then](const model::Result<std::int64_t>& saved) {
            reload();
            then(saved ? model::Result<void>() : model::Result<void>(saved.error()));
        });
}

void ConditionsView::attest() {
    const auto* set = current();
    if (!set || !attest_->isEnabled()) return;
    auto* dialog = new TaskDialog(
        tr("Attest %1").arg(qt(set->id)),
        tr("With your signature, as %1, you state that your company holds this standard and that "
           "all %2 rules of revision %3 agree with it. From then on each of them does what it "
           "says, whatever was only partly read before.")
            .arg(qt(session_.person()->name))
            .arg(set->rules.size())
            .arg(set->revision),
        tr("&Attest it"), this);
    dialog->setObjectName("attestConditions");
    auto* copy = new QLineEdit(dialog);
    copy->setObjectName("companyCopy");
    copy->setAccessibleName(tr("The company's copy"));
    copy->setPlaceholderText(tr("such as: copy 3 of the standards' library"));
    dialog->form().addRow(tr("The company's &copy"), copy);
    dialog->addNote(tr("SHA-256 %1").arg(qt(set->digest)));
    connect(copy, &QLineEdit::textChanged, dialog, &TaskDialog::refresh);
    dialog->setMissing([copy] {
        return copy->text().trimmed().isEmpty() ? tr("Say which copy you compared it with.")
                                                : QString();
    });
    const auto* stored = storedOf(*set);
    dialog->setWork([this, dialog, copy, set,
                     version = stored ? stored->version : 0](const TaskDialog::Then& then) {
        sign({set->id, set->digest, copy->text().trimmed().toStdString(), kAttested, {}}, version,
             dialog, then);
    });
    dialog->open();
    emit taskShown(dialog);
}

void ConditionsView::withdraw() {
    const auto* set = current();
    if (!set || !isAttested(*set)) return;
    auto* dialog = reasonDialog(
        tr("Withdraw the attestation of %1").arg(qt(set->id)),
        tr("From then on its rules that were partly read, or are from memory, only warn. Records "
           "that are signed already stay as they are."),
        tr("&Withdraw it"),
        [this, stored = *storedOf(*set)](const std::string& reason, TaskDialog* asked,
                                         const TaskDialog::Then& then) {
            auto withdrawn = stored.value;
            withdrawn.state = kWithdrawn;
            withdrawn.remarks = reason;
            sign(withdrawn, stored.version, asked, then);
        },
        this);
    dialog->setObjectName("withdrawConditions");
    dialog->open();
    emit taskShown(dialog);
}

}  // namespace app
