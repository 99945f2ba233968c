// SPDX-License-Identifier: Apache-2.0
#include "trust/known_signer.h"

#include <algorithm>
#include <array>
#include <openssl/err.h>

#include "trust/identity_open.h"
#include "trust/signature_checks.h"
#include "trust/signature_form.h"

namespace model {
namespace openssl {

struct HeldCertificates {
    std::vector<Certificate> own;  ///< the signer's alone, as a list of one
};

}  // namespace openssl

namespace {

/// What is neither signed nor the certificate's must not be there.
bool holdsMore(CMS_ContentInfo* cms, const CMS_SignerInfo* signer) {
    const openssl::Owned<STACK_OF(X509_CRL),
                         [](STACK_OF(X509_CRL) * lists) {
                             sk_X509_CRL_pop_free(lists, X509_CRL_free);
                         }>
        lists(CMS_get1_crls(cms));
    return CMS_unsigned_get_attr_count(signer) > 0 || sk_X509_CRL_num(lists.get()) > 0 ||
           !openssl::certificatesIn(cms).empty();
}

std::string checked(std::string_view bytes, std::string_view signature,
                    const std::vector<openssl::Certificate>& own) {
    const auto cms = openssl::decodedExactly<openssl::SignedData>(signature, d2i_CMS_ContentInfo,
                                                                  i2d_CMS_ContentInfo);
    if (std::string fault = openssl::formFault(cms.get(), signature, own); !fault.empty())
        return "its form is not the one that it must have: " + fault;
    CMS_SignerInfo* signer = openssl::onlySigner(cms.get());
    if (CMS_is_detached(cms.get()) != 1 || holdsMore(cms.get(), signer))
        return "it holds more than a signature";
    X509* certificate = own.front().get();
    if (CMS_SignerInfo_cert_cmp(signer, certificate) != 0) return "it names another certificate";
    X509_ALGOR* digest = nullptr;
    CMS_SignerInfo_get0_algs(signer, nullptr, nullptr, &digest, nullptr);
    if (!openssl::contentFits(std::array{bytes}, signer, digest))
        return "it was made over something else";
    CMS_SignerInfo_set1_signer_cert(signer, certificate);
    if (openssl::named(signer, certificate) != openssl::Named::Yes ||
        CMS_SignerInfo_verify(signer) != 1)
        return "it was not made with the certificate's key";
    return {};
}

}  // namespace

KnownSigner::KnownSigner(std::unique_ptr<openssl::HeldCertificates> held)
    : held_(std::move(held)) {}
KnownSigner::KnownSigner(KnownSigner&&) noexcept = default;
KnownSigner& KnownSigner::operator=(KnownSigner&&) noexcept = default;
KnownSigner::~KnownSigner() = default;

Result<KnownSigner> KnownSigner::read(const std::vector<std::string>& certificates,
                                      std::span<const std::string> anchors) {
    auto own = openssl::readCertificates(certificates);
    if (!own) return own.error();
    auto facts = describeCertificate(certificates.front());
    if (!facts) return facts.error();
    std::vector<openssl::Certificate> trusted;
    for (const std::string& anchor : anchors)
        if (auto certificate = openssl::readCertificate(anchor))
            trusted.push_back(std::move(certificate));
    std::string fault;
    const auto chain = openssl::chainOf(own->front().get(), *own, trusted, fault);
    KnownSigner signer(std::make_unique<openssl::HeldCertificates>());
    signer.facts_ = std::move(*facts);
    signer.from_ = signer.facts_.validFrom;
    signer.until_ = signer.facts_.validUntil;
    signer.trusted_ = fault.empty();
    for (int i = 1; i < sk_X509_num(chain.get()); ++i) {
        const auto issuer = describeCertificate(openssl::der(sk_X509_value(chain.get(), i)));
        if (!issuer) return issuer.error();
        signer.from_ = std::max(signer.from_, issuer->validFrom);
        signer.until_ = std::min(signer.until_, issuer->validUntil);
    }
    signer.held_->own.push_back(std::move(own->front()));
    ERR_clear_error();
    return signer;
}

std::string KnownSigner::fault(std::string_view bytes, std::string_view signature) const {
    std::string found = checked(bytes, signature, held_->own);
    ERR_clear_error();
    return found;
}

}  // namespace model
