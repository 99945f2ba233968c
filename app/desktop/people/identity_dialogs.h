// SPDX-License-Identifier: Apache-2.0
// What is done with identities, one small form each. Session and archive outlive the dialogs; once
// one is done the session has asked for the people again.
#pragma once

#include "editing/session.h"
#include "looks/task_dialog.h"

namespace app {

TaskDialog* issueIdentityDialog(Session& session, ArchiveThread& archive,
                                const model::Person& person, QWidget* parent);
TaskDialog* importIdentityDialog(Session& session, ArchiveThread& archive,
                                 const model::Person& person, QWidget* parent);
/// `ownAuthority`: one of the identities was issued by the archive's own authority.
TaskDialog* withdrawIdentityDialog(Session& session, ArchiveThread& archive,
                                   const model::Person& person, bool ownAuthority, QWidget* parent);
TaskDialog* trustAuthorityDialog(Session& session, ArchiveThread& archive, QWidget* parent);
/// Of an authority that is trusted already.
TaskDialog* takeRevocationListDialog(Session& session, ArchiveThread& archive, QWidget* parent);
TaskDialog* changeAuthorityPassphraseDialog(Session& session, ArchiveThread& archive,
                                            QWidget* parent);
/// Of whoever is signed in.
TaskDialog* changePassphraseDialog(Session& session, ArchiveThread& archive, QWidget* parent);

}  // namespace app
