// SPDX-License-Identifier: Apache-2.0
// Saving the entry in view, and what becomes of what is typed.
#include <QDateTime>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QPushButton>
#include <QTabBar>
#include <QTableView>
#include <algorithm>

#include "fields/entry_table.h"
#include "fields/field_form.h"
#include "looks/heading.h"
#include "looks/notice_bar.h"
#include "looks/task_dialog.h"
#include "looks/text.h"
#include "reference/entry_model.h"
#include "reference/import_dialog.h"
#include "reference/register_page.h"
#include "reference/rows_editor.h"
#include "reference/versions_dialog.h"

namespace app {

QString RegisterPage::whyNot() const {
    if (session_.onlyForReading()) return tr("This archive is open only for reading.");
    if (!session_.peopleKnown()) return tr("The archive has not yet said who its people are.");
    if (!session_.hasPeople()) {
        if (!of_.signers.empty()) {
            return tr("Only to read: this is signed, and nobody is set up in this archive yet.");
        }
        return person_.isEmpty() ? tr("Only to read: state your name first (Help, Who sits here).")
                                 : QString();
    }
    if (!session_.signer()) return tr("Only to read: sign in to change anything.");
    const auto& roles = session_.person()->roles;
    if (of_.signers.empty()) {
        using model::Role;
        const bool keeps = roles.contains(Role::Inspector) || roles.contains(Role::QaManager) ||
                           roles.contains(Role::Administrator);
        return keeps ? QString()
                     : tr("Only to read: inspectors, QA managers and administrators keep this.");
    }
    QStringList words;
    for (const auto role : of_.signers) {
        if (roles.contains(role)) return {};
        words << QString::fromUtf8(model::word(role).data(),
                                   static_cast<qsizetype>(model::word(role).size()));
    }
    return tr("Only to read: this is signed by: %1.").arg(words.join(tr(" or ")));
}

std::optional<Keeper> RegisterPage::keeper() const {
    if (!whyNot().isEmpty()) return std::nullopt;
    if (session_.signer()) return Keeper{session_.signer()->actor(), session_.signer()};
    return Keeper{{person_.toStdString()}, nullptr};
}

void RegisterPage::refresh() {
    const QString why = whyNot();
    const bool may = why.isEmpty() && !saving_;
    form_->setReadOnly(!may || !stored_);
    for (auto* table : rows_) table->setReadOnly(!may || !stored_);
    side_->setEnabled(stored_.has_value());
    new_->setEnabled(may);
    import_->setEnabled(may);
    like_->setEnabled(may && stored_ && stored_->version != 0);
    save_->setEnabled(may && stored_ && changed_);
    drop_->setEnabled(!saving_ && stored_ && (changed_ || stored_->version == 0));
    versions_->setEnabled(stored_ && stored_->version != 0);
    const int all = model_->rowCount();
    const int found = filter_->rowCount();
    count_->setText(all == 0       ? tr("Nothing is kept here yet.")
                    : found == all ? tr("Entries: %1").arg(all)
                                   : tr("Entries: %1 of %2").arg(found).arg(all));
    if (!stored_) {
        heading_->setText(all == 0 ? QString() : tr("Choose an entry"));
    } else if (stored_->version == 0) {
        heading_->setText(of_.newTitle);
    } else {
        heading_->setText(nameOf(of_, *stored_));
    }
    QString state;
    if (saving_) {
        state = tr("Saving…");
    } else if (!why.isEmpty()) {
        state = why;
    } else if (stored_ && changed_) {
        state = tr("Not saved yet.");
    } else if (!savedAs_.isEmpty()) {
        state = savedAs_;
    } else if (stored_ && stored_->version > 0) {
        state = tr("Version %1").arg(stored_->version);
    }
    const bool isStored = stored_ && stored_->version > 0 && !changed_ && !saving_;
    if (isStored && why.isEmpty() && !stored_->note.isEmpty()) {
        state = tr("%1, %2").arg(state, stored_->note);
    }
    state_->setText(state);
    refreshFile();
}

void RegisterPage::refreshFile() {
    const bool has = std::ranges::any_of(
        of_.fields, [](const auto& field) { return field.kind == model::FieldKind::Sha256; });
    fileText_->setVisible(has);
    fileButton_->setVisible(has);
    if (!has) return;
    fileButton_->setEnabled(save_->isEnabled() || (new_->isEnabled() && stored_));
    fileText_->setText(file_.empty() ? QString()
                                     : tr("%1 is kept with the entry when it is saved.")
                                           .arg(QFileInfo(qt(file_)).fileName()));
}

void RegisterPage::chooseFile() {
    const QString path = QFileDialog::getOpenFileName(this, tr("A file to be kept"));
    if (path.isEmpty()) return;
    file_ = path.toStdString();
    onTyped();
}

void RegisterPage::drop() {
    notice_->takeBack();
    changed_ = false;
    const std::string key = stored_ && stored_->version != 0 ? keyOf(of_, *stored_) : "";
    showNothing();
    if (!key.empty()) {
        load(key);
    } else if (filter_->rowCount() > 0) {
        list_->setCurrentIndex(filter_->index(0, 0));
        list_->setFocus();
    }
}

void RegisterPage::leave(const std::function<void()>& go) {
    if (!changed_) {
        go();
        return;
    }
    const QString what =
        stored_->version == 0
            ? tr("The new entry is not saved yet.")
            : tr("What was changed of %1 is not saved yet.").arg(nameOf(of_, *stored_));
    notice_->say(Mark::Open, what,
                 {{tr("Save it"),
                   [this, go] {
                       after_ = go;
                       save();
                   }},
                  {tr("Discard it"),
                   [this, go] {
                       changed_ = false;
                       showNothing();
                       go();
                   }},
                  {tr("Stay"), {}}},
                 true);
}

void RegisterPage::showWrong(const std::vector<model::FieldError>& errors) {
    form_->showErrors(errors);
    for (auto* table : rows_) table->setErrors(errors);
    if (errors.empty()) return;
    const std::string& first = errors.front().field;
    if (const int field = form_->find(first); field >= 0) {
        tabs_->setCurrentIndex(0);
        form_->editor(field)->setFocus(Qt::OtherFocusReason);
        return;
    }
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (!first.starts_with(rows_[i]->info().key + ".")) continue;
        tabs_->setCurrentIndex(static_cast<int>(i) + 1);
        rows_[i]->table().setFocus(Qt::OtherFocusReason);
        return;
    }
}

