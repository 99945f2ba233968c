// SPDX-License-Identifier: Apache-2.0
#include "bench/conflict_dialog.h"

#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "bench/columns.h"
#include "editing/casting_editor.h"
#include "fields/field_words.h"
#include "looks/text.h"

namespace app {
namespace {

/// One version's rows; a row that the other does not have like this is marked in its header.
template <class Row>
QTableWidget* versionTable(const std::vector<Row>& version, const std::vector<Row>& other,
                           QWidget* parent) {
    const auto columns = Columns<Row>::all();
    const auto rows = std::max(version.size(), other.size());
    auto* table =
        new QTableWidget(static_cast<int>(rows), static_cast<int>(columns.size()), parent);
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    QStringList titles;
    for (int c = 0; c < table->columnCount(); ++c) titles << Columns<Row>::name(c);
    table->setHorizontalHeaderLabels(titles);
    QStringList numbers;
    for (std::size_t r = 0; r < rows; ++r) {
        const bool here = r < version.size();
        const bool same = here && r < other.size() && version[r] == other[r];
        numbers << QString::number(r + 1) + (same ? "" : " ≠");
        for (std::size_t c = 0; c < columns.size() && here; ++c) {
            const auto& row = version[r];
            const auto& column = columns[c];
            QString text = qt(row.*column.text);
            if (column.of == CellOf::Length && row.unit == model::LengthUnit::Inch &&
                !text.isEmpty()) {
                text += QStringLiteral(" in");
            }
            auto* item = new QTableWidgetItem(text);
            QFont font = item->font();
            font.setBold(r >= other.size() || row.*column.text != other[r].*column.text ||
                         row.unit != other[r].unit);
            item->setFont(font);
            table->setItem(static_cast<int>(r), static_cast<int>(c), item);
        }
    }
    table->setVerticalHeaderLabels(numbers);
    table->resizeColumnsToContents();
    return table;
}

/// What is said of the conditions of the test in this version and differs in the other.
QStringList conditionLines(const model::TestConditions& own, const model::TestConditions& other) {
    QStringList lines;
    for (const auto& field : model::TestConditions::fields()) {
        const std::string& text = own.*field.text;
        if (text == other.*field.text) continue;
        lines << QCoreApplication::translate("ConflictDialog", "≠ %1: %2")
                     .arg(fieldLabel(field.info),
                          text.empty() ? QCoreApplication::translate("ConflictDialog", "not given")
                                       : qt(text));
    }
    const auto list = [&](const auto& mine, const auto& theirs, const QString& text) {
        if (mine != theirs) lines << text.arg(mine.size());
    };
    list(own.measurements, other.measurements,
         QCoreApplication::translate("ConflictDialog", "≠ Measurements: %1"));
    list(own.settingChecks, other.settingChecks,
         QCoreApplication::translate("ConflictDialog", "≠ Setting checks: %1"));
    list(own.scans, other.scans, QCoreApplication::translate("ConflictDialog", "≠ Scans: %1"));
    list(own.acknowledgements, other.acknowledgements,
         QCoreApplication::translate("ConflictDialog", "≠ Reasons to go on: %1"));
    return lines;
}

QString summary(const model::ExaminationDraft& version, const model::ExaminationDraft& other) {
    const Details details = detailsOf(version);
    QStringList lines;
    const auto given = [](const std::string& text) {
        return text.empty() ? QCoreApplication::translate("ConflictDialog", "not given") : qt(text);
    };
    lines << QCoreApplication::translate("ConflictDialog", "Examined by %1 on %2, procedure: %3")
                 .arg(given(details.examinedBy), given(details.examinedOn),
                      given(details.procedure));
    if (details.noIndications) {
        lines << QCoreApplication::translate("ConflictDialog", "Stated: no indications found");
    }
    if (!details.remarks.empty()) lines << qt(details.remarks);
    if (!version.settings.empty()) {
        QStringList names;
        for (const auto& setting : version.settings) names << qt(setting.name);
        lines
            << QCoreApplication::translate("ConflictDialog", "Settings: %1").arg(names.join(", "));
    }
    lines << conditionLines(version.conditions, other.conditions);
    return lines.join('\n');
}

QWidget* versionBox(const QString& title, const model::ExaminationDraft& version,
                    const model::ExaminationDraft& other, const QString& name, QWidget* parent) {
    auto* box = new QWidget(parent);
    auto* head = new QLabel(title, box);
    QFont font = head->font();
    font.setBold(true);
    head->setFont(font);
    auto* text = new QLabel(summary(version, other), box);
    text->setWordWrap(true);
    text->setTextFormat(Qt::PlainText);
    auto* table = version.header.method == model::Method::Ultrasonic
                      ? versionTable(version.reflectors, other.reflectors, box)
                      : versionTable(version.rows, other.rows, box);
    table->setObjectName(name);
    table->setAccessibleName(title);
    auto* layout = new QVBoxLayout(box);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(head);
    layout->addWidget(text);
    layout->addWidget(table, 1);
    return box;
}

}  // namespace

ConflictDialog::ConflictDialog(const model::ExaminationDraft& own,
                               const model::ExaminationDraft& stored, bool mayKeep, QWidget* parent)
    : QDialog(parent) {
    setWindowTitle(tr("Two versions of one draft"));
    resize(980, 480);
    auto* intro = new QLabel(
        tr("Zone %1, %2: somebody else has saved this draft while you were typing. Nothing was "
           "overwritten. Rows that differ carry ≠.")
                .arg(qt(own.header.zone), methodText(own.header.method)) +
            (mayKeep ? QString()
                     : tr(" The other version is signed: it stands, and yours can no longer be "
                          "saved.")),
        this);
    intro->setWordWrap(true);
    auto* versions = new QHBoxLayout;
    versions->addWidget(versionBox(tr("Yours, on this screen"), own, stored, "own", this));
    versions->addWidget(versionBox(tr("The other, in the archive"), stored, own, "stored", this));
    auto* buttons = new QDialogButtonBox(this);
    auto* mine = buttons->addButton(tr("&Keep mine"), QDialogButtonBox::AcceptRole);
    auto* theirs = buttons->addButton(tr("&Take the other"), QDialogButtonBox::AcceptRole);
    auto* later = buttons->addButton(tr("&Decide later"), QDialogButtonBox::RejectRole);
    mine->setObjectName("keepOwn");
    theirs->setObjectName("takeStored");
    mine->setEnabled(mayKeep);
    mine->setAutoDefault(false);
    theirs->setAutoDefault(false);
    later->setDefault(true);
    mine->setToolTip(tr("Your version is saved over the other, which stays in the history."));
    theirs->setToolTip(tr("The other version comes onto this screen; undo brings yours back."));
    connect(mine, &QPushButton::clicked, this, &ConflictDialog::keepOwn);
    connect(theirs, &QPushButton::clicked, this, &ConflictDialog::takeStored);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(intro);
    layout->addLayout(versions, 1);
    layout->addWidget(buttons);
    later->setFocus();
}

}  // namespace app
