// SPDX-License-Identifier: Apache-2.0
// Who examined, evaluated, signed, presents and releases; and who was called to watch.
#include <algorithm>

#include "certificate/conditions_section.h"
#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/record_phrases.h"
#include "certificate/sections.h"
#include "limits/words.h"

namespace reports {

namespace {

/// The certificate of a person in the examination's method that held on its date; without a date,
/// the last in the list. Null: none.
const model::Qualification* qualificationOf(const model::CastingFile& file,
                                            const Examined& examined, const std::string& person) {
    const std::string& date = examined.draft->examinedOn;
    const model::Qualification* held = nullptr;
    for (const model::Qualification& one : file.used.qualifications) {
        if (person.empty() || one.person != person ||
            one.method != model::word(examined.verdict->method))
            continue;
        const bool onDate = date.empty() || (one.issuedOn <= date && date <= one.expiresOn);
        if (onDate && one.state == "valid") held = &one;
    }
    return held;
}

std::string levelText(const model::Qualification* held) {
    if (held == nullptr) return phrases::kLevelNotRecorded;
    return filled(phrases::kLevelOfPerson,
                  {held->level, held->scheme, held->certificate, held->expiresOn});
}

/// Name, level, and who evaluated. Where no conditions are stated, only the name is known.
std::string examinerText(const CertificateInput& input, const Examined& examined) {
    const model::ExaminationDraft& draft = *examined.draft;
    std::string text = orNotRecorded(draft.examinedBy);
    if (!examined.conditionsStated()) return text;
    // Whoever signs in the name that was typed is that person; before, an id may stand there.
    const bool signedIt = examined.recorded != nullptr && examined.recorded->by == draft.examinedBy;
    const std::string& person = signedIt ? examined.recorded->byId : draft.examinedBy;
    const model::Qualification* held = qualificationOf(input.file, examined, person);
    text += "\n" + levelText(held) + "\n";
    const std::string& evaluator = draft.conditions.evaluatedBy;
    if (!evaluator.empty()) {
        text += filled(phrases::kEvaluatedBy, {evaluator});
        if (const auto* of = qualificationOf(input.file, examined, evaluator))
            text += ", " + filled(phrases::kLevelShort, {of->level});
    } else {
        text += held != nullptr && held->level != "1" ? phrases::kEvaluatedToo
                                                      : phrases::kEvaluatorNotRecorded;
    }
    return text;
}

std::string whenText(const model::WitnessPoint& point) {
    if (!point.attendedOn.empty()) return filled(phrases::kAttendedOn, {point.attendedOn});
    if (!point.waived.empty()) return filled(phrases::kWaivedBy, {point.waived});
    if (!point.calledOn.empty()) return filled(phrases::kCalledOn, {point.calledOn});
    return phrases::kNotCalled;
}

void addWitnessPoints(std::vector<Block>& blocks, const model::OrderTerms& terms) {
    if (terms.witnessPoints.empty()) return;
    Table table{{{phrases::kWhat, Align::Left, 2.2},
                 {phrases::kWitnessKind, Align::Left, 0.7},
                 {phrases::kWho, Align::Left, 1.6},
                 {phrases::kWhen, Align::Left, 1.6},
                 {phrases::kWitnessResult, Align::Left, 1.4}},
                {}};
    for (const model::WitnessPoint& point : terms.witnessPoints)
        table.rows.push_back({{point.what},
                              {point.kind},
                              {orNotRecorded(point.who)},
                              {whenText(point)},
                              {point.result.empty() ? phrases::kDash : point.result}});
    blocks.push_back(Heading{2, phrases::kWitnessPoints});
    blocks.push_back(std::move(table));
}

}  // namespace

void addPeople(std::vector<Block>& blocks, const CertificateInput& input,
               const std::vector<Examined>& all) {
    blocks.push_back(Heading{1, phrases::kPeople});
    if (!all.empty()) {
        Table table{{{phrases::kExamination, Align::Left, 2},
                     {phrases::kExaminedBy, Align::Left, 2.2},
                     {phrases::kExaminedOn, Align::Left, 1},
                     {phrases::kProcedure, Align::Left, 1.4},
                     {phrases::kRecordSignedBy, Align::Left, 1.9}},
                    {}};
        for (const Examined& examined : all)
            table.rows.push_back({{examined.name()},
                                  {examinerText(input, examined)},
                                  {orNotRecorded(examined.draft->examinedOn)},
                                  {procedureText(*examined.draft)},
                                  {examined.recorded == nullptr
                                       ? std::string(phrases::kNotSigned)
                                       : filled(phrases::kSignedOn,
                                                {examined.recorded->by, examined.recorded->on})}});
        blocks.push_back(std::move(table));
    }
    const Issue& issue = input.issue;
    Fields fields;
    fields.columns = 1;
    if (issue.forRelease) fields.fields.push_back({"", phrases::kPresentedBy, issue.presentedBy});
    fields.fields.push_back(
        {"Z03", phrases::kReleasedBy,
         issue.forRelease ? phrases::kReleasedBySignature : phrases::kNobodyReleased});
    blocks.push_back(std::move(fields));
    addWitnessPoints(blocks, input.file.order.terms);
}

}  // namespace reports
