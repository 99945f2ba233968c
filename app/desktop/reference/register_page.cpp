// SPDX-License-Identifier: Apache-2.0
#include "reference/register_page.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QTabBar>
#include <QTableView>
#include <algorithm>

#include "fields/field_form.h"
#include "looks/heading.h"
#include "looks/notice_bar.h"
#include "looks/text.h"
#include "reference/entry_model.h"
#include "reference/import_dialog.h"
#include "reference/rows_editor.h"
#include "reference/versions_dialog.h"

namespace app {

/// What is asked about a register at once.
struct RegisterPage::Listed {
    std::vector<Entry> entries;
    Known known;
};

RegisterPage::RegisterPage(Register of, ArchiveThread& archive, Session& session, QWidget* parent)
    : QWidget(parent),
      of_(std::move(of)),
      archive_(archive),
      session_(session),
      model_(new EntryModel(of_, this)),
      filter_(new EntryFilter(this)) {
    filter_->setSourceModel(model_);
    filter_->setSortCaseSensitivity(Qt::CaseInsensitive);
    filter_->setSortLocaleAware(true);
    makeLayout();
    connectParts();
    showNothing();
}

RegisterPage::~RegisterPage() = default;

void RegisterPage::connectParts() {
    connect(find_, &QLineEdit::textChanged, this, [this](const QString& text) {
        const std::string kept = currentKey();
        filter_->setWords(text);
        if (!list_->currentIndex().isValid() && !kept.empty()) setCurrentLine(kept);
        if (!list_->currentIndex().isValid()) list_->setCurrentIndex(filter_->index(0, 0));
        refresh();
    });
    connect(list_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &RegisterPage::onChosen);
    connect(tabs_, &QTabBar::currentChanged, pages_, &QStackedWidget::setCurrentIndex);
    connect(tabs_, &QTabBar::currentChanged, help_, [this] { help_->clear(); });
    connect(form_, &FieldForm::changed, this, &RegisterPage::onTyped);
    connect(form_, &FieldForm::helpChanged, help_, &QLabel::setText);
    connect(form_, &FieldForm::entered, this, [this](int field) {
        // Said as one leaves the field; what is missing is said when it is saved.
        const auto& facts = form_->facts(field);
        const auto found = std::ranges::find(of_.fields, facts.field, &model::FieldInfo::key);
        if (found == of_.fields.end()) return;
        const std::string text = form_->text(field);
        const auto error = text.empty() ? std::nullopt : model::wrongText(*found, text);
        form_->setError(field, error ? reasonText(*error) : QString());
    });
    connect(form_, &FieldForm::ended, save_, [this] { save_->setFocus(Qt::TabFocusReason); });
    for (auto* table : rows_) connect(table, &RowsEditor::changed, this, &RegisterPage::onTyped);
    connect(new_, &QPushButton::clicked, this, &RegisterPage::makeNew);
    connect(like_, &QPushButton::clicked, this, &RegisterPage::makeLike);
    connect(save_, &QPushButton::clicked, this, &RegisterPage::save);
    connect(drop_, &QPushButton::clicked, this, &RegisterPage::drop);
    connect(versions_, &QPushButton::clicked, this, &RegisterPage::showVersions);
    connect(import_, &QPushButton::clicked, this, &RegisterPage::importFile);
    connect(fileButton_, &QPushButton::clicked, this, &RegisterPage::chooseFile);
    connect(&session_, &Session::changed, this, &RegisterPage::refresh);
}

void RegisterPage::setPerson(const QString& name) {
    person_ = name.trimmed();
    refresh();
}

void RegisterPage::clear() {
    notice_->takeBack();
    find_->clear();
    wanted_.clear();
    changed_ = false;
    model_->setEntries({});
    showNothing();
}

void RegisterPage::reload() {
    const quint64 ticket = ++ticket_;
    archive_.ask(
        [all = of_.all, known = of_.known](model::Archive& held) -> model::Result<Listed> {
            auto entries = all(held);
            if (!entries) return entries.error();
            Listed listed{std::move(*entries), {}};
            if (!known) return listed;
            auto choices = known(held);
            if (!choices) return choices.error();
            listed.known = std::move(*choices);
            return listed;
        },
        this,
        [this, ticket](model::Result<Listed> listed) {
            if (ticket != ticket_) return;  // asked for again meanwhile
            if (!listed) {
                notice_->say(Mark::Fails, sentence(listed.error()), {{tr("Close"), {}}});
                emit RegisterPage::listed();
                return;
            }
            const std::string wanted = std::exchange(wanted_, {});
            const std::string kept = wanted.empty() ? currentKey() : wanted;
            quiet_ = true;
            model_->setKnown(listed->known);
            model_->setEntries(std::move(listed->entries));
            for (const auto& [field, choices] : listed->known) {
                form_->setSuggestions(field, choices);
            }
            for (auto* table : rows_) table->setKnown(listed->known);
            fitColumns();
            setCurrentLine(kept);
            if (!wanted.empty() && currentKey() != wanted) {
                find_->clear();  // what is wanted must not be hidden
                setCurrentLine(wanted);
            }
            const bool typing = changed_ || (stored_ && stored_->version == 0);
            if (!typing && currentKey().empty()) list_->setCurrentIndex(filter_->index(0, 0));
            quiet_ = false;
            if (!typing) {
                if (const std::string key = currentKey(); key.empty()) {
                    showNothing();
                } else {
                    load(key);
                }
            }
            refresh();
            emit RegisterPage::listed();
        });
}

/// As wide as the texts need, the last takes what is left.
void RegisterPage::fitColumns() {
    list_->horizontalHeader()->setStretchLastSection(false);
    list_->resizeColumnsToContents();
    list_->horizontalHeader()->setStretchLastSection(true);
    const int most = fontMetrics().averageCharWidth() * 30;
    for (int column = 0; column + 1 < filter_->columnCount(); ++column) {
        list_->setColumnWidth(column, std::min(list_->columnWidth(column) + 8, most));
    }
}

std::string RegisterPage::currentKey() const {
    return list_->currentIndex().data(EntryModel::kKeyRole).toString().toStdString();
}

void RegisterPage::setCurrentLine(const std::string& key) {
    for (int row = 0; row < filter_->rowCount(); ++row) {
        const QModelIndex line = filter_->index(row, 0);
        if (line.data(EntryModel::kKeyRole).toString() == qt(key)) {
            list_->setCurrentIndex(line);
            list_->scrollTo(line);
            return;
        }
    }
}

void RegisterPage::chooseNoLine() {
    quiet_ = true;
    list_->setCurrentIndex({});
    quiet_ = false;
}

void RegisterPage::choose(const std::string& key) {
    leave([this, key] {
        find_->clear();
        wanted_ = key;
        reload();
    });
}

void RegisterPage::onChosen() {
    if (quiet_) return;
    const std::string key = currentKey();
    if (key.empty() || (stored_ && stored_->version != 0 && keyOf(of_, *stored_) == key)) return;
    if (changed_) {
        // Back to the entry that is being typed, until somebody has said what becomes of it.
        quiet_ = true;
        if (stored_ && stored_->version != 0) {
            setCurrentLine(keyOf(of_, *stored_));
        } else {
            list_->setCurrentIndex({});
        }
        quiet_ = false;
        leave([this, key] {
            if (currentKey() == key) {
                load(key);
            } else {
                setCurrentLine(key);
            }
        });
        return;
    }
    load(key);
}

void RegisterPage::load(const std::string& key) {
    archive_.ask([load = of_.load, key](model::Archive& held) { return load(held, key); }, this,
                 [this, key](model::Result<Entry> entry) {
                     if (currentKey() != key || changed_) return;
                     if (!entry) {
                         showNothing();
                         notice_->say(Mark::Fails, sentence(entry.error()), {{tr("Close"), {}}});
                         return;
                     }
                     show(std::move(*entry));
                 });
}

void RegisterPage::show(Entry entry) {
    filling_ = true;
    file_.clear();
    stored_ = std::move(entry);
    form_->setTexts(stored_->texts);
    form_->clearErrors();
    for (std::size_t i = 0; i < of_.fields.size(); ++i) {
        const auto& field = of_.fields[i];
        const int at = form_->find(std::string(field.key));
        const bool names = field.need == model::FieldInfo::Need::Key && stored_->version != 0;
        form_->setFixed(at, names || field.kind == model::FieldKind::Sha256);
    }
    for (auto* table : rows_) {
        const auto found = stored_->rows.find(table->info().key);
        table->setRows(found == stored_->rows.end() ? std::vector<EntryTexts>() : found->second);
    }
    filling_ = false;
    changed_ = false;
    savedAs_.clear();
    refresh();
    emit shown();
}

void RegisterPage::showNothing() {
    filling_ = true;
    stored_.reset();
    file_.clear();
    form_->setTexts({});
    form_->clearErrors();
    for (auto* table : rows_) table->setRows({});
    filling_ = false;
    changed_ = false;
    refresh();
}

Entry RegisterPage::typed() const {
    Entry entry;
    entry.texts = form_->texts();
    for (const auto* table : rows_) entry.rows[table->info().key] = table->rows();
    entry.version = stored_ ? stored_->version : 0;
    entry.file = file_;
    return entry;
}

RowsEditor* RegisterPage::rows(const std::string& key) {
    const auto found =
        std::ranges::find_if(rows_, [&](const auto* table) { return table->info().key == key; });
    return found == rows_.end() ? nullptr : *found;
}

void RegisterPage::onTyped() {
    if (filling_ || !stored_) return;
    changed_ = true;
    savedAs_.clear();
    refresh();
}

void RegisterPage::makeNew() {
    leave([this] {
        chooseNoLine();
        show(Entry());
        tabs_->setCurrentIndex(0);
        form_->editor(0)->setFocus();
    });
}

void RegisterPage::makeLike() {
    if (!stored_) return;
    leave([this] {
        if (!stored_) return;
        Entry entry = *stored_;
        entry.version = 0;
        for (const auto& field : of_.fields) {
            const bool ownFile = field.kind == model::FieldKind::Sha256;
            if (field.need == model::FieldInfo::Need::Key || ownFile) {
                entry.texts.erase(std::string(field.key));
            }
        }
        chooseNoLine();
        show(std::move(entry));
        tabs_->setCurrentIndex(0);
        form_->editor(0)->setFocus();
        onTyped();
    });
}

bool RegisterPage::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        const auto key = static_cast<QKeyEvent*>(event)->key();
        const bool enter = key == Qt::Key_Return || key == Qt::Key_Enter;
        if (watched == find_ && (key == Qt::Key_Down || enter)) {
            list_->setFocus();
            if (!list_->currentIndex().isValid()) list_->setCurrentIndex(filter_->index(0, 0));
            return true;
        }
        if (watched == list_ && enter && stored_) {
            tabs_->setCurrentIndex(0);
            int field = 0;  // the first that can be changed
            while (field + 1 < form_->count() && stored_->version != 0 &&
                   of_.fields[static_cast<std::size_t>(field)].need == model::FieldInfo::Need::Key)
                ++field;
            form_->editor(field)->setFocus(Qt::TabFocusReason);
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

QString RegisterPage::stateText() const {
    return state_->text();
}

}  // namespace app
