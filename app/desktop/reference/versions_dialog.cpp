// SPDX-License-Identifier: Apache-2.0
#include "reference/versions_dialog.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "fields/field_words.h"
#include "looks/heading.h"
#include "looks/text.h"

namespace app {
namespace {

QString shownText(const model::FieldInfo& field, const std::string& text) {
    if (field.kind == model::FieldKind::Moment) return momentShown(text);
    if (field.kind == model::FieldKind::Choice || field.kind == model::FieldKind::YesNo) {
        return choiceText(text);
    }
    return field.unit.empty() ? qt(text) : qt(text) + QChar(0x202F) + shownUnit(field.unit);
}

/// Of a row, in one line.
QString shownRow(const RowsInfo& table, const EntryTexts& row) {
    QStringList texts;
    for (const auto& field : table.fields) {
        const std::string& text = textOf(row, std::string(field.key));
        if (!text.empty()) {
            texts << VersionsDialog::tr("%1 %2").arg(fieldLabel(field), shownText(field, text));
        }
    }
    return texts.join(" · ");
}

const std::vector<EntryTexts>& rowsIn(const Entry* entry, const RowsInfo& table) {
    static const std::vector<EntryTexts> kNone;
    if (!entry) return kNone;
    const auto found = entry->rows.find(table.key);
    return found == entry->rows.end() ? kNone : found->second;
}

/// Rows that are in one, and not in the other.
void addRows(const RowsInfo& table, const Entry* in, const Entry* notIn, const QString& said,
             QStringList& lines) {
    for (const auto& row : rowsIn(in, table)) {
        if (std::ranges::find(rowsIn(notIn, table), row) != rowsIn(notIn, table).end()) continue;
        lines << said.arg(table.title, shownRow(table, row));
    }
}

}  // namespace

QStringList changesOf(const Register& of, const Entry* before, const Entry& after) {
    QStringList lines;
    for (const auto& field : of.fields) {
        const std::string key(field.key);
        const std::string& now = textOf(after.texts, key);
        const std::string& was = before ? textOf(before->texts, key) : std::string();
        if (now == was) continue;
        const QString label = fieldLabel(field);
        if (!before) {
            lines << VersionsDialog::tr("%1: %2").arg(label, shownText(field, now));
        } else if (was.empty()) {
            lines << VersionsDialog::tr("%1: %2, before empty").arg(label, shownText(field, now));
        } else if (now.empty()) {
            lines << VersionsDialog::tr("%1: empty, before %2").arg(label, shownText(field, was));
        } else {
            lines << VersionsDialog::tr("%1: %2, before %3")
                         .arg(label, shownText(field, now), shownText(field, was));
        }
    }
    for (const auto& table : of.rows) {
        addRows(table, &after, before,
                before ? VersionsDialog::tr("%1, new: %2") : VersionsDialog::tr("%1: %2"), lines);
        addRows(table, before, &after, VersionsDialog::tr("%1, no more: %2"), lines);
    }
    return lines;
}

VersionsDialog::VersionsDialog(const Register& of, const QString& name,
                               const std::vector<EntryVersion>& versions, QWidget* parent)
    : QDialog(parent), table_(new QTableWidget(this)) {
    setObjectName("versionsDialog");
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("Versions of %1").arg(name));
    auto* title = new Heading(1.25, this, name);
    auto* about = new QLabel(
        tr("Nothing is overwritten: whoever changes the entry adds a version to it."), this);
    about->setWordWrap(true);
    about->setForegroundRole(QPalette::PlaceholderText);
    const QStringList titles{tr("Version"), tr("When"), tr("Who"), tr("What it changed")};
    table_->setColumnCount(static_cast<int>(titles.size()));
    table_->setHorizontalHeaderLabels(titles);
    for (int column = 0; column < table_->columnCount(); ++column) {
        table_->horizontalHeaderItem(column)->setTextAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    }
    table_->setRowCount(static_cast<int>(versions.size()));
    for (std::size_t i = 0; i < versions.size(); ++i) {
        // The newest first.
        const int row = table_->rowCount() - 1 - static_cast<int>(i);
        const auto& version = versions[i];
        const Entry* before = i == 0 ? nullptr : &versions[i - 1].entry;
        const QStringList changes = changesOf(of, before, version.entry);
        const QStringList texts{QString::number(version.entry.version), localTime(version.time),
                                qt(version.person),
                                changes.isEmpty() ? tr("nothing") : changes.join('\n')};
        for (int column = 0; column < texts.size(); ++column) {
            auto* item = new QTableWidgetItem(texts[column]);
            item->setTextAlignment(Qt::AlignLeft | Qt::AlignTop);
            table_->setItem(row, column, item);
        }
    }
    table_->setAccessibleName(windowTitle());
    table_->verticalHeader()->hide();
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setTabKeyNavigation(false);
    table_->setWordWrap(true);
    table_->setAlternatingRowColors(true);
    table_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    table_->horizontalHeader()->setStretchLastSection(true);
    table_->horizontalHeader()->setHighlightSections(false);
    table_->resizeColumnsToContents();
    const bool told =
        std::ranges::any_of(versions, [](const auto& one) { return !one.time.empty(); });
    table_->setColumnHidden(1, !told);
    table_->setColumnHidden(2, !told);
    table_->horizontalHeader()->setSectionResizeMode(3, QHeaderView::Stretch);
    table_->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->button(QDialogButtonBox::Close)->setText(tr("&Close"));
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(18, 16, 18, 12);
    layout->setSpacing(10);
    layout->addWidget(title);
    layout->addWidget(about);
    layout->addWidget(table_, 1);
    layout->addWidget(buttons);
    resize(fontMetrics().averageCharWidth() * 110, fontMetrics().height() * 26);
    if (table_->rowCount() > 0) table_->setCurrentCell(0, 0);
}

}  // namespace app
