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

model::Result<std::vector<ExaminedIndication>> indicationsOf(
    const model::ExaminationDraft& draft, const model::ExaminationVerdict& verdict,
    const std::string& place) {
    std::vector<ExaminedIndication> indications;
    std::map<std::string, const model::JudgedIndication*> judged;
    for (const model::JudgedIndication& one : verdict.indications) judged[one.id] = &one;

    for (std::size_t row = 0; row < draft.rows.size(); ++row) {
        const model::TypedIndication& typed = draft.rows[row];
        if (model::isBlank(typed)) continue;
        const std::string rowPlace = place + ".rows[" + std::to_string(row) + "]";
        model::ReadIndication read = model::read(typed);
        if (!read.value) {
            if (read.errors.empty()) return model::inputError(rowPlace, "the row cannot be read");
            model::Error error = read.errors.front().error;
            error.place = rowPlace + "." + read.errors.front().field;
            return error;
        }
        const auto found = judged.find(read.value->id);
        if (found == judged.end())
            return model::inputError(rowPlace, "the verdict does not know indication \"%1\"",
                                     {read.value->id});
        indications.push_back({&typed, std::move(*read.value), found->second});
    }
    if (indications.size() != verdict.indications.size())
        return model::inputError(
            place, "the verdict was made from %1 indications, the file has %2",
            {std::to_string(verdict.indications.size()), std::to_string(indications.size())});
    return indications;
}

}  // namespace

model::Result<std::vector<Examined>> examinedOf(const CertificateInput& input) {
    const auto& drafts = input.file.examinations;
    const auto& verdicts = input.verdict.examinations;
    if (!input.records.empty() && input.records.size() != drafts.size())
        return model::inputError(
            "examinations", "%1 signed records are given, the file has %2 examinations",
            {std::to_string(input.records.size()), std::to_string(drafts.size())});
    if (drafts.size() != verdicts.size())
        return model::inputError("examinations",
                                 "the verdict was made from %1 examinations, the file has %2",
                                 {std::to_string(verdicts.size()), std::to_string(drafts.size())});

    std::vector<Examined> all;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        const std::string place = "examinations[" + std::to_string(i) + "]";
        if (!sameExamination(drafts[i].header, verdicts[i]))
            return model::inputError(place, "the verdict there is on another examination");
        auto indications = indicationsOf(drafts[i], verdicts[i], place);
        if (!indications) return indications.error();

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
        all.push_back(
            {&drafts[i], &verdicts[i], plannedZone(input.file.plan, drafts[i].header.zone), table,
             std::move(*indications), input.records.empty() ? nullptr : &input.records[i]});
    }
    return all;
}

}  // namespace reports
