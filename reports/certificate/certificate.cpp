// SPDX-License-Identifier: Apache-2.0
#include "certificate/certificate.h"

#include "certificate/examined.h"
#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/sections.h"

namespace reports {

namespace {

std::string titleOf(const std::string& type) {
    if (type == "3.1" || type == "3.2") return filled(phrases::kInspectionCertificate, {type});
    if (type == "2.2") return filled(phrases::kTestReport, {type});
    if (type == "2.1") return filled(phrases::kDeclaration, {type});
    return phrases::kInspectionDocument;
}

std::string subtitleOf(const std::string& type) {
    if (type.empty()) return phrases::kTypeNotOrdered;
    const bool known = titleOf(type) != phrases::kInspectionDocument;
    return filled(known ? phrases::kTypeAsOrdered : phrases::kTypeUnknown, {type});
}

/// An address's lines separated by commas.
std::string onOneLine(const std::string& lines) {
    std::string text;
    for (const char c : lines) {
        if (c == '\n')
            text += ", ";
        else if (c != '\r')
            text += c;
    }
    return text;
}

}  // namespace

model::Result<Document> certificateOf(const CertificateInput& input) {
    const auto all = examinedOf(input);
    if (!all) return all.error();

    const model::CastingFile& file = input.file;
    const Issue& issue = input.issue;
    Document document;
    document.title = titleOf(file.order.certificateType);
    document.titleCode = "A02";
    document.subtitle = subtitleOf(file.order.certificateType);
    document.subject = filled(phrases::kSubject, {file.casting.serial, file.part.number});
    document.producer = filled(phrases::kProgram, {issue.programVersion});
    document.language = phrases::kLanguage;
    document.issuer = orNotRecorded(issue.worksName);
    document.issuerCode = "A01";
    document.issuerAddress = onOneLine(issue.worksAddress);
    document.identity =
        issue.number ? filled(phrases::kIdentityNumbered, {*issue.number, file.casting.serial})
                     : filled(phrases::kIdentityUnnumbered, {file.casting.serial});
    document.pageNotices.emplace_back(phrases::kNotReleased);
    if (issue.demonstration) document.pageNotices.emplace_back(phrases::kDemonstration);
    document.watermark = phrases::kNotReleased;
    document.pageOf = phrases::kPageOf;
    document.continued = phrases::kContinued;
    document.endMark = phrases::kEndMark;

    addFirstPage(document.blocks, input, *all);
    addZones(document.blocks, input, *all);
    addExaminations(document.blocks, input, *all);
    addClosing(document.blocks, input, *all);
    return document;
}

}  // namespace reports
