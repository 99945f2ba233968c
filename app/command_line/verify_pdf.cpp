// SPDX-License-Identifier: Apache-2.0
#include "verify_pdf.h"

#include <optional>

#include "archive/archive.h"
#include "archive/identities.h"
#include "base/clock.h"
#include "checking/check_pdf.h"
#include "qt_core.h"
#include "signing/verify_pdf.h"
#include "streams.h"
#include "trust/identity_certificate.h"
#include "verify_known.h"
#include "whole_file.h"

namespace app {
namespace {

using model::Result;

constexpr std::size_t kLargestPdf = 512U << 20U;
constexpr std::size_t kLargestPem = 1U << 20U;

/// A line of the report. What a PDF or a certificate says may hold anything: it stays one line.
std::string lineOf(const std::string& text) {
    return asOneLine(text) + "\n";
}

std::string whoOf(const reports::PdfSignature& signature) {
    if (!signature.signature || !signature.signature->signer) return "nobody who could be read";
    const model::CertificateFacts& signer = *signature.signature->signer;
    std::string text = signer.name.empty() ? "a signer without a name" : signer.name;
    if (!signer.organisation.empty()) text += " (" + signer.organisation + ")";
    return text;
}

std::string coverageText(const reports::PdfSignature& signature) {
    if (signature.coversWholeFile) return "covers the whole file";
    if (signature.coveredBytes == 0) return "covers nothing that could be checked";
    return "covers the first " + std::to_string(signature.coveredBytes) + " bytes, and what came " +
           "after it is " + (signature.forbiddenChange ? "NOT only" : "only") +
           " further signatures";
}

std::string trustText(const reports::PdfSignature& signature) {
    const auto& report = signature.signature;
    if (!report || !report->chainTrusted || !report->signer) return "trusted by nobody known here";
    if (!report->trusted()) return "issued by " + report->signer->issuer + ", not trusted";
    return "trusted by " + report->signer->issuer;
}

std::string timeText(const reports::PdfSignature& signature) {
    if (signature.signature && signature.signature->timeStamp &&
        signature.signature->timeStamp->trusted)
        return "time-stamped " + model::toText(signature.signature->timeStamp->time) + " by " +
               signature.signature->timeStamp->authority;
    if (!signature.claimedTime) return "no time is claimed";
    return "claims " + model::toText(*signature.claimedTime);
}

std::string signatureText(std::size_t number, const reports::PdfSignature& signature) {
    std::string line = "signature " + std::to_string(number) + ": field \"" + signature.field +
                       "\", by " + whoOf(signature) + ", " + timeText(signature) + ", " +
                       coverageText(signature) + ", " + trustText(signature);
    if (!signature.reason.empty()) line += "; reason: " + signature.reason;
    if (!signature.place.empty()) line += "; place: " + signature.place;
    std::string text = lineOf(line);
    for (const std::string& fault : signature.faults) text += lineOf("  against it: " + fault);
    for (const std::string& note : signature.notes) text += lineOf("  note: " + note);
    return text;
}

ExitCode exitCodeOf(const reports::PdfReport& report) {
    switch (report.outcome) {
        case reports::PdfOutcome::Altered:
            return ExitCode::NotAcceptable;
        case reports::PdfOutcome::NotTrusted:
            break;
        case reports::PdfOutcome::IntactAndTrusted:
            if (report.emptyFields.empty()) return ExitCode::Done;
            break;
    }
    return ExitCode::NotJudged;
}

std::string resultText(ExitCode code, const reports::PdfReport& report) {
    if (code == ExitCode::NotAcceptable) return "ALTERED: do not rely on it";
    if (code == ExitCode::Done) return "intact, signed and trusted";
    if (report.signatures.empty()) return "not signed";
    if (report.outcome == reports::PdfOutcome::IntactAndTrusted)
        return "intact, but not every signature field is signed";
    return "intact, but not trusted";
}

Result<void> trustPem(const std::string& file, model::TrustedCertificates& trusted) {
    const Result<std::string> pem = readWholeFile(file, kLargestPem);
    if (!pem) return pem.error();
    const Result<std::vector<std::string>> certificates = model::certificatesFromPem(*pem);
    if (!certificates) {
        model::Error error = certificates.error();
        error.place = file;
        return error;
    }
    for (const std::string& certificate : *certificates) {
        trusted.anchors.push_back(certificate);
        trusted.timeStampAnchors.push_back(certificate);
    }
    return {};
}

}  // namespace

Result<Outcome> verifyPdfFile(const Arguments& arguments) {
    const std::string& file = arguments.operand();
    const Result<std::string> pdf = readWholeFile(file, kLargestPdf);
    if (!pdf) return pdf.error();

    model::TrustedCertificates trusted;
    KnownFile known;
    if (const std::string* database = arguments.value("--db")) {
        const QtCore qt;
        const Result<model::Archive> archive = model::Archive::open(*database);
        if (!archive) return archive.error();
        Result<model::TrustedCertificates> stored = model::trustedCertificates(*archive);
        if (!stored) return stored.error();
        trusted = std::move(stored).value();
        Result<KnownFile> found = findKnownFile(*archive, *pdf);
        if (!found) return found.error();
        known = std::move(found).value();
    }
    if (const std::string* pem = arguments.value("--trust"))
        if (const auto added = trustPem(*pem, trusted); !added) return added.error();

    const auto report = reports::verifyPdf(*pdf, trusted, model::systemClock().now());
    // What cannot even be read as a PDF is the wrong input, damaged or not.
    if (!report) return model::inputError(file, report.error().message());

    std::vector<std::string> against;
    if (known.signatures) against = signerFaults(*known.signatures, *report);
    Outcome outcome{against.empty() ? exitCodeOf(*report) : ExitCode::NotAcceptable, ""};
    outcome.text = lineOf(file + ": " + resultText(outcome.code, *report));
    for (std::size_t i = 0; i < report->signatures.size(); ++i)
        outcome.text += signatureText(i + 1, report->signatures[i]);
    for (const std::string& field : report->emptyFields)
        outcome.text += lineOf("field \"" + field + "\": not signed");
    for (const std::string& finding : report->findings)
        outcome.text += lineOf("finding: " + finding);
    if (trusted.anchors.empty())
        outcome.text += lineOf("note: no authority is trusted; give --db or --trust");
    if (!known.text.empty()) outcome.text += lineOf("archive: " + known.text);
    for (const std::string& fault : against) outcome.text += lineOf("  against it: " + fault);
    return outcome;
}

}  // namespace app
