// SPDX-License-Identifier: Apache-2.0
#include <array>
#include <openssl/err.h>
#include <openssl/ess.h>
#include <openssl/x509v3.h>

#include "base/digest.h"
#include "trust/identity_revocation.h"
#include "trust/key_openssl.h"
#include "trust/signature.h"
#include "trust/signature_form.h"
#include "trust/signature_token.h"

namespace model {
namespace {

using openssl::Certificate;
using Store = openssl::Owned<X509_STORE, X509_STORE_free>;
using StoreContext = openssl::Owned<X509_STORE_CTX, X509_STORE_CTX_free>;

constexpr int kExactlyOne = -3;  // asks OpenSSL for the value of an attribute that occurs once

std::vector<Certificate> readable(std::span<const std::string> certificates) {
    std::vector<Certificate> all;
    for (const std::string& bytes : certificates)
        if (Certificate read = openssl::readCertificate(bytes)) all.push_back(std::move(read));
    return all;
}

openssl::Certificates stackOf(std::span<const Certificate> certificates) {
    openssl::Certificates stack(sk_X509_new_null());
    for (const Certificate& certificate : certificates)
        X509_add_cert(stack.get(), certificate.get(), X509_ADD_FLAG_UP_REF);
    return stack;
}

bool contentFits(std::span<const std::string_view> parts, const CMS_SignerInfo* signer,
                 const X509_ALGOR* algorithm) {
    const auto* stated = static_cast<const ASN1_OCTET_STRING*>(CMS_signed_get0_data_by_OBJ(
        signer, OBJ_nid2obj(NID_pkcs9_messageDigest), kExactlyOne, V_ASN1_OCTET_STRING));
    const auto* type = static_cast<const ASN1_OBJECT*>(CMS_signed_get0_data_by_OBJ(
        signer, OBJ_nid2obj(NID_pkcs9_contentType), kExactlyOne, V_ASN1_OBJECT));
    const EVP_MD* digest = EVP_get_digestbyobj(algorithm->algorithm);
    const openssl::Hashing hashing(EVP_MD_CTX_new());
    if (stated == nullptr || type == nullptr || OBJ_obj2nid(type) != NID_pkcs7_data ||
        digest == nullptr || !hashing)
        return false;
    if (EVP_DigestInit_ex(hashing.get(), digest, nullptr) != 1) return false;
    for (const std::string_view part : parts)
        if (EVP_DigestUpdate(hashing.get(), part.data(), part.size()) != 1) return false;
    std::array<unsigned char, EVP_MAX_MD_SIZE> value{};
    unsigned size = 0;
    if (EVP_DigestFinal_ex(hashing.get(), value.data(), &size) != 1) return false;
    return openssl::view(stated) ==
           std::string_view(reinterpret_cast<const char*>(value.data()), size);
}

enum class Named { Yes, No, NotStated };

Named named(const CMS_SignerInfo* signer, X509* certificate) {
    const ASN1_OBJECT* attribute = OBJ_nid2obj(NID_id_smime_aa_signingCertificateV2);
    if (CMS_signed_get_attr_by_OBJ(signer, attribute, -1) < 0) return Named::NotStated;
    const auto* value = static_cast<const ASN1_STRING*>(
        CMS_signed_get0_data_by_OBJ(signer, attribute, kExactlyOne, V_ASN1_SEQUENCE));
    if (value == nullptr) return Named::No;
    const unsigned char* at = ASN1_STRING_get0_data(value);
    const openssl::Owned<ESS_SIGNING_CERT_V2, ESS_SIGNING_CERT_V2_free> stated(
        d2i_ESS_SIGNING_CERT_V2(nullptr, &at, ASN1_STRING_length(value)));
    const openssl::Certificates chain(sk_X509_new_null());
    if (!stated || X509_add_cert(chain.get(), certificate, X509_ADD_FLAG_UP_REF) != 1)
        return Named::No;
    return OSSL_ESS_check_signing_certs(nullptr, stated.get(), chain.get(), 1) == 1 ? Named::Yes
                                                                                    : Named::No;
}

// The chain from the signer to an anchor, or as far as it goes. Dates and revocation are looked at
// afterwards, so that each is a fact of its own.
openssl::Certificates chainOf(X509* signer, const std::vector<Certificate>& helpers,
                              const std::vector<Certificate>& anchors, SignatureReport& report) {
    constexpr int kAuthenticationLevel = 2;  // 112 bits: no SHA-1, no RSA below 2048
    const Store store(X509_STORE_new());
    for (const Certificate& anchor : anchors) X509_STORE_add_cert(store.get(), anchor.get());
    const openssl::Certificates untrusted = stackOf(helpers);
    const StoreContext context(X509_STORE_CTX_new());
    if (!store || !context ||
        X509_STORE_CTX_init(context.get(), store.get(), signer, untrusted.get()) != 1)
        return nullptr;
    X509_VERIFY_PARAM* parameters = X509_STORE_CTX_get0_param(context.get());
    X509_VERIFY_PARAM_set_flags(parameters, X509_V_FLAG_NO_CHECK_TIME | X509_V_FLAG_PARTIAL_CHAIN);
    X509_VERIFY_PARAM_set_purpose(parameters, X509_PURPOSE_ANY);
    X509_VERIFY_PARAM_set_auth_level(parameters, kAuthenticationLevel);
    report.chainTrusted = X509_verify_cert(context.get()) == 1;
    if (!report.chainTrusted)
        report.remarks.emplace_back(
            std::string("the certificate does not lead to a trusted authority (") +
            X509_verify_cert_error_string(X509_STORE_CTX_get_error(context.get())) + ")");
    if (report.chainTrusted &&
        (X509_get_key_usage(signer) & (KU_DIGITAL_SIGNATURE | KU_NON_REPUDIATION)) == 0) {
        report.chainTrusted = false;
        report.remarks.emplace_back("the signer's certificate does not allow signatures");
    }
    return openssl::Certificates(X509_STORE_CTX_get1_chain(context.get()));
}

void judgeDates(const STACK_OF(X509) * chain, SignatureReport& report) {
    for (int i = 0; i < sk_X509_num(chain); ++i) {
        const X509* certificate = sk_X509_value(chain, i);
        const std::string name =
            openssl::nameEntry(X509_get_subject_name(certificate), NID_commonName);
        const auto from = openssl::toTime(X509_get0_notBefore(certificate));
        const auto until = openssl::toTime(X509_get0_notAfter(certificate));
        if (!from || report.judgedAt < *from) {
            report.notYetValid = true;
            report.remarks.push_back("the certificate of " + name + " was not valid yet at " +
                                     toText(report.judgedAt));
        }
        if (!until || report.judgedAt > *until) {
            report.expired = true;
            report.remarks.push_back("the certificate of " + name + " had expired at " +
                                     toText(report.judgedAt));
        }
    }
}

void judgeRevocation(const STACK_OF(X509) * chain, std::span<const std::string> lists,
                     SignatureReport& report) {
    report.revocationChecked = report.chainTrusted;
    for (int i = 0; i + 1 < sk_X509_num(chain); ++i) {
        X509* certificate = sk_X509_value(chain, i);
        const auto found =
            openssl::lookUp(certificate, sk_X509_value(chain, i + 1), lists, report.judgedAt);
        report.revocationChecked = report.revocationChecked && found.listed && !found.damaged;
        report.revocationOutOfDate = report.revocationOutOfDate || found.outOfDate;
        report.revocationListDamaged = report.revocationListDamaged || found.damaged;
        if (found.revoked && found.revoked->since <= report.judgedAt) {
            if (!report.revoked || found.revoked->since < report.revoked->since)
                report.revoked = found.revoked;
            report.remarks.push_back(
                "the certificate of " +
                openssl::nameEntry(X509_get_subject_name(certificate), NID_commonName) +
                " was revoked on " + toText(found.revoked->since) + ": " + found.revoked->reason);
        }
    }
    if (report.revocationListDamaged)
        report.remarks.emplace_back("a revocation list is damaged or of an unknown kind");
    if (report.chainTrusted && !report.revocationChecked)
        report.notes.emplace_back(
            "whether the certificate was revoked was not checked: no list of its issuer was given");
    if (report.revocationOutOfDate) report.notes.emplace_back("the revocation list is out of date");
}

void judgeTimeStamp(const CMS_SignerInfo* signer, CMS_SignerInfo* mutableSigner,
                    const TrustedCertificates& trusted, UtcTime at, SignatureReport& report) {
    const int count = CMS_unsigned_get_attr_count(signer);
    if (count <= 0) return;
    const auto* token = static_cast<const ASN1_STRING*>(CMS_unsigned_get0_data_by_OBJ(
        mutableSigner, OBJ_nid2obj(NID_id_smime_aa_timeStampToken), kExactlyOne, V_ASN1_SEQUENCE));
    if (token == nullptr || count != 1) {
        report.sound = false;
        report.remarks.emplace_back("it carries something beside a time stamp that nobody signed");
        return;
    }
    report.timeStamp = openssl::verifyToken(
        openssl::view(token), sha256(openssl::view(CMS_SignerInfo_get0_signature(mutableSigner))),
        trusted.timeStampAnchors, at);
    if (!report.timeStamp->intact)
        report.remarks.emplace_back("its time stamp was altered or belongs to something else");
    else if (!report.timeStamp->trusted)
        report.notes.emplace_back(
            "its time stamp is not from a trusted service: it proves no time");
    else
        report.judgedAt = report.timeStamp->time;
}

}  // namespace

Result<SignatureReport> verifyDetached(std::span<const std::string_view> parts,
                                       std::string_view signature,
                                       const TrustedCertificates& trusted, UtcTime at,
                                       CertificateNaming naming) {
    constexpr std::size_t kLongest = 1U << 20U;
    const unsigned char* next = openssl::bytesOf(signature);
    const openssl::SignedData cms(
        signature.size() > kLongest
            ? nullptr
            : d2i_CMS_ContentInfo(nullptr, &next, static_cast<long>(signature.size())));
    CMS_SignerInfo* signer = cms && OBJ_obj2nid(CMS_get0_type(cms.get())) == NID_pkcs7_signed &&
                                     CMS_is_detached(cms.get()) == 1
                                 ? openssl::onlySigner(cms.get())
                                 : nullptr;
    ERR_clear_error();
    if (signer == nullptr)
        return Error{
            ErrorKind::Damaged, "", "the bytes are no signature of exactly one signer", {}};

    SignatureReport report;
    report.judgedAt = at;
    std::vector<Certificate> anchors = readable(trusted.anchors);
    std::vector<Certificate> helpers = readable(trusted.intermediates);
    std::vector<Certificate> issuers = readable(trusted.intermediates);
    for (Certificate& anchor : readable(trusted.anchors)) issuers.push_back(std::move(anchor));
    const std::string fault = openssl::formFault(signature, issuers);
    report.sound = fault.empty();
    if (!report.sound)
        report.remarks.push_back("the signature is not of the form that it must have: " + fault);
    for (Certificate& embedded : openssl::certificatesIn(cms.get()))
        helpers.push_back(std::move(embedded));

    X509* certificate = nullptr;
    X509_ALGOR* digest = nullptr;
    {
        const openssl::Certificates candidates = stackOf(helpers);
        CMS_set1_signers_certs(cms.get(), candidates.get(), 0);
    }
    CMS_SignerInfo_get0_algs(signer, nullptr, &certificate, &digest, nullptr);
    report.contentUnchanged = contentFits(parts, signer, digest);
    if (!report.contentUnchanged) report.remarks.emplace_back("the content is not what was signed");
    if (certificate == nullptr) {
        ERR_clear_error();
        report.remarks.emplace_back("the signer's certificate is missing");
        return report;
    }
    if (auto facts = describeCertificate(openssl::der(certificate)); facts) report.signer = *facts;
    const Named binding = named(signer, certificate);
    report.certificateNamed = binding == Named::Yes;
    report.signatureFits = CMS_signed_get_attr_count(signer) > 0 &&
                           CMS_SignerInfo_verify(signer) == 1 && binding != Named::No &&
                           (binding == Named::Yes || naming == CertificateNaming::Optional);
    if (!report.signatureFits)
        report.remarks.emplace_back("the signature was not made with the certificate's key");
    judgeTimeStamp(signer, signer, trusted, at, report);
    const openssl::Certificates chain = chainOf(certificate, helpers, anchors, report);
    judgeDates(chain.get(), report);
    judgeRevocation(chain.get(), trusted.revocationLists, report);
    ERR_clear_error();
    return report;
}

Result<SignatureReport> verifyDetached(std::string_view bytes, std::string_view signature,
                                       const TrustedCertificates& trusted, UtcTime at) {
    return verifyDetached(std::array{bytes}, signature, trusted, at);
}

}  // namespace model
