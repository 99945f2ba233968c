// SPDX-License-Identifier: Apache-2.0
#include "reference/rows_editor.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "fields/entry_table.h"
#include "fields/field_words.h"
#include "looks/mark.h"
#include "looks/text.h"

namespace app {
namespace {

/// So wide that what mostly stands there can be read.
std::map<std::string, int> widths(const std::vector<model::FieldInfo>& fields) {
    std::map<std::string, int> characters;
    for (const auto& field : fields) {
        const bool isNumber =
            field.kind == model::FieldKind::Number || field.kind == model::FieldKind::Whole;
        characters[std::string(field.key)] = isNumber ? 8 : 14;
    }
    for (const char* wide : {"description", "levels", "what", "who", "table", "other_tests"}) {
        if (characters.contains(wide)) characters[wide] = 24;
    }
    if (characters.contains("zone")) characters["zone"] = 8;
    return characters;
}

}  // namespace

RowsEditor::RowsEditor(RowsInfo info, QWidget* parent)
    : QWidget(parent),
      info_(std::move(info)),
      model_(new EntryRows(info_.fields, this)),
      table_(new EntryTable(*model_, this)),
      error_(new QLabel(this)),
      copy_(new QPushButton(tr("Cop&y the row"), this)),
      remove_(new QPushButton(tr("Re&move the row"), this)) {
    setObjectName(qt(info_.key));
    table_->setAccessibleName(info_.title);
    table_->setAlternatingRowColors(true);
    table_->setWidths(widths(info_.fields));
    model_->setCheck([this](const EntryTexts& row) { return refused(row); });
    model_->setHowEntered(
        [this](const EntryTexts&, const std::string& key) -> std::optional<CellEntry> {
            const auto known = known_.find(key);
            if (known == known_.end()) return std::nullopt;
            return CellEntry{known->second, false, model::FieldKind::Line};
        });
    auto* about = new QLabel(info_.about, this);
    about->setWordWrap(true);
    about->setForegroundRole(QPalette::PlaceholderText);
    error_->setWordWrap(true);
    error_->setTextFormat(Qt::PlainText);
    error_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    error_->setAccessibleName(tr("What is wrong with the rows"));
    error_->hide();
    for (auto* button : {copy_, remove_}) button->setAutoDefault(false);
    remove_->setToolTip(tr("Ctrl+Delete"));
    auto* below = new QHBoxLayout;
    below->addStretch(1);
    below->addWidget(copy_);
    below->addWidget(remove_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(6);
    layout->addWidget(about);
    layout->addWidget(table_, 1);
    layout->addWidget(error_);
    layout->addLayout(below);
    connect(model_, &EntryRows::edited, this, [this] {
        refreshButtons();
        emit changed();
    });
    connect(table_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &RowsEditor::refreshButtons);
    connect(copy_, &QPushButton::clicked, this, &RowsEditor::copyRow);
    connect(remove_, &QPushButton::clicked, this, &RowsEditor::removeRows);
    refreshButtons();
}

void RowsEditor::setRows(const std::vector<EntryTexts>& rows) {
    refused_.clear();
    error_->hide();
    error_->clear();
    model_->setRows(rows);
    table_->setCurrentIndex(model_->index(0, 0));
    refreshButtons();
}

std::vector<EntryTexts> RowsEditor::rows() const {
    std::vector<EntryTexts> rows = model_->rows();
    std::erase_if(rows, [](const EntryTexts& row) { return row.empty(); });
    return rows;
}

std::vector<model::FieldError> RowsEditor::refused(const EntryTexts& row) const {
    const auto found = refused_.find(row);
    return found == refused_.end() ? std::vector<model::FieldError>() : found->second;
}

void RowsEditor::setErrors(const std::vector<model::FieldError>& errors) {
    refused_.clear();
    const std::vector<EntryTexts> typed = rows();
    QStringList said;
    for (const auto& error : errors) {
        const QStringList place = qt(error.field).split('.');
        if (place.size() != 3 || place[0] != qt(info_.key)) continue;
        const auto row = static_cast<std::size_t>(place[1].toInt());
        const int column = model_->column(place[2].toStdString());
        if (row >= typed.size() || column < 0) continue;
        refused_[typed[row]].push_back({place[2].toStdString(), error.error});
        const auto& all = model_->rows();
        const auto at = std::ranges::find(all, typed[row]);
        const int shown = static_cast<int>(at - all.begin());
        if (said.isEmpty()) table_->setCurrentIndex(model_->index(shown, column));
        said << tr("Row %1, %2: %3")
                    .arg(shown + 1)
                    .arg(fieldLabel(model_->field(column)), reasonText(error.error));
    }
    constexpr int kMost = 3;
    QStringList shown = said.mid(0, kMost);
    if (said.size() > kMost) shown << tr("and %1 more").arg(said.size() - kMost);
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, colourOf(Mark::Fails, colours.color(QPalette::Window)));
    error_->setPalette(colours);
    error_->setText(said.isEmpty() ? QString() : "✗  " + shown.join("\n✗  "));
    error_->setVisible(!said.isEmpty());
    table_->viewport()->update();
}

QString RowsEditor::errorText() const {
    return error_->text();
}

void RowsEditor::setKnown(const Known& known) {
    known_.clear();
    for (const auto& [field, choices] : known) {
        if (field.starts_with(info_.key + ".")) {
            known_[field.substr(info_.key.size() + 1)] = choices;
        }
    }
}

void RowsEditor::setReadOnly(bool readOnly) {
    model_->setReadOnly(readOnly);
    refreshButtons();
}

void RowsEditor::finishEditing() {
    table_->finishEditing();
}

void RowsEditor::refreshButtons() {
    const int row = table_->currentIndex().row();
    const bool any = !model_->readOnly() && row >= 0 && row < model_->entries();
    copy_->setEnabled(any);
    remove_->setEnabled(any);
}

void RowsEditor::copyRow() {
    const int row = table_->currentIndex().row();
    if (model_->readOnly() || row < 0 || row >= model_->entries()) return;
    auto rows = model_->rows();
    rows.push_back(rows[static_cast<std::size_t>(row)]);
    model_->setRows(std::move(rows));
    table_->setCurrentIndex(model_->index(model_->entries() - 1, 0));
    table_->setFocus();
    refreshButtons();
    emit changed();
}

void RowsEditor::removeRows() {
    table_->deleteSelectedRows();
    refreshButtons();
}

}  // namespace app
