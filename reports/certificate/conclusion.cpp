// SPDX-License-Identifier: Apache-2.0
#include "certificate/conclusion.h"

#include <algorithm>

#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/record_phrases.h"
#include "limits/words.h"
#include "record/coverage.h"

namespace reports {

namespace {

constexpr std::size_t kMostCases = 3;  // on the first page
constexpr std::size_t kMostNames = 6;

/// "R1 (NCR-4), R2 (NCR-5)": what was repaired, by the cycle that it came to.
std::string repairsText(const std::vector<model::RepairCase>& cases) {
    std::vector<std::string> texts;
    for (const model::RepairCase& c : cases)
        if (c.repaired())
            texts.push_back(
                filled(phrases::kRepairOf,
                       {filled(phrases::kRepairNumber, {std::to_string(std::max(1, c.cycle))}),
                        c.opened->number}));
    return shortList(texts, kMostNames);
}

std::string concessionsText(const std::vector<model::RepairCase>& cases) {
    std::vector<std::string> texts;
    for (const model::RepairCase& c : cases)
        if (c.state == model::repair_state::kConceded)
            for (const model::Concession* concession : c.concessions)
                texts.push_back(concession->number == concession->customerReference
                                    ? concession->number
                                    : filled(phrases::kConcessionReference,
                                             {concession->number, concession->customerReference}));
    return shortList(texts, kMostNames);
}

std::string foundText(const model::RepairCase& c) {
    std::string what = c.opened->finding;
    if (!c.opened->indications.empty())
        what = filled(phrases::kFoundIndications, {c.opened->indications}) + ", " + what;
    return filled(phrases::kFoundIn, {c.opened->zone, c.opened->method, what});
}

/// What was decided, and the numbers of what was done.
std::string workText(const model::RepairCase& c) {
    std::vector<std::string> texts;
    if (c.decision() == nullptr)
        texts.emplace_back(phrases::kNotDecided);
    else {
        texts.push_back(c.decision()->decision);
        if (!c.decision()->agreement.empty())
            texts.push_back(filled(phrases::kAgreement, {c.decision()->agreement}));
    }
    const auto add = [&texts](const auto& entries, const char* phrase) {
        std::vector<std::string> numbers;
        numbers.reserve(entries.size());
        for (const auto* entry : entries) numbers.push_back(entry->number);
        if (!numbers.empty()) texts.push_back(filled(phrase, {joined(numbers, ", ")}));
    };
    add(c.excavations, phrases::kWork);
    add(c.weldRepairs, phrases::kWeld);
    add(c.heatTreatments, phrases::kHeatTreatmentNumber);
    add(c.concessions, phrases::kConcessionNumber);
    return joined(texts, ", ");
}

std::string againText(const model::RepairCase& c) {
    std::vector<std::string> texts;
    for (const model::ExaminationDraft* draft : c.reexaminations) {
        const model::Examination& header = draft->header;
        texts.push_back(header.zone + " " + std::string(model::word(header.method)) + ", " +
                        filled(phrases::kAfterRepair, {std::to_string(header.repairCycle)}));
    }
    for (const model::OtherResult* result : c.otherReexaminations)
        texts.push_back(filled(phrases::kResultOf, {result->number, result->verdict}));
    return texts.empty() ? phrases::kDash : joined(texts, "\n");
}

}  // namespace

Conclusion conclusionOf(const CertificateInput& input) {
    return {model::castingWord(input.file, input.verdict),
            model::outcomeOf(input.file, input.verdict),
            model::repairCasesOf(input.file, input.verdict),
            model::looseEndsOf(input.file, input.verdict)};
}

std::string outcomeText(const Conclusion& conclusion) {
    switch (conclusion.outcome) {
        case model::Outcome::Conforms:
            return phrases::kConforms;
        case model::Outcome::ConformsAfterRepair:
            return filled(phrases::kConformsAfterRepair, {repairsText(conclusion.cases)});
        case model::Outcome::UnderConcession:
            return filled(phrases::kUnderConcession, {concessionsText(conclusion.cases)});
        case model::Outcome::DoesNotConform:
            return phrases::kDoesNotConform;
        case model::Outcome::NotJudged:
            break;
    }
    return phrases::kNoConformity;
}

void addRepairTable(std::vector<Block>& blocks, const Conclusion& conclusion) {
    if (conclusion.cases.empty()) return;
    Table table{{{phrases::kNonconformance, Align::Left, 1},
                 {phrases::kFound, Align::Left, 2.4},
                 {phrases::kDecided, Align::Left, 2},
                 {phrases::kExaminedAgain, Align::Left, 1.4},
                 {phrases::kState, Align::Left, 1.3}},
                {}};
    for (const model::RepairCase& c : conclusion.cases) {
        if (table.rows.size() == kMostCases) break;
        table.rows.push_back({{c.opened->number + "\n" + c.opened->openedOn, Mark::None, true},
                              {foundText(c)},
                              {workText(c)},
                              {againText(c)},
                              {std::string(c.state), c.closed ? Mark::None : Mark::NotJudged}});
    }
    blocks.push_back(std::move(table));
    if (conclusion.cases.size() > kMostCases)
        blocks.push_back(Paragraph{
            Paragraph::Tone::Plain,
            filled(phrases::kMoreRepairs, {std::to_string(conclusion.cases.size() - kMostCases)})});
}

std::vector<std::string> openItems(const Conclusion& conclusion) {
    std::vector<std::string> open;
    for (const model::RepairCase& c : conclusion.cases)
        for (const model::Error& error : c.open)
            open.push_back(filled(phrases::kStillOpen, {error.message()}));
    for (const model::Error& error : conclusion.looseEnds)
        open.push_back(filled(phrases::kLooseEnd, {error.message()}));
    return open;
}

}  // namespace reports
