// SPDX-License-Identifier: Apache-2.0
#include "reference/import_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QTableWidget>
#include <QVBoxLayout>
#include <fstream>
#include <iterator>

#include "exchange/csv_reader.h"
#include "looks/mark_label.h"
#include "looks/text.h"

namespace app {
namespace {

constexpr auto kFolder = "reference/import_folder";

/// Runs on the archive's thread.
model::Result<ImportReport> importFile(model::Archive& archive, const std::string& path,
                                       const Import& import, const Keeper& keeper) {
    std::ifstream file(path, std::ios::binary);
    if (!file) return model::refusal(path, "cannot be read");
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    if (file.bad()) return model::refusal(path, "cannot be read");
    auto table = model::readCsv(text, QFileInfo(qt(path)).fileName().toStdString());
    if (!table) return table.error();
    return importRegister(archive, std::move(*table), import, {keeper.signer.get(), keeper.actor});
}

}  // namespace

ImportDialog::ImportDialog(const Kinds& kinds, ArchiveThread& archive, Keeper keeper,
                           QWidget* parent)
    : QDialog(parent),
      archive_(archive),
      keeper_(std::move(keeper)),
      kind_(new QComboBox(this)),
      path_(new QLineEdit(this)),
      change_(new QCheckBox(tr("Entries that are &there already get their next version"), this)),
      mark_(new MarkLabel(this)),
      summary_(new QLabel(this)),
      problems_(new QTableWidget(this)) {
    setObjectName("importDialog");
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("Take over a file"));
    makeLayout(kinds);
    connect(kind_, &QComboBox::activated, this, &ImportDialog::tryOut);
    connect(path_, &QLineEdit::editingFinished, this, [this] {
        if (path_->isModified()) tryOut();
        path_->setModified(false);
    });
    connect(change_, &QCheckBox::toggled, this, &ImportDialog::tryOut);
    connect(take_, &QPushButton::clicked, this, &ImportDialog::take);
    say(std::nullopt, tr("Choose a file. It is tried out first; nothing is stored by that."));
}

void ImportDialog::makeLayout(const Kinds& kinds) {
    auto* about = new QLabel(
        tr("A CSV file in UTF-8 (RFC 4180) whose first line names the fields. All of it is stored, "
           "or nothing."),
        this);
    about->setWordWrap(true);
    for (const auto& [name, title] : kinds) kind_->addItem(title, qt(name));
    kind_->setAccessibleName(tr("What the file holds"));
    path_->setObjectName("path");
    path_->setAccessibleName(tr("File"));
    path_->setMinimumWidth(fontMetrics().averageCharWidth() * 48);
    auto* choose = new QPushButton(tr("&Choose…"), this);
    choose->setAutoDefault(false);
    connect(choose, &QPushButton::clicked, this, &ImportDialog::chooseFile);
    auto* fileRow = new QWidget(this);
    auto* fileLayout = new QHBoxLayout(fileRow);
    fileLayout->setContentsMargins(0, 0, 0, 0);
    fileLayout->addWidget(path_, 1);
    fileLayout->addWidget(choose);
    auto* form = new QFormLayout;
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    form->addRow(tr("&What it holds"), kind_);
    form->addRow(tr("&File"), fileRow);
    form->addRow(QString(), change_);
    form->setRowVisible(kind_, kinds.size() > 1);
    summary_->setWordWrap(true);
    summary_->setTextFormat(Qt::PlainText);
    summary_->setObjectName("summary");
    summary_->setAccessibleName(tr("What came of it"));
    mark_->setSide(22);
    auto* said = new QHBoxLayout;
    said->addWidget(mark_);
    said->addWidget(summary_, 1);
    const QStringList titles{tr("Row"), tr("Line of the file"), tr("Column"), tr("What is wrong")};
    problems_->setColumnCount(static_cast<int>(titles.size()));
    problems_->setHorizontalHeaderLabels(titles);
    for (int column = 0; column < problems_->columnCount(); ++column) {
        problems_->horizontalHeaderItem(column)->setTextAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    }
    problems_->setAccessibleName(tr("Problems by row"));
    problems_->verticalHeader()->hide();
    problems_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    problems_->horizontalHeader()->setSectionResizeMode(3, QHeaderView::Stretch);
    problems_->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    problems_->horizontalHeader()->setHighlightSections(false);
    problems_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    problems_->setSelectionBehavior(QAbstractItemView::SelectRows);
    problems_->setTabKeyNavigation(false);
    problems_->setAlternatingRowColors(true);
    problems_->setWordWrap(true);
    problems_->setMinimumHeight(fontMetrics().height() * 12);
    auto* buttons = new QDialogButtonBox(this);
    take_ = buttons->addButton(tr("&Take it over"), QDialogButtonBox::ActionRole);
    take_->setObjectName("take");
    close_ = buttons->addButton(QDialogButtonBox::Close);
    close_->setText(tr("C&lose"));
    close_->setAutoDefault(false);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(18, 16, 18, 12);
    layout->setSpacing(10);
    layout->addWidget(about);
    layout->addLayout(form);
    layout->addLayout(said);
    layout->addWidget(problems_, 1);
    layout->addWidget(buttons);
    take_->setEnabled(false);
    path_->setFocus();
    resize(fontMetrics().averageCharWidth() * 110, fontMetrics().height() * 28);
}

