// SPDX-License-Identifier: Apache-2.0
// The identities of people and whom an archive trusts. Errors are those of archive.h, and those of
// trust/identity.h and trust/authority.h. All but changePassphrase() is signed by an administrator.
//
// Certificates stay for ever; private keys are stored encrypted under the passphrase of whom they
// belong to, and no administrator can use them. Functions that take a passphrase take some 0.2 s
// for each on purpose: call them away from the window's thread. Wrong passphrases are counted as
// signIn() counts them.
#pragma once

#include <string>
#include <string_view>

#include "archive/archive.h"
#include "archive/sign_in.h"
#include "trust/authority.h"
#include "trust/revocation_list.h"
#include "trust/signature.h"

namespace model {

/// An identity as everybody may see it.
struct StoredIdentity {
    std::int64_t number = 0;
    std::string person;  ///< id; empty: an authority
    bool own = false;    ///< the archive's own authority, or issued by it
    CertificateFacts facts;
    std::string withdrawn;  ///< the reason, or what its authority's list says; empty: in use
};

/// Makes the archive's own authority and its first administrator with an identity valid until
/// `until`, all at once. `administrator` is given the role Administrator where it lacks it. Input
/// where the archive was set up already.
Result<void> setUp(Archive& archive, const AuthorityRequest& authority,
                   const SecretBytes& authorityPassphrase, Person administrator,
                   const SecretBytes& passphrase, UtcTime until);

/// A new identity with a new key for a person, from now on; one that the person had before is good
/// for what it signed, but no longer for signing.
Result<void> issueIdentity(Archive& archive, const std::string& personId, KeyKind kind,
                           UtcTime until, const SecretBytes& personPassphrase,
                           const SecretBytes& authorityPassphrase, const SignedIn& administrator);

/// Takes over a person's identity from a PKCS #12 file's bytes, see importPkcs12(). Its issuer has
/// to be trusted already (Input).
Result<void> importIdentity(Archive& archive, const std::string& personId, std::string_view pkcs12,
                            const SecretBytes& filePassphrase, const SecretBytes& newPassphrase,
                            const SignedIn& administrator);

/// From now on trusts people whose certificates lead to this authority's (DER).
Result<void> trustAuthority(Archive& archive, std::string_view certificate,
                            const SignedIn& administrator);

/// Takes over the complete revocation list (DER) of a trusted authority other than the own one, or
/// of one between it and somebody's identity. Whom it revokes signs no more from now on, and
/// verify() names what was signed since the list's date of revocation. Input: nobody trusted signed
/// it, it is not newer than the one that is there, or the last administrator is on it.
Result<RevocationListFacts> takeRevocationList(Archive& archive, std::string_view list,
                                               const SignedIn& administrator);

/// The person's own act; needs no administrator.
Result<void> changePassphrase(Archive& archive, const std::string& personId,
                              const SecretBytes& passphrase, const SecretBytes& newPassphrase);

/// That of the own authority, which wrong ones are counted for as for a person's.
Result<void> changeAuthorityPassphrase(Archive& archive, const SecretBytes& passphrase,
                                       const SecretBytes& newPassphrase,
                                       const SignedIn& administrator);

/// Ends the use of all the person's identities from now on, and where the own authority issued one,
/// makes its next revocation list. `remark`: in the administrator's words, may be empty. The own
/// authority's passphrase is not asked for where no list is needed.
Result<void> withdrawIdentity(Archive& archive, const std::string& personId,
                              RevocationReason reason, const std::string& remark,
                              const SecretBytes& authorityPassphrase,
                              const SignedIn& administrator);

/// A new key for the archive itself, where the file of the one before (FILE.key) is lost, so that
/// it can be written again; Input while there is a file. What the lost key sealed stays sealed.
Result<void> replaceArchiveKey(Archive& archive, const SignedIn& administrator);

/// By number.
Result<std::vector<StoredIdentity>> identities(const Archive& archive);

/// Whom to trust in verifying signatures of people: authorities, and the revocation lists.
Result<TrustedCertificates> trustedCertificates(const Archive& archive);

}  // namespace model