bool RegisterPage::showPlace(const model::Error& error) {
    const bool isField = form_->find(error.place) >= 0;
    const bool isCell = std::ranges::any_of(
        rows_, [&](const auto* table) { return error.place.starts_with(table->info().key + "."); });
    if (!isField && !isCell) return false;
    showWrong({{error.place, error}});
    return true;
}

void RegisterPage::save() {
    form_->finishEditing();
    for (auto* table : rows_) table->finishEditing();
    const auto named = keeper();
    if (!stored_ || !changed_ || saving_ || !named) {
        after_ = {};
        return;
    }
    const Entry entry = typed();
    auto errors = of_.wrong(entry);
    showWrong(errors);
    if (!errors.empty()) {
        after_ = {};
        state_->setText(errors.size() == 1
                            ? tr("Not saved: one text has to be put right.")
                            : tr("Not saved: %1 texts have to be put right.").arg(errors.size()));
        return;
    }
    if (of_.touches && entry.version != 0) {
        askWhatIsTouched(entry, *named);
        return;
    }
    keep(entry, *named);
}

void RegisterPage::askWhatIsTouched(const Entry& entry, const Keeper& named) {
    archive_.ask(
        [touches = of_.touches, entry](model::Archive& held) { return touches(held, entry); }, this,
        [this, entry, named](const model::Result<std::vector<QString>>& lines) {
            if (!lines) {
                after_ = {};
                notice_->say(Mark::Fails, sentence(lines.error()), {{tr("Close"), {}}});
                return;
            }
            if (lines->empty()) {
                keep(entry, named);
                return;
            }
            auto* dialog = new TaskDialog(
                tr("What this change touches"),
                tr("These inherit what is changed. What is signed stays as it was signed; what is "
                   "not signed yet follows the order as it is from now on."),
                tr("&Save the change"), this);
            dialog->setObjectName("touchesDialog");
            constexpr std::size_t kMost = 12;
            QStringList shown;
            for (std::size_t i = 0; i < std::min(lines->size(), kMost); ++i) {
                shown << "• " + (*lines)[i];
            }
            if (lines->size() > kMost) shown << tr("and %1 more").arg(lines->size() - kMost);
            dialog->addNote(shown.join('\n'))->setForegroundRole(QPalette::WindowText);
            dialog->setWork(
                [this, entry, named](const TaskDialog::Then& then) { keep(entry, named, then); });
            connect(dialog, &QDialog::rejected, this, [this] { after_ = {}; });
            dialog->open();
            emit taskShown(dialog);
        });
}

