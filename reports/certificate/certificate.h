// SPDX-License-Identifier: Apache-2.0
// The inspection certificate of one casting, made from what the archive holds and the verdict on
// it. It decides nothing: it says what was found, by which limits it was judged and what is
// missing.
#pragma once

#include <optional>
#include <string>

#include "base/result.h"
#include "certificate/document.h"
#include "judge/verdict.h"
#include "limits/table_set.h"
#include "record/records.h"

namespace reports {

/// What belongs to the sheet of paper, not to the casting.
struct Issue {
    std::optional<std::string> number;  ///< of the certificate; none: none was given
    std::string date;                   ///< of issue, ISO 8601
    std::string worksName;
    std::string worksAddress;                ///< may be empty, may have several lines
    bool demonstration = false;              ///< the archive is a demonstration
    std::optional<std::string> historyHead;  ///< head of the archive's hash chain
    std::string programVersion;
};

/// Everything is borrowed for the call.
struct CertificateInput {
    const model::CastingFile& file;
    const model::Verdict& verdict;  ///< of judge(sheetOf(file), tables)
    const model::TableSet& tables;  ///< holds every table the verdict names, at its revision
    Issue issue;
};

/// The result that the certificate prints: the verdict's word, or "not judged" where that is
/// better than what was examined allows (a test that the zone plan requires is missing or was made
/// to another table or level, or nothing was examined).
model::Word resultOf(const model::CastingFile& file, const model::Verdict& verdict);

/// The certificate, marked as not released. Fails with ErrorKind::Input where verdict and file do
/// not belong together (another number of examinations, another zone, method, stage, cycle or
/// repeat, an indication that the verdict does not know), where a typed row cannot be read, and
/// where a table of the verdict is not at hand with the same digest.
model::Result<Document> certificateOf(const CertificateInput& input);

}  // namespace reports
