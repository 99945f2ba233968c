// SPDX-License-Identifier: Apache-2.0
#include "work_out.h"

#include <algorithm>
#include <cmath>

#include "exchange/json_document.h"
#include "exchange/json_fields.h"
#include "exchange/json_text.h"
#include "ultrasonic/workings.h"

namespace app {
namespace {

using model::JsonValue;
using model::Result;
using model::Working;
using model::WorkingField;
using model::WorkingRange;

constexpr std::string_view kWorkingFormat = "fettlemark-working/1";
constexpr std::string_view kWorkedFormat = "fettlemark-worked/1";

/// What is asked, as typed.
struct Question {
    const Working* working = nullptr;
    model::WorkingEntry entry;
};

Result<Question> questionFrom(const JsonValue& document, const std::string& name) {
    model::JsonProblem problem(name);
    std::vector<std::string_view> allowed{"format", "kind"};
    Question question;
    if (document.type() == JsonValue::Type::Object) {
        const JsonValue* kind = document.find("kind");
        if (kind != nullptr && kind->type() == JsonValue::Type::String)
            question.working = model::findWorking(kind->string());
    }
    // Of an unknown kind nothing can be said about its fields.
    if (question.working != nullptr) {
        for (const WorkingField& field : question.working->fields) allowed.push_back(field.key);
    } else if (document.type() == JsonValue::Type::Object) {
        for (const auto& member : document.members()) allowed.push_back(member.name);
    }
    const model::JsonFields in(document, "", problem, allowed);
    if (const std::string format = in.text("format"); format != kWorkingFormat)
        in.report("format", "must be \"%1\", not \"%2\"", {std::string(kWorkingFormat), format});
    const std::string kind = in.text("kind");
    if (question.working == nullptr) {
        in.report("kind", "\"%1\" is no working; see --help", {kind});
    } else {
        for (const WorkingField& field : question.working->fields) {
            if (!in.has(field.key)) continue;
            if (field.range == WorkingRange::Word) {
                question.entry.words.emplace(field.key, in.text(field.key));
            } else {
                question.entry.numbers.emplace(
                    field.key, static_cast<double>(in.number(field.key, model::Sign::Any)) / 1e6);
            }
        }
    }
    if (problem.first()) return *problem.first();
    return question;
}

/// Rounded half up to 0.001.
JsonValue number(const std::optional<double>& value) {
    if (!value || !(std::abs(*value) < 1e12)) return {};
    return JsonValue::number(std::llround(*value * 1e3) * 1'000);
}

std::vector<std::string> textsOf(const std::vector<std::string_view>& texts) {
    return {texts.begin(), texts.end()};
}

JsonValue answerOf(const Working& working, const model::WorkedOut& out) {
    JsonValue::Members results;
    for (const auto& result : out.results)
        results.push_back({std::string(result.key), number(result.value)});
    return JsonValue::object({{"format", JsonValue::string(kWorkedFormat)},
                              {"kind", JsonValue::string(working.key)},
                              {"results", JsonValue::object(std::move(results))},
                              {"notes", JsonValue::strings(out.notes)},
                              {"formula", JsonValue::string(working.formula)},
                              {"source", JsonValue::string(working.source)},
                              {"holds_for", JsonValue::strings(textsOf(working.limits))}});
}

Result<Outcome> workOut(const Arguments& arguments) {
    const Result<JsonValue> document = model::readJson(arguments.operand());
    if (!document) return document.error();
    const std::string name = model::documentName(arguments.operand());
    const Result<Question> question = questionFrom(*document, name);
    if (!question) return question.error();
    const auto out = model::workOut(*question->working, question->entry);
    if (!out) {
        model::Error error = out.error();
        error.place = name + ": " + error.place;
        return error;
    }
    return Outcome{ExitCode::Done, model::writeJson(answerOf(*question->working, *out))};
}

std::string fieldLine(const WorkingField& field) {
    std::string text = "    " + std::string(field.key);
    std::string about;
    if (field.range == WorkingRange::Word) {
        for (const auto word : field.words)
            about += (about.empty() ? "\"" : ", \"") + std::string(word) + "\"";
    } else {
        about = field.label;
        if (!field.needed) about += "; can be left out";
    }
    if (!field.when.empty()) {
        std::string words;
        for (const auto word : field.is) words += (words.empty() ? "" : " or ") + std::string(word);
        about += "; only with " + std::string(field.when) + " " + words;
    }
    text.resize(std::max<std::size_t>(text.size() + 2, 36), ' ');
    return text + about + "\n";
}

std::string details() {
    std::string text =
        "Reads what an instrument showed (fettlemark-working/1) and prints what follows from it\n"
        "(fettlemark-worked/1) with the formula, its source and what it holds for. \"-\" as\n"
        "WORKING.json reads standard input. A result that does not exist is null, and a note says\n"
        "why; a null is not zero. The document has \"format\", \"kind\" and the fields of the "
        "kind:\n";
    for (const Working& working : model::workings()) {
        text += "\n  \"" + std::string(working.key) + "\": " + std::string(working.title) + "\n";
        for (const WorkingField& field : working.fields) text += fieldLine(field);
    }
    return text + "\nThe exit code is 0 whenever the values are possible.\n";
}

}  // namespace

Command workingsCommand() {
    return {.name = "workings",
            .operand = "WORKING.json",
            .summary = "works out height, transfer, loss, angle, near field or spread",
            .details = details(),
            .options = {},
            .run = &workOut};
}

}  // namespace app
