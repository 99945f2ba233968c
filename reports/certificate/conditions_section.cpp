// SPDX-License-Identifier: Apache-2.0
#include "certificate/conditions_section.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/record_phrases.h"
#include "conditions/validity.h"
#include "limits/words.h"

namespace reports {

namespace {

// Keys of measurements (conditions/parameters.h) that a certificate carries; the others stay in the
// works' record.
constexpr std::array<std::string_view, 6> kMagnetisation = {
    "technique", "waveform", "current", "field_strength", "field_reading", "field_proof"};
constexpr std::string_view kResidual = "residual_field";

std::string measurementText(const model::Measurement& measured) {
    std::string text = measured.value;
    if (!measured.unit.empty()) text = unbroken(text + " " + measured.unit);
    if (!measured.place.empty()) text = filled(phrases::kAtPlace, {text, measured.place});
    return text;
}

template <class Keys>
std::string measuredText(const model::TestConditions& conditions, const Keys& keys) {
    std::vector<std::string> texts;
    for (const std::string_view key : keys)
        for (const model::Measurement& measured : conditions.measurements)
            if (measured.parameter == key) texts.push_back(measurementText(measured));
    return joined(texts, "; ");
}

std::string withRevision(const std::string& number, const std::string& revision) {
    return revision.empty() ? number : filled(phrases::kPhotoRevision, {number, revision});
}

/// The standard of the test as stated, else as its procedure has it.
std::string testStandard(const model::CastingFile& file, const model::TestConditions& conditions) {
    if (!conditions.testStandard.empty()) return conditions.testStandard;
    for (const model::Procedure& procedure : file.used.procedures)
        if (procedure.number == conditions.procedureNumber &&
            procedure.revision == conditions.procedureRevision)
            return orNotRecorded(procedure.standards);
    return phrases::kNotRecorded;
}

std::string timeText(const model::TestConditions& conditions) {
    if (conditions.endedAt.empty()) return conditions.startedAt;
    return filled(phrases::kFromTo, {orNotRecorded(conditions.startedAt), conditions.endedAt});
}

std::string deviationsText(const model::TestConditions& conditions) {
    if (conditions.deviations.empty()) return phrases::kNoDeviations;
    return filled(phrases::kAgreedBy, {conditions.deviations, conditions.deviationsAgreed.empty()
                                                                  ? std::string(phrases::kNotAgreed)
                                                                  : conditions.deviationsAgreed});
}

std::string residualText(const CertificateInput& input, const Examined& examined) {
    if (examined.verdict->method != model::Method::Magnetic) return {};
    const std::string& limit = input.file.order.terms.residualField;
    std::string text = measuredText(examined.draft->conditions, std::array{kResidual});
    if (limit.empty()) return text;
    return orNotRecorded(text) + filled(phrases::kResidualLimit, {limit});
}

/// Of which repair it is the check: a link that must not be lost.
std::string afterText(const model::TestConditions& conditions) {
    if (conditions.firstRecord.empty()) return conditions.nonconformance;
    return filled(phrases::kFirstRecord,
                  {orNotRecorded(conditions.nonconformance), conditions.firstRecord});
}

Fields factsOf(const CertificateInput& input, const Examined& examined) {
    const model::TestConditions& conditions = examined.draft->conditions;
    const bool magnetic = examined.verdict->method == model::Method::Magnetic;
    Fields fields{{
        {"", phrases::kPurpose, orNotRecorded(conditions.purpose)},
        {"", phrases::kPlace, orNotRecorded(conditions.place)},
        {"", phrases::kTestStandard, testStandard(input.file, conditions)},
        {"B04", phrases::kDeliveryState, orNotRecorded(conditions.deliveryState)},
        {"", phrases::kDeviations, deviationsText(conditions)},
    }};
    const auto add = [&fields](const char* name, const std::string& value) {
        if (!value.empty()) fields.fields.push_back({"", name, value});
    };
    add(phrases::kTechniqueSheet, withRevision(conditions.sheetNumber, conditions.sheetRevision));
    add(phrases::kSurfacePreparation, conditions.surfacePreparation);
    add(phrases::kSurfaceFinish, conditions.surfaceFinish);
    if (!conditions.coating.empty())
        add(phrases::kCoating, filled(phrases::kMicrometres, {conditions.coating}));
    if (magnetic) add(phrases::kMagnetisation, measuredText(conditions, kMagnetisation));
    add(phrases::kResidualField, residualText(input, examined));
    add(phrases::kEquipmentNumbers, conditions.equipment);
    add(phrases::kConsumableNumbers, conditions.consumables);
    return fields;
}

std::string findingText(const model::ConditionFinding& finding) {
    std::string text = filled(phrases::kFinding, {finding.id, finding.reason.message()});
    if (!finding.source.locator.empty())
        text = filled(phrases::kFindingSource, {text, finding.source.locator,
                                                std::string(model::word(finding.source.grade))});
    if (finding.stands()) return filled(phrases::kFindingStands, {text});
    if (finding.acknowledged.empty()) return text;
    return filled(phrases::kFindingReason,
                  {text, orNotRecorded(finding.acknowledgedBy), finding.acknowledged});
}

/// Those with which something has to be done or was; `standing` and the others apart.
void addFindings(std::vector<Block>& blocks, const Examined& examined) {
    if (examined.findings == nullptr) return;
    std::vector<std::string> against;
    std::vector<std::string> noted;
    for (const model::ConditionFinding& finding : *examined.findings)
        if (!finding.onlySaid)
            (finding.stands() ? against : noted).push_back("• " + findingText(finding));
    if (against.empty() && noted.empty()) return;
    blocks.push_back(Heading{3, phrases::kFindings});
    if (!against.empty())
        blocks.push_back(Paragraph{Paragraph::Tone::Strong, joined(against, "\n")});
    if (!noted.empty()) blocks.push_back(Paragraph{Paragraph::Tone::Plain, joined(noted, "\n")});
}

/// What is an examination's own, and so never the same as another's.
void addOwn(std::vector<Block>& blocks, const model::TestConditions& conditions) {
    Fields fields;
    const auto add = [&fields](const char* name, const std::string& value) {
        if (!value.empty()) fields.fields.push_back({"", name, value});
    };
    add(phrases::kTime, timeText(conditions));
    add(phrases::kAfterNonconformance, afterText(conditions));
    add(phrases::kPiecesTested, conditions.piecesTested);
    add(phrases::kWitnessed, conditions.witnessedBy);
    if (!fields.fields.empty()) blocks.push_back(std::move(fields));
}

}  // namespace

std::string procedureText(const model::ExaminationDraft& draft) {
    const model::TestConditions& conditions = draft.conditions;
    if (conditions.procedureNumber.empty()) return orNotRecorded(draft.procedure);
    return withRevision(conditions.procedureNumber, conditions.procedureRevision);
}

void addConditions(std::vector<Block>& blocks, const CertificateInput& input,
                   const Examined& examined, PrintedConditions& printed) {
    if (!examined.conditionsStated()) {
        blocks.push_back(
            Paragraph{Paragraph::Tone::Plain, std::string(phrases::kConditionsNotStated) + "."});
        addFindings(blocks, examined);
        return;
    }
    Fields fields = factsOf(input, examined);
    std::string text;
    for (const Field& field : fields.fields) text += field.name + '\n' + field.value + '\n';
    const auto [before, isNew] = printed.try_emplace(text, examined.name());
    if (isNew)
        blocks.push_back(std::move(fields));
    else
        blocks.push_back(
            Paragraph{Paragraph::Tone::Plain, filled(phrases::kConditionsAsFor, {before->second})});
    addOwn(blocks, examined.draft->conditions);
    addFindings(blocks, examined);
}

std::vector<std::string> standingFindings(const Examined& examined) {
    std::vector<std::string> ids;
    if (examined.findings == nullptr) return ids;
    for (const model::ConditionFinding& finding : *examined.findings)
        if (finding.stands()) ids.push_back(finding.id);
    return ids;
}

std::vector<std::string> reasonedFindings(const Examined& examined) {
    std::vector<std::string> ids;
    if (examined.findings == nullptr) return ids;
    for (const model::ConditionFinding& finding : *examined.findings)
        if (!finding.acknowledged.empty()) ids.push_back(finding.id);
    return ids;
}

}  // namespace reports
