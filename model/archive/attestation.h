// SPDX-License-Identifier: Apache-2.0
// Attesting limit tables: a QA manager states that the company holds the standard and that a
// table's cells agree with it. Only then may anything be released by it. Errors are those of
// archive.h, and those of checkMaySign() (sign_in.h).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/sign_in.h"
#include "archive/signed_record.h"

namespace model {

struct Attestation {
    std::string tableDigest;  ///< SHA-256 of the table's text, hexadecimal
    std::string companyCopy;  ///< what it was compared with: "copy 3 of the standards' library"
    SignedAct act;
    std::optional<SignedAct> withdrawn = {};  ///< with the reason
};

/// Those that stand, one of each table, in the order in which they were signed.
Result<std::vector<Attestation>> attestations(const Archive& archive);
/// Every one that was ever made, likewise.
Result<std::vector<Attestation>> allAttestations(const Archive& archive);

/// Signs for the table with this digest, one that the program ships or the archive has (Input).
/// `companyCopy` is not empty. Conflict: attested already.
Result<void> attest(Archive& archive, const std::string& tableDigest,
                    const std::string& companyCopy, const SignedIn& qaManager);

/// Takes back the attestation of the table with this digest, with the reason: nothing more is
/// released by it until it is attested again. Certificates that were released stand. Input: it is
/// not attested.
Result<void> withdrawAttestation(Archive& archive, const std::string& tableDigest,
                                 const std::string& reason, const SignedIn& qaManager);

}  // namespace model
