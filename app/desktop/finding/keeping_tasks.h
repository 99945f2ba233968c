// SPDX-License-Identifier: Apache-2.0
// What is done about the keeping of an order's certificates, one small form each. Session and
// archive outlive the dialogs.
#pragma once

#include <QString>

#include "archive/retention.h"
#include "editing/session.h"

namespace app {

class TaskDialog;

/// What a disposal takes out, counted, and what it leaves.
QString whatGoes(const model::Disposable& certificate);

TaskDialog* lastDayDialog(ArchiveThread& archive, Session& session, const model::Retention& stated,
                          QWidget* parent);
/// Puts the order on hold, or ends that.
TaskDialog* holdDialog(ArchiveThread& archive, Session& session, const model::Retention& stated,
                       QWidget* parent);
/// Asks whoever is signed in for their passphrase once more: what is disposed of is gone.
TaskDialog* disposeDialog(ArchiveThread& archive, Session& session,
                          const model::Disposable& certificate, QWidget* parent);

}  // namespace app
