// SPDX-License-Identifier: Apache-2.0
// Finding the signatures of a PDF and what each covers. For the .cpp files of this folder only.
#pragma once

#include <optional>
#include <qpdf/QPDF.hh>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"

namespace reports::signing {

struct FieldValue {
    std::string field;
    QPDFObjectHandle value;  ///< the signature dictionary; not initialised: an empty field
};

/// All signature fields of the form, those below other fields too.
std::vector<FieldValue> signatureFields(QPDF& file);

/// What a /ByteRange says, checked: two ranges from the file's begin on, and between them exactly
/// the /Contents string, in hexadecimal digits of one case.
struct Coverage {
    std::size_t gapBegin = 0;
    std::size_t gapEnd = 0;
    std::size_t end = 0;
    std::string signature;  ///< the bytes of /Contents without the zeros that fill it up
};

/// The coverage, or a fault in plain English.
struct CoverageResult {
    std::optional<Coverage> coverage;
    std::string fault;
};
CoverageResult coverageOf(QPDFObjectHandle signature, std::string_view pdf);

/// Reads "D:20261125093000Z", "D:20261125093000+01'00'".
std::optional<model::UtcTime> readDate(const std::string& text);

/// Ends of signed revisions by the text of the file alone, for files whose structure is broken.
std::vector<std::size_t> statedEnds(std::string_view pdf);

/// How often "/ByteRange" stands in the file.
std::size_t byteRangesIn(std::string_view pdf);

}  // namespace reports::signing
