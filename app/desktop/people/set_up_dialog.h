// SPDX-License-Identifier: Apache-2.0
// The first start of an archive that has no people: the company, its own authority, and the first
// administrator. Without them nobody can sign.
#pragma once

#include "editing/session.h"
#include "looks/task_dialog.h"

namespace app {

/// `session` and `archive` outlive the dialog. Once it is done the session knows the people.
TaskDialog* setUpDialog(Session& session, ArchiveThread& archive, QWidget* parent);

}  // namespace app
