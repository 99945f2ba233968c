// SPDX-License-Identifier: Apache-2.0
#include "archive/connection.h"

#include <QSqlError>
#include <QUuid>
#include <QVariant>
#include <algorithm>
#include <cassert>

#include "archive/dialect.h"
#include "archive/sql_error.h"

namespace model {
namespace {

/// Why the database would not give this text back byte for byte; null where it would.
const char* whyNotKept(std::string_view text, const QString& converted) {
    if (text.find('\0') != std::string_view::npos) return "a text with a NUL cannot be stored";
    // The driver hands over UTF-16, where SQLite drops U+FEFF from the start; and it reads U+FFFE
    // and U+FFFF, which are no characters, back as U+FFFD.
    if (text.starts_with("\xef\xbb\xbf"))
        return "a text that starts with a byte-order mark cannot be stored";
    if (text.find("\xef\xbf\xbe") != std::string_view::npos ||
        text.find("\xef\xbf\xbf") != std::string_view::npos)
        return "a text with U+FFFE or U+FFFF, which are no characters, cannot be stored";
    const bool ascii =
        std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
    if (!ascii && converted.toUtf8() != QByteArrayView(text.data(), qsizetype(text.size())))
        return "a text that is not UTF-8 cannot be stored";
    return nullptr;
}

}  // namespace

Connection::Connection(const QSqlDatabase& database, std::string place)
    : database_(database), place_(std::move(place)) {}

Result<std::unique_ptr<Connection>> Connection::open(const QString& driver, const QString& name,
                                                     const QString& options, std::string place) {
    const QString id = QUuid::createUuid().toString(QUuid::WithoutBraces);
    QSqlDatabase database = QSqlDatabase::addDatabase(driver, id);
    database.setDatabaseName(name);
    database.setConnectOptions(options);
    std::unique_ptr<Connection> connection(new Connection(database, std::move(place)));
    if (!database.isValid())
        return refusal(connection->place_, "cannot be opened: the database driver %1 is missing",
                       {driver.toStdString()});
    if (!database.open()) return connection->errorFrom(database.lastError());
    return connection;
}

Connection::~Connection() {
    const QString id = database_.connectionName();
    database_.close();
    database_ = QSqlDatabase();
    QSqlDatabase::removeDatabase(id);
}

QSqlDatabase Connection::database() const {
    assert(thread_ == std::this_thread::get_id());
    return database_;
}

Result<void> Connection::keepFromWriting() {
    readOnly_ = true;
    return dialect::keepFromWriting(*this);
}

Result<void> Connection::execute(const QString& sql) const {
    QSqlQuery query(database());
    if (!query.exec(sql)) return errorFrom(query.lastError());
    query.finish();
    return {};
}

Error Connection::errorFrom(const QSqlError& error) const {
    return sqlError(error, place_);
}

Error Connection::damaged(std::string what, std::string reason) const {
    return {ErrorKind::Damaged, place_ + ": " + std::move(what), std::move(reason), {}};
}

SqlStatement::SqlStatement(const Connection& connection, const std::string& sql)
    : connection_(connection), query_(connection.database()) {
    query_.setForwardOnly(true);
    if (!query_.prepare(QString::fromStdString(sql)))
        error_ = connection.errorFrom(query_.lastError());
}

SqlStatement::~SqlStatement() {
    query_.finish();
}

void SqlStatement::bind(int index, std::string_view text) {
    // A null QString would become NULL.
    const QString converted =
        text.empty() ? QStringLiteral("")
                     : QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
    if (const char* reason = whyNotKept(text, converted))
        bindError_ = inputError(connection_.place(), reason);
    query_.bindValue(index, converted);
}

void SqlStatement::bind(int index, const std::optional<std::string>& text) {
    if (text)
        bind(index, *text);
    else
        query_.bindValue(index, QVariant(QMetaType(QMetaType::QString)));
}

void SqlStatement::bind(int index, std::int64_t whole) {
    query_.bindValue(index, QVariant::fromValue<qlonglong>(whole));
}

void SqlStatement::bind(int index, const std::optional<std::int64_t>& whole) {
    if (whole)
        bind(index, *whole);
    else
        query_.bindValue(index, QVariant(QMetaType(QMetaType::LongLong)));
}

void SqlStatement::bind(int index, Blob blob) {
    const QByteArray bytes(blob.bytes.data(), static_cast<qsizetype>(blob.bytes.size()));
    query_.bindValue(index, bytes);
}

Result<void> SqlStatement::execute() {
    if (error_) return *error_;
    if (bindError_) {
        const Error error = *bindError_;
        bindError_.reset();
        return error;
    }
    if (!query_.exec()) return connection_.errorFrom(query_.lastError());
    return {};
}

Result<void> SqlStatement::runWith(const Values& values) {
    int index = 0;
    for (const auto& value : values) {
        std::visit([&](const auto& held) { bind(index, held); }, value);
        ++index;
    }
    return execute();
}

Result<bool> SqlStatement::next() {
    if (query_.next()) return true;
    const QSqlError error = query_.lastError();
    query_.finish();
    if (error.isValid()) return connection_.errorFrom(error);
    return false;
}

bool SqlStatement::isNone(int column) const {
    return query_.isNull(column);
}

std::int64_t SqlStatement::whole(int column) const {
    return query_.value(column).toLongLong();
}

std::optional<std::int64_t> SqlStatement::wholeOrNone(int column) const {
    if (isNone(column)) return std::nullopt;
    return whole(column);
}

std::string SqlStatement::text(int column) const {
    return query_.value(column).toString().toStdString();
}

std::optional<std::string> SqlStatement::textOrNone(int column) const {
    if (isNone(column)) return std::nullopt;
    return text(column);
}

std::string SqlStatement::blob(int column) const {
    return query_.value(column).toByteArray().toStdString();
}

}  // namespace model
