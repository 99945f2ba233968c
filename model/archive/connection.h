// SPDX-License-Identifier: Apache-2.0
// One connection to the database, and statements on it. Everything here belongs to the thread
// that opened the connection.
#pragma once

#include <QSqlDatabase>
#include <QSqlQuery>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <thread>
#include <variant>
#include <vector>

#include "base/result.h"

class QSqlError;

namespace model {

class Connection {
public:
    /// Opens with Qt's driver `driver`, database name `name` and connect options `options`.
    /// `place` is the file's path, which errors name.
    static Result<std::unique_ptr<Connection>> open(const QString& driver, const QString& name,
                                                    const QString& options, std::string place);
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    ~Connection();

    /// From now on nothing can be written through it: a WriteTransaction is refused.
    Result<void> keepFromWriting();
    [[nodiscard]] bool isReadOnly() const { return readOnly_; }

    /// Whether writes are being made one (batch.h). Broken: the database undid what they wrote.
    enum class Batch { None, Open, Broken };
    [[nodiscard]] Batch batch() const { return batch_; }
    void setBatch(Batch batch) const { batch_ = batch; }

    /// Runs one statement that takes no values and gives no rows.
    [[nodiscard]] Result<void> execute(const QString& sql) const;

    [[nodiscard]] Error errorFrom(const QSqlError& error) const;
    /// What is stored is not what was written, or no longer understood.
    [[nodiscard]] Error damaged(std::string what, std::string reason) const;

    [[nodiscard]] const std::string& place() const { return place_; }
    [[nodiscard]] QSqlDatabase database() const;

private:
    Connection(const QSqlDatabase& database, std::string place);

    QSqlDatabase database_;
    std::string place_;
    bool readOnly_ = false;
    mutable Batch batch_ = Batch::None;
    std::thread::id thread_ = std::this_thread::get_id();
};

/// Bytes that are no text.
struct Blob {
    std::string_view bytes;
};

/// A statement with "?" for its values, prepared once; run again and again. Ends its reading when
/// it goes, as an unfinished one would keep the database's log from being folded in.
///
/// A text that the database would not give back byte for byte is refused with ErrorKind::Input:
/// one that is not UTF-8, holds NUL, U+FFFE or U+FFFF, or starts with a byte-order mark.
class SqlStatement {
public:
    SqlStatement(const Connection& connection, const std::string& sql);
    SqlStatement(const SqlStatement&) = delete;
    SqlStatement& operator=(const SqlStatement&) = delete;
    ~SqlStatement();

    template <class... Values>
    [[nodiscard]] Result<void> run(const Values&... values) {
        int index = 0;
        (bind(index++, values), ...);
        return execute();
    }
    using Values =
        std::vector<std::variant<std::string, std::int64_t, std::optional<std::int64_t>>>;
    [[nodiscard]] Result<void> runWith(const Values& values);
    /// run() with these values, then next().
    template <class... Values>
    [[nodiscard]] Result<bool> first(const Values&... values) {
        if (auto done = run(values...); !done) return done.error();
        return next();
    }
    /// Steps to the next row; false after the last.
    [[nodiscard]] Result<bool> next();

    // The current row's columns, from 0.
    [[nodiscard]] bool isNone(int column) const;
    [[nodiscard]] std::int64_t whole(int column) const;
    [[nodiscard]] std::optional<std::int64_t> wholeOrNone(int column) const;
    [[nodiscard]] std::string text(int column) const;
    [[nodiscard]] std::optional<std::string> textOrNone(int column) const;
    [[nodiscard]] std::string blob(int column) const;

private:
    void bind(int index, std::string_view text);
    void bind(int index, const std::string& text) { bind(index, std::string_view(text)); }
    void bind(int index, const char* text) { bind(index, std::string_view(text)); }
    void bind(int index, const std::optional<std::string>& text);
    void bind(int index, std::int64_t whole);
    void bind(int index, int whole) { bind(index, std::int64_t{whole}); }
    void bind(int index, bool truth) { bind(index, std::int64_t{truth}); }
    void bind(int index, const std::optional<std::int64_t>& whole);
    void bind(int index, Blob blob);
    Result<void> execute();

    const Connection& connection_;
    QSqlQuery query_;
    std::optional<Error> error_;      ///< of preparing, for good
    std::optional<Error> bindError_;  ///< of this run's values
};

}  // namespace model
