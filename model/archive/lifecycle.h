// SPDX-License-Identifier: Apache-2.0
// From signed records to a released certificate, and what may follow.
//
//   records --prepare, present--> waiting --release--> released --withdraw--> withdrawn
//                                    |                     |
//                                 return                reopen
//                                    v                     v
//                              drafts again           drafts again, and the next
//                                                     release supersedes it
//
// A certificate number is given out once. One that was returned stays used up, and says why.
// Whoever signs decides about a word that only judging makes: no function here takes one. "Not
// acceptable" may be released, on a certificate that says so; "not judged" may not.
//
// The PDF is made by the caller, who signs it in the person's name before handing it over; the
// archive checks that each file holds the one before it byte for byte and adds something, and that
// whoever hands it over may. Files are those of archive.h: whole or not at all, named by SHA-256.
//
// Errors are those of archive.h, and those of checkMaySign() (sign_in.h). Refused: the person may
// not do it. Conflict: somebody else did something meanwhile; nothing was written.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "archive/archive.h"
#include "archive/sign_in.h"
#include "archive/signed_record.h"
#include "archive/test_validity.h"

namespace model {

/// A casting all of whose examinations are signed, judged, with a certificate number of its own:
/// what a certificate is made from. Made by prepare() alone.
class Prepared {
public:
    /// `used` is as it was when the examinations were signed.
    [[nodiscard]] const CastingFile& file() const { return file_; }
    [[nodiscard]] const Verdict& verdict() const { return verdict_; }
    [[nodiscard]] const TableSet& tables() const { return tables_; }
    /// In the order of file().examinations.
    [[nodiscard]] const std::vector<SignedRecord>& records() const { return records_; }
    /// Under what conditions each was made, in the same order.
    [[nodiscard]] const std::vector<SignedTest>& tests() const { return tests_; }
    [[nodiscard]] std::int64_t number() const { return number_; }
    /// With the head to be printed, and what it will supersede. The verdict is castingWord().
    [[nodiscard]] const IssueFacts& facts() const { return facts_; }
    [[nodiscard]] const std::string& sheetJson() const { return sheetJson_; }      ///< contract
    [[nodiscard]] const std::string& verdictJson() const { return verdictJson_; }  ///< contract

private:
    friend struct Preparing;
    Prepared() = default;

    CastingFile file_;
    Verdict verdict_;
    TableSet tables_;
    std::vector<SignedRecord> records_;
    std::vector<SignedTest> tests_;
    std::int64_t number_ = 0;
    IssueFacts facts_;
    std::string sheetJson_;
    std::string verdictJson_;
    std::int64_t orderVersion_ = 0;
    std::int64_t partVersion_ = 0;
    std::int64_t castingVersion_ = 0;
};

/// Judges a casting and reserves a certificate number. Input: an examination is not signed yet
/// (it is named), there is none, or the casting is certified as it stands. Conflict: it waits for
/// release already. Refused: `inspector` is no inspector or recorded none of its examinations.
Result<Prepared> prepare(Archive& archive, const std::string& serial, const SignedIn& inspector);

/// Puts it into the release queue. `pdf` carries the inspector's signature already. Conflict where
/// anything that it was made from changed since prepare(); the number then stays unused.
Result<void> present(Archive& archive, const Prepared& prepared, std::string_view pdf,
                     const SignedIn& inspector);

enum class CertificateState { Waiting, Returned, Released, Superseded, Withdrawn };
std::string_view word(CertificateState state);  ///< "waiting for release", "returned" ...

/// A presented casting and what became of it.
struct Presented {
    std::int64_t number = 0;
    IssueFacts facts;
    std::vector<std::int64_t> records;  ///< ids of the records it was made from
    /// Required tests not made, made to other criteria, or by others and without a verdict.
    std::vector<std::string> missingTests;
    std::string programVersion;  ///< which judged it
    std::string fileDigest;      ///< of the last signed file before release
    SignedAct presented;
    std::optional<SignedAct> endorsed;   ///< by the third party
    std::optional<SignedAct> returned;   ///< with the reason
    std::optional<SignedAct> released;   ///< by the QA manager
    std::optional<SignedAct> withdrawn;  ///< with the reason
    std::optional<std::int64_t> supersededBy;