void ImportDialog::chooseFile() {
    const QString path = QFileDialog::getOpenFileName(this, tr("Take over a file"),
                                                      QSettings().value(kFolder).toString(),
                                                      tr("Tables (*.csv);;All files (*)"));
    if (path.isEmpty()) return;
    QSettings().setValue(kFolder, QFileInfo(path).absolutePath());
    setFile(path);
}

void ImportDialog::setFile(const QString& path) {
    path_->setText(path);
    tryOut();
}

void ImportDialog::say(std::optional<Mark> mark, const QString& text) {
    mark_->setVisible(mark.has_value());
    if (mark) mark_->setMark(*mark);
    summary_->setText(text);
}

QString ImportDialog::summary() const {
    return summary_->text();
}

void ImportDialog::tryOut() {
    if (path_->text().trimmed().isEmpty()) return;
    run(true);
}

void ImportDialog::take() {
    if (take_->isEnabled()) run(false);
}

void ImportDialog::run(bool dryRun) {
    Import import;
    import.registerName = kind_->currentData().toString().toStdString();
    import.change = change_->isChecked();
    import.dryRun = dryRun;
    take_->setEnabled(false);
    close_->setEnabled(dryRun);
    for (QWidget* field : {static_cast<QWidget*>(kind_), static_cast<QWidget*>(path_),
                           static_cast<QWidget*>(change_)}) {
        field->setEnabled(dryRun);
    }
    say(std::nullopt, dryRun ? tr("Trying it out…") : tr("Taking it over…"));
    const quint64 ticket = ++ticket_;
    archive_.ask([path = path_->text().trimmed().toStdString(), import, keeper = keeper_](
                     model::Archive& held) { return importFile(held, path, import, keeper); },
                 this,
                 [this, ticket, dryRun](const model::Result<ImportReport>& report) {
                     if (ticket == ticket_) show(report, dryRun);
                 });
}

void ImportDialog::show(const model::Result<ImportReport>& report, bool dryRun) {
    for (QWidget* field : {static_cast<QWidget*>(kind_), static_cast<QWidget*>(path_),
                           static_cast<QWidget*>(change_), static_cast<QWidget*>(close_)}) {
        field->setEnabled(true);
    }
    problems_->setRowCount(0);
    if (!report) {
        say(Mark::Fails, sentence(report.error()));
        emit triedOut();
        return;
    }
    const ImportReport& done = report.value();
    problems_->setRowCount(static_cast<int>(done.problems.size()));
    for (int row = 0; row < problems_->rowCount(); ++row) {
        const auto& problem = done.problems[static_cast<std::size_t>(row)];
        const QStringList texts{problem.row == 0 ? tr("names") : QString::number(problem.row),
                                problem.line == 0 ? QString() : QString::number(problem.line),
                                qt(problem.column), reasonText(problem.error)};
        for (int column = 0; column < texts.size(); ++column) {
            problems_->setItem(row, column, new QTableWidgetItem(texts[column]));
        }
    }
    const QString counts = tr("New: %1. Changed: %2. There already as they are: %3.")
                               .arg(done.added)
                               .arg(done.changed)
                               .arg(done.unchanged);
    if (!done.problems.empty()) {
        say(Mark::Fails,
            tr("Nothing is stored: %1 problems in %2 rows. Correct the file and choose "
               "it again.")
                .arg(done.problems.size())
                .arg(done.rows));
        emit triedOut();
        return;
    }
    const bool any = done.added + done.changed > 0;
    if (!dryRun) {
        say(Mark::Passes, tr("Taken over. %1").arg(counts));
        emit taken();
        return;
    }
    say(any ? Mark::Passes : Mark::Open,
        any ? tr("No problem found in %1 rows. %2").arg(done.rows).arg(counts)
            : tr("There is nothing to take over. %1").arg(counts));
    take_->setEnabled(any);
    emit triedOut();
}

}  // namespace app