void RegisterPage::keep(const Entry& entry, const Keeper& named,
                        std::function<void(model::Result<void>)> then) {
    saving_ = true;
    refresh();
    archive_.ask(
        [save = of_.save, entry, named](model::Archive& held) { return save(held, entry, named); },
        this,
        [this, then = std::move(then)](const model::Result<std::string>& kept) {
            saving_ = false;
            if (then) then({});  // what stands in the way is said beside the fields
            onKept(kept);
        });
}

void RegisterPage::onKept(const model::Result<std::string>& kept) {
    if (!kept) {
        after_ = {};
        refresh();
        const auto& error = kept.error();
        if (error.kind == model::ErrorKind::Conflict) {
            onConflict(error);
        } else if (showPlace(error)) {
            state_->setText(tr("Not saved."));
        } else {
            notice_->say(Mark::Fails, tr("Not saved. %1").arg(sentence(error)),
                         {{tr("Close"), {}}});
        }
        return;
    }
    notice_->takeBack();
    changed_ = false;
    stored_.reset();
    const auto after = std::exchange(after_, {});
    const QString at = QTime::currentTime().toString("HH:mm:ss");
    if (after) {
        emit saved(qt(*kept));
        reload();
        after();
        return;
    }
    // The next entry shown is this one, as it is stored.
    auto* once = new QObject(this);
    connect(this, &RegisterPage::shown, once, [this, once, at] {
        once->deleteLater();
        if (!stored_ || changed_) return;
        savedAs_ = tr("Saved at %1 as version %2").arg(at).arg(stored_->version);
        refresh();
    });
    wanted_ = *kept;
    reload();
    emit saved(qt(*kept));
}

void RegisterPage::onConflict(const model::Error& error) {
    if (stored_->version == 0) {
        notice_->say(
            Mark::Open,
            tr("Not saved: there is an entry of this name already. (%1)").arg(sentence(error)),
            {{tr("Close"), {}}}, true);
        return;
    }
    notice_->say(Mark::Open,
                 tr("Not saved: somebody else has changed this meanwhile. Look at what is stored "
                    "now and make your change again. (%1)")
                     .arg(sentence(error)),
                 {{tr("Show what is stored"), [this] { drop(); }}, {tr("Close"), {}}}, true);
}

void RegisterPage::importFile() {
    const auto named = keeper();
    if (!named || of_.files.empty()) return;
    auto* dialog = new ImportDialog(of_.files, archive_, *named, this);
    connect(dialog, &ImportDialog::taken, this, [this] {
        reload();
        emit saved({});
    });
    dialog->open();
    emit importShown(dialog);
}

void RegisterPage::showVersions() {
    if (!stored_ || stored_->version == 0 || !of_.versions) return;
    const std::string key = keyOf(of_, *stored_);
    archive_.ask(
        [versions = of_.versions, key](model::Archive& held) { return versions(held, key); }, this,
        [this,
         name = nameOf(of_, *stored_)](const model::Result<std::vector<EntryVersion>>& versions) {
            if (!versions) {
                notice_->say(Mark::Fails, sentence(versions.error()), {{tr("Close"), {}}});
                return;
            }
            auto* dialog = new VersionsDialog(of_, name, *versions, this);
            dialog->open();
            emit versionsShown(dialog);
        });
}

}  // namespace app
