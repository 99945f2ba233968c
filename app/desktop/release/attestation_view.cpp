// SPDX-License-Identifier: Apache-2.0
#include "release/attestation_view.h"

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

#include "looks/heading.h"
#include "looks/marked_lines.h"
#include "looks/task_dialog.h"
#include "looks/text.h"

namespace app {
namespace {

QString shortGrade(const std::optional<model::Grade>& grade) {
    if (!grade) return AttestationView::tr("not stated");
    switch (*grade) {
        case model::Grade::Read:
            return AttestationView::tr("read");
        case model::Grade::ReadTwice:
            return AttestationView::tr("read twice");
        case model::Grade::Partly:
            return AttestationView::tr("partly read");
        case model::Grade::Memory:
            break;
    }
    return AttestationView::tr("from memory");
}

/// "12 read in the published text, 3 from memory, 1 unknown"
QString gradesText(const std::vector<model::CellLine>& lines) {
    using model::Grade;
    QStringList parts;
    const auto add = [&](const QString& what, const std::optional<Grade>& grade) {
        const auto count = std::ranges::count(lines, grade, &model::CellLine::grade);
        if (count > 0) parts << AttestationView::tr("%1: %2").arg(what).arg(count);
    };
    add(AttestationView::tr("read in the published text"), Grade::Read);
    add(AttestationView::tr("read in two places"), Grade::ReadTwice);
    add(AttestationView::tr("partly read"), Grade::Partly);
    add(AttestationView::tr("from memory"), Grade::Memory);
    add(AttestationView::tr("not stated"), std::nullopt);
    return parts.join(", ");
}

}  // namespace

struct AttestationView::Known {
    std::shared_ptr<const model::TableSet> tables;
    std::vector<model::Attestation> attestations;
};

AttestationView::AttestationView(ArchiveThread& archive, Session& session, QWidget* parent)
    : QWidget(parent),
      archive_(archive),
      session_(session),
      list_(new MarkedList(1, this)),
      title_(new Heading(1.25, this)),
      about_(new QLabel(this)),
      cells_(new QTableWidget(this)),
      state_(new QLabel(this)),
      attest_(new QPushButton(tr("&Attest this table…"), this)) {
    makeLayout();
    connect(list_, &MarkedList::keyChosen, this, &AttestationView::showTable);
    connect(cells_->verticalScrollBar(), &QScrollBar::valueChanged, this, [this] { noteSeen(); });
    connect(&session_, &Session::changed, this, &AttestationView::refreshState);
    connect(attest_, &QPushButton::clicked, this, &AttestationView::attest);
    cells_->viewport()->installEventFilter(this);
    refreshState();
}

void AttestationView::makeLayout() {
    list_->setAccessibleName(tr("Limit tables"));
    about_->setWordWrap(true);
    about_->setTextFormat(Qt::PlainText);
    about_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    state_->setWordWrap(true);
    state_->setTextFormat(Qt::PlainText);
    state_->setObjectName("attestationState");
    attest_->setObjectName("attest");
    const QStringList titles{tr("What"),     tr("Level key"), tr("Level"),
                             tr("Wall, mm"), tr("Value"),     tr("Place in the standard"),
                             tr("How sure")};
    cells_->setColumnCount(static_cast<int>(titles.size()));
    cells_->setHorizontalHeaderLabels(titles);
    cells_->verticalHeader()->hide();
    cells_->horizontalHeader()->setStretchLastSection(true);
    cells_->horizontalHeader()->setHighlightSections(false);
    cells_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    cells_->setSelectionBehavior(QAbstractItemView::SelectRows);
    cells_->setAlternatingRowColors(true);
    cells_->setWordWrap(true);  // nothing may be cut off that somebody attests
    cells_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    cells_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    cells_->setTabKeyNavigation(false);
    cells_->setAccessibleName(tr("Every line of the table"));
    auto* right = new QWidget(this);
    auto* below = new QHBoxLayout;
    below->addWidget(state_, 1);
    below->addWidget(attest_);
    auto* layout = new QVBoxLayout(right);
    layout->setContentsMargins(14, 10, 12, 10);
    layout->setSpacing(6);
    layout->addWidget(title_);
    layout->addWidget(about_);
    layout->addWidget(cells_, 1);
    layout->addLayout(below);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->addWidget(list_);
    split->addWidget(right);
    split->setStretchFactor(1, 1);
    split->setSizes({300, 980});
    split->setChildrenCollapsible(false);
    list_->setMinimumWidth(220);
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->addWidget(split);
}

void AttestationView::reload() {
    archive_.ask(
        [](model::Archive& held) -> model::Result<Known> {
            auto tables = held.tables();
            if (!tables) return tables.error();
            auto attestations = model::attestations(held);
            if (!attestations) return attestations.error();
            return Known{std::make_shared<const model::TableSet>(std::move(*tables)),
                         std::move(*attestations)};
        },
        this,
        [this](model::Result<Known> known) {
            if (!known) {
                state_->setText(sentence(known.error()));
                return;
            }
            tables_ = known->tables;
            attestations_ = std::move(known->attestations);
            fillList();
            emit shown();
        });
}

void AttestationView::fillList() {
    std::vector<MarkedEntry> entries;
    for (const auto* table : tables_->all()) {
        const bool done = tables_->isAttested(*table);
        MarkedEntry entry;
        entry.mark = done ? Mark::Passes : Mark::Open;
        entry.title = qt(table->id);
        entry.word = done ? tr("attested") : tr("not attested");
        entry.details = {
            tr("revision %1 · %2").arg(table->revision).arg(methodName(table->method))};
        entry.key = qt(table->digest);
        entries.push_back(std::move(entry));
    }
    list_->setEntries(entries);
    if (!list_->currentKey().isValid() && !entries.empty()) list_->choose(entries.front().key);
    showTable();
}

const model::LimitTable* AttestationView::current() const {
    if (!tables_) return nullptr;
    const std::string digest = list_->currentKey().toString().toStdString();
    for (const auto* table : tables_->all()) {
        if (table->digest == digest) return table;
    }
    return nullptr;
}

const model::Attestation* AttestationView::attestationOf(const std::string& digest) const {
    const auto found = std::ranges::find(attestations_, digest, &model::Attestation::tableDigest);
    return found == attestations_.end() ? nullptr : &*found;
}

void AttestationView::showTable() {
    const auto* table = current();
    lines_ = table ? model::cellsOf(*table) : std::vector<model::CellLine>();
    cells_->clearContents();
    cells_->setRowCount(static_cast<int>(lines_.size()));
    title_->setText(table ? tr("%1, revision %2").arg(qt(table->id)).arg(table->revision)
                          : QString());
    QStringList about;
    if (table) {
        about << tr("%1 (%2)").arg(methodName(table->method), gradesText(lines_));
        for (const auto& remark : table->remarks) about << qt(remark);
        about << tr("SHA-256 %1").arg(qt(table->digest));
    }
    about_->setText(about.join('\n'));
    for (int row = 0; row < cells_->rowCount(); ++row) {
        const auto& line = lines_[static_cast<std::size_t>(row)];
        const QStringList texts{qt(line.what),         qt(line.key),   qt(line.level),
                                qt(line.band),         qt(line.value), qt(line.locator),
                                shortGrade(line.grade)};
        for (int column = 0; column < texts.size(); ++column) {
            auto* item = new QTableWidgetItem(texts[column]);
            item->setTextAlignment(Qt::AlignLeft | Qt::AlignTop);
            item->setToolTip(column + 1 == texts.size() && line.grade ? gradeText(*line.grade)
                                                                      : texts[column]);
            cells_->setItem(row, column, item);
        }
    }
    fitColumns();
    cells_->scrollToTop();
    refreshState();
    QTimer::singleShot(0, this, [this] { noteSeen(); });
}

/// As wide as they need to be, but all in view: the value and its place share what is left.
void AttestationView::fitColumns() {
    cells_->resizeColumnsToContents();
    constexpr int kValue = 4;
    constexpr int kPlace = 5;
    int left = cells_->viewport()->width();
    for (int column = 0; column < cells_->columnCount(); ++column) {
        if (column != kValue && column != kPlace) left -= cells_->columnWidth(column);
    }
    cells_->setColumnWidth(kValue, std::max(120, left * 3 / 5));
    cells_->setColumnWidth(kPlace, std::max(100, left - left * 3 / 5));
    cells_->resizeRowsToContents();
}

bool AttestationView::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Resize) QTimer::singleShot(0, this, [this] { fitColumns(); });
    if (event->type() == QEvent::Paint) QTimer::singleShot(0, this, [this] { noteSeen(); });
    return QWidget::eventFilter(watched, event);
}

