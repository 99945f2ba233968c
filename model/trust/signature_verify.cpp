// SPDX-License-Identifier: Apache-2.0
#include <array>
#include <openssl/err.h>

#include "base/digest.h"
#include "trust/identity_revocation.h"
#include "trust/key_openssl.h"
#include "trust/signature.h"
#include "trust/signature_checks.h"
#include "trust/signature_form.h"
#include "trust/signature_token.h"

namespace model {
namespace {

using openssl::Certificate;
using openssl::chainOf;
using openssl::contentFits;
using openssl::kExactlyOne;
using openssl::Named;
using openssl::named;
using openssl::stackOf;

std::vector<Certificate> readable(std::span<const std::string> certificates) {
    std::vector<Certificate> all;
    for (const std::string& bytes : certificates)
        if (Certificate read = openssl::readCertificate(bytes)) all.push_back(std::move(read));
    return all;
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
    std::string chainFault;
    const openssl::Certificates chain = chainOf(certificate, helpers, anchors, chainFault);
    report.chainTrusted = chainFault.empty();
    if (!report.chainTrusted) report.remarks.push_back(chainFault);
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
