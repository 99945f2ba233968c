// SPDX-License-Identifier: Apache-2.0
#include "judge_again.h"

#include "archive/archive.h"
#include "check_text.h"
#include "columns.h"
#include "exchange/json_document.h"
#include "exchange/json_text.h"
#include "exchange/sheet_json.h"
#include "exchange/what_if_json.h"
#include "judge/judge_again.h"
#include "judge/sheet_words.h"
#include "judge_sheet.h"
#include "limits/words.h"
#include "qt_core.h"

namespace app {
namespace {

using model::Result;

/// What is judged again, and what errors in it are called.
struct Given {
    model::Sheet sheet;
    model::TableSet tables;
    std::string name;
};

Result<Given> givenSheet(const Arguments& arguments) {
    auto tables = tablesFor(arguments);
    if (!tables) return tables.error();
    const auto document = model::readJson(arguments.operand());
    if (!document) return document.error();
    const std::string name = model::documentName(arguments.operand());
    auto sheet = model::sheetFromJson(*document, name);
    if (!sheet) return sheet.error();
    return Given{std::move(*sheet), std::move(*tables), name};
}

Result<Given> givenCasting(const Arguments& arguments, const std::string& serial) {
    auto tables = tablesFor(arguments);
    if (!tables) return tables.error();
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto file = archive->casting(serial);
    if (!file) return file.error();
    auto sheet = model::sheetOf(*file);
    if (!sheet) return sheet.error();
    return Given{std::move(*sheet), std::move(*tables), "casting " + serial};
}

Result<Given> givenBy(const Arguments& arguments) {
    const std::string* serial = arguments.value("--serial");
    if (arguments.operand().empty() == (serial == nullptr))
        return model::inputError("fettlemark-cli judge-again",
                                 "takes either a sheet, or --db and --serial");
    if (!serial) return givenSheet(arguments);
    if (!arguments.has("--db"))
        return model::inputError("fettlemark-cli judge-again", "--serial needs --db");
    return givenCasting(arguments, *serial);
}

Result<model::OtherCriteria> criteriaFrom(const Arguments& arguments) {
    model::OtherCriteria other;
    if (const std::string* zone = arguments.value("--zone")) other.zone = *zone;
    if (const std::string* table = arguments.value("--table")) other.table = *table;
    if (const std::string* list = arguments.value("--level")) {
        auto levels = model::levelsFrom(*list);
        if (!levels)
            return model::inputError("--level", "takes KEY=LEVEL parted by commas, not: %1",
                                     {*list});
        other.levels = std::move(*levels);
    }
    return other;
}

std::string criteriaText(const model::ExaminationVerdict& verdict) {
    return verdict.tableId + ": " + model::levelsText(verdict.levels);
}

std::string textOf(const model::JudgedAgain& again) {
    std::string text = "what-if: " + std::string(model::kWhatIfWarning) + "\n";
    for (std::size_t i = 0; i < again.whatIf.examinations.size(); ++i) {
        const model::ExaminationVerdict& ordered = again.ordered.examinations[i];
        const model::ExaminationVerdict& whatIf = again.whatIf.examinations[i];
        if (whatIf.superseded) continue;
        text += lineOf({"what-if", whatIf.zone, std::string(word(whatIf.method)),
                        std::string(word(whatIf.stage)), criteriaText(ordered),
                        std::string(word(ordered.word)), criteriaText(whatIf),
                        std::string(word(whatIf.word)), decidingText(whatIf)});
    }
    return text + lineOf({"what-if", "result", "", "", "", std::string(word(again.ordered.word)),
                          "", std::string(word(again.whatIf.word)), ""});
}

Result<Outcome> judgeAgain(const Arguments& arguments) {
    const auto other = criteriaFrom(arguments);
    if (!other) return other.error();
    const auto given = givenBy(arguments);
    if (!given) return given.error();
    const auto again = model::judgedAgain(given->sheet, given->tables, *other);
    if (!again) {
        model::Error error = again.error();
        error.place = error.place.empty() ? given->name : given->name + ": " + error.place;
        return error;
    }
    return Outcome{exitCodeOf(again->whatIf, arguments.has("--unattested")),
                   arguments.has("--json") ? model::writeJson(model::whatIfToJson(*again, *other))
                                           : textOf(*again)};
}

}  // namespace

Command judgeAgainCommand() {
    return {
        .name = "judge-again",
        .operand = "SHEET.json",
        .operandOptional = true,
        .summary = "judges by another level or table than ordered: a what-if",
        .details =
            "For a quotation, or for asking for a concession. Judges a sheet "
            "(fettlemark-sheet/1),\n"
            "or the examinations of an archive's casting, as ordered and with another table or\n"
            "level. What it prints is marked as a what-if in every line; it is no verdict on the\n"
            "casting and is never stored. Another table takes the place of those of its method; "
            "of\n"
            "the levels ordered those stay that it knows, and what has no level then is not\n"
            "judged. What else the order or the zone plan requires is not looked at.\n"
            "\n"
            "One line for each examination that counts, columns between tabs: \"what-if\", zone,\n"
            "method, stage, criteria and verdict as ordered, criteria and verdict otherwise, what\n"
            "decided; and a line for the result. --json prints fettlemark-what-if/1.\n"
            "\n"
            "The exit code is that of judge, for the what-if.\n",
        .options = {{"--table", "ID", "the table that is supposed to have been ordered"},
                    {"--level", "KEY=LEVEL", "or several, parted by commas"},
                    {"--zone", "ZONE", "changes only this zone"},
                    {"--db", "FILE", "the archive of the casting, or with more tables"},
                    {"--serial", "S", "the casting's serial number, in place of a sheet"},
                    {"--tables", "DIR", "adds every *.table of a folder"},
                    {"--unattested", "", "gives 0 for an acceptable what-if, whoever attested"},
                    {"--json", "", "prints JSON"}},
        .run = &judgeAgain};
}

}  // namespace app
