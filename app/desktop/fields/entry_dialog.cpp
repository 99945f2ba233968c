// SPDX-License-Identifier: Apache-2.0
#include "fields/entry_dialog.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QGuiApplication>
#include <QPushButton>
#include <QScreen>
#include <QScrollArea>
#include <algorithm>

#include "looks/text.h"

namespace app {

EntryDialog::EntryDialog(const QString& title, const QString& intro, const QString& act,
                         const std::vector<model::FieldInfo>& fields, const EntryTexts& texts,
                         const std::set<std::string>& hidden, QWidget* parent)
    : TaskDialog(title,
                 intro + (intro.isEmpty() ? QString() : QStringLiteral("\n")) +
                     tr("* has to be filled in. Enter goes to the next field; where a choice is "
                        "offered, the down key shows it."),
                 act, parent),
      infos_(fields),
      kept_(texts) {
    auto* scroll = new QScrollArea(this);
    fields_ = new FieldForm(scroll);
    if (std::ranges::find(fields, model::FieldKind::Sha256, &model::FieldInfo::kind) !=
        fields.end()) {
        choose_ = new QPushButton(fields_);
        choose_->setObjectName("chooseFile");
        choose_->setAutoDefault(false);
        connect(choose_, &QPushButton::clicked, this, [this] {
            const QString path =
                QFileDialog::getOpenFileName(this, tr("Choose the file"), {}, filter_);
            if (!path.isEmpty()) setFile(path);
        });
        fields_->addWide(choose_);
        setFile({});
    }
    for (const auto& info : fields) {
        if (info.kind != model::FieldKind::Sha256 && !hidden.contains(std::string(info.key))) {
            fields_->add(info);
        }
    }
    fields_->setTexts(texts);
    scroll->setWidget(fields_);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    const int screen = QGuiApplication::primaryScreen()->availableGeometry().height();
    scroll->setMinimumHeight(std::min(fields_->sizeHint().height() + 8, screen * 9 / 20));
    scroll->setMinimumWidth(fontMetrics().averageCharWidth() * 70);
    form().addRow(scroll);
    connect(fields_, &FieldForm::ended, &actButton(),
            [this] { actButton().setFocus(Qt::TabFocusReason); });
    connect(fields_, &FieldForm::entered, this,
            [this](int field) { fields_->setError(field, {}); });
    for (int i = 0; i < fields_->count(); ++i) {
        if (fields_->text(i).empty()) {
            fields_->editor(i)->setFocus();
            break;
        }
    }
}

EntryTexts EntryDialog::texts() const {
    EntryTexts texts = kept_;
    for (int i = 0; i < fields_->count(); ++i) {
        std::string text = fields_->text(i);
        const std::string& key = fields_->facts(i).field;
        if (text.empty()) {
            texts.erase(key);
        } else {
            texts[key] = std::move(text);
        }
    }
    return texts;
}

void EntryDialog::setFile(const QString& path) {
    file_ = path;
    const bool has = std::ranges::any_of(infos_, [this](const auto& info) {
        return info.kind == model::FieldKind::Sha256 && kept_.contains(std::string(info.key));
    });
    choose_->setText(path.isEmpty() ? (has ? tr("Replace the &file…") : tr("Choose the &file…"))
                                    : tr("&File: %1").arg(QFileInfo(path).fileName()));
    choose_->setToolTip(path);
    if (!path.isEmpty()) emit fileChosen(path);
}

void EntryDialog::fix(const std::set<std::string>& keys) {
    for (const auto& key : keys) {
        if (const int field = fields_->find(key); field >= 0) fields_->setFixed(field, true);
    }
}

/// True where nothing is wrong.
bool EntryDialog::showErrors() {
    const EntryTexts texts = this->texts();
    std::vector<model::FieldError> errors;
    for (const auto& info : infos_) {
        if (fields_->find(std::string(info.key)) < 0) continue;  // nobody fills it in here
        const auto found = texts.find(std::string(info.key));
        const std::string_view text =
            found == texts.end() ? std::string_view() : std::string_view(found->second);
        if (auto error = model::wrongText(info, text)) {
            errors.push_back({std::string(info.key), std::move(*error)});
        }
    }
    if (check_) std::ranges::copy(check_(texts), std::back_inserter(errors));
    const QStringList others = fields_->showErrors(errors);
    setTrouble(others.join('\n'));
    for (int i = 0; i < fields_->count(); ++i) {
        if (fields_->error(i).isEmpty()) continue;
        fields_->editor(i)->setFocus();
        break;
    }
    return errors.empty();
}

void EntryDialog::setStore(Store store) {
    setWork([this, store = std::move(store)](const Then& then) {
        fields_->finishEditing();
        if (!showErrors()) {
            then(model::inputError("", "put the marked fields right"));
            return;
        }
        store(texts(), file_, [this, then](const model::Result<void>& result) {
            const int field = result ? -1 : fields_->find(result.error().place);
            if (field >= 0) {
                fields_->setError(field, reasonText(result.error()));
                then(model::inputError("", "put the marked fields right"));
                return;
            }
            then(result);
        });
    });
}

}  // namespace app
