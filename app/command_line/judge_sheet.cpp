// SPDX-License-Identifier: Apache-2.0
#include "judge_sheet.h"

#include <algorithm>

#include "archive/archive.h"
#include "exchange/json_document.h"
#include "exchange/json_text.h"
#include "exchange/sheet_json.h"
#include "exchange/verdict_json.h"
#include "judge/judge.h"
#include "qt_core.h"

namespace app {
namespace {

using model::Result;

Result<model::TableSet> archivedTables(const std::string& file) {
    const QtCore qt;
    const Result<model::Archive> archive = model::Archive::open(file);
    if (!archive) return archive.error();
    return archive->tables();
}

Result<Outcome> judgeSheet(const Arguments& arguments) {
    const Result<model::TableSet> tables = tablesFor(arguments);
    if (!tables) return tables.error();
    const Result<model::JsonValue> document = model::readJson(arguments.operand());
    if (!document) return document.error();
    const std::string name = model::documentName(arguments.operand());
    const Result<model::Sheet> sheet = model::sheetFromJson(*document, name);
    if (!sheet) return sheet.error();
    const Result<model::Verdict> verdict = model::judge(*sheet, *tables);
    if (!verdict) {
        model::Error error = verdict.error();
        error.place = error.place.empty() ? name : name + ": " + error.place;
        return error;
    }
    return Outcome{exitCodeOf(*verdict, arguments.has("--unattested")),
                   model::writeJson(model::verdictToJson(*verdict))};
}

}  // namespace

Result<model::TableSet> tablesFor(const Arguments& arguments) {
    const std::string* file = arguments.value("--db");
    Result<model::TableSet> tables =
        file == nullptr ? model::TableSet::shipped() : archivedTables(*file);
    if (!tables) return tables;
    if (const std::string* folder = arguments.value("--tables"))
        if (Result<void> added = tables->addFolder(*folder); !added) return added.error();
    return tables;
}

ExitCode exitCodeOf(const model::Verdict& verdict, bool unattestedToo) {
    switch (verdict.word) {
        case model::Word::NotAcceptable:
            return ExitCode::NotAcceptable;
        case model::Word::NotJudged:
            return ExitCode::NotJudged;
        case model::Word::Acceptable:
            break;
    }
    const bool attested =
        std::ranges::all_of(verdict.examinations, &model::ExaminationVerdict::attested);
    return attested || unattestedToo ? ExitCode::Done : ExitCode::NotJudged;
}

Command judgeCommand() {
    return {
        .name = "judge",
        .operand = "SHEET.json",
        .summary = "judges the examinations of one casting",
        .details =
            "Reads a sheet (fettlemark-sheet/1) and prints the verdict (fettlemark-verdict/1)\n"
            "with every rule that was checked. \"-\" as SHEET.json reads standard input.\n"
            "\n"
            "Limit tables come from the program, --db and --tables together; the highest\n"
            "revision of a table is taken. The word of the verdict does not depend on\n"
            "attestation, the exit code does: without an attestation of every limit table used,\n"
            "an acceptable sheet gives 3.\n",
        .options = {{"--tables", "DIR", "adds every *.table of a folder"},
                    {"--db", "FILE", "adds an archive's tables and attestations"},
                    {"--unattested", "", "gives 0 for an acceptable sheet, whoever attested"}},
        .run = &judgeSheet};
}

}  // namespace app
