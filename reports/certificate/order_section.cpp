// SPDX-License-Identifier: Apache-2.0
// Casting and order: what was delivered, to whom, and what was asked. The first page has what a
// buyer looks for; what is optional stands further on, or nowhere where it is not recorded.
#include <algorithm>

#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/record_phrases.h"
#include "certificate/sections.h"
#include "limits/words.h"

namespace reports {

namespace {

std::string drawingText(const model::Part& part) {
    std::string drawing = orNotRecorded(part.drawing);
    if (part.drawingRevision.empty()) return drawing;
    return filled(phrases::kDrawingRevision, {drawing, part.drawingRevision});
}

std::string materialText(const model::Part& part, const model::OrderTerms& terms) {
    const std::string material(model::word(part.material));
    std::string text = part.materialGrade.empty()
                           ? filled(phrases::kGradeNotRecorded, {material})
                           : filled(phrases::kMaterialWithGrade, {material, part.materialGrade});
    if (!terms.productStandard.empty() && text.find(terms.productStandard) == std::string::npos)
        text = filled(phrases::kMaterialToStandard, {text, terms.productStandard});
    return text;
}

/// "3 castings: A, B, C; 12 delivered".
std::string quantityText(const model::CastingFile& file) {
    const std::vector<std::string> serials = serialsOf(file.casting);
    std::string text =
        serials.size() == 1
            ? std::string(phrases::kOnePiece)
            : filled(phrases::kCastings, {std::to_string(serials.size()), joined(serials, ", ")});
    if (!file.order.terms.quantity.empty())
        text = filled(phrases::kOfDelivered, {text, file.order.terms.quantity});
    return text;
}

/// Empty where every piece is tested.
std::string samplingText(const model::CastingFile& file) {
    const model::OrderTerms& terms = file.order.terms;
    std::vector<std::string> texts;
    if (!terms.samplingRule.empty()) texts.push_back(terms.samplingRule);
    if (!terms.samplingPercent.empty())
        texts.push_back(filled(phrases::kSamplingShare, {terms.samplingPercent}));
    if (texts.empty() && serialsOf(file.casting).size() > 1) return phrases::kNotRecorded;
    return joined(texts, "; ");
}

std::string markingText(const std::string& found, const std::string& ordered) {
    if (ordered.empty()) return found;
    return found.empty() ? filled(phrases::kMarkingOrdered, {ordered})
                         : filled(phrases::kMarkingFound, {found, ordered});
}

void addWhereThere(Fields& to, const char* code, const char* name, const std::string& value) {
    if (!value.empty()) to.fields.push_back({code, name, value});
}

}  // namespace

std::vector<std::string> serialsOf(const model::Casting& casting) {
    std::vector<std::string> serials = model::itemsOf(casting.series);
    if (std::ranges::find(serials, casting.serial) == serials.end())
        serials.insert(serials.begin(), casting.serial);
    return serials;
}

void addCasting(std::vector<Block>& blocks, const CertificateInput& input) {
    const model::Order& order = input.file.order;
    const model::OrderTerms& terms = order.terms;
    const model::Part& part = input.file.part;
    const model::Casting& casting = input.file.casting;
    const Issue& issue = input.issue;
    std::string customerOrder = orNotRecorded(order.customerOrder);
    if (!terms.item.empty() && !customerOrder.ends_with(" " + terms.item))
        customerOrder = filled(phrases::kOrderWithItem, {customerOrder, terms.item});

    Fields fields{{
        {"A09", phrases::kPartNumber, orNotRecorded(part.number)},
        {"B06", phrases::kSerial, orNotRecorded(casting.serial)},
        {"A09", phrases::kDrawing, drawingText(part)},
        {"B07", phrases::kHeat, orNotRecorded(casting.heat)},
        {"B01", phrases::kProduct, orNotRecorded(part.description)},
        {"B02", phrases::kMaterial, materialText(part, terms)},
        {"A06", phrases::kCustomer, orNotRecorded(order.customer)},
        {"A07", phrases::kCustomerOrder, customerOrder},
        {"A08", phrases::kWorksOrder, orNotRecorded(order.number)},
        {"B08", phrases::kQuantity, quantityText(input.file)},
        {"A03", phrases::kCertificateNumber, issue.number.value_or(phrases::kNoNumber)},
        {"Z02", phrases::kIssueDate,
         issue.forRelease ? filled(phrases::kIssuedBySignature, {issue.date})
                          : orNotRecorded(issue.date)},
    }};
    if (serialsOf(casting).size() > 1)
        fields.fields.push_back({"B08", phrases::kSampling, samplingText(input.file)});
    Fields wide;
    wide.columns = 1;
    wide.fields.push_back({"", phrases::kForbiddenByOrder, kindsText(order.forbiddenKinds)});

    blocks.push_back(Heading{1, phrases::kCasting});
    blocks.push_back(std::move(fields));
    blocks.push_back(std::move(wide));
}

void addFurtherData(std::vector<Block>& blocks, const CertificateInput& input) {
    const model::OrderTerms& terms = input.file.order.terms;
    const model::Casting& casting = input.file.casting;
    const Issue& issue = input.issue;
    Fields fields;
    addWhereThere(fields, "A06", phrases::kReceiver, terms.receiver);
    addWhereThere(fields, "A06", phrases::kContact, terms.contact);
    addWhereThere(fields, "B06", phrases::kMarking, markingText(casting.marking, terms.marking));
    addWhereThere(fields, "B07", phrases::kPattern, input.file.part.pattern);
    addWhereThere(fields, "B12", phrases::kMass, input.file.part.mass);
    addWhereThere(fields, "", phrases::kCondition, casting.conditionOnReceipt);
    addWhereThere(fields, "", phrases::kDeliveryConditions, terms.deliveryConditions);
    if (serialsOf(casting).size() == 1)
        addWhereThere(fields, "B08", phrases::kSampling, samplingText(input.file));
    addWhereThere(fields, "A04", phrases::kManufacturersMark, issue.worksMark);
    addWhereThere(fields, "A05", phrases::kEstablishedBy, issue.establishedBy);
    addWhereThere(fields, "Z04", phrases::kProductMarking, issue.productMarking);
    Fields wide;
    wide.columns = 1;
    addWhereThere(wide, "B03", phrases::kExtraRequirements, terms.extraRequirements);
    addWhereThere(wide, "", phrases::kOrderRemarks, input.file.order.remarks);
    if (fields.fields.empty() && wide.fields.empty()) return;
    blocks.push_back(Heading{1, phrases::kFurtherData});
    if (!fields.fields.empty()) blocks.push_back(std::move(fields));
    if (!wide.fields.empty()) blocks.push_back(std::move(wide));
}

}  // namespace reports
