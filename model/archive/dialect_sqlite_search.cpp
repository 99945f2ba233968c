// SPDX-License-Identifier: Apache-2.0
#include <QString>

#include "archive/dialect_search.h"

namespace model::dialect {
namespace {

/// All columns of the index but the verdict, which is no word to look for.
constexpr char kSearchedColumns[] =
    "{casting_serial heat part_number order_number customer customer_reference certificate_type "
    "series}";

/// What is longer is left to the comparison with the row.
constexpr std::size_t kLongestStated = 200;

/// A string of the query language, within which only the quotation mark means anything.
std::string quoted(const std::string& text) {
    std::string result = "\"";
    for (const char c : text) {
        if (c == '"') result += '"';
        result += c;
    }
    return result + "\"";
}

/// Whether the index's tokenizer, which knows Unicode 6.1, finds anything in it.
bool hasToken(const std::string& text) {
    for (const QChar c : QString::fromStdString(text))
        if (c.isLetterOrNumber() && c.unicodeVersion() <= QChar::Unicode_6_1) return true;
    return false;
}

Result<bool> copyAgrees(const Connection& connection) {
    SqlStatement original(connection,
                          "SELECT sql FROM main.sqlite_schema WHERE name = 'certificate_words'");
    const auto row = original.first();
    if (!row) return row.error();
    const QString start = QStringLiteral("CREATE VIRTUAL TABLE ");
    QString made = *row ? QString::fromStdString(original.text(0)) : QString();
    if (!made.startsWith(start)) return false;
    made.insert(start.size(), QStringLiteral("temp."));
    for (const QString& statement :
         {QStringLiteral("CREATE TEMP VIEW certificate AS SELECT * FROM main.certificate"), made})
        if (auto done = connection.execute(statement); !done) return done.error();
    for (const char* part : {"data", "idx", "docsize", "config"})
        for (const char* statement :
             {"DELETE FROM temp.certificate_words_%1",
              "INSERT INTO temp.certificate_words_%1 SELECT * FROM main.certificate_words_%1"})
            if (auto done = connection.execute(QString::fromLatin1(statement).arg(part)); !done)
                return done.error();
    const auto checked = connection.execute(
        "INSERT INTO temp.certificate_words (certificate_words, rank) "
        "VALUES ('integrity-check', 1)");
    if (!checked && checked.error().kind != ErrorKind::Damaged) return checked.error();
    return checked.ok();
}

}  // namespace

std::optional<WordSearch> wordSearch(const SearchedWords& searched) {
    // Strings one behind the other must all be there, and one without a letter or digit asks for
    // nothing; alone it finds nothing.
    std::string words;
    for (const std::string& word : searched.words) words += quoted(word) + " ";
    if (!words.empty() && searched.lastBegins) words += "*";
    std::string stated;
    for (const auto& [column, text] : searched.stated)
        if (text.size() <= kLongestStated && hasToken(text))
            stated +=
                (column == "casting_serial" ? "{casting_serial series} : " : column + " : ^ ") +
                quoted(text) + " ";
    if (words.empty() && stated.empty()) return std::nullopt;
    WordSearch search;
    // CROSS JOIN keeps the order: words first, which come by number from the highest down.
    search.from =
        "certificate_words CROSS JOIN certificate AS c ON c.number = "
        "certificate_words.rowid";
    search.number = "certificate_words.rowid";
    search.condition = "certificate_words MATCH ?";
    if (!words.empty()) search.value = std::string(kSearchedColumns) + " : (" + words + ")";
    if (!words.empty() && !stated.empty()) search.value += " AND ";
    if (!stated.empty()) search.value += "(" + stated + ")";
    return search;
}

Result<bool> wordsAgree(const Connection& connection) {
    // The check of FTS5 takes the right to write and would keep others from writing, so it is made
    // on a copy of the index among the connection's temporary tables, which goes with its
    // savepoint. There the index finds its certificates through a view.
    const auto writesNothing = [&]() -> Result<bool> {
        SqlStatement statement(connection, "PRAGMA query_only");
        const auto row = statement.first();
        if (!row) return row.error();
        return *row && statement.whole(0) != 0;
    }();
    if (!writesNothing) return writesNothing.error();
    if (*writesNothing)
        if (auto done = connection.execute("PRAGMA query_only = OFF"); !done) return done.error();
    Result<bool> agree = false;
    if (auto done = connection.execute("SAVEPOINT words_agree"); !done)
        agree = done.error();
    else
        agree = copyAgrees(connection);
    std::vector<const char*> ending{"ROLLBACK TO words_agree", "RELEASE words_agree"};
    if (*writesNothing) ending.push_back("PRAGMA query_only = ON");
    for (const char* statement : ending)
        if (auto done = connection.execute(statement); !done && agree) agree = done.error();
    return agree;
}

Result<void> rebuildWords(const Connection& connection) {
    return connection.execute(
        "INSERT INTO certificate_words (certificate_words) VALUES ('rebuild')");
}

}  // namespace model::dialect
