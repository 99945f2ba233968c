// SPDX-License-Identifier: Apache-2.0
// What has to hold for an entry of a register to be saved, beyond its fields by themselves. For the
// .cpp files of this folder only.
#pragma once

#include <string>
#include <vector>

#include "archive/register_store.h"
#include "archive/sign_in.h"

namespace model {

/// What the entry names that is not there, or is of another casting; empty: nothing. `folder`: of
/// the archive's files. Input; place: the field's key.
Result<std::vector<Error>> wrongReferences(const Connection& connection, const std::string& folder,
                                           const StoredEntry& entry);

/// Whether `signer` may save this as the next version of `before` (null: as the first). Refused,
/// or Input where a procedure names somebody else as approving it.
Result<void> checkSigner(const StoredEntry& entry, const StoredEntry* before,
                         const SignedIn& signer);

}  // namespace model
