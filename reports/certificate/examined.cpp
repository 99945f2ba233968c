// SPDX-License-Identifier: Apache-2.0
#include "certificate/examined.h"

#include <algorithm>

#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "limits/words.h"

namespace reports {

std::string Examined::name() const {
    const model::Examination& header = draft->header;
    std::string text =
        filled(phrases::kExaminationOf,
               {header.zone, std::string(model::word(header.method)), stageWord(header.stage)});
    if (header.repairCycle > 0)
        text += ", " + filled(phrases::kAfterRepair, {std::to_string(header.repairCycle)});
    if (header.repeat > 0) text += ", " + filled(phrases::kRepeat, {std::to_string(header.repeat)});
    return text;
}

bool Examined::conditionsStated() const {
    return !(draft->conditions == model::TestConditions());
}

namespace {

bool sameExamination(const model::Examination& header, const model::ExaminationVerdict& verdict) {
    return header.zone == verdict.zone && header.method == verdict.method &&
           header.stage == verdict.stage && header.repairCycle == verdict.repairCycle &&
           header.repeat == verdict.repeat;
}

const model::PlannedZone* plannedZone(const model::ZonePlan& plan, const std::string& name) {
    const auto found = std::ranges::find(plan.zones, name, &model::PlannedZone::name);
    return found == plan.zones.end() ? nullptr : &*found;
}

std::map<std::string, const model::JudgedIndication*> judgedById(
    const model::ExaminationVerdict& verdict) {
    std::map<std::string, const model::JudgedIndication*> judged;
    for (const model::JudgedIndication& one : verdict.indications) judged[one.id] = &one;
    return judged;
}

/// Hands each row that is not blank, as read and as judged, to `take`. `read` reads a row.
template <class Typed, class Read, class Take>
model::Result<std::size_t> eachRow(const std::vector<Typed>& rows,
                                   const model::ExaminationVerdict& verdict,
                                   const std::string& place, const Read& read, const Take& take) {
    const auto judged = judgedById(verdict);
    std::size_t taken = 0;
    for (std::size_t row = 0; row < rows.size(); ++row) {
        if (model::isBlank(rows[row])) continue;
        const std::string rowPlace = place + "[" + std::to_string(row) + "]";
        auto one = read(rows[row]);
        if (!one.value) {
            if (one.errors.empty()) return model::inputError(rowPlace, "the row cannot be read");
            model::Error error = one.errors.front().error;
            error.place = rowPlace + "." + one.errors.front().field;
            return error;
        }
        const auto found = judged.find(one.value->id);
        if (found == judged.end())
            return model::inputError(rowPlace, "the verdict does not know indication \"%1\"",
                                     {one.value->id});
        take(rows[row], std::move(one), *found->second);
        ++taken;
    }
    return taken;
}

/// Reads the rows of `examined` and sets each beside how it was judged.
model::Result<void> readRows(Examined& examined, const std::string& place) {
    const model::ExaminationDraft& draft = *examined.draft;
    const auto indications = eachRow(
        draft.rows, *examined.verdict, place + ".rows",
        [](const model::TypedIndication& row) { return model::read(row); },
        [&](const auto& typed, model::ReadIndication&& read, const auto& judged) {
            examined.indications.push_back({&typed, std::move(*read.value), &judged});
        });
    if (!indications) return indications.error();
    const auto reflectors = eachRow(
        draft.reflectors, *examined.verdict, place + ".reflectors",
        [&](const model::TypedReflector& row) { return model::read(row, draft.settings); },
        [&](const auto& typed, model::ReadReflector&& read, const auto& judged) {
            examined.reflectors.push_back(
                {&typed, std::move(*read.value), std::move(read.size), &judged});
        });
    if (!reflectors) return reflectors.error();
    const std::size_t listed = *indications + *reflectors;
    const std::size_t judged = examined.verdict->indications.size();
    if (listed != judged)
        return model::inputError(place, "the verdict was made from %1 indications, the file has %2",
                                 {std::to_string(judged), std::to_string(listed)});
    return {};
}

}  // namespace

model::Result<std::vector<Examined>> examinedOf(const CertificateInput& input) {
    const auto& drafts = input.file.examinations;
    const auto& verdicts = input.verdict.examinations;
    if (!input.records.empty() && input.records.size() != drafts.size())
        return model::inputError(
            "examinations", "%1 signed records are given, the file has %2 examinations",
            {std::to_string(input.records.size()), std::to_string(drafts.size())});
    if (!input.findings.empty() && input.findings.size() != drafts.size())
        return model::inputError(
            "examinations", "findings on %1 examinations are given, the file has %2",
            {std::to_string(input.findings.size()), std::to_string(drafts.size())});
    if (drafts.size() != verdicts.size())
        return model::inputError("examinations",
                                 "the verdict was made from %1 examinations, the file has %2",
                                 {std::to_string(verdicts.size()), std::to_string(drafts.size())});

    std::vector<Examined> all;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        const std::string place = "examinations[" + std::to_string(i) + "]";
        if (!sameExamination(drafts[i].header, verdicts[i]))
            return model::inputError(place, "the verdict there is on another examination");
        const model::LimitTable* table = nullptr;
        if (!verdicts[i].tableId.empty()) {
            table = input.tables.find(verdicts[i].tableId, verdicts[i].tableRevision);
            if (table == nullptr || table->digest != verdicts[i].tableDigest)
                return model::inputError(
                    place + ".table",
                    "limit table \"%1\" revision %2 is not at hand as it was "
                    "judged by (SHA-256 %3)",
                    {verdicts[i].tableId, std::to_string(verdicts[i].tableRevision),
                     verdicts[i].tableDigest});
        }
        Examined examined;
        examined.draft = &drafts[i];
        examined.verdict = &verdicts[i];
        examined.planned = plannedZone(input.file.plan, drafts[i].header.zone);
        examined.table = table;
        examined.recorded = input.records.empty() ? nullptr : &input.records[i];
        if (!input.findings.empty()) examined.findings = &input.findings[i];
        if (const auto read = readRows(examined, place); !read) return read.error();
        all.push_back(std::move(examined));
    }
    return all;
}

}  // namespace reports
