// SPDX-License-Identifier: Apache-2.0
#include "signed_files.h"

#include <gtest/gtest.h>

#include "pdf/render.h"
#include "sample/sample_casting.h"
#include "signing/appearance.h"
#include "signing/signature_fields.h"
#include "trust/identity_certificate.h"

namespace files {
namespace {

std::string orEmpty(model::Result<std::string> made) {
    EXPECT_TRUE(made.ok()) << (made.ok() ? "" : made.error().message());
    return made.ok() ? std::move(made).value() : "";
}

}  // namespace

const std::string& unsignedFile() {
    static const std::string made = [] {
        const sample::Sample sample = sample::mixedCasting();
        const auto document = reports::certificateOf(sample.input());
        EXPECT_TRUE(document.ok());
        if (!document.ok()) return std::string();
        const auto rendered = reports::renderPdf(*document);
        EXPECT_TRUE(rendered.ok());
        return rendered.ok() ? rendered->bytes : std::string();
    }();
    return made;
}

const std::string& prepared() {
    static const std::string made =
        orEmpty(reports::addSignatureFields(unsignedFile(), {{"Inspection", 0, 20, 15, 55, 20},
                                                             {"Release", 0, 78, 15, 55, 20},
                                                             {"Third party", 0, 136, 15, 55, 20}}));
    return made;
}

std::string appearance(const std::string& name) {
    return orEmpty(reports::drawAppearance(
        {name, "signed on " + model::toText(people::now()), "Quillmere Gießerei"}, 55, 20));
}

std::string signedIn(const std::string& pdf, const std::string& field, const std::string& name,
                     const model::SigningKey& key, const model::TimeStampService* stamps) {
    reports::PdfSigning signing;
    signing.field = field;
    signing.appearance = appearance(name);
    signing.reason = field + ": geprüft für Žďár";
    signing.place = "Quillmere";
    signing.time = people::now();
    return orEmpty(reports::signPdf(pdf, signing, key, {}, stamps));
}

const std::string& once() {
    static const std::string made =
        signedIn(prepared(), "Inspection", people::kInspectorName, people::inspectorKey());
    return made;
}

const std::string& twice() {
    static const std::string made =
        signedIn(once(), "Release", people::kManagerName, people::managerKey());
    return made;
}

const std::string& thrice() {
    static const std::string made =
        signedIn(twice(), "Third party", people::kThirdPartyName, people::thirdPartyKey());
    return made;
}

reports::PdfReport verified(const std::string& pdf) {
    static const model::TrustedCertificates trusted = people::trust();
    return verified(pdf, trusted);
}

reports::PdfReport verified(const std::string& pdf, const model::TrustedCertificates& trusted) {
    auto report = reports::verifyPdf(pdf, trusted, people::now());
    EXPECT_TRUE(report.ok()) << (report.ok() ? "" : report.error().message());
    return report.ok() ? std::move(report).value() : reports::PdfReport{};
}

Onlookers::Onlookers(const std::string& pdf) {
    folder_.write("one.pdf", pdf);
    folder_.write("ca.pem", model::certificateToPem(people::authority().certificate()));
    const auto made = folder_.run(
        "mkdir nss && certutil -N -d sql:nss --empty-password && certutil -A -d sql:nss -n "
        "Quillmere -t ,C, -i ca.pem");
    EXPECT_EQ(made.code, 0) << made.output;
}

people::Folder::Outcome Onlookers::pdfsig() const {
    return folder_.run("pdfsig -nssdir sql:nss one.pdf");
}

people::Folder::Outcome Onlookers::mutool() const {
    return folder_.run("mutool sign -v one.pdf");
}

people::Folder::Outcome Onlookers::qpdf() const {
    return folder_.run("qpdf --check one.pdf");
}

std::size_t countOf(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
        ++count;
    return count;
}

}  // namespace files
