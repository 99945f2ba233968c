// SPDX-License-Identifier: Apache-2.0
// Certificates of an invented casting, unsigned and signed, and other programs' word on them.
#pragma once

#include <string>

#include "people/people.h"
#include "people/shell.h"
#include "signing/sign_pdf.h"
#include "signing/verify_pdf.h"

namespace files {

/// A certificate as rendered.
const std::string& unsignedFile();
/// The same with the empty fields Inspection, Release and Third party.
const std::string& prepared();
/// Signed by the inspector; by the QA manager after that; by the third party after that.
const std::string& once();
const std::string& twice();
const std::string& thrice();

std::string appearance(const std::string& name);
/// `pdf` signed in a field, or "" with a failed expectation.
std::string signedIn(const std::string& pdf, const std::string& field, const std::string& name,
                     const model::SigningKey& key, const model::TimeStampService* stamps = nullptr);

/// verifyPdf() with only the people's authority trusted; failing is a failed expectation.
reports::PdfReport verified(const std::string& pdf);
reports::PdfReport verified(const std::string& pdf, const model::TrustedCertificates& trusted);

/// A file as other programs see it: one.pdf, the authority's ca.pem, and an NSS database in which
/// the authority is trusted.
class Onlookers {
public:
    explicit Onlookers(const std::string& pdf);

    [[nodiscard]] people::Folder::Outcome pdfsig() const;
    [[nodiscard]] people::Folder::Outcome mutool() const;
    [[nodiscard]] people::Folder::Outcome qpdf() const;
    [[nodiscard]] const people::Folder& folder() const { return folder_; }

private:
    people::Folder folder_;
};

std::size_t countOf(const std::string& text, const std::string& part);

}  // namespace files
