// SPDX-License-Identifier: Apache-2.0
#include "trust/authority.h"

#include <algorithm>
#include <openssl/err.h>
#include <openssl/x509v3.h>

#include "trust/authority_certificate.h"
#include "trust/identity_certificate.h"
#include "trust/identity_open.h"
#include "trust/key_encryption.h"

namespace model {
namespace {

using openssl::CertificateDraft;
using openssl::NamePart;

Result<void> checkName(const std::string& what, const std::string& text) {
    // X.520 counts characters; the library refuses what is longer and what is not UTF-8.
    if (text.empty()) return inputError("", "%1 must not be empty", {what});
    const bool control = std::any_of(text.begin(), text.end(), [](char c) {
        return static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
    });
    const auto starts =
        std::count_if(text.begin(), text.end(), [](char c) { return (c & '\xC0') != '\x80'; });
    if (control || starts > 64)
        return inputError("", "%1 must be text of at most 64 characters", {what});
    return {};
}

Result<void> checkPeriod(UtcTime from, UtcTime until) {
    using std::chrono::sys_days;
    const UtcTime earliest = sys_days(std::chrono::year(1970) / 1 / 1);
    const UtcTime latest = sys_days(std::chrono::year(9999) / 12 / 31);
    if (from < earliest || until > latest || until <= from)
        return inputError("", "a certificate must end after it begins");
    return {};
}

std::vector<NamePart> companyName(const std::string& country, const std::string& organisation) {
    std::vector<NamePart> parts;
    if (!country.empty()) parts.push_back({NID_countryName, country});
    parts.push_back({NID_organizationName, organisation});
    return parts;
}

int reasonCode(RevocationReason reason) {
    switch (reason) {
        case RevocationReason::KeyCompromise:
            return CRL_REASON_KEY_COMPROMISE;
        case RevocationReason::PositionChanged:
            return CRL_REASON_AFFILIATION_CHANGED;
        case RevocationReason::Superseded:
            return CRL_REASON_SUPERSEDED;
        case RevocationReason::NotNeeded:
            return CRL_REASON_CESSATION_OF_OPERATION;
        case RevocationReason::Unspecified:
            break;
    }
    return CRL_REASON_UNSPECIFIED;
}

Result<void> addRevoked(X509_CRL* list, const RevokedCertificate& revoked) {
    openssl::Owned<X509_REVOKED, X509_REVOKED_free> entry(X509_REVOKED_new());
    openssl::Owned<ASN1_TIME, ASN1_TIME_free> since(ASN1_TIME_new());
    BIGNUM* digits = nullptr;
    const int read = BN_hex2bn(&digits, revoked.serial.c_str());
    const openssl::Owned<BIGNUM, BN_free> number(digits);
    if (read <= 0 || static_cast<std::size_t>(read) != revoked.serial.size() || read > 40 ||
        BN_is_negative(digits) != 0)
        return inputError("", "\"%1\" is no certificate's serial number", {revoked.serial});
    const openssl::Owned<ASN1_INTEGER, ASN1_INTEGER_free> serial(
        BN_to_ASN1_INTEGER(digits, nullptr));
    const openssl::Owned<ASN1_ENUMERATED, ASN1_ENUMERATED_free> reason(ASN1_ENUMERATED_new());
    const bool made =
        entry && since && serial && reason && openssl::setTime(since.get(), revoked.since) &&
        X509_REVOKED_set_serialNumber(entry.get(), serial.get()) == 1 &&
        X509_REVOKED_set_revocationDate(entry.get(), since.get()) == 1 &&
        ASN1_ENUMERATED_set(reason.get(), reasonCode(revoked.reason)) == 1 &&
        // RFC 5280, 5.3.1: "unspecified" is said by leaving the reason out.
        (revoked.reason == RevocationReason::Unspecified ||
         X509_REVOKED_add1_ext_i2d(entry.get(), NID_crl_reason, reason.get(), 0, 0) == 1);
    if (!made || X509_CRL_add0_revoked(list, entry.get()) != 1)
        return openssl::failure("making a revocation list");
    static_cast<void>(entry.release());
    return {};
}

}  // namespace

Result<Identity> Authority::create(const AuthorityRequest& request, const SecretBytes& passphrase) {
    if (auto allowed = checkNewPassphrase(passphrase); !allowed) return allowed.error();
    if (auto named = checkName("the authority's name", request.name); !named) return named.error();
    if (auto named = checkName("the organisation", request.organisation); !named)
        return named.error();
    const bool letters = std::all_of(request.country.begin(), request.country.end(),
                                     [](char c) { return c >= 'A' && c <= 'Z'; });
    if (!request.country.empty() && (request.country.size() != 2 || !letters))
        return inputError("", "the country must be two capital letters");
    if (auto period = checkPeriod(request.from, request.until); !period) return period.error();

    auto key = openssl::makeKey(KeyKind::P256);
    if (!key) return key.error();
    const std::vector<NamePart> company = companyName(request.country, request.organisation);
    std::vector<NamePart> subject = company;
    subject.push_back({NID_commonName, request.name});
    CertificateDraft draft;
    draft.subject(subject);
    draft.issuer(X509_get_subject_name(draft.get()));
    draft.validity(request.from, request.until);
    draft.publicKey(key->get());
    draft.extension(NID_basic_constraints, "critical,CA:TRUE,pathlen:0", draft.get());
    draft.extension(NID_key_usage, "critical,keyCertSign,cRLSign", draft.get());
    draft.extension(NID_subject_key_identifier, "hash", draft.get());
    draft.nameConstraints(company);
    auto certificate = draft.signedBy(key->get());
    if (!certificate) return certificate.error();
    auto encrypted = openssl::encryptKey(key->get(), passphrase);
    if (!encrypted) return encrypted.error();
    return Identity{{openssl::der(certificate->get())}, std::move(*encrypted)};
}

Result<Authority> Authority::unlock(const Identity& stored, const SecretBytes& passphrase,
                                    UtcTime now) {
    auto held = openssl::openIdentity(stored, passphrase);
    if (!held) return held.error();
    if (X509_check_ca(held->certificates.front().get()) == 0)
        return inputError("", "the identity is a person's, not an authority's");
    if (auto usable = checkUsable(stored.certificates, now); !usable) return usable.error();
    return Authority(openssl::holding(std::move(*held)));
}

Result<Identity> Authority::issue(const PersonRequest& request,
                                  const SecretBytes& personPassphrase) const {
    if (auto allowed = checkNewPassphrase(personPassphrase); !allowed) return allowed.error();
    if (auto named = checkName("the person's name", request.name); !named) return named.error();
    if (auto named = checkName("the person's id", request.personId); !named) return named.error();
    if (auto period = checkPeriod(request.from, request.until); !period) return period.error();
    X509* issuer = key_.held().certificates.front().get();
    const auto authority = describeCertificate(certificate());
    if (!authority) return authority.error();
    if (request.from < authority->validFrom || request.until > authority->validUntil)
        return inputError("", "the authority's own certificate is valid from %1 to %2 only",
                          {toText(authority->validFrom), toText(authority->validUntil)});

    auto key = openssl::makeKey(request.key);
    if (!key) return key.error();
    const X509_NAME* company = X509_get_subject_name(issuer);
    std::vector<NamePart> subject = companyName(openssl::nameEntry(company, NID_countryName),
                                                openssl::nameEntry(company, NID_organizationName));
    subject.push_back({NID_serialNumber, request.personId});
    subject.push_back({NID_commonName, request.name});
    CertificateDraft draft;
    draft.subject(subject);
    draft.issuer(company);
    draft.validity(request.from, request.until);
    draft.publicKey(key->get());
    draft.extension(NID_basic_constraints, "critical,CA:FALSE", issuer);
    draft.extension(NID_key_usage, "critical,digitalSignature,nonRepudiation", issuer);
    // The purpose that PDF readers ask for; document signing (RFC 9336) alone is refused by some.
    draft.extension(NID_ext_key_usage, "emailProtection", issuer);
    draft.extension(NID_subject_key_identifier, "hash", issuer);
    draft.extension(NID_authority_key_identifier, "keyid:always", issuer);
    auto made = draft.signedBy(key_.held().key.get());
    if (!made) return made.error();
    auto encrypted = openssl::encryptKey(key->get(), personPassphrase);
    if (!encrypted) return encrypted.error();
    return Identity{{openssl::der(made->get()), certificate()}, std::move(*encrypted)};
}

Result<std::string> Authority::revocationList(std::span<const RevokedCertificate> revoked,
                                              std::int64_t number, UtcTime now,
                                              UtcTime next) const {
    if (number <= 0 || next <= now)
        return inputError("", "a revocation list needs a number above 0 and a later next date");
    X509* issuer = key_.held().certificates.front().get();
    const openssl::RevocationList list(X509_CRL_new());
    const openssl::Owned<ASN1_TIME, ASN1_TIME_free> from(ASN1_TIME_new());
    const openssl::Owned<ASN1_TIME, ASN1_TIME_free> until(ASN1_TIME_new());
    const openssl::Owned<ASN1_INTEGER, ASN1_INTEGER_free> count(ASN1_INTEGER_new());
    if (!list || !from || !until || !count || !openssl::setTime(from.get(), now) ||
        !openssl::setTime(until.get(), next) ||
        X509_CRL_set_version(list.get(), X509_CRL_VERSION_2) != 1 ||
        X509_CRL_set_issuer_name(list.get(), X509_get_subject_name(issuer)) != 1 ||
        X509_CRL_set1_lastUpdate(list.get(), from.get()) != 1 ||
        X509_CRL_set1_nextUpdate(list.get(), until.get()) != 1 ||
        ASN1_INTEGER_set_int64(count.get(), number) != 1 ||
        X509_CRL_add1_ext_i2d(list.get(), NID_crl_number, count.get(), 0, 0) != 1)
        return openssl::failure("making a revocation list");
    for (const RevokedCertificate& entry : revoked)
        if (auto added = addRevoked(list.get(), entry); !added) return added.error();
    X509V3_CTX context;
    X509V3_set_ctx(&context, issuer, nullptr, nullptr, list.get(), 0);
    const openssl::Owned<X509_EXTENSION, X509_EXTENSION_free> keyId(
        X509V3_EXT_conf_nid(nullptr, &context, NID_authority_key_identifier, "keyid:always"));
    if (!keyId || X509_CRL_add_ext(list.get(), keyId.get(), -1) != 1 ||
        X509_CRL_sort(list.get()) != 1 ||
        X509_CRL_sign(list.get(), key_.held().key.get(), EVP_sha256()) <= 0)
        return openssl::failure("signing a revocation list");
    std::string bytes = openssl::encoded(i2d_X509_CRL, list.get());
    if (bytes.empty()) return openssl::failure("writing a revocation list");
    return bytes;
}

std::string Authority::certificate() const {
    return openssl::der(key_.held().certificates.front().get());
}

}  // namespace model
