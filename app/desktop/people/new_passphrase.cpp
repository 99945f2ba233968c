// SPDX-License-Identifier: Apache-2.0
#include "people/new_passphrase.h"

#include <QFormLayout>

#include "looks/task_dialog.h"
#include "trust/identity.h"

namespace app {

NewPassphrase::NewPassphrase(TaskDialog& dialog, const QString& label, const QString& name)
    : QObject(&dialog),
      label_(QString(label).remove('&')),
      first_(new PassphraseField(&dialog)),
      again_(new PassphraseField(&dialog)) {
    first_->setObjectName(name);
    first_->setAccessibleName(label_);
    first_->setPlaceholderText(tr("at least %1 characters").arg(model::kShortestPassphrase));
    again_->setObjectName(name + "Again");
    again_->setAccessibleName(tr("%1, once more").arg(label_));
    dialog.form().addRow(label, first_);
    dialog.form().addRow(tr("once more"), again_);
    connect(first_, &QLineEdit::textChanged, &dialog, &TaskDialog::refresh);
    connect(again_, &QLineEdit::textChanged, &dialog, &TaskDialog::refresh);
}

QString NewPassphrase::missing() const {
    const QString text = first_->text();
    if (text.isEmpty()) return tr("%1: type it twice.").arg(label_);
    if (static_cast<std::size_t>(text.toUcs4().size()) < model::kShortestPassphrase) {
        return tr("%1: it needs at least %2 characters.")
            .arg(label_)
            .arg(model::kShortestPassphrase);
    }
    return text == again_->text() ? QString() : tr("%1: the two are not the same.").arg(label_);
}

Secret NewPassphrase::take() {
    again_->wipe();
    return first_->take();
}

}  // namespace app
