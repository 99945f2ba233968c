// SPDX-License-Identifier: Apache-2.0
// Whether the signatures in one of an archive's PDFs are those that its history has.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "archive/signed_files.h"
#include "signing/verify_pdf.h"
#include "trust/signature.h"

namespace app {

/// Where the signatures of a PDF are not those that the history has, in plain English.
std::vector<std::string> signerFaults(const std::vector<model::ExpectedSignature>& expected,
                                      const reports::PdfReport& report);

/// Everything that stands against it, in plain English; empty: nothing.
std::vector<std::string> faultsOf(const model::SignedFile& file, std::string_view pdf,
                                  const model::TrustedCertificates& trusted);

}  // namespace app