/// Only what is really on the screen counts: whole lines of a visible list.
void AttestationView::noteSeen() {
    const auto* table = current();
    if (!table || !cells_->isVisible() || lines_.empty()) return;
    auto& seen = seen_[table->digest];
    const auto before = seen.size();
    const int height = cells_->viewport()->height();
    for (int row = std::max(0, cells_->rowAt(0)); row < cells_->rowCount(); ++row) {
        const int top = cells_->rowViewportPosition(row);
        if (top + cells_->rowHeight(row) > height) break;
        if (top >= 0) seen.insert(row);
    }
    if (seen.size() != before) refreshState();
}

void AttestationView::refreshState() {
    const auto* table = current();
    attest_->setVisible(table != nullptr);
    attest_->setEnabled(false);
    if (!table) {
        state_->clear();
        return;
    }
    if (const auto* done = attestationOf(table->digest)) {
        state_->setText(
            tr("✓ Attested by %1 on %2, compared with: %3")
                .arg(qt(done->act.name), localTime(done->act.time), qt(done->companyCopy)));
        attest_->hide();
        return;
    }
    const QString open = tr("Not attested: nothing can be released by this table.");
    if (!session_.has(model::Role::QaManager) || session_.onlyForReading()) {
        state_->setText(tr("%1 A QA manager who has signed in can attest it.").arg(open));
        return;
    }
    const auto seen = seen_[table->digest].size();
    if (seen < lines_.size()) {
        state_->setText(tr("%1 Lines that have been in view: %2 of %3. Go through them all, with "
                           "your copy of the standard beside you.")
                            .arg(open)
                            .arg(seen)
                            .arg(lines_.size()));
        return;
    }
    state_->setText(tr("%1 Every line has been in view.").arg(open));
    attest_->setEnabled(true);
}

