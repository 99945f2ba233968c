// SPDX-License-Identifier: Apache-2.0
#include "signing/verify_pdf.h"

#include <algorithm>
#include <array>

#include "signing/pdf_file.h"
#include "signing/revision_changes.h"
#include "signing/signature_values.h"

namespace reports {

namespace {

using namespace signing;

struct Found {
    PdfSignature report;
    std::optional<Coverage> coverage;
};

void judgeClaimedTime(PdfSignature& report, model::UtcTime now) {
    const auto& signer = report.signature->signer;
    if (!report.claimedTime || !signer) return;
    if (*report.claimedTime < signer->validFrom || *report.claimedTime > signer->validUntil)
        report.faults.push_back("the stated time " + model::toText(*report.claimedTime) +
                                " is not within the certificate's validity");
    if (*report.claimedTime > now + std::chrono::days(1))
        report.faults.push_back("the stated time " + model::toText(*report.claimedTime) +
                                " lies in the future");
}

void checkBytes(Found& found, std::string_view pdf, const model::TrustedCertificates& trusted,
                model::UtcTime now, model::CertificateNaming naming) {
    const Coverage& coverage = *found.coverage;
    const std::array parts{
        pdf.substr(0, coverage.gapBegin),
        pdf.substr(coverage.gapEnd, coverage.end - coverage.gapEnd),
    };
    auto checked = model::verifyDetached(parts, coverage.signature, trusted, now, naming);
    if (!checked) {
        found.report.faults.push_back(checked.error().message());
        return;
    }
    found.report.faults.insert(found.report.faults.end(), checked->remarks.begin(),
                               checked->remarks.end());
    found.report.notes = checked->notes;
    found.report.signature = std::move(*checked);
    judgeClaimedTime(found.report, now);
}

Found examine(FieldValue& field, std::string_view pdf, const model::TrustedCertificates& trusted,
              model::UtcTime now) {
    Found found;
    PdfSignature& report = found.report;
    report.field = field.field;
    report.reason = textAt(field.value, "/Reason");
    report.place = textAt(field.value, "/Location");
    report.claimedTime = readDate(textAt(field.value, "/M"));
    auto covered = coverageOf(field.value, pdf);
    if (!covered.coverage) {
        report.checked = true;
        report.faults.push_back(covered.fault);
        return found;
    }
    found.coverage = std::move(covered.coverage);
    report.coveredBytes = found.coverage->end;
    report.coversWholeFile = found.coverage->end == pdf.size();
    QPDFObjectHandle kind = field.value.getKey("/SubFilter");
    const bool cades = isName(kind, "/ETSI.CAdES.detached");
    const bool known = cades || isName(kind, "/adbe.pkcs7.detached");
    checkBytes(found, pdf, trusted, now,
               cades ? model::CertificateNaming::Required : model::CertificateNaming::Optional);
    // A kind of a name unknown here may still be a known one whose name was altered.
    report.checked = known || report.signature.has_value();
    if (!known)
        report.faults.emplace_back("a signature of this kind is not checked by this program");
    return found;
}

// What came after each signature: up to the next one, behind the last up to the file's end.
void compareRevisions(std::vector<Found>& all, std::string_view pdf, QPDF& whole) {
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (!all[i].coverage) continue;
        PdfSignature& report = all[i].report;
        const std::size_t end = all[i].coverage->end;
        const auto next = std::find_if(all.begin() + static_cast<std::ptrdiff_t>(i) + 1, all.end(),
                                       [](const Found& other) { return other.coverage; });
        const std::size_t nextEnd = next == all.end() ? pdf.size() : next->coverage->end;
        if (nextEnd == end && next == all.end()) continue;
        const auto before = openPdf(pdf.substr(0, end));
        if (!before || nextEnd == end) {
            report.faults.emplace_back("the bytes that it covers are no complete revision");
            report.forbiddenChange = true;
            continue;
        }
        model::Result<std::unique_ptr<QPDF>> after =
            nextEnd == pdf.size() ? model::Result<std::unique_ptr<QPDF>>(nullptr)
                                  : openPdf(pdf.substr(0, nextEnd));
        auto changes = guarded([&]() -> model::Result<std::vector<Change>> {
            if (!after) return after.error();
            return changesBetween(**before, *after ? **after : whole);
        });
        if (!changes) {
            report.faults.push_back(changes.error().message());
            report.forbiddenChange = true;
            continue;
        }
        for (Change& change : *changes) {
            report.forbiddenChange = report.forbiddenChange || !change.permitted;
            if (!change.permitted) report.faults.push_back("after it was made, " + change.what);
            report.changedAfter.push_back(std::move(change.what));
        }
    }
}

bool isAltered(const PdfSignature& signature) {
    if (signature.forbiddenChange) return true;
    return signature.checked && (!signature.signature || !signature.signature->intact());
}

bool isTrusted(const PdfSignature& signature) {
    // A fault is whatever stands against it, a time that cannot be right included.
    return signature.checked && signature.signature && signature.signature->trusted() &&
           signature.faults.empty();
}

PdfReport alteredBy(std::string finding) {
    PdfReport report;
    report.outcome = PdfOutcome::Altered;
    report.findings.push_back(std::move(finding));
    return report;
}

// A file that cannot be read strictly. Where it was signed once, that is an alteration.
model::Result<PdfReport> judgeUnreadable(std::string_view pdf, const model::Error& error) {
    if (byteRangesIn(pdf) == 0) return error;
    if (error.kind == model::ErrorKind::Damaged)
        return alteredBy("The file was signed, and is damaged: " + error.message() + ".");
    for (const std::size_t end : statedEnds(pdf))
        if (end < pdf.size() && openPdf(pdf.substr(0, end)))
            return alteredBy("Behind a signed revision something was added: " + error.message() +
                             ".");
    return error;
}

void judgeEnd(const std::vector<Found>& all, std::size_t size, PdfReport& report) {
    const bool covered = std::any_of(all.begin(), all.end(), [&](const Found& found) {
        return found.coverage && found.coverage->end == size;
    });
    if (covered) return;
    report.outcome = PdfOutcome::Altered;
    report.findings.emplace_back(
        "No signature covers the whole file: bytes were added at its end.");
}

void conclude(PdfReport& report) {
    const auto& all = report.signatures;
    if (std::any_of(all.begin(), all.end(), isAltered)) report.outcome = PdfOutcome::Altered;
    if (report.outcome == PdfOutcome::Altered) return;
    if (all.empty())
        report.findings.emplace_back("The file is not signed.");
    else if (std::all_of(all.begin(), all.end(), isTrusted))
        report.outcome = PdfOutcome::IntactAndTrusted;
}

model::Result<PdfReport> judge(std::string_view pdf, QPDF& file,
                               const model::TrustedCertificates& trusted, model::UtcTime now) {
    PdfReport report;
    std::vector<Found> all;
    for (FieldValue& field : signatureFields(file)) {
        if (field.value.isInitialized())
            all.push_back(examine(field, pdf, trusted, now));
        else
            report.emptyFields.push_back(field.field);
    }
    std::stable_sort(all.begin(), all.end(), [](const Found& a, const Found& b) {
        return a.report.coveredBytes < b.report.coveredBytes;
    });
    if (byteRangesIn(pdf) != all.size()) {
        report.outcome = PdfOutcome::Altered;
        report.findings.emplace_back(
            "The file holds signatures that none of its signature fields shows.");
    }
    if (!all.empty()) judgeEnd(all, pdf.size(), report);
    compareRevisions(all, pdf, file);
    for (Found& found : all) report.signatures.push_back(std::move(found.report));
    if (file.anyWarnings()) {
        if (all.empty() && byteRangesIn(pdf) == 0)
            return model::Error{model::ErrorKind::Damaged, "", "the PDF file is damaged", {}};
        report.outcome = PdfOutcome::Altered;
        report.findings.emplace_back("The file is damaged.");
    }
    conclude(report);
    return report;
}

}  // namespace

model::Result<PdfReport> verifyPdf(std::string_view pdf, const model::TrustedCertificates& trusted,
                                   model::UtcTime now) {
    auto file = openPdf(pdf);
    if (!file) return judgeUnreadable(pdf, file.error());
    auto report = guarded([&] { return judge(pdf, **file, trusted, now); });
    if (!report) return judgeUnreadable(pdf, report.error());
    return report;
}

}  // namespace reports
