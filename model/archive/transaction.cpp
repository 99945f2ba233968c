// SPDX-License-Identifier: Apache-2.0
#include "archive/transaction.h"

#include <cassert>

#include "archive/dialect.h"
#include "archive/history_store.h"

namespace model {

WriteTransaction::WriteTransaction(const Connection& connection, std::string person,
                                   std::string time)
    : connection_(connection), person_(std::move(person)), time_(std::move(time)) {}

Result<std::unique_ptr<WriteTransaction>> WriteTransaction::begin(const Connection& connection,
                                                                  const Clock& clock,
                                                                  const Actor& actor) {
    if (actor.name.find_first_not_of(" \t\r\n") == std::string::npos)
        return inputError(connection.place(), "is not written without the name of a person");
    if (auto begun = dialect::beginWriting(connection); !begun) return begun.error();
    return std::unique_ptr<WriteTransaction>(
        new WriteTransaction(connection, actor.name, toText(clock.now())));
}

WriteTransaction::~WriteTransaction() {
    // Where this fails the database has rolled back by itself already.
    if (open_) static_cast<void>(connection_.execute("ROLLBACK"));
}

Result<void> WriteTransaction::record(const std::string& action, const std::string& subject,
                                      Canonical::Object content) {
    auto added = appendHistory(connection_, time_, person_, action, subject, std::move(content));
    if (added) recorded_ = true;
    return added;
}

Result<void> WriteTransaction::commit() {
    if (leftAsIs_ && !recorded_) return {};
    assert(recorded_);
    if (!recorded_)
        return refusal(connection_.place(), "is not written without a row of the history");
    if (auto done = connection_.execute("COMMIT"); !done) return done;
    open_ = false;
    return {};
}

Result<std::unique_ptr<ReadTransaction>> ReadTransaction::begin(const Connection& connection) {
    if (auto begun = connection.execute("BEGIN"); !begun) return begun.error();
    return std::unique_ptr<ReadTransaction>(new ReadTransaction(connection));
}

ReadTransaction::~ReadTransaction() {
    static_cast<void>(connection_.execute("COMMIT"));
}

}  // namespace model
