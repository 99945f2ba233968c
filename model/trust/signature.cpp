// SPDX-License-Identifier: Apache-2.0
#include "trust/signature.h"

#include <array>
#include <openssl/err.h>

#include "base/digest.h"
#include "trust/identity_open.h"
#include "trust/key_openssl.h"
#include "trust/signature_checks.h"
#include "trust/signature_time_stamp.h"

namespace model {
namespace {

constexpr unsigned kFlags = CMS_PARTIAL | CMS_DETACHED | CMS_BINARY | CMS_NOSMIMECAP;

Result<Digest> digestOf(std::span<const std::string_view> parts) {
    const openssl::Hashing hashing(EVP_MD_CTX_new());
    bool done = hashing && EVP_DigestInit_ex(hashing.get(), EVP_sha256(), nullptr) == 1;
    for (const std::string_view part : parts)
        done = done && EVP_DigestUpdate(hashing.get(), part.data(), part.size()) == 1;
    Digest digest{};
    if (!done || EVP_DigestFinal_ex(hashing.get(), digest.data(), nullptr) != 1)
        return openssl::failure("hashing");
    return digest;
}

Result<void> addTimeStamp(CMS_SignerInfo* signer, const TimeStampService& timeStamps) {
    auto token = timeStamps.stamp(sha256(openssl::view(CMS_SignerInfo_get0_signature(signer))));
    if (!token) return token.error();
    const std::string& bytes = *token;
    if (bytes.size() > kLongestTimeStamp)
        return inputError("", "the time stamp of %1 bytes is longer than %2",
                          {std::to_string(bytes.size()), std::to_string(kLongestTimeStamp)});
    if (CMS_unsigned_add1_attr_by_NID(signer, NID_id_smime_aa_timeStampToken, V_ASN1_SEQUENCE,
                                      bytes.data(), static_cast<int>(bytes.size())) != 1)
        return openssl::failure("adding a time stamp");
    return {};
}

enum class Certificates { Inside, Beside };

Result<std::string> signature(std::span<const std::string_view> parts, const SigningKey& key,
                              Certificates where, const TimeStampService* timeStamps) {
    const auto digest = digestOf(parts);
    if (!digest) return digest.error();

    const auto& certificates = key.held().certificates;
    const unsigned flags = where == Certificates::Inside ? kFlags : kFlags | CMS_NOCERTS;
    const openssl::SignedData cms(CMS_sign(nullptr, nullptr, nullptr, nullptr, flags));
    CMS_SignerInfo* signer =
        cms ? CMS_add1_signer(cms.get(), certificates.front().get(), key.held().key.get(),
                              EVP_sha256(), flags | CMS_CADES)
            : nullptr;
    bool made = signer != nullptr;
    for (std::size_t i = 1; where == Certificates::Inside && i < certificates.size(); ++i)
        made = made && CMS_add1_cert(cms.get(), certificates[i].get()) == 1;
    made = made &&
           CMS_signed_add1_attr_by_NID(signer, NID_pkcs9_contentType, V_ASN1_OBJECT,
                                       OBJ_nid2obj(NID_pkcs7_data), -1) == 1 &&
           CMS_signed_add1_attr_by_NID(signer, NID_pkcs9_messageDigest, V_ASN1_OCTET_STRING,
                                       digest->data(), static_cast<int>(digest->size())) == 1;
    if (!made) return openssl::failure("making a signature");
    // CMS_final() and CMS_SignerInfo_sign() of OpenSSL 3.0 always add signing-time, which PAdES
    // does not allow: the attributes are signed here instead.
    const auto value = signBare(openssl::signedAttributes(signer), key);
    if (!value) return value.error();
    if (ASN1_STRING_set(CMS_SignerInfo_get0_signature(signer), value->data(),
                        static_cast<int>(value->size())) != 1)
        return openssl::failure("making a signature");
    if (timeStamps != nullptr)
        if (auto stamped = addTimeStamp(signer, *timeStamps); !stamped) return stamped.error();
    std::string bytes = openssl::encoded(i2d_CMS_ContentInfo, cms.get());
    if (bytes.empty()) return openssl::failure("writing a signature");
    return bytes;
}

}  // namespace

std::size_t longestSignature(const SigningKey& key) {
    constexpr std::size_t kAttributesAndNames = 1024;
    std::size_t size = kAttributesAndNames;
    for (const std::string& certificate : key.certificates()) size += certificate.size();
    X509* own = key.held().certificates.front().get();
    size += static_cast<std::size_t>(i2d_X509_NAME(X509_get_issuer_name(own), nullptr));
    return size + static_cast<std::size_t>(EVP_PKEY_get_size(key.held().key.get()));
}

Result<std::string> signDetached(std::span<const std::string_view> parts, const SigningKey& key,
                                 UtcTime now, std::span<const std::string> revocationLists,
                                 const TimeStampService* timeStamps) {
    if (auto usable = openssl::checkUsable(key.held().certificates, now, revocationLists); !usable)
        return usable.error();
    return signature(parts, key, Certificates::Inside, timeStamps);
}

Result<std::string> signBeside(std::string_view bytes, const SigningKey& key, UtcTime now,
                               std::span<const std::string> revocationLists) {
    if (auto usable = openssl::checkUsable(key.held().certificates, now, revocationLists); !usable)
        return usable.error();
    return signature(std::array{bytes}, key, Certificates::Beside, nullptr);
}

Result<std::string> signDetached(std::string_view bytes, const SigningKey& key, UtcTime now,
                                 std::span<const std::string> revocationLists,
                                 const TimeStampService* timeStamps) {
    return signDetached(std::array{bytes}, key, now, revocationLists, timeStamps);
}

}  // namespace model
