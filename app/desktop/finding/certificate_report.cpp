// SPDX-License-Identifier: Apache-2.0
#include "finding/certificate_report.h"

#include <QCoreApplication>

#include "archive/identities.h"
#include "archive/lifecycle.h"
#include "looks/text.h"
#include "signing/verify_pdf.h"

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("CertificateReport", text);
}

QString whoOf(const reports::PdfSignature& signature) {
    if (!signature.signature || !signature.signature->signer) return tr("nobody who can be read");
    return qt(signature.signature->signer->name);
}

QString trustOf(const reports::PdfSignature& signature) {
    const auto& report = signature.signature;
    if (!report || !report->chainTrusted || !report->signer) {
        return tr("issued by nobody whom this archive trusts");
    }
    return (report->trusted() ? tr("identity issued by %1, trusted")
                              : tr("identity issued by %1, NOT trusted"))
        .arg(qt(report->signer->issuer));
}

QString timeOf(const reports::PdfSignature& signature) {
    const auto& report = signature.signature;
    if (report && report->timeStamp && report->timeStamp->trusted) {
        return tr("time-stamped %1 by %2")
            .arg(localTime(model::toText(report->timeStamp->time)),
                 qt(report->timeStamp->authority));
    }
    if (!signature.claimedTime) return tr("no time is stated");
    return tr("on %1 by the signer's own clock")
        .arg(localTime(model::toText(*signature.claimedTime)));
}

void addSignature(const reports::PdfSignature& signature, int number, QStringList& lines) {
    lines << tr("Signature %1: %2, %3").arg(number).arg(whoOf(signature), timeOf(signature));
    if (!signature.reason.empty()) lines << "    " + qt(signature.reason);
    lines << "    " + trustOf(signature);
    lines << "    " + (signature.coversWholeFile ? tr("covers the whole file")
                       : signature.forbiddenChange
                           ? tr("something other than signatures was changed after it")
                           : tr("covers all that was there; after it only signatures "
                                "were added"));
    for (const auto& fault : signature.faults) lines << "    ✗ " + qt(fault);
    for (const auto& note : signature.notes) lines << "    " + qt(note);
}

}  // namespace

model::Result<CertificateReport> verifyCertificate(const model::Archive& archive,
                                                   std::int64_t number) {
    CertificateReport report;
    const auto certificate = archive.certificate(number);
    if (!certificate) return certificate.error();
    const auto pdf = archive.certificateFile(number);
    if (!pdf && pdf.error().kind != model::ErrorKind::Damaged) return pdf.error();
    if (!pdf) {
        report.mark = Mark::Fails;
        report.headline = tr("Altered: do not rely on it");
        report.lines << sentence(pdf.error());
        return report;
    }
    const auto trusted = model::trustedCertificates(archive);
    if (!trusted) return trusted.error();
    // What cannot be said of then is said of now.
    model::UtcTime when = model::systemClock().now();
    if (const auto act = model::presented(archive, number); act && act->released) {
        when = model::timeFrom(act->released->time).value_or(when);
    }
    const auto signatures = reports::verifyPdf(*pdf, *trusted, when);
    if (!signatures) {
        report.mark = Mark::Fails;
        report.headline = tr("It cannot be checked: do not rely on it");
        report.lines << sentence(signatures.error());
        return report;
    }
    report.lines
        << tr("The file is the one that was stored (SHA-256 %1).").arg(qt(certificate->fileDigest));
    using Outcome = reports::PdfOutcome;
    if (signatures->outcome == Outcome::Altered) {
        report.mark = Mark::Fails;
        report.headline = tr("Altered: do not rely on it");
    } else if (signatures->outcome == Outcome::IntactAndTrusted &&
               signatures->emptyFields.empty()) {
        report.mark = Mark::Passes;
        report.headline = tr("Intact, signed and trusted");
    } else {
        report.headline = signatures->signatures.empty()
                              ? tr("As it was stored, but not signed")
                              : tr("Intact, but not every signature is trusted");
    }
    int count = 0;
    for (const auto& signature : signatures->signatures) {
        addSignature(signature, ++count, report.lines);
    }
    for (const auto& field : signatures->emptyFields) {
        report.lines << tr("The place for “%1” is not signed.").arg(qt(field));
    }
    for (const auto& finding : signatures->findings) report.lines << "✗ " + qt(finding);
    report.lines << tr(
        "Signatures help to detect changes. They do not replace the qualification "
        "of the people who sign.");
    return report;
}

CertificateReport reportOf(const ArchiveCheck& check) {
    CertificateReport report;
    report.mark = check.intact() ? Mark::Passes : Mark::Fails;
    report.headline =
        check.intact() ? tr("Nothing was altered")
        : check.findings.size() == 1
            ? tr("ALTERED or damaged in one place: do not rely on it")
            : tr("ALTERED or damaged in %1 places: do not rely on it").arg(check.findings.size());
    for (const auto& finding : check.findings) report.lines << "✗ " + sentence(finding);
    const auto count = [&](const QString& what, std::int64_t checked) {
        report.lines << tr("    %1: %2").arg(what).arg(checked);
    };
    report.lines << tr("Checked:");
    count(tr("rows of the history"), check.archive.head.sequence);
    count(tr("seals of the archive"), check.archive.seals);
    count(tr("signatures of people in the history"), check.archive.signatures);
    count(tr("signed records"), check.archive.records);
    count(tr("certificates and their files"), check.archive.certificates);
    count(tr("signatures in PDFs"), check.pdfSignatures);
    count(tr("limit tables"), check.archive.limitTables);
    if (check.verdicts) count(tr("verdicts, judged again"), *check.verdicts);
    if (check.unsignedPdfs > 0) {
        report.lines
            << tr("Issued unsigned, before this archive knew people: %1").arg(check.unsignedPdfs);
    }
    for (const auto& file : check.unnamedFiles) {
        report.lines << tr("%1 belongs to nothing in the archive; it does no harm.").arg(qt(file));
    }
    report.lines << tr("Head of the history: %1").arg(qt(model::toText(check.archive.head)));
    if (check.intact()) {
        report.lines << tr(
            "Note the head on paper elsewhere: with it, it can be shown later that "
            "nothing up to here was taken out.");
    }
    return report;
}

}  // namespace app
