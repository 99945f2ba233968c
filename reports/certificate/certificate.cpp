// SPDX-License-Identifier: Apache-2.0
#include "certificate/certificate.h"

#include "certificate/conclusion.h"
#include "certificate/conditions_section.h"
#include "certificate/coverage.h"
#include "certificate/examined.h"
#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/record_phrases.h"
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
    if (!isCertificateType(type)) return filled(phrases::kTypeUnknown, {type});
    const char* validated = type == "3.2"   ? phrases::kValidatedByBoth
                            : type == "3.1" ? phrases::kValidatedIndependently
                                            : phrases::kValidatedByManufacturer;
    return filled(phrases::kTypeAsOrdered, {type}) + " " + validated;
}

/// What stands against signing it, if anything does.
model::Result<void> checkForRelease(const CertificateInput& input, const std::vector<Examined>& all,
                                    const Conclusion& conclusion) {
    const Issue& issue = input.issue;
    const auto refused = [](const char* reason, std::vector<std::string> arguments = {}) {
        return model::inputError("certificate", reason, std::move(arguments));
    };
    if (!issue.number || issue.number->empty()) return refused("it has no number");
    if (!issue.historyHead) return refused("the head of the history is missing");
    if (issue.presentedBy.empty()) return refused("nobody presents it");
    if (!isCertificateType(input.file.order.certificateType))
        return refused("the order names no type of EN 10204:2004: \"%1\"",
                       {input.file.order.certificateType});
    if (resultOf(input.file, input.verdict) == model::Word::NotJudged)
        return refused("what is not judged cannot be released");
    for (const CoveredTest& test : coverageOf(input.file, input.verdict))
        if (test.state != CoveredTest::State::Made)
            return refused("the zone plan requires a test of %1 that was not made as required",
                           {test.zone->name});
    if (conclusion.acceptableButOpen()) return refused("a nonconformance of the casting is open");
    for (const Examined& examined : all) {
        if (const auto standing = standingFindings(examined);
            !examined.verdict->superseded && !standing.empty())
            return refused("the test conditions of %1 stand against it: %2",
                           {examined.name(), joined(standing, ", ")});
        if (!examined.verdict->superseded && examined.verdict->word == model::Word::NotJudged)
            return refused("the examination %1 is not judged", {examined.name()});
        if (!examined.verdict->attested)
            return refused("limit table \"%1\" is not attested", {examined.verdict->tableId});
        if (examined.recorded == nullptr || examined.recorded->by.empty())
            return refused("nobody signed the examination %1", {examined.name()});
        if (examined.recorded->rejected && examined.verdict->word != model::Word::NotAcceptable)
            return refused("the examination %1 was rejected, and the verdict does not know of it",
                           {examined.name()});
    }
    return {};
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

bool isCertificateType(const std::string& type) {
    return type == "2.1" || type == "2.2" || type == "3.1" || type == "3.2";
}

model::Result<Document> certificateOf(const CertificateInput& input) {
    const auto all = examinedOf(input);
    if (!all) return all.error();

    const model::CastingFile& file = input.file;
    const Issue& issue = input.issue;
    const Conclusion conclusion = conclusionOf(input);
    if (issue.forRelease)
        if (const auto fit = checkForRelease(input, *all, conclusion); !fit) return fit.error();
    Document document;
    document.title = titleOf(file.order.certificateType);
    document.titleCode = "A02";
    document.subtitle = subtitleOf(file.order.certificateType);
    if (!issue.forRelease) document.subtitle += std::string(" ") + phrases::kNotReleasedYet;
    document.subject = filled(phrases::kSubject, {file.casting.serial, file.part.number});
    document.producer = filled(phrases::kProgram, {issue.programVersion});
    document.language = phrases::kLanguage;
    document.issuer = orNotRecorded(issue.worksName);
    document.issuerCode = "A01";
    document.issuerAddress = onOneLine(issue.worksAddress);
    document.identity =
        issue.number ? filled(phrases::kIdentityNumbered, {*issue.number, file.casting.serial})
                     : filled(phrases::kIdentityUnnumbered, {file.casting.serial});
    if (!issue.forRelease) {
        document.pageNotices.emplace_back(phrases::kNotReleased);
        document.watermark = phrases::kNotReleased;
    }
    if (issue.demonstration) document.pageNotices.emplace_back(phrases::kDemonstration);
    document.pageOf = phrases::kPageOf;
    document.continued = phrases::kContinued;
    document.endMark = phrases::kEndMark;

    addFirstPage(document.blocks, input, *all, conclusion);
    addZones(document.blocks, input, *all);
    addFurtherData(document.blocks, input);
    addExaminations(document.blocks, input, *all);
    addOtherTests(document.blocks, input.file);
    addRepairs(document.blocks, conclusion);
    if (const auto printed = addPhotos(document.blocks, input); !printed) return printed.error();
    addClosing(document.blocks, input, *all);
    if (issue.forRelease) addSignatures(document.blocks, file.order.certificateType);
    return document;
}

}  // namespace reports