QString AttestationView::stateText() const {
    return state_->text();
}

void AttestationView::attest() {
    const auto* table = current();
    if (!table || !attest_->isEnabled()) return;
    auto* dialog = new TaskDialog(
        tr("Attest %1").arg(qt(table->id)),
        tr("With your signature, as %1, you state that your company holds this standard and that "
           "all %2 lines of revision %3 agree with it. From then on castings can be released by "
           "this table.")
            .arg(qt(session_.person()->name))
            .arg(lines_.size())
            .arg(table->revision),
        tr("&Attest it"), this);
    dialog->setObjectName("attestDialog");
    auto* copy = new QLineEdit(dialog);
    copy->setObjectName("companyCopy");
    copy->setAccessibleName(tr("The company's copy"));
    copy->setPlaceholderText(tr("such as: copy 3 of the standards' library"));
    dialog->form().addRow(tr("The company's &copy"), copy);
    dialog->addNote(tr("%1\nSHA-256 %2").arg(gradesText(lines_), qt(table->digest)));
    connect(copy, &QLineEdit::textChanged, dialog, &TaskDialog::refresh);
    dialog->setMissing([copy] {
        return copy->text().trimmed().isEmpty() ? tr("Say which copy you compared it with.")
                                                : QString();
    });
    dialog->setWork([this, copy, dialog, digest = table->digest](const TaskDialog::Then& then) {
        const Signer signer = session_.signer();
        if (!signer) {
            then(model::inputError("", "nobody is signed in any more; sign in again"));
            return;
        }
        archive_.ask(
            [signer, digest, text = copy->text().trimmed().toStdString()](model::Archive& held) {
                return model::attest(held, digest, text, *signer);
            },
            dialog,
            [this, then](const model::Result<void>& result) {
                reload();
                if (result) emit attested();
                then(result);
            });
    });
    dialog->open();
    emit taskShown(dialog);
}

}  // namespace app
