// SPDX-License-Identifier: Apache-2.0
#include "register_commands.h"

#include <optional>

#include "columns.h"
#include "exchange/json_document.h"
#include "exchange/json_text.h"
#include "importing/import_register.h"
#include "importing/list_register.h"
#include "qt_core.h"
#include "signing_in.h"
#include "streams.h"
#include "whole_file.h"

namespace app {
namespace {

using model::JsonValue;
using model::Result;

constexpr Option kRegisterOption{"--register", "NAME", "such as equipment; see --help", true};
constexpr Option kChangeOption{"--change", "",
                               "entries that are there already get their next version"};
constexpr Option kDryRunOption{"--dry-run", "", "lists every problem; writes nothing"};
// Not needed in a dry run of what nobody signs.
constexpr Option kSaver{"--person", "ID", "who saves, or signs"};
constexpr Option kSaversPassphrase{"--passphrase", "FILE",
                                   "file with that person's passphrase; - for standard input"};

std::string registersText() {
    std::string text = "Registers:\n";
    for (const std::string& name : model::registerNames()) {
        text += "  " + name;
        std::string roles;
        for (const model::Role role : signersOfRegister(name))
            roles += (roles.empty() ? "" : " or ") + std::string(word(role));
        text += roles.empty() ? "\n" : ", signed by " + roles + "\n";
    }
    return text;
}

JsonValue numberOrNull(std::size_t number) {
    return number == 0 ? JsonValue() : JsonValue::count(static_cast<std::int64_t>(number));
}

JsonValue count(std::size_t number) {
    return JsonValue::count(static_cast<std::int64_t>(number));
}

std::string reasonOf(const model::ImportProblem& problem) {
    return problem.error.message();
}

std::string jsonOf(const ImportReport& report, const Import& import) {
    return model::writeJson(JsonValue::object(
        {{"format", JsonValue::string("fettlemark-import/1")},
         {"register", JsonValue::string(import.registerName)},
         {"dry_run", JsonValue::boolean(import.dryRun)},
         {"stored", JsonValue::boolean(!import.dryRun && report.problems.empty())},
         {"rows", count(report.rows)},
         {"added", count(report.added)},
         {"changed", count(report.changed)},
         {"unchanged", count(report.unchanged)},
         {"problems", JsonValue::arrayOf(report.problems, [](const model::ImportProblem& problem) {
              return JsonValue::object(
                  {{"row", numberOrNull(problem.row)},
                   {"line", numberOrNull(problem.line)},
                   {"column",
                    problem.column.empty() ? JsonValue() : JsonValue::string(problem.column)},
                   {"reason", JsonValue::string(reasonOf(problem))}});
          })}}));
}

std::string textOf(const ImportReport& report, const Import& import) {
    std::string text;
    for (const model::ImportProblem& problem : report.problems)
        text += lineOf({"problem", problem.row == 0 ? "" : std::to_string(problem.row),
                        problem.line == 0 ? "" : std::to_string(problem.line), problem.column,
                        reasonOf(problem)});
    if (!report.problems.empty()) return text;
    return std::string(import.dryRun ? "would store" : "stored") + " of " +
           std::to_string(report.rows) + " rows: " + std::to_string(report.added) + " added, " +
           std::to_string(report.changed) + " changed, " + std::to_string(report.unchanged) +
           " unchanged\n";
}

/// Takes a table that was read from `file`.
Result<Outcome> take(const Arguments& arguments, model::CsvTable table, const Import& import,
                     const std::string& file) {
    const bool isSigned = !signersOfRegister(import.registerName).empty();
    const bool named = arguments.has("--person") && arguments.has("--passphrase");
    if (!named && (isSigned || !import.dryRun))
        return model::inputError("fettlemark-cli",
                                 isSigned ? "the register of %1 takes signed entries: --person and "
                                            "--passphrase are missing"
                                          : "saving in the register of %1 needs --person and "
                                            "--passphrase",
                                 {import.registerName});
    const QtCore qt;
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    std::optional<model::SignedIn> person;
    if (named) {
        auto signedIn = signedInFrom(*archive, arguments);
        if (!signedIn) return signedIn.error();
        person = std::move(*signedIn);
    }
    const Importer importer{person ? &*person : nullptr,
                            person ? person->actor() : model::Actor{"dry run"}};
    const auto report = importRegister(*archive, std::move(table), import, importer);
    if (!report) return report.error();
    if (!report->problems.empty())
        writeErrorLine(file + ": " + std::to_string(report->problems.size()) +
                       (report->problems.size() == 1 ? " problem" : " problems") +
                       "; nothing was written");
    return Outcome{report->problems.empty() ? ExitCode::Done : ExitCode::WrongInput,
                   arguments.has("--json") || arguments.value("--csv") == nullptr
                       ? jsonOf(*report, import)
                       : textOf(*report, import)};
}

Result<Import> importFrom(const Arguments& arguments) {
    Import import;
    import.registerName = *arguments.value("--register");
    import.change = arguments.has("--change");
    import.dryRun = arguments.has("--dry-run");
    if (const auto fields = fieldsOfRegister(import.registerName); !fields) {
        model::Error error = fields.error();
        error.place = "--register";
        return error;
    }
    return import;
}

Result<Outcome> importFile(const Arguments& arguments) {
    const auto import = importFrom(arguments);
    if (!import) return import.error();
    const std::string& file = *arguments.value("--csv");
    const auto bytes = readWholeFile(file, model::kLargestCsv);
    if (!bytes) return bytes.error();
    auto table = model::readCsv(*bytes, file);
    if (!table) return table.error();
    return take(arguments, std::move(*table), *import, file);
}

Result<Outcome> enter(const Arguments& arguments) {
    auto import = importFrom(arguments);
    if (!import) return import.error();
    import->most = 1;
    const std::string& file = *arguments.value("--json");
    if (file == "-" && arguments.has("--passphrase") && *arguments.value("--passphrase") == "-")
        return model::inputError("fettlemark-cli enter",
                                 "only one of --json and --passphrase can be standard input");
    const auto document = model::readJson(file);
    if (!document) return document.error();
    const std::string name = model::documentName(file);
    auto table = model::entryFromJson(*document, name, import->registerName);
    if (!table) return table.error();
    return take(arguments, std::move(*table), *import, name);
}

JsonValue rowToJson(const std::vector<model::FieldInfo>& fields,
                    const std::vector<std::string>& texts) {
    JsonValue::Members members;
    for (std::size_t i = 0; i < fields.size(); ++i)
        if (!texts[i].empty())
            members.push_back({std::string(fields[i].key), JsonValue::string(texts[i])});
    return JsonValue::object(std::move(members));
}

Result<Outcome> listEntries(const Arguments& arguments) {
    const std::string& name = *arguments.value("--register");
    const auto fields = fieldsOfRegister(name);
    if (!fields) {
        model::Error error = fields.error();
        error.place = "--register";
        return error;
    }
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    std::optional<std::string> casting;
    if (const std::string* serial = arguments.value("--casting")) casting = *serial;
    const auto entries = listRegister(*archive, name, casting);
    if (!entries) return entries.error();
    Outcome outcome;
    if (arguments.has("--json")) {
        outcome.text = model::writeJson(JsonValue::object(
            {{"format", JsonValue::string("fettlemark-entries/1")},
             {"register", JsonValue::string(name)},
             {"entries", JsonValue::arrayOf(*entries, [&](const ListedEntry& entry) {
                  return JsonValue::object(
                      {{"key", JsonValue::string(entry.key)},
                       {"version", JsonValue::count(entry.version)},
                       {"rows", JsonValue::arrayOf(entry.rows, [&](const auto& row) {
                            return rowToJson(*fields, row);
                        })}});
              })}}));
        return outcome;
    }
    if (arguments.has("--csv")) {
        std::vector<std::string> names;
        for (const model::FieldInfo& field : *fields) names.emplace_back(field.key);
        outcome.text = model::csvLine(names);
        for (const ListedEntry& entry : *entries)
            for (const auto& row : entry.rows) outcome.text += model::csvLine(row);
        return outcome;
    }
    for (const ListedEntry& entry : *entries)
        for (std::vector<std::string> row : entry.rows) {
            row.insert(row.begin(), std::to_string(entry.version));
            outcome.text += lineOf(row);
        }
    if (outcome.text.empty()) outcome.text = "no entries\n";
    return outcome;
}

}  // namespace

Command importCommand() {
    return {
        .name = "import",
        .operand = "",
        .summary = "takes a register's entries from CSV",
        .details =
            "Reads CSV (RFC 4180) in UTF-8; semicolons part the fields where the first line has\n"
            "them. The first line names the columns by the keys of the register's fields; schema\n"
            "prints them. An order takes a row for each ordered test or witness point, a zone "
            "plan\n"
            "a row for each test of a zone: what belongs to the whole stands on the first row and\n"
            "is empty, or the same, on the others.\n"
            "\n"
            "All of it is stored or nothing. Every problem is listed on standard output, columns\n"
            "between tabs: \"problem\", row, line of the file, column, reason; the exit code is 2\n"
            "then. --dry-run does the same without writing anything. An entry that is there\n"
            "already is left alone where it is the same, and else a problem unless --change is\n"
            "given; what no column has stays as it is. --json prints fettlemark-import/1.\n"
            "\n" +
            registersText(),
        .options = {kDatabaseOption,
                    kRegisterOption,
                    {"--csv", "FILE", "the table", true},
                    kDryRunOption,
                    kChangeOption,
                    {"--json", "", "prints JSON"},
                    kSaver,
                    kSaversPassphrase},
        .run = &importFile};
}

Command enterCommand() {
    return {.name = "enter",
            .operand = "",
            .summary = "takes one entry of a register from JSON",
            .details =
                "Reads fettlemark-entry/1: format, register, and rows, each an object with the\n"
                "texts of its fields by key. Most entries take one row; see import. \"-\" as FILE\n"
                "reads standard input. Prints fettlemark-import/1; where it lists a problem, the\n"
                "exit code is 2 and nothing was written.\n"
                "\n" +
                registersText(),
            .options = {kDatabaseOption,
                        kRegisterOption,
                        {"--json", "FILE", "the entry", true},
                        kDryRunOption,
                        kChangeOption,
                        kSaver,
                        kSaversPassphrase},
            .run = &enter};
}

Command entriesCommand() {
    return {.name = "entries",
            .operand = "",
            .summary = "lists the entries of a register",
            .details =
                "One line for each row of an entry, columns between tabs: the version, and the\n"
                "fields in their order. A column without content holds \"-\". --csv prints what\n"
                "import takes, --json prints fettlemark-entries/1.\n"
                "\n" +
                registersText(),
            .options = {kDatabaseOption,
                        kRegisterOption,
                        {"--casting", "S", "only what belongs to this serial number"},
                        {"--csv", "", "prints CSV"},
                        {"--json", "", "prints JSON"}},
            .run = &listEntries};
}

}  // namespace app
