// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli issue-identity, import-identity, trust-authority, take-revocation-list,
// passphrase, authority-passphrase, withdraw-identity, replace-archive-key
#pragma once

#include "command.h"

namespace app {

Command issueIdentityCommand();
Command importIdentityCommand();
Command trustAuthorityCommand();
Command takeRevocationListCommand();
Command passphraseCommand();
Command authorityPassphraseCommand();
Command withdrawIdentityCommand();
Command replaceArchiveKeyCommand();

}  // namespace app
