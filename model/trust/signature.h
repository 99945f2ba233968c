// SPDX-License-Identifier: Apache-2.0
// Detached signatures over bytes: CMS SignedData (RFC 5652) with content-type, message-digest and
// signing-certificate-v2 (RFC 5035) as signed attributes and no signing-time, so that the same
// signature serves records, history rows and PAdES baseline B-B (ETSI EN 319 142-1).
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "trust/identity_certificate.h"
#include "trust/key_signing.h"

namespace model {

class TimeStampService;

/// Signs the parts one after the other as if they were one text, with SHA-256, at `now`; the
/// key's certificates are put into the signature. Fails where a certificate is not valid at `now`
/// or has been revoked by a list, and where the time-stamp service, if one is given, does not
/// answer. Returns DER. Whoever signs decides what: show it to the person first.
Result<std::string> signDetached(std::span<const std::string_view> parts, const SigningKey& key,
                                 UtcTime now, std::span<const std::string> revocationLists = {},
                                 const TimeStampService* timeStamps = nullptr);
Result<std::string> signDetached(std::string_view bytes, const SigningKey& key, UtcTime now,
                                 std::span<const std::string> revocationLists = {},
                                 const TimeStampService* timeStamps = nullptr);

/// The same without certificates inside, for rows whose signers' certificates are kept beside them:
/// some 500 bytes. Whoever checks it hands the certificates in.
Result<std::string> signBeside(std::string_view bytes, const SigningKey& key, UtcTime now,
                               std::span<const std::string> revocationLists = {});

/// No signature of signDetached() by this key is longer, without a time stamp.
std::size_t longestSignature(const SigningKey& key);
/// What a time stamp may add at most; signDetached() refuses a longer one.
inline constexpr std::size_t kLongestTimeStamp = std::size_t{16} * 1024;

/// Whom a verification trusts; all DER.
struct TrustedCertificates {
    std::vector<std::string> anchors;
    std::vector<std::string> intermediates;  ///< not trusted by themselves
    std::vector<std::string> revocationLists;
    std::vector<std::string> timeStampAnchors;
};

struct Revocation {
    UtcTime since{};
    std::string reason;

    friend bool operator==(const Revocation&, const Revocation&) = default;
};

struct TimeStampReport {
    UtcTime time{};
    std::string authority;  ///< the time-stamp service's name in its certificate
    bool intact = false;    ///< its own signature holds and it is about this signature
    bool trusted = false;   ///< intact, and its certificate leads to one of timeStampAnchors
};

/// Plain facts about one signature; each was checked on its own.
struct SignatureReport {
    std::optional<CertificateFacts> signer;  ///< none: no certificate for the signer was found
    bool sound = false;              ///< form as the standards ask; every byte of it accounted for
    bool contentUnchanged = false;   ///< the bytes are those that were signed
    bool signatureFits = false;      ///< made by the key of the signer's certificate
    bool certificateNamed = false;   ///< the signed attributes name exactly that certificate
    bool chainTrusted = false;       ///< leads to one of the anchors; regardless of dates
    bool expired = false;            ///< a certificate of the chain had ended at `judgedAt`
    bool notYetValid = false;        ///< or had not begun
    bool revocationChecked = false;  ///< a list was at hand for every issued certificate
    bool revocationOutOfDate = false;    ///< but a newer one of them is overdue
    bool revocationListDamaged = false;  ///< a list that was given cannot be used
    std::optional<Revocation> revoked;   ///< at or before `judgedAt`
    std::optional<TimeStampReport> timeStamp;
    UtcTime judgedAt{};  ///< the trusted time stamp's time, else the time that was handed in
    std::vector<std::string> remarks;  ///< what stands against it, in plain English
    std::vector<std::string> notes;    ///< what to know beside, in plain English

    /// The bytes are what the holder of the key signed; says nothing of who that is.
    [[nodiscard]] bool intact() const {
        return sound && contentUnchanged && signatureFits && (!timeStamp || timeStamp->intact);
    }
    /// And it is known who. A missing revocation list does not stand against it, see
    /// revocationChecked.
    [[nodiscard]] bool trusted() const {
        return intact() && chainTrusted && !expired && !notYetValid && !revoked &&
               !revocationListDamaged;
    }
};

/// Whether signing-certificate-v2 must be there: always in what this program signs.
enum class CertificateNaming { Required, Optional };

/// Checks a signature that lies beside its content. `at` is when the certificates must have been
/// valid and not revoked: the present, unless something else than the signer proves another time;
/// a trusted time stamp in the signature takes its place. Fails (Damaged) for bytes that are no
/// CMS signature of exactly one signer.
Result<SignatureReport> verifyDetached(std::span<const std::string_view> parts,
                                       std::string_view signature,
                                       const TrustedCertificates& trusted, UtcTime at,
                                       CertificateNaming naming = CertificateNaming::Required);
Result<SignatureReport> verifyDetached(std::string_view bytes, std::string_view signature,
                                       const TrustedCertificates& trusted, UtcTime at);

}  // namespace model
