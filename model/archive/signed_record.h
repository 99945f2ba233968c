// SPDX-License-Identifier: Apache-2.0
// Signing what the bench recorded. A signed examination is a record: it never changes. What is
// found wrong later is put right in the next revision, after a QA manager gave the casting back
// (lifecycle.h) with the reason; every revision stays. Errors are those of archive.h, and those of
// checkMaySign() (sign_in.h) for whatever a person signs.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/sign_in.h"

namespace model {

/// Who signed something, and when.
struct SignedAct {
    std::int64_t sequence = 0;  ///< of its row in the history
    std::string person;         ///< id
    std::string name;           ///< as it was then
    std::string time;           ///< UTC
    std::string reason;         ///< where the act has one; else empty

    friend bool operator==(const SignedAct&, const SignedAct&) = default;
};

/// An examination as it was signed.
struct SignedRecord {
    std::int64_t id = 0;           ///< the number of the row of the history that signed it
    std::int64_t examination = 0;  ///< id of its draft
    int revision = 1;              ///< of that examination: 1, 2 ...
    std::string casting;           ///< serial
    /// As it was judged on being signed, beside what the casting had then; a rejection makes it
    /// not acceptable. The word for the casting comes from judging all its records together.
    Word word = Word::NotJudged;
    SignedAct recorded;                  ///< reason: of a rejection; empty: not rejected
    std::optional<SignedAct> invalid;    ///< a Level 3 declared it invalid
    std::optional<SignedAct> givenBack;  ///< a QA manager gave it back: it no longer stands
};

/// Where an examination stands. Signed exactly while its last record was not given back.
struct ExaminationState {
    std::int64_t examination = 0;
    std::vector<SignedRecord> records;  ///< by revision; empty: never signed

    /// The record that stands; null: it is a draft, of the next revision.
    [[nodiscard]] const SignedRecord* standing() const {
        return records.empty() || records.back().givenBack ? nullptr : &records.back();
    }
};

/// Of all examinations of a casting, by id.
Result<std::vector<ExaminationState>> examinationStates(const Archive& archive,
                                                        const std::string& serial);
Result<SignedRecord> signedRecord(const Archive& archive, std::int64_t id);
/// What was signed, byte for byte (canonical bytes; HISTORY.md). Damaged: they are not those whose
/// SHA-256 the history has. Input: it was disposed of (retention.h).
Result<std::string> signedRecordContent(const Archive& archive, std::int64_t id);

/// A qualified person's rejection of what the rules accept.
struct Rejection {
    std::string reason;  ///< not empty
};

/// Signs the stored draft: from then on it cannot be saved. The archive judges it itself, beside
/// the casting's other examinations; other drafts that cannot be read yet are left out, and the
/// record says beside which it was judged. `inspector` is an inspector; a rejection needs Level 2
/// or 3 of the method (Refused). Nothing can make a word better. Conflict: the draft has another
/// version than `draftVersion`, is signed already, or order, part or casting changed meanwhile.
/// Refused: a condition of the test keeps it from being signed (test_validity.h). Returns the
/// record's id.
Result<std::int64_t> signRecord(Archive& archive, std::int64_t draftId, std::int64_t draftVersion,
                                const std::optional<Rejection>& rejection,
                                const SignedIn& inspector);

/// An inspector with Level 3 of the method states why an examination was invalid: of the same zone,
/// method, stage and repair cycle another record has to stand that is valid (Input), which then
/// counts instead of the worse of both. Both stay, and both are printed.
Result<void> invalidateRecord(Archive& archive, std::int64_t recordId, const std::string& reason,
                              const SignedIn& level3);

}  // namespace model
