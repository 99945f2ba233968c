// SPDX-License-Identifier: Apache-2.0
#include "issuing/issue.h"

#include <optional>
#include <vector>

#include "archive/identities.h"
#include "archive/lifecycle.h"
#include "certificate/certificate.h"
#include "issuing/printed_pictures.h"
#include "signing/appearance.h"
#include "signing/sign_pdf.h"
#include "signing/signature_fields.h"
#include "signing/verify_pdf.h"
#include "trust/identity_certificate.h"

namespace app {
namespace {

using model::Result;

/// One person's signature: where it goes and what it says.
struct Act {
    const char* field;
    std::string role;
    std::string meaning;
};

Result<std::string> appearanceOf(const Act& act, const model::SignedIn& signer, model::UtcTime time,
                                 const IssueSettings& settings) {
    const auto facts = model::describeCertificate(signer.key().certificates().front());
    if (!facts) return facts.error();
    return reports::drawAppearance(
        {signer.person().name, act.role, act.meaning,
         model::toText(time) + ", by the signer's own clock", "Identity issued by " + facts->issuer,
         settings.timeStamps == nullptr ? "Without the time stamp of an independent service"
                                        : "With the time stamp of an independent service"},
        reports::kSignatureBoxWidthMm, reports::kSignatureBoxHeightMm, settings.fonts);
}

/// Whether every signature in the file holds and is trusted by the archive.
Result<void> checkSignatures(std::string_view pdf, const model::TrustedCertificates& trusted,
                             model::UtcTime now) {
    const auto report = reports::verifyPdf(pdf, trusted, now);
    if (!report) return report.error();
    if (report->outcome == reports::PdfOutcome::IntactAndTrusted) return {};
    std::string why = report->findings.empty() ? "" : report->findings.front();
    for (const reports::PdfSignature& signature : report->signatures)
        if (why.empty() && !signature.faults.empty())
            why = "field " + signature.field + ": " + signature.faults.front();
    const bool altered = report->outcome == reports::PdfOutcome::Altered;
    return model::Error{altered ? model::ErrorKind::Damaged : model::ErrorKind::Refused,
                        "certificate",
                        "a signature in the file does not hold: %1. It has to be returned and "
                        "presented again",
                        {why}};
}

/// `pdf` with one signature more, all of them checked.
Result<std::string> signedBy(std::string_view pdf, const Act& act, const model::SignedIn& signer,
                             const model::TrustedCertificates& trusted,
                             const IssueSettings& settings) {
    const model::UtcTime time = settings.clock->now();
    auto appearance = appearanceOf(act, signer, time, settings);
    if (!appearance) return appearance.error();
    const reports::PdfSigning signing{.field = act.field,
                                      .appearance = std::move(*appearance),
                                      .reason = act.meaning,
                                      .place = settings.place,
                                      .time = time};
    auto file =
        reports::signPdf(pdf, signing, signer.key(), trusted.revocationLists, settings.timeStamps);
    if (!file) return file;
    if (auto held = checkSignatures(*file, trusted, time); !held) return held.error();
    return file;
}

std::optional<reports::SignedReason> reasonOf(const model::SignedAct& act) {
    if (act.reason.empty()) return std::nullopt;
    return reports::SignedReason{act.name, act.time, act.reason};
}

std::vector<reports::Recorded> recordsOf(const model::Prepared& prepared) {
    std::vector<reports::Recorded> records;
    for (const model::SignedRecord& record : prepared.records())
        records.push_back({record.recorded.name, record.recorded.time, reasonOf(record.recorded),
                           record.invalid ? reasonOf(*record.invalid) : std::nullopt,
                           record.recorded.person});
    return records;
}

std::vector<std::vector<model::ConditionFinding>> findingsOf(const model::Prepared& prepared) {
    std::vector<std::vector<model::ConditionFinding>> findings;
    for (const model::SignedTest& test : prepared.tests()) findings.push_back(test.findings);
    return findings;
}

Result<std::string> unsignedCertificate(const model::Archive& archive,
                                        const model::Prepared& prepared,
                                        const model::SignedIn& inspector,
                                        const IssueSettings& settings) {
    reports::Issue issue;
    issue.number = std::to_string(prepared.number());
    issue.date = model::toText(settings.clock->now()).substr(0, 10);
    issue.worksName = settings.worksName;
    issue.worksAddress = settings.worksAddress;
    issue.demonstration = archive.kind() == model::ArchiveKind::Demonstration;
    if (prepared.facts().printedHead)
        issue.historyHead = model::toText(*prepared.facts().printedHead);
    issue.programVersion = settings.programVersion;
    issue.forRelease = true;
    issue.presentedBy = inspector.person().name;
    if (prepared.facts().supersedes)
        issue.supersedes = std::to_string(*prepared.facts().supersedes);

    const std::vector<reports::Recorded> records = recordsOf(prepared);
    const auto findings = findingsOf(prepared);
    const auto pictures = printedPictures(archive, prepared.file());
    if (!pictures) return pictures.error();
    const auto document =
        reports::certificateOf({prepared.file(), prepared.verdict(), prepared.tables(), issue,
                                records, findings, &*pictures});
    if (!document) return document.error();
    const auto rendered = reports::renderPdf(*document, settings.fonts);
    if (!rendered) return rendered.error();
    return reports::addSignatureFields(rendered->bytes, rendered->signatureFields);
}

/// What is sure to be in the way is said before a number is given out.
Result<void> checkPresentable(const model::Archive& archive, const std::string& serial) {
    const auto file = archive.casting(serial);
    if (!file) return file.error();
    const std::string& type = file->order.certificateType;
    if (!reports::isCertificateType(type))
        return model::inputError("order " + file->order.number,
                                 "\"%1\" is no type of EN 10204:2004: 2.1, 2.2, 3.1 or 3.2",
                                 {type});
    const auto tables = archive.tables();
    if (!tables) return tables.error();
    for (const model::ExaminationDraft& draft : file->examinations) {
        const model::LimitTable* table = tables->find(draft.header.table);
        if (table != nullptr && !tables->isAttested(*table))
            return model::inputError(
                serial, "limit table \"%1\" is not attested; a QA manager has to attest it first",
                {table->id});
    }
    return {};
}

}  // namespace

Result<std::int64_t> presentCasting(model::Archive& archive, const std::string& serial,
                                    const model::SignedIn& inspector,
                                    const IssueSettings& settings) {
    if (const auto fit = checkPresentable(archive, serial); !fit) return fit.error();
    const auto trusted = model::trustedCertificates(archive);
    if (!trusted) return trusted.error();
    const auto prepared = model::prepare(archive, serial, inspector);
    if (!prepared) return prepared.error();
    const auto bare = unsignedCertificate(archive, *prepared, inspector, settings);
    if (!bare) return bare.error();
    const Act act{reports::kInspectorField, "Inspector",
                  "Presents the results in this document for release"};
    const auto file = signedBy(*bare, act, inspector, *trusted, settings);
    if (!file) return file.error();
    if (const auto stored = model::present(archive, *prepared, *file, inspector); !stored)
        return stored.error();
    return prepared->number();
}

Result<void> endorseCertificate(model::Archive& archive, std::int64_t number,
                                const model::SignedIn& thirdParty, const IssueSettings& settings) {
    if (auto may = model::checkMayEndorse(archive, number, thirdParty); !may) return may;
    const auto trusted = model::trustedCertificates(archive);
    if (!trusted) return trusted.error();
    const auto waiting = model::presentedFile(archive, number);
    if (!waiting) return waiting.error();
    const std::string& body = thirdParty.person().body;
    const Act act{reports::kThirdPartyField,
                  body.empty() ? "Purchaser's or official inspector" : "Inspector for " + body,
                  "Confirms this certificate as type 3.2 of EN 10204"};
    const auto file = signedBy(*waiting, act, thirdParty, *trusted, settings);
    if (!file) return file.error();
    return model::endorse(archive, number, *file, thirdParty);
}

Result<void> releaseCertificate(model::Archive& archive, std::int64_t number,
                                const model::SignedIn& qaManager, const IssueSettings& settings) {
    // Nothing is signed in the name of somebody who may not release it.
    const auto inTheWay = model::obstacles(archive, number, qaManager.person());
    if (!inTheWay) return inTheWay.error();
    if (!inTheWay->empty())
        return model::refusal("certificate " + std::to_string(number), "%1",
                              {inTheWay->front().sentence});
    const auto trusted = model::trustedCertificates(archive);
    if (!trusted) return trusted.error();
    const auto waiting = model::presentedFile(archive, number);
    if (!waiting) return waiting.error();
    const auto facts = model::presented(archive, number);
    if (!facts) return facts.error();
    const Act act{reports::kReleaseField, "QA manager",
                  "Releases this certificate, type " + facts->facts.type + " of EN 10204"};
    const auto file = signedBy(*waiting, act, qaManager, *trusted, settings);
    if (!file) return file.error();
    return model::release(archive, number, *file, qaManager);
}

}  // namespace app
