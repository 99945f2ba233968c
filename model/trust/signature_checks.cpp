// SPDX-License-Identifier: Apache-2.0
#include "trust/signature_checks.h"

#include <algorithm>
#include <array>
#include <openssl/ess.h>
#include <openssl/x509v3.h>

namespace model::openssl {
namespace {

using Store = Owned<X509_STORE, X509_STORE_free>;
using StoreContext = Owned<X509_STORE_CTX, X509_STORE_CTX_free>;

}  // namespace

Certificates stackOf(std::span<const Certificate> certificates) {
    Certificates stack(sk_X509_new_null());
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
    const Hashing hashing(EVP_MD_CTX_new());
    if (stated == nullptr || type == nullptr || OBJ_obj2nid(type) != NID_pkcs7_data ||
        digest == nullptr || !hashing)
        return false;
    if (EVP_DigestInit_ex(hashing.get(), digest, nullptr) != 1) return false;
    for (const std::string_view part : parts)
        if (EVP_DigestUpdate(hashing.get(), part.data(), part.size()) != 1) return false;
    std::array<unsigned char, EVP_MAX_MD_SIZE> value{};
    unsigned size = 0;
    if (EVP_DigestFinal_ex(hashing.get(), value.data(), &size) != 1) return false;
    return view(stated) == std::string_view(reinterpret_cast<const char*>(value.data()), size);
}

Named named(const CMS_SignerInfo* signer, X509* certificate) {
    const ASN1_OBJECT* attribute = OBJ_nid2obj(NID_id_smime_aa_signingCertificateV2);
    if (CMS_signed_get_attr_by_OBJ(signer, attribute, -1) < 0) return Named::NotStated;
    const auto* value = static_cast<const ASN1_STRING*>(
        CMS_signed_get0_data_by_OBJ(signer, attribute, kExactlyOne, V_ASN1_SEQUENCE));
    if (value == nullptr) return Named::No;
    const unsigned char* at = ASN1_STRING_get0_data(value);
    const Owned<ESS_SIGNING_CERT_V2, ESS_SIGNING_CERT_V2_free> stated(
        d2i_ESS_SIGNING_CERT_V2(nullptr, &at, ASN1_STRING_length(value)));
    const Certificates chain(sk_X509_new_null());
    if (!stated || X509_add_cert(chain.get(), certificate, X509_ADD_FLAG_UP_REF) != 1)
        return Named::No;
    return OSSL_ESS_check_signing_certs(nullptr, stated.get(), chain.get(), 1) == 1 ? Named::Yes
                                                                                    : Named::No;
}

std::string signedAttributes(const CMS_SignerInfo* signer) {
    std::vector<std::string> attributes;
    std::size_t size = 0;
    for (int i = 0; i < CMS_signed_get_attr_count(signer); ++i) {
        attributes.push_back(encoded(i2d_X509_ATTRIBUTE, CMS_signed_get_attr(signer, i)));
        size += attributes.back().size();
    }
    std::sort(attributes.begin(), attributes.end());
    const int whole = ASN1_object_size(1, static_cast<int>(size), V_ASN1_SET);
    std::string set(static_cast<std::size_t>(whole) - size, '\0');
    auto* at = reinterpret_cast<unsigned char*>(set.data());
    ASN1_put_object(&at, 1, static_cast<int>(size), V_ASN1_SET, V_ASN1_UNIVERSAL);
    for (const std::string& attribute : attributes) set += attribute;
    return set;
}

Certificates chainOf(X509* signer, const std::vector<Certificate>& helpers,
                     const std::vector<Certificate>& anchors, std::string& fault) {
    constexpr int kAuthenticationLevel = 2;  // 112 bits: no SHA-1, no RSA below 2048
    const Store store(X509_STORE_new());
    for (const Certificate& anchor : anchors) X509_STORE_add_cert(store.get(), anchor.get());
    const Certificates untrusted = stackOf(helpers);
    const StoreContext context(X509_STORE_CTX_new());
    fault = "the certificate could not be checked";
    if (!store || !context ||
        X509_STORE_CTX_init(context.get(), store.get(), signer, untrusted.get()) != 1)
        return nullptr;
    X509_VERIFY_PARAM* parameters = X509_STORE_CTX_get0_param(context.get());
    X509_VERIFY_PARAM_set_flags(parameters, X509_V_FLAG_NO_CHECK_TIME | X509_V_FLAG_PARTIAL_CHAIN);
    X509_VERIFY_PARAM_set_purpose(parameters, X509_PURPOSE_ANY);
    X509_VERIFY_PARAM_set_auth_level(parameters, kAuthenticationLevel);
    if (X509_verify_cert(context.get()) != 1)
        fault = std::string("the certificate does not lead to a trusted authority (") +
                X509_verify_cert_error_string(X509_STORE_CTX_get_error(context.get())) + ")";
    else if ((X509_get_key_usage(signer) & (KU_DIGITAL_SIGNATURE | KU_NON_REPUDIATION)) == 0)
        fault = "the signer's certificate does not allow signatures";
    else
        fault.clear();
    return Certificates(X509_STORE_CTX_get1_chain(context.get()));
}

}  // namespace model::openssl
