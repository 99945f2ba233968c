// SPDX-License-Identifier: Apache-2.0
// The inspection certificate of one casting, made from what the archive holds and the verdict on
// it. It decides nothing: it says what was found, by which limits it was judged and what is
// missing. It is printed in two states: not released, for reading, marked so on every page; and
// to be released, with places for the signatures that release it.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/result.h"
#include "certificate/document.h"
#include "conditions/validity.h"
#include "judge/verdict.h"
#include "limits/table_set.h"
#include "record/records.h"

namespace reports {

/// What a person signed about an examination, and why.
struct SignedReason {
    std::string by;
    std::string on;  ///< UTC, ISO 8601
    std::string reason;
};

/// Who stands for an examination.
struct Recorded {
    std::string by;                           ///< who signed its record
    std::string on;                           ///< UTC, ISO 8601
    std::optional<SignedReason> rejected;     ///< by a Level 2 or 3, whatever the limits say
    std::optional<SignedReason> invalidated;  ///< by a Level 3: it does not count as a repeat
    std::string byId = {};  ///< the same as an id: Qualification::person; empty: not known
};

/// Fields of the PDF in which a certificate is signed.
inline constexpr const char* kInspectorField = "Inspector";
inline constexpr const char* kThirdPartyField = "Third party";  ///< type 3.2 only
inline constexpr const char* kReleaseField = "Release";

/// What belongs to the sheet of paper, not to the casting.
struct Issue {
    std::optional<std::string> number;  ///< of the certificate; none: none was given
    std::string date;                   ///< of issue, ISO 8601
    std::string worksName;
    std::string worksAddress;                ///< may be empty, may have several lines
    bool demonstration = false;              ///< the archive is a demonstration
    std::optional<std::string> historyHead;  ///< head of the archive's hash chain
    std::string programVersion;
    /// To be released: made for signing, without the marks of a document that nobody released.
    bool forRelease = false;
    std::string presentedBy = {};  ///< for release: the inspector who presents it
    /// Number of the certificate that this one replaces.
    std::optional<std::string> supersedes = {};
    std::string worksMark = {};       ///< as the works marks its castings; may be empty
    std::string establishedBy = {};   ///< who makes the document, where that is not the works
    std::string productMarking = {};  ///< what goes with a CE or other marking; may be empty
};

/// Everything is borrowed for the call.
struct CertificateInput {
    const model::CastingFile& file;
    const model::Verdict& verdict;  ///< of judge(sheetOf(file), tables)
    const model::TableSet& tables;  ///< holds every table the verdict names, at its revision
    Issue issue;
    /// For release: one for each examination, in the file's order. Else what is there, or nothing.
    std::span<const Recorded> records = {};
    /// Of each examination, in the file's order, as validityOf() gave them; or nothing.
    std::span<const std::vector<model::ConditionFinding>> findings = {};
    /// Bytes of the attachments that are to be printed, by SHA-256; null: they are only listed,
    /// which is refused for release.
    const std::map<std::string, std::string>* pictures = nullptr;
};

/// The result that the certificate prints: the verdict's word, or "not judged" where that is
/// better than what was examined allows (a test that the zone plan requires is missing or was made
/// to another table or level, or nothing was examined).
model::Word resultOf(const model::CastingFile& file, const model::Verdict& verdict);

/// "2.1", "2.2", "3.1" and "3.2" of EN 10204:2004.
bool isCertificateType(const std::string& type);

/// The certificate. Fails with ErrorKind::Input where verdict and file do not belong together
/// (another number of examinations, another zone, method, stage, cycle or repeat, an indication
/// that the verdict does not know), where a typed row cannot be read, and where a table of the
/// verdict is not at hand with the same digest. For release it also fails for a result that is not
/// judged, for a limit table that nobody attested, without a number, a head of the history or who
/// presents it, for an order without a type of EN 10204:2004, for an examination that nobody signed
/// or that was rejected against the verdict, or whose test conditions stand against it, and for an
/// acceptable casting with an open nonconformance. Fails for a picture whose bytes are not those of
/// its attachment; whether they can be decoded shows when the document is drawn.
model::Result<Document> certificateOf(const CertificateInput& input);

}  // namespace reports
