// SPDX-License-Identifier: Apache-2.0
// A field for a passphrase. What is typed is never shown, and is wiped as far as Qt lets us: the
// characters that the field holds are overwritten when it is taken or cleared. Out of reach are
// copies that Qt and the windowing system make on the way: key events, the input method, strings
// that the field dropped while it grew.
#pragma once

#include <QLineEdit>
#include <memory>

#include "trust/key_secret.h"

namespace app {

/// Shared because a job that may wait in a queue has to be copied.
using Secret = std::shared_ptr<const model::SecretBytes>;

class PassphraseField : public QLineEdit {
    Q_OBJECT

public:
    explicit PassphraseField(QWidget* parent = nullptr);
    ~PassphraseField() override;

    /// What was typed, as UTF-8; the field is empty afterwards.
    Secret take();
    void wipe();
};

}  // namespace app
