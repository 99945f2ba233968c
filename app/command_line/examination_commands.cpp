// SPDX-License-Identifier: Apache-2.0
#include "examination_commands.h"

#include <algorithm>

#include "archive/signed_record.h"
#include "columns.h"
#include "judge/sheet_words.h"
#include "limits/words.h"
#include "qt_core.h"
#include "signing_in.h"
#include "whole_number.h"

namespace app {
namespace {

using model::Result;

std::string stateText(const model::ExaminationState& state) {
    if (state.records.empty()) return "draft";
    const model::SignedRecord& last = state.records.back();
    if (last.givenBack)
        return "draft, given back by " + last.givenBack->name + ": " + last.givenBack->reason;
    std::string text = "record " + std::to_string(last.id) + " revision " +
                       std::to_string(last.revision) + " by " + last.recorded.name + " at " +
                       last.recorded.time;
    if (!last.recorded.reason.empty()) text += ", rejected: " + last.recorded.reason;
    if (last.invalid)
        text += ", declared invalid by " + last.invalid->name + ": " + last.invalid->reason;
    return text;
}

Result<Outcome> listExaminations(const Arguments& arguments) {
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    const std::string& serial = *arguments.value("--serial");
    const auto file = archive->casting(serial);
    if (!file) return file.error();
    const auto states = model::examinationStates(*archive, serial);
    if (!states) return states.error();
    Outcome outcome;
    for (const model::ExaminationDraft& draft : file->examinations) {
        const auto state =
            std::ranges::find(*states, draft.id, &model::ExaminationState::examination);
        if (state == states->end()) continue;
        const model::SignedRecord* record = state->standing();
        const model::Examination& header = draft.header;
        outcome.text +=
            lineOf({std::to_string(draft.id), std::to_string(draft.version), header.zone,
                    std::string(word(header.method)), std::string(word(header.stage)),
                    std::to_string(header.repairCycle), std::to_string(header.repeat),
                    record ? std::string(word(record->word)) : "", stateText(*state)});
    }
    if (outcome.text.empty()) outcome.text = "no examinations\n";
    return outcome;
}

Result<Outcome> signExamination(const Arguments& arguments) {
    const auto examination = wholeNumber(arguments, "--examination");
    if (!examination) return examination.error();
    const auto version = wholeNumber(arguments, "--version");
    if (!version) return version.error();
    const QtCore qt;
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto inspector = signedInFrom(*archive, arguments);
    if (!inspector) return inspector.error();
    std::optional<model::Rejection> rejection;
    if (const std::string* reason = arguments.value("--reject")) rejection = {*reason};
    const auto id = model::signRecord(*archive, *examination, *version, rejection, *inspector);
    if (!id) return id.error();
    const auto record = model::signedRecord(*archive, *id);
    if (!record) return record.error();
    return Outcome{ExitCode::Done,
                   lineOf({"record " + std::to_string(*id), std::string(word(record->word))})};
}

Result<Outcome> invalidate(const Arguments& arguments) {
    const auto record = wholeNumber(arguments, "--record");
    if (!record) return record.error();
    const QtCore qt;
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto level3 = signedInFrom(*archive, arguments);
    if (!level3) return level3.error();
    if (auto done =
            model::invalidateRecord(*archive, *record, *arguments.value("--reason"), *level3);
        !done)
        return done.error();
    return Outcome{ExitCode::Done, "declared record " + std::to_string(*record) + " invalid\n"};
}

}  // namespace

Command examinationsCommand() {
    return {
        .name = "examinations",
        .operand = "",
        .summary = "lists a casting's examinations, signed or not",
        .details =
            "One line each, columns between tabs: id, version, zone, method, stage, repair\n"
            "cycle, repeat, the record's verdict, state. A column without content holds \"-\".\n",
        .options = {kDatabaseOption, {"--serial", "S", "the casting's serial number", true}},
        .run = &listExaminations};
}

Command signCommand() {
    return {.name = "sign",
            .operand = "",
            .summary = "signs an examination as its inspector",
            .details =
                "The examination is judged, signed as it is stored, and never changed again.\n"
                "Prints the record's number and verdict. Whoever has Level 2 or 3 of the method\n"
                "may reject what the rules accept; nothing accepts what they do not.\n",
            .options = {kDatabaseOption,
                        {"--examination", "ID", "as examinations lists it", true},
                        {"--version", "N", "as examinations lists it: what is signed", true},
                        {"--reject", "REASON", "rejects it, whatever the rules say"},
                        kPersonOption,
                        kPassphraseOption},
            .run = &signExamination};
}

Command invalidateCommand() {
    return {.name = "invalidate",
            .operand = "",
            .summary = "states why an examination that was repeated is invalid",
            .details =
                "Signed by a Level 3 of the method. Of an examination and its repeat without\n"
                "repair between, the worse counts unless it was declared invalid; both are\n"
                "printed.\n",
            .options = {kDatabaseOption,
                        {"--record", "N", "as examinations lists it", true},
                        {"--reason", "TEXT", "why it is invalid", true},
                        kPersonOption,
                        kPassphraseOption},
            .run = &invalidate};
}

}  // namespace app
