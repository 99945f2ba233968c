// SPDX-License-Identifier: Apache-2.0
#include "archive/batch.h"

#include "archive/archive_access.h"
#include "archive/dialect.h"

namespace model {

Result<std::unique_ptr<Batch>> Batch::begin(Archive& archive) {
    const Connection& connection = ArchiveAccess::connection(archive);
    if (connection.isReadOnly())
        return refusal(connection.place(),
                       "was opened for reading only: nothing was written to it");
    if (connection.batch() != Connection::Batch::None)
        return refusal(connection.place(), "has writes already that are stored together");
    if (auto begun = dialect::beginWriting(connection); !begun) return begun.error();
    connection.setBatch(Connection::Batch::Open);
    return std::unique_ptr<Batch>(new Batch(connection));
}

Batch::~Batch() {
    // Where this fails the database has rolled back by itself already.
    if (open_) static_cast<void>(connection_.execute("ROLLBACK"));
    connection_.setBatch(Connection::Batch::None);
}

Result<void> Batch::keep() {
    if (connection_.batch() == Connection::Batch::Broken)
        return refusal(connection_.place(), "undid what was to be stored together");
    if (auto done = connection_.execute("COMMIT"); !done) return done;
    open_ = false;
    connection_.setBatch(Connection::Batch::None);
    return {};
}

}  // namespace model
