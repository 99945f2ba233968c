// SPDX-License-Identifier: Apache-2.0
#include "trust/known_signer.h"

#include <algorithm>
#include <array>
#include <map>
#include <mutex>
#include <openssl/err.h>

#include "base/digest.h"
#include "trust/identity_open.h"
#include "trust/signature_checks.h"
#include "trust/signature_form.h"

namespace model {
namespace openssl {

/// A signature that was found good, of which the next one of this length may differ in the digest
/// and in the value only.
struct Frame {
    std::string whole;
    std::size_t digestAt = 0;  ///< of 32 bytes
    std::size_t valueAt = 0;   ///< of the signature value, up to the end
    std::string attributes;    ///< as they are signed
    std::size_t attributesDigestAt = 0;
};

struct HeldCertificates {
    std::vector<Certificate> own;  ///< the signer's alone, as a list of one
    std::mutex guard;              ///< of `frames`, which only grow
    std::map<std::size_t, std::shared_ptr<const Frame>> frames = {};  ///< by length
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

/// Null where digest or attributes are not found in exactly one place.
std::shared_ptr<const openssl::Frame> frameOf(std::string_view bytes, std::string_view signature,
                                              CMS_SignerInfo* signer) {
    const Digest digest = sha256(bytes);
    const std::string_view sought(reinterpret_cast<const char*>(digest.data()), digest.size());
    openssl::Frame frame{std::string(signature), signature.find(sought), 0,
                         openssl::signedAttributes(signer), 0};
    frame.attributesDigestAt = frame.attributes.find(sought);
    const std::string_view value = openssl::view(CMS_SignerInfo_get0_signature(signer));
    if (frame.digestAt == std::string_view::npos ||
        signature.find(sought, frame.digestAt + 1) != std::string_view::npos ||
        frame.attributesDigestAt == std::string::npos || !signature.ends_with(value))
        return nullptr;
    frame.valueAt = signature.size() - value.size();
    return std::make_shared<const openssl::Frame>(std::move(frame));
}

/// Whether it is a good signature for the reason that it differs from one in nothing else.
bool fitsFrame(const openssl::Frame& frame, std::string_view bytes, std::string_view signature,
               EVP_PKEY* key) {
    const std::string_view whole = frame.whole;
    const Digest digest = sha256(bytes);
    const std::string_view stated(reinterpret_cast<const char*>(digest.data()), digest.size());
    const std::size_t after = frame.digestAt + digest.size();
    if (signature.size() != whole.size() ||
        signature.substr(frame.digestAt, digest.size()) != stated ||
        signature.substr(0, frame.digestAt) != whole.substr(0, frame.digestAt) ||
        signature.substr(after, frame.valueAt - after) !=
            whole.substr(after, frame.valueAt - after))
        return false;
    std::string attributes = frame.attributes;
    attributes.replace(frame.attributesDigestAt, stated.size(), stated);
    const std::string_view value = signature.substr(frame.valueAt);
    const openssl::Hashing hashing(EVP_MD_CTX_new());
    return hashing &&
           EVP_DigestVerifyInit(hashing.get(), nullptr, EVP_sha256(), nullptr, key) == 1 &&
           EVP_DigestVerify(hashing.get(), openssl::bytesOf(value), value.size(),
                            openssl::bytesOf(attributes), attributes.size()) == 1;
}

std::string checked(std::string_view bytes, std::string_view signature,
                    const std::vector<openssl::Certificate>& own,
                    std::shared_ptr<const openssl::Frame>& frame) {
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
    // The digest that the value is over; others are taken, but each is checked in full.
    if (OBJ_obj2nid(digest->algorithm) == NID_sha256) frame = frameOf(bytes, signature, signer);
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
    std::shared_ptr<const openssl::Frame> frame;
    {
        const std::lock_guard lock(held_->guard);
        if (const auto known = held_->frames.find(signature.size()); known != held_->frames.end())
            frame = known->second;
    }
    EVP_PKEY* key = X509_get0_pubkey(held_->own.front().get());
    if (frame && fitsFrame(*frame, bytes, signature, key)) return {};
    std::shared_ptr<const openssl::Frame> good;
    std::string found = checked(bytes, signature, held_->own, good);
    ERR_clear_error();
    if (good && !frame) {
        const std::lock_guard lock(held_->guard);
        held_->frames.emplace(signature.size(), std::move(good));
    }
    return found;
}

}  // namespace model
