// SPDX-License-Identifier: Apache-2.0
#include "archive/rejudge.h"

#include "archive/archive_access.h"
#include "archive/presentation_store.h"
#include "archive/stored_words.h"
#include "archive/table_store.h"
#include "exchange/json_document.h"
#include "exchange/json_text.h"
#include "exchange/sheet_json.h"
#include "exchange/verdict_json.h"
#include "judge/judge.h"
#include "judge/sheet_words.h"
#include "limits/parser.h"

namespace model {
namespace {

/// Those of then alone, attested as they were then.
Result<TableSet> tablesOf(const Connection& connection, const Basis& basis) {
    TableSet tables;
    for (const auto& [digest, attested] : basis.tables) {
        const auto stored = loadLimitTable(connection, digest);
        if (!stored) return stored.error();
        auto table = parseTable(stored->text, stored->name);
        if (!table) return table.error();
        if (auto added = tables.add(std::move(*table)); !added) return added.error();
        if (attested) tables.setAttested(digest);
    }
    return tables;
}

/// The verdict as it comes out today.
Result<Verdict> judgedToday(const Connection& connection, const StoredPresentation& presentation) {
    const std::string name = "certificate " + std::to_string(presentation.shown.number);
    const auto text = loadPresentedText(connection, presentation.shown.number, "sheet");
    if (!text) return text.error();
    const auto document = parseJson(*text, name);
    if (!document) return document.error();
    const auto sheet = sheetFromJson(*document, name);
    if (!sheet) return sheet.error();
    const auto tables = tablesOf(connection, presentation.basis);
    if (!tables) return tables.error();
    return judge(*sheet, *tables);
}

/// The member "verdict" of a verdict's document, which this program wrote.
std::string wordIn(const std::string& document) {
    constexpr std::string_view kBefore = "\"verdict\": \"";
    const auto from = document.find(kBefore);
    if (from == std::string::npos) return "";
    const auto begin = from + kBefore.size();
    return document.substr(begin, document.find('"', begin) - begin);
}

/// Empty where nothing differs.
Result<std::string> differenceIn(const Connection& connection,
                                 const StoredPresentation& presentation) {
    const auto recorded = loadPresentedText(connection, presentation.shown.number, "verdict");
    if (!recorded) return recorded.error();
    const auto today = judgedToday(connection, presentation);
    if (!today && today.error().kind == ErrorKind::Refused) return today.error();
    if (!today) return "cannot be judged today: " + today.error().message();
    if (writeJson(verdictToJson(*today)) == *recorded) return std::string();
    const std::string then = wordIn(*recorded);
    const std::string now(word(today->word));
    if (then != now) return "was " + then + ", is " + now + " today";
    return "is " + now + " as it was, but by other checks or measured values";
}

Result<std::vector<std::int64_t>> allNumbers(const Connection& connection) {
    SqlStatement statement(connection, "SELECT number FROM presentation ORDER BY number");
    if (auto done = statement.run(); !done) return done.error();
    std::vector<std::int64_t> numbers;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        numbers.push_back(row.whole(0));
        return {};
    });
    if (!read) return read.error();
    return numbers;
}

}  // namespace

Result<Rejudged> rejudge(const Archive& archive, const std::optional<std::int64_t>& number,
                         const Progress& progress) {
    const Connection& connection = ArchiveAccess::connection(archive);
    std::vector<std::int64_t> numbers;
    if (number) {
        numbers.push_back(*number);
    } else {
        auto all = allNumbers(connection);
        if (!all) return all.error();
        numbers = std::move(*all);
    }
    Rejudged result;
    for (const std::int64_t each : numbers) {
        const auto presentation = loadPresentation(connection, each);
        if (!presentation) return presentation.error();
        const auto difference = differenceIn(connection, *presentation);
        if (!difference) return difference.error();
        if (!difference->empty())
            result.otherwise.push_back({each, presentation->shown.programVersion, *difference});
        ++result.count;
        if (progress && !progress(result.count, static_cast<std::int64_t>(numbers.size())))
            return refusal(connection.place(), "was not judged to the end: it was stopped");
    }
    return result;
}

}  // namespace model
