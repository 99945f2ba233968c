// SPDX-License-Identifier: Apache-2.0
#include "looks/passphrase_field.h"

#include <utility>

namespace app {
namespace {

/// Overwrites in place; volatile, so that no compiler leaves it out.
template <class Text>
void overwrite(Text& text) {
    auto* bytes = reinterpret_cast<volatile char*>(text.data());
    const auto size = static_cast<std::size_t>(text.size()) * sizeof(*text.data());
    for (std::size_t i = 0; i < size; ++i) bytes[i] = 0;
}

}  // namespace

PassphraseField::PassphraseField(QWidget* parent) : QLineEdit(parent) {
    setEchoMode(QLineEdit::Password);
    setInputMethodHints(Qt::ImhHiddenText | Qt::ImhSensitiveData | Qt::ImhNoPredictiveText |
                        Qt::ImhNoAutoUppercase);
    setContextMenuPolicy(Qt::NoContextMenu);
    setMaxLength(1024);
}

PassphraseField::~PassphraseField() {
    wipe();
}

Secret PassphraseField::take() {
    QByteArray utf8 = text().toUtf8();
    auto secret = std::make_shared<const model::SecretBytes>(
        std::string_view(utf8.constData(), static_cast<std::size_t>(utf8.size())));
    overwrite(utf8);
    wipe();
    return secret;
}

void PassphraseField::wipe() {
    QString held = text();
    clear();  // after it `held` is the only one that holds the characters: data() copies nothing
    if (!held.isEmpty()) overwrite(held);
}

}  // namespace app
