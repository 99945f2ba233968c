// SPDX-License-Identifier: Apache-2.0
// What an archive lends to the other files of this folder, so that each of its subjects can have a
// header of its own. For the .cpp files of this folder only.
#pragma once

#include <string>

#include "archive/archive.h"
#include "archive/connection.h"
#include "archive/transaction.h"

namespace model {

struct ArchiveAccess {
    static const Connection& connection(const Archive& archive);
    static const Clock& clock(const Archive& archive);
    static ArchiveKey& key(const Archive& archive);
    /// Where the files of certificates are kept.
    static const std::string& folder(const Archive& archive);

    /// writing() on an archive.
    template <class Body>
    static auto write(Archive& archive, const Actor& actor, Body body) {
        return writing(connection(archive), key(archive), clock(archive), actor, std::move(body));
    }
};

}  // namespace model
