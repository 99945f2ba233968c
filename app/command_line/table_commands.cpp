// SPDX-License-Identifier: Apache-2.0
#include "table_commands.h"

#include <map>
#include <optional>

#include "archive/attestation.h"
#include "columns.h"
#include "limits/cell_lines.h"
#include "limits/words.h"
#include "qt_core.h"
#include "signing_in.h"

namespace app {
namespace {

using model::Result;

struct Tables {
    model::TableSet set;
    std::map<std::string, model::Attestation> attested;  ///< by the table's SHA-256
};

Result<Tables> tablesFrom(const std::string* file) {
    Tables tables;
    if (!file) {
        auto shipped = model::TableSet::shipped();
        if (!shipped) return shipped.error();
        tables.set = std::move(*shipped);
        return tables;
    }
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*file);
    if (!archive) return archive.error();
    auto set = archive->tables();
    if (!set) return set.error();
    tables.set = std::move(*set);
    const auto all = model::attestations(*archive);
    if (!all) return all.error();
    for (const model::Attestation& one : *all) tables.attested.emplace(one.tableDigest, one);
    return tables;
}

std::string statusOf(const Tables& tables, const model::LimitTable& table) {
    const auto found = tables.attested.find(table.digest);
    if (found == tables.attested.end()) return "not attested";
    return "attested by " + found->second.act.name + " at " + found->second.act.time + ": " +
           found->second.companyCopy;
}

std::string headLine(const Tables& tables, const model::LimitTable& table) {
    return lineOf({table.id, std::to_string(table.revision), std::string(word(table.method)),
                   table.digest, statusOf(tables, table)});
}

std::string cellsOf(const Tables& tables, const model::LimitTable& table) {
    std::string text = headLine(tables, table);
    for (const std::string& remark : table.remarks) text += lineOf({"remark", remark});
    for (const model::CellLine& line : model::cellsOf(table))
        text += lineOf({line.what, line.key, line.level, line.band, line.value, line.locator,
                        line.grade ? std::string(word(*line.grade)) : ""});
    return text;
}

Result<Outcome> listTables(const Arguments& arguments) {
    const auto tables = tablesFrom(arguments.value("--db"));
    if (!tables) return tables.error();
    Outcome outcome;
    if (const std::string* id = arguments.value("--cells")) {
        const model::LimitTable* table = tables->set.find(*id);
        if (!table) return model::inputError("--cells", "there is no limit table \"%1\"", {*id});
        outcome.text = cellsOf(*tables, *table);
        return outcome;
    }
    for (const model::LimitTable* table : tables->set.all())
        outcome.text += headLine(*tables, *table);
    return outcome;
}

Result<Outcome> attestTable(const Arguments& arguments) {
    const QtCore qt;
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto qaManager = signedInFrom(*archive, arguments);
    if (!qaManager) return qaManager.error();
    const std::string& digest = *arguments.value("--digest");
    if (auto done = model::attest(*archive, digest, *arguments.value("--copy"), *qaManager); !done)
        return done.error();
    return Outcome{ExitCode::Done, "attested " + digest + "\n"};
}

}  // namespace

Command tablesCommand() {
    return {
        .name = "tables",
        .operand = "",
        .summary = "lists limit tables, or every cell of one",
        .details =
            "One line each, columns between tabs: id, revision, method, SHA-256, attestation.\n"
            "With --cells, that line for one table, its remarks, and then one line for each\n"
            "definition, threshold and limit: what, level key, level, band of thickness in mm,\n"
            "value, place in the standard, grade (R read, R2 read in two places, P partly\n"
            "read, M from memory). A column without content holds \"-\"; an unknown value has\n"
            "no grade.\n",
        .options = {{"--db", "FILE", "adds an archive's tables and attestations"},
                    {"--cells", "ID", "the table whose cells to show"}},
        .run = &listTables};
}

Command attestCommand() {
    return {.name = "attest",
            .operand = "",
            .summary = "states that a limit table agrees with the company's copy",
            .details =
                "Signed by a QA manager, who has compared every cell that tables --cells shows\n"
                "with the company's copy of the standard. Nothing is released by a limit table\n"
                "that nobody attested.\n",
            .options = {kDatabaseOption,
                        {"--digest", "SHA256", "of the table, as tables --cells shows it", true},
                        {"--copy", "TEXT", "the company's copy, such as its number", true},
                        kPersonOption,
                        kPassphraseOption},
            .run = &attestTable};
}

}  // namespace app
