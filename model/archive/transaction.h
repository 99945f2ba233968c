// SPDX-License-Identifier: Apache-2.0
// The one way in which anything is written: whole or not at all, and never without its row of the
// history.
#pragma once

#include <memory>
#include <string>
#include <type_traits>

#include "archive/archive.h"
#include "archive/connection.h"
#include "trust/canonical.h"

namespace model {

class WriteTransaction {
public:
    /// Waits for another program's write; then this one alone may write until commit().
    /// Fails with Input where `actor` has no name.
    static Result<std::unique_ptr<WriteTransaction>> begin(const Connection& connection,
                                                           const Clock& clock, const Actor& actor);
    WriteTransaction(const WriteTransaction&) = delete;
    WriteTransaction& operator=(const WriteTransaction&) = delete;
    /// Undoes everything unless it was committed.
    ~WriteTransaction();

    [[nodiscard]] const Connection& connection() const { return connection_; }
    [[nodiscard]] const std::string& person() const { return person_; }
    [[nodiscard]] const std::string& time() const { return time_; }  ///< of all in it, UTC

    /// Adds the row of the history that says what was done to what, and what was written.
    Result<void> record(const std::string& action, const std::string& subject,
                        Canonical::Object content);

    /// Says that what was to be written is stored already: commit() then does nothing.
    void leaveAsIs() { leftAsIs_ = true; }

    /// Everything is on the disk when this returns. Refused where nothing was recorded.
    Result<void> commit();

private:
    WriteTransaction(const Connection& connection, std::string person, std::string time);

    const Connection& connection_;
    std::string person_;
    std::string time_;
    bool recorded_ = false;
    bool leftAsIs_ = false;
    bool open_ = true;
};

/// Reads as of one moment, whatever others write meanwhile.
class ReadTransaction {
public:
    static Result<std::unique_ptr<ReadTransaction>> begin(const Connection& connection);
    ReadTransaction(const ReadTransaction&) = delete;
    ReadTransaction& operator=(const ReadTransaction&) = delete;
    ~ReadTransaction();

private:
    explicit ReadTransaction(const Connection& connection) : connection_(connection) {}
    const Connection& connection_;
};

/// Runs body(transaction), which returns a Result, and commits where it succeeded.
template <class Body>
auto writing(const Connection& connection, const Clock& clock, const Actor& actor, Body body)
    -> std::invoke_result_t<Body, WriteTransaction&> {
    auto transaction = WriteTransaction::begin(connection, clock, actor);
    if (!transaction) return transaction.error();
    auto result = body(**transaction);
    if (!result) return result;
    if (auto committed = (*transaction)->commit(); !committed) return committed.error();
    return result;
}

}  // namespace model
