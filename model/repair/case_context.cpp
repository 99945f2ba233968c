// SPDX-License-Identifier: Apache-2.0
#include "repair/case_context.h"

#include <algorithm>
#include <initializer_list>
#include <tuple>

#include "judge/sheet_words.h"
#include "limits/words.h"
#include "record/other_results.h"

namespace model {
namespace {

std::set<std::string> idsOf(const ExaminationDraft& draft) {
    std::set<std::string> ids;
    for (const TypedIndication& row : draft.rows) ids.insert(draft.header.zone + "/" + row.id);
    for (const TypedReflector& row : draft.reflectors) ids.insert(draft.header.zone + "/" + row.id);
    return ids;
}

/// Whether a nonconformance's method names the test; the others are "other".
bool isNamedMethod(const std::string& test) {
    return std::ranges::any_of(std::initializer_list<const char*>{"MT", "PT", "UT", "VT", "RT"},
                               [&](const char* method) { return otherTestOf(method) == test; });
}

}  // namespace

const ExaminationVerdict* verdictOn(const CaseContext& context, const ExaminationDraft& draft) {
    const Examination& header = draft.header;
    for (const ExaminationVerdict& verdict : context.verdict.examinations)
        if (verdict.zone == header.zone && verdict.method == header.method &&
            verdict.stage == header.stage && verdict.repairCycle == header.repairCycle &&
            verdict.repeat == header.repeat)
            return &verdict;
    return nullptr;
}

bool isOf(const ExaminationDraft& draft, const std::string& zone, Method method, Stage stage) {
    return draft.header.zone == zone && draft.header.method == method &&
           draft.header.stage == stage;
}

std::string nameOf(const ExaminationDraft& draft) {
    const Examination& header = draft.header;
    std::string name = header.zone + " " + std::string(word(header.method)) + " " +
                       std::string(word(header.stage));
    if (header.repairCycle > 0) name += ", repair cycle " + std::to_string(header.repairCycle);
    if (header.repeat > 0) name += ", repeat " + std::to_string(header.repeat);
    return name;
}

bool reexamines(const ExaminationDraft& draft, const Nonconformance& opened) {
    return std::ranges::count(itemsOf(draft.conditions.nonconformance), opened.number) > 0;
}

const ExaminationDraft* foundBy(const CaseContext& context, const Nonconformance& opened) {
    const auto method = methodFrom(opened.method);
    if (!method) return nullptr;
    const std::set<std::string> named = indicationsIn(opened.indications, opened.zone);
    const auto fits = [&](const ExaminationDraft& draft) {
        return draft.header.zone == opened.zone && draft.header.method == *method &&
               (opened.stage.empty() || word(draft.header.stage) == opened.stage) &&
               !reexamines(draft, opened) &&
               (!isDate(draft.examinedOn) || isOnOrAfter(opened.openedOn, draft.examinedOn)) &&
               std::ranges::includes(idsOf(draft), named);
    };
    const auto rank = [&](const ExaminationDraft& draft) {
        const ExaminationVerdict* verdict = verdictOn(context, draft);
        return std::tuple(
            verdict != nullptr && !verdict->invalid && verdict->word == Word::NotAcceptable,
            draft.header.repairCycle, draft.header.repeat);
    };
    const ExaminationDraft* found = nullptr;
    for (const ExaminationDraft& draft : context.file.examinations)
        if (fits(draft) && (found == nullptr || rank(draft) > rank(*found))) found = &draft;
    return found;
}

const OtherResult* foundByOther(const CastingFile& file, const Nonconformance& opened) {
    const std::string_view test = otherTestOf(opened.method);
    const OtherResult* found = nullptr;
    for (const OtherResult& result : file.dossier.otherResults) {
        const bool isOfTest = test.empty() ? !isNamedMethod(result.test) : result.test == test;
        if (!isOfTest || !concerns(result, opened.zone) || isCavityTest(file, result) ||
            wordOf(result) != Word::NotAcceptable ||
            !isOnOrAfter(opened.openedOn, result.performedOn))
            continue;
        if (found == nullptr || result.performedOn >= found->performedOn) found = &result;
    }
    return found;
}

bool concerns(const OtherResult& result, const std::string& zone) {
    return result.zone.empty() || result.zone == zone;
}

void OpenItems::add(std::string_view state, std::string place, std::string reason,
                    std::vector<std::string> arguments) {
    if (case_.open.empty()) case_.state = state;
    case_.open.push_back(inputError(std::move(place), std::move(reason), std::move(arguments)));
}

std::optional<Stage> stageOf(const RepairCase& c) {
    if (c.found != nullptr) return c.found->header.stage;
    return stageFrom(c.opened->stage);
}

bool isOnOrAfter(const std::string& later, const std::string& earlier) {
    return isDate(later) && isDate(earlier) && later >= earlier;
}

}  // namespace model