    [[nodiscard]] CertificateState state() const;
};

/// The release queue: what waits, by number.
Result<std::vector<Presented>> presented(const Archive& archive);
Result<Presented> presented(const Archive& archive, std::int64_t number);
/// All of a casting's, by number, whatever became of them.
Result<std::vector<Presented>> presentedOf(const Archive& archive, const std::string& serial);
/// The last signed file before release: with the third party's signature where there is one.
Result<std::string> presentedFile(const Archive& archive, std::int64_t number);
/// The sheet that was judged, and the verdict, in the contract's formats.
Result<std::string> presentedSheet(const Archive& archive, std::int64_t number);
Result<std::string> presentedVerdict(const Archive& archive, std::int64_t number);
/// What the registers held of the casting then.
Result<Dossier> presentedDossier(const Archive& archive, std::int64_t number);

/// Why a certificate cannot be released now, by this person.
struct Obstacle {
    enum class Kind {
        NotWaiting,         ///< released or returned already
        NoQaManager,        ///< has not the role
        RecordedByPerson,   ///< recorded, presented or endorsed it
        Manufacturing,      ///< EN 10204:2004, types 3.1 and 3.2
        TableNotAttested,   ///< a limit table that nobody attested before it was presented, or
                            ///< whose attestation was withdrawn
        RequiredTest,       ///< of zone plan or order: missing, or made to other criteria
        NotJudged,          ///< something could not be judged, or the order cannot be read
        RepairOpen,         ///< a nonconformance is not closed, or a repair leads nowhere
        Changed,            ///< records, registers, order, part, casting or limit tables changed
                            ///< since
        ThirdPartyMissing,  ///< type 3.2 without the third party's signature
    } kind = Kind::NotWaiting;
    std::string sentence;  ///< plain English, whole: "B. Bench recorded one of its examinations."
};

/// What stands in the way of release by this person; empty: nothing.
Result<std::vector<Obstacle>> obstacles(const Archive& archive, std::int64_t number,
                                        const Person& person);

/// A QA manager gives a waiting casting back: its examinations become drafts of their next
/// revision; the number stays used up.
Result<void> returnCasting(Archive& archive, std::int64_t number, const std::string& reason,
                           const SignedIn& qaManager);

/// Whether a third party may sign a waiting certificate: to be asked before the PDF is signed in
/// their name. Fails as endorse() does.
Result<void> checkMayEndorse(const Archive& archive, std::int64_t number,
                             const SignedIn& thirdParty);

/// The third party's signature on a certificate of type 3.2: `pdf` is the presented file with one
/// signature more. Refused: recorded or presented by the same person, or whatever would stand in
/// the way of anybody's release.
Result<void> endorse(Archive& archive, std::int64_t number, std::string_view pdf,
                     const SignedIn& thirdParty);

/// Releases: `pdf` is presentedFile() with the QA manager's signature as the last. Refused with the
/// first of obstacles(); Conflict where it was released or returned meanwhile.
Result<void> release(Archive& archive, std::int64_t number, std::string_view pdf,
                     const SignedIn& qaManager);

/// Declares a released certificate void. It stays, with the reason.
Result<void> withdraw(Archive& archive, std::int64_t number, const std::string& reason,
                      const SignedIn& qaManager);

/// For a correction, gives back all signed examinations of a casting that does not wait for
/// release; they become drafts of their next revision. A released certificate stands until it is
/// withdrawn or the next one supersedes it.
Result<void> reopen(Archive& archive, const std::string& serial, const std::string& reason,
                    const SignedIn& qaManager);

}  // namespace model
