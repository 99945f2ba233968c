// SPDX-License-Identifier: Apache-2.0
#include "archive/search.h"

#include <QString>
#include <cassert>
#include <limits>

#include "archive/archive_access.h"
#include "archive/dialect_search.h"
#include "archive/history_store.h"
#include "archive/stored_words.h"
#include "judge/sheet_words.h"
#include "registers/field.h"

namespace model {
namespace {

constexpr char kColumns[] =
    "c.number, c.casting_serial, c.heat, c.part_number, c.order_number, c.customer, "
    "c.customer_reference, c.certificate_type, c.verdict, c.issued_at, c.issued_by, c.supersedes, "
    "(SELECT max(newer.number) FROM certificate AS newer WHERE newer.supersedes = c.number), "
    "(SELECT count(*) FROM certificate_withdrawal AS w WHERE w.number = c.number), c.series";

constexpr char kSerial[] = "casting_serial";

/// The months between two that have a certificate, each found in one step of an index. Times
/// order nothing by themselves, as a clock can be wrong, so the numbers of every month are looked
/// at. Takes the first month and twice the last one.
constexpr char kMonths[] =
    "WITH RECURSIVE month (name) AS ("
    "SELECT min(substr(issued_at, 1, 7)) FROM certificate WHERE substr(issued_at, 1, 7) >= ? "
    "UNION ALL SELECT (SELECT min(substr(issued_at, 1, 7)) FROM certificate "
    "WHERE substr(issued_at, 1, 7) > name) FROM month WHERE name < ?) "
    "SELECT coalesce(%1((SELECT %1(number) FROM certificate "
    "WHERE substr(issued_at, 1, 7) = name)), 0) AS bound FROM month WHERE name <= ?";

std::string monthsWith(const char* least) {
    return QString::fromLatin1(kMonths).arg(QString::fromLatin1(least)).toStdString();
}

Result<void> checkDates(const CertificateSearch& search) {
    for (const auto& date : {search.from, search.to})
        if (date && !isDate(*date))
            return inputError("", "is not a date such as 2026-11-25: %1", {*date});
    if (search.from && search.to && *search.to < *search.from)
        return inputError("", "no day is both from %1 and to %2; put the earlier date first",
                          {*search.from, *search.to});
    return {};
}

/// Between words: blanks, control characters, and what is no character at all.
bool separates(QChar c) {
    return c.isSpace() || c.category() == QChar::Other_Control || c == QChar(0xFEFF) ||
           c >= QChar(0xFFFE);
}

struct TypedWords {
    std::vector<std::string> words;
    bool lastBegins = false;
};

Result<TypedWords> wordsOf(const std::string& typed) {
    if (typed.size() > kLongestWords)
        return inputError("", "the words to find have %1 bytes; give at most %2",
                          {std::to_string(typed.size()), std::to_string(kLongestWords)});
    // Qt drops a byte-order mark from the start.
    QByteArrayView bytes(typed.data(), static_cast<qsizetype>(typed.size()));
    if (typed.starts_with("\xef\xbb\xbf")) bytes = bytes.sliced(3);
    const QString converted = QString::fromUtf8(bytes);
    if (converted.toUtf8() != bytes) return inputError("", "the words to find are not UTF-8");
    TypedWords result;
    QString word;
    const auto end = [&] {
        if (!word.isEmpty()) result.words.push_back(word.toStdString());
        word.clear();
    };
    for (const QChar c : converted.normalized(QString::NormalizationForm_C)) {
        if (separates(c))
            end();
        else
            word += c;
    }
    result.lastBegins = !word.isEmpty();
    end();
    if (result.words.size() > kMostWords)
        return inputError("", "%1 words are too many to find at once; give at most %2",
                          {std::to_string(result.words.size()), std::to_string(kMostWords)});
    return result;
}

/// A statement that grows, with its values in the order of their "?".
class Growing {
public:
    explicit Growing(std::string sql) { statement_.sql = std::move(sql); }
    Growing& add(const std::string& sql,
                 std::initializer_list<SqlStatement::Values::value_type> values = {}) {
        statement_.sql += sql;
        statement_.values.insert(statement_.values.end(), values);
        return *this;
    }
    SearchStatement take() { return std::move(statement_); }

private:
    SearchStatement statement_;
};

using Stated = std::vector<std::pair<std::string, std::string>>;

Stated statedIn(const CertificateSearch& search) {
    Stated stated;
    const auto require = [&](const char* column, const std::optional<std::string>& value) {
        if (value) stated.emplace_back(column, *value);
    };
    require(kSerial, search.serial);
    require("heat", search.heat);
    require("part_number", search.part);
    require("order_number", search.order);
    require("customer", search.customer);
    if (search.verdict) stated.emplace_back("verdict", word(*search.verdict));
    return stated;
}

/// Bounds the numbers to look through: by the page, and by the dates roughly.
void addBounds(Growing& statement, const std::string& number, const CertificateSearch& search) {
    const std::int64_t before = search.before.value_or(std::numeric_limits<std::int64_t>::max());
    if (!search.from && !search.to) {
        statement.add(" AND " + number + " < ?", {before});
        return;
    }
    const std::string first = search.from.value_or("0000").substr(0, 7);
    const std::string last = search.to.value_or("9999-12").substr(0, 7);
    // One upper bound: the index of words starts from one.
    statement.add(" AND " + number + " >= (" + monthsWith("min") + ")", {first, last, last})
        .add(" AND " + number + " <= (SELECT CASE WHEN bound < ? THEN bound ELSE ? END FROM (",
             {before, before - 1})
        .add(monthsWith("max") + ") AS highest)", {first, last, last});
    if (search.from) statement.add(" AND c.issued_at >= ?", {*search.from});
    if (search.to) statement.add(" AND c.issued_at <= ?", {*search.to + "T23:59:59Z"});
}

Result<FoundCertificate> foundIn(const Connection& connection, const SqlStatement& row) {
    FoundCertificate found;
    found.number = row.whole(0);
    found.serial = row.text(1);
    found.heat = row.text(2);
    found.part = row.text(3);
    found.order = row.text(4);
    found.customer = row.text(5);
    found.customerOrder = row.text(6);
    found.type = row.text(7);
    const auto verdict = known(connection, verdictFrom(row.text(8)),
                               "certificate " + std::to_string(found.number), row.text(8));
    if (!verdict) return verdict.error();
    found.verdict = *verdict;
    found.issuedAt = row.text(9);
    found.issuedBy = row.text(10);
    found.supersedes = row.wholeOrNone(11);
    found.supersededBy = row.wholeOrNone(12);
    found.series = row.text(14);
    if (row.whole(13) != 0)
        found.state = CertificateState::Withdrawn;
    else if (found.supersededBy)
        found.state = CertificateState::Superseded;
    return found;
}

}  // namespace

Result<SearchStatement> searchStatement(const CertificateSearch& search) {
    assert(search.pageSize >= 1);
    if (auto checked = checkDates(search); !checked) return checked.error();
    const auto typed = wordsOf(search.words);
    if (!typed) return typed.error();
    const Stated stated = statedIn(search);
    // One thing stated has an index of its own; the rarer one of several is found by the words.
    std::optional<dialect::WordSearch> byWords;
    if (!typed->words.empty() || stated.size() > 1)
        byWords = dialect::wordSearch({typed->words, typed->lastBegins, stated});
    const std::string number = byWords ? byWords->number : "c.number";
    Growing statement(std::string("SELECT ") + kColumns + " FROM " +
                      (byWords ? byWords->from : "certificate AS c"));
    if (byWords)
        statement.add(" WHERE " + byWords->condition, {byWords->value});
    else
        statement.add(" WHERE c.number >= 1");
    addBounds(statement, number, search);
    for (const auto& [column, value] : stated) {
        if (column == kSerial)
            statement.add(
                " AND c.number IN (SELECT number FROM certificate WHERE casting_serial = ? "
                "UNION SELECT certificate FROM certificate_serial WHERE serial = ?)",
                {value, value});
        else
            statement.add(" AND c." + column + " = ?", {value});
    }
    statement.add(" ORDER BY " + number + " DESC LIMIT ?", {std::int64_t{search.pageSize} + 1});
    return statement.take();
}

Result<CertificatePage> findCertificates(const Archive& archive, const CertificateSearch& search) {
    const auto built = searchStatement(search);
    if (!built) return built.error();
    const Connection& connection = ArchiveAccess::connection(archive);
    SqlStatement statement(connection, built->sql);
    if (auto done = statement.runWith(built->values); !done) return done.error();
    CertificatePage page;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        auto found = foundIn(connection, row);
        if (!found) return found.error();
        page.certificates.push_back(std::move(*found));
        return {};
    });
    if (!read) return read.error();
    if (page.certificates.size() > static_cast<std::size_t>(search.pageSize)) {
        page.certificates.pop_back();
        page.next = page.certificates.back().number;
    }
    return page;
}

Result<void> rebuildSearchIndex(Archive& archive, const Actor& actor) {
    return ArchiveAccess::write(archive, actor, [](WriteTransaction& transaction) -> Result<void> {
        if (auto done = dialect::rebuildWords(transaction.connection()); !done) return done;
        return transaction.record(action::kSearchIndexRebuilt, "", {});
    });
}

}  // namespace model
