// SPDX-License-Identifier: Apache-2.0
// The signed PDFs that an archive keeps, with what their signatures have to be, and files beside
// it that it knows nothing of. The archive does not look into a PDF: whoever can read signatures
// in one compares them with this.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "archive/archive.h"

namespace model {

/// A signature that has to be in a PDF, as the history has the act that it belongs to.
struct ExpectedSignature {
    std::int64_t sequence = 0;  ///< of the act's row in the history
    std::string person;         ///< id of who signed the act
    std::string name;           ///< as it was then
    std::string fingerprint;    ///< SHA-256 of the certificate that signed the act, hexadecimal
};

/// The last file of a presented casting; the earlier ones are its beginning, byte for byte, which
/// Archive::verify() checks.
struct SignedFile {
    std::int64_t number = 0;  ///< of the certificate
    std::string digest;       ///< SHA-256 of its bytes, hexadecimal
    UtcTime time{};           ///< of the last act: until then its signers' certificates had to hold
    bool released = false;    ///< else it waits or was returned, and lacks a signature
    std::vector<ExpectedSignature> signatures;  ///< in the order in which they were made
};

/// Every one, by number, rising, until `take` returns false; as of one moment. Damaged: a row
/// that it needs is not there or not understood.
Result<void> eachSignedFile(const Archive& archive,
                            const std::function<bool(const SignedFile&)>& take);

/// That of one certificate; none where it was not presented.
Result<std::optional<SignedFile>> signedFile(const Archive& archive, std::int64_t number);

/// The certificate of which a file with this SHA-256 is or was one: the released one, or one that
/// was signed before its release. None: it is no certificate's.
Result<std::optional<std::int64_t>> certificateOfFile(const Archive& archive,
                                                      const std::string& digest);

/// How many there are.
Result<std::int64_t> signedFileCount(const Archive& archive);

/// The bytes of a SHA-256; Damaged: gone or altered. From any thread, as it asks no database.
using FileReader = std::function<Result<std::string>(const std::string& digest)>;
FileReader fileReader(const Archive& archive);

/// What lies in the archive's folder of files and is named by none of its rows, sorted: a write
/// that was cut short leaves such a file. Refused: the folder cannot be read.
Result<std::vector<std::string>> unnamedFiles(const Archive& archive);

}  // namespace model
