// SPDX-License-Identifier: Apache-2.0
#include "trust/identity_revocation.h"

#include <openssl/err.h>
#include <openssl/x509v3.h>

namespace model::openssl {
namespace {

long reasonOf(X509_REVOKED* entry) {
    const Owned<ASN1_ENUMERATED, ASN1_ENUMERATED_free> reason(static_cast<ASN1_ENUMERATED*>(
        X509_REVOKED_get_ext_d2i(entry, NID_crl_reason, nullptr, nullptr)));
    return reason ? ASN1_ENUMERATED_get(reason.get()) : CRL_REASON_UNSPECIFIED;
}

std::string reasonText(long reason) {
    switch (reason) {
        case CRL_REASON_KEY_COMPROMISE:
        case CRL_REASON_CA_COMPROMISE:
            return "the key may be known to others";
        case CRL_REASON_AFFILIATION_CHANGED:
            return "the person's position changed";
        case CRL_REASON_SUPERSEDED:
            return "replaced by another identity";
        case CRL_REASON_CESSATION_OF_OPERATION:
            return "no longer needed";
        case CRL_REASON_CERTIFICATE_HOLD:
            return "on hold";
        default:
            return "no reason stated";
    }
}

/// Whether it names the issuer by name and, where it says so, by key: an authority may go on under
/// its name with another key.
bool isFrom(const X509_CRL* list, X509* issuer) {
    if (X509_NAME_cmp(X509_CRL_get_issuer(list), X509_get_subject_name(issuer)) != 0) return false;
    const Owned<AUTHORITY_KEYID, AUTHORITY_KEYID_free> key(static_cast<AUTHORITY_KEYID*>(
        X509_CRL_get_ext_d2i(list, NID_authority_key_identifier, nullptr, nullptr)));
    return !key || X509_check_akid(issuer, key.get()) == X509_V_OK;
}

}  // namespace

bool isUnderstood(const X509_CRL* list) {
    return X509_CRL_get_ext_by_critical(list, 1, -1) < 0;
}

RevocationLookup lookUp(X509* certificate, X509* issuer,
                        std::span<const std::string> revocationLists, UtcTime at) {
    RevocationLookup found;
    std::optional<UtcTime> newest;
    std::optional<Revocation> onHold;  // by the newest list
    for (const std::string& bytes : revocationLists) {
        const RevocationList list = readRevocationList(bytes);
        if (!list) {
            found.damaged = true;
            continue;
        }
        if (!isFrom(list.get(), issuer)) continue;
        const auto issued = toTime(X509_CRL_get0_lastUpdate(list.get()));
        if (!issued || !isUnderstood(list.get()) ||
            X509_CRL_verify(list.get(), X509_get0_pubkey(issuer)) != 1) {
            found.damaged = true;
            continue;
        }
        found.listed = true;
        if (!newest || *issued > *newest) {
            newest = issued;
            onHold.reset();
            const auto next = toTime(X509_CRL_get0_nextUpdate(list.get()));
            found.outOfDate = next && *next < at;
        }
        X509_REVOKED* entry = nullptr;
        // 2: "removed from the list", which only a list of changes can say.
        if (X509_CRL_get0_by_cert(list.get(), &entry, certificate) != 1) continue;
        const auto since = toTime(X509_REVOKED_get0_revocationDate(entry));
        if (!since) {
            found.damaged = true;
            continue;
        }
        const long reason = reasonOf(entry);
        const Revocation revocation{*since, reasonText(reason)};
        if (reason == CRL_REASON_CERTIFICATE_HOLD) {
            if (*issued == *newest) onHold = revocation;
        } else if (!found.revoked || *since < found.revoked->since) {
            found.revoked = revocation;
        }
    }
    if (onHold && (!found.revoked || onHold->since < found.revoked->since)) found.revoked = onHold;
    ERR_clear_error();
    return found;
}

}  // namespace model::openssl
