// SPDX-License-Identifier: Apache-2.0
#include "checking/check_pdf.h"

#include <algorithm>
#include <iterator>

namespace app {
namespace {

void addFaultsIn(const reports::PdfReport& report, std::vector<std::string>& faults) {
    for (const std::string& finding : report.findings) faults.push_back("its PDF: " + finding);
    for (const reports::PdfSignature& signature : report.signatures)
        for (const std::string& fault : signature.faults)
            faults.push_back("its PDF, signature \"" + signature.field + "\": " + fault);
    if (faults.empty() && report.outcome != reports::PdfOutcome::IntactAndTrusted)
        faults.emplace_back("its PDF is not signed by anybody who is trusted");
}

}  // namespace

std::vector<std::string> signerFaults(const std::vector<model::ExpectedSignature>& expected,
                                      const reports::PdfReport& report) {
    std::vector<std::string> faults;
    if (report.signatures.size() != expected.size())
        faults.push_back(
            "its PDF has signatures: " + std::to_string(report.signatures.size()) +
            ", but the history has acts that put one into it: " + std::to_string(expected.size()));
    for (std::size_t i = 0; i < std::min(expected.size(), report.signatures.size()); ++i) {
        const auto& signature = report.signatures[i].signature;
        if (signature && signature->signer &&
            signature->signer->fingerprint == expected[i].fingerprint)
            continue;
        faults.push_back("its PDF, signature \"" + report.signatures[i].field + "\": is not by " +
                         expected[i].name + ", who signed history row " +
                         std::to_string(expected[i].sequence));
    }
    return faults;
}

std::vector<std::string> faultsOf(const model::SignedFile& file, std::string_view pdf,
                                  const model::TrustedCertificates& trusted) {
    const auto report = reports::verifyPdf(pdf, trusted, file.time);
    if (!report) return {"its PDF cannot be read: " + report.error().message()};
    std::vector<std::string> faults;
    addFaultsIn(*report, faults);
    std::ranges::move(signerFaults(file.signatures, *report), std::back_inserter(faults));
    if (file.released)
        for (const std::string& field : report->emptyFields)
            faults.push_back("its PDF, signature \"" + field + "\": is missing");
    return faults;
}

}  // namespace app
