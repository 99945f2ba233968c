// SPDX-License-Identifier: Apache-2.0
#include "reference/runs_out_view.h"

#include <QEvent>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "fields/field_words.h"
#include "looks/heading.h"
#include "looks/mark.h"
#include "looks/notice_bar.h"
#include "looks/text.h"

namespace app {
namespace {

enum Column { State, Until, What, Of };

QString wordOf(const RunsOutLine& line) {
    if (line.daysLeft == -1) return RunsOutView::tr("overdue for 1 day");
    if (line.daysLeft < 0) return RunsOutView::tr("overdue for %1 days").arg(-line.daysLeft);
    if (line.daysLeft == 0) return RunsOutView::tr("today is the last day");
    if (line.daysLeft == 1) return RunsOutView::tr("1 day left");
    return RunsOutView::tr("%1 days left").arg(line.daysLeft);
}

Mark markOf(const RunsOutLine& line) {
    return line.daysLeft < 0 ? Mark::Fails : Mark::Open;
}

}  // namespace

RunsOutView::RunsOutView(ArchiveThread& archive, QWidget* parent)
    : QWidget(parent),
      archive_(archive),
      notice_(new NoticeBar(this)),
      find_(new QLineEdit(this)),
      table_(new QTableWidget(this)),
      count_(new QLabel(this)) {
    setObjectName("runsOut");
    auto* title = new Heading(1.25, this, tr("What runs out"));
    auto* about = new QLabel(tr("What has run out, and what runs out in the next %1 days. A test "
                                "is judged on its own day: what is overdue today does not touch "
                                "the tests of before.")
                                 .arg(kDays),
                             this);
    about->setWordWrap(true);
    about->setForegroundRole(QPalette::PlaceholderText);
    find_->setPlaceholderText(tr("Find in the list"));
    find_->setAccessibleName(tr("Find in what runs out"));
    find_->setClearButtonEnabled(true);
    const QStringList titles{tr("State"), tr("Holds until"), tr("What"), tr("Of")};
    table_->setColumnCount(static_cast<int>(titles.size()));
    table_->setHorizontalHeaderLabels(titles);
    for (int column = 0; column < table_->columnCount(); ++column) {
        table_->horizontalHeaderItem(column)->setTextAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    }
    table_->setAccessibleName(tr("What runs out"));
    table_->verticalHeader()->hide();
    table_->verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    table_->horizontalHeader()->setStretchLastSection(true);
    table_->horizontalHeader()->setHighlightSections(false);
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setTabKeyNavigation(false);
    table_->setAlternatingRowColors(true);
    table_->setShowGrid(false);
    count_->setForegroundRole(QPalette::PlaceholderText);
    auto* inside = new QVBoxLayout;
    inside->setContentsMargins(12, 10, 12, 10);
    inside->setSpacing(6);
    inside->addWidget(title);
    inside->addWidget(about);
    inside->addWidget(find_);
    inside->addWidget(table_, 1);
    inside->addWidget(count_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(notice_);
    layout->addLayout(inside, 1);
    connect(find_, &QLineEdit::textChanged, this, &RunsOutView::filter);
    connect(find_, &QLineEdit::returnPressed, table_, [this] { table_->setFocus(); });
    connect(table_, &QTableWidget::activated, this, [this](const QModelIndex& index) {
        const auto& line = lines_[static_cast<std::size_t>(index.row())];
        emit wanted(qt(line.registerName), qt(line.key));
    });
}

void RunsOutView::clear() {
    notice_->takeBack();
    find_->clear();
    lines_.clear();
    fill();
}

void RunsOutView::reload() {
    archive_.ask(
        [today = dateToday()](model::Archive& held) { return runsOutLines(held, today, kDays); },
        this,
        [this](model::Result<std::vector<RunsOutLine>> lines) {
            if (!lines) {
                notice_->say(Mark::Fails, sentence(lines.error()), {{tr("Close"), {}}});
                return;
            }
            lines_ = std::move(*lines);
            fill();
            emit counted();
        });
}

int RunsOutView::overdue() const {
    return static_cast<int>(
        std::ranges::count_if(lines_, [](const auto& line) { return line.daysLeft < 0; }));
}

void RunsOutView::fill() {
    const int kept = table_->currentRow();
    table_->clearContents();
    table_->setRowCount(static_cast<int>(lines_.size()));
    for (int row = 0; row < table_->rowCount(); ++row) {
        const auto& line = lines_[static_cast<std::size_t>(row)];
        const QStringList texts{wordOf(line), qt(line.until), line.what, line.of};
        for (int column = 0; column < texts.size(); ++column) {
            auto* item = new QTableWidgetItem(texts[column]);
            item->setToolTip(texts[column]);
            table_->setItem(row, column, item);
        }
        auto* state = table_->item(row, State);
        state->setIcon(markIcon(markOf(line), palette()));
        state->setForeground(colourOf(markOf(line), palette().color(QPalette::Base)));
        if (line.daysLeft < 0) {
            QFont strong = font();
            strong.setBold(true);
            state->setFont(strong);
        }
    }
    table_->resizeColumnsToContents();
    for (const int column : {State, Until, What}) {
        table_->setColumnWidth(column, table_->columnWidth(column) + 14);
    }
    if (kept >= 0 && kept < table_->rowCount()) table_->setCurrentCell(kept, 0);
    filter();
}

void RunsOutView::filter() {
    const QStringList words = find_->text().split(' ', Qt::SkipEmptyParts);
    int shown = 0;
    for (int row = 0; row < table_->rowCount(); ++row) {
        QStringList texts;
        for (int column = 0; column < table_->columnCount(); ++column) {
            texts << table_->item(row, column)->text();
        }
        const QString text = texts.join(' ');
        const bool fits = std::ranges::all_of(
            words, [&](const QString& word) { return text.contains(word, Qt::CaseInsensitive); });
        table_->setRowHidden(row, !fits);
        if (fits) ++shown;
    }
    const int all = static_cast<int>(lines_.size());
    count_->setText(
        all == 0 ? tr("Nothing is overdue, and nothing runs out in the next %1 days.").arg(kDays)
        : shown == all ? tr("Overdue: %1. Running out: %2.").arg(overdue()).arg(all - overdue())
                       : tr("%1 of %2").arg(shown).arg(all));
}

void RunsOutView::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) fill();
}

}  // namespace app
