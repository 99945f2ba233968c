// SPDX-License-Identifier: Apache-2.0
#include "trust/signature_form.h"

#include <openssl/err.h>
#include <openssl/pkcs7.h>
#include <openssl/x509v3.h>

namespace model::openssl {
namespace {

// One element of DER: its tag and class, what is in it, and how far the whole reaches.
struct Element {
    int tag = -1;
    int kind = 0;
    std::string_view whole;
    std::string_view content;
};

// Takes the next element off `rest`; tag -1 where there is none.
Element next(std::string_view& rest) {
    const unsigned char* at = bytesOf(rest);
    long length = 0;
    int tag = 0;
    int kind = 0;
    if (rest.empty() || (static_cast<unsigned>(ASN1_get_object(&at, &length, &tag, &kind,
                                                               static_cast<long>(rest.size()))) &
                         0x81U) != 0)  // 0x80: an error; 0x01: of indefinite length
        return {};
    const auto header = static_cast<std::size_t>(at - bytesOf(rest));
    Element element{tag, kind, rest.substr(0, header + static_cast<std::size_t>(length)),
                    rest.substr(header, static_cast<std::size_t>(length))};
    rest.remove_prefix(element.whole.size());
    return element;
}

bool isNumber(const Element& element, char value) {
    return element.tag == V_ASN1_INTEGER && element.content.size() == 1 &&
           element.content[0] == value;
}

bool plainDigest(const X509_ALGOR* algorithm) {
    const ASN1_OBJECT* name = nullptr;
    int parameters = 0;
    const void* value = nullptr;
    X509_ALGOR_get0(&name, &parameters, &value, algorithm);
    const int nid = OBJ_obj2nid(name);
    return (nid == NID_sha256 || nid == NID_sha384 || nid == NID_sha512) &&
           (parameters == V_ASN1_UNDEF || parameters == V_ASN1_NULL);
}

// RSA may name the key's algorithm alone; else the digest is part of the name and must agree.
bool agrees(const X509_ALGOR* signature, const X509_ALGOR* digest) {
    const ASN1_OBJECT* name = nullptr;
    int parameters = 0;
    X509_ALGOR_get0(&name, &parameters, nullptr, signature);
    if (parameters != V_ASN1_UNDEF && parameters != V_ASN1_NULL) return false;
    const int nid = OBJ_obj2nid(name);
    if (nid == NID_rsaEncryption) return true;
    int digestNid = NID_undef;
    int keyNid = NID_undef;
    return OBJ_find_sigid_algs(nid, &digestNid, &keyNid) == 1 &&
           (keyNid == NID_X9_62_id_ecPublicKey || keyNid == NID_rsaEncryption) &&
           digestNid == OBJ_obj2nid(digest->algorithm);
}

struct Outline {
    Element version;
    Element digests;
    Element content;
    Element signers;
};

// SignedData: version, digestAlgorithms, encapContentInfo, [0] certificates, [1] crls,
// signerInfos.
Outline outline(std::string_view bytes) {
    Element contentInfo = next(bytes);
    next(contentInfo.content);  // its type, which the caller has read
    Element wrapped = next(contentInfo.content);
    Element signedData = next(wrapped.content);
    Outline found;
    found.version = next(signedData.content);
    found.digests = next(signedData.content);
    found.content = next(signedData.content);
    found.signers = next(signedData.content);
    while (found.signers.tag >= 0 && (found.signers.kind & V_ASN1_CONTEXT_SPECIFIC) != 0)
        found.signers = next(signedData.content);
    return found;
}

}  // namespace

std::vector<Certificate> certificatesIn(CMS_ContentInfo* signedData) {
    std::vector<Certificate> all;
    const Certificates stack(CMS_get1_certs(signedData));
    for (int i = 0; i < sk_X509_num(stack.get()); ++i) {
        X509* certificate = sk_X509_value(stack.get(), i);
        X509_up_ref(certificate);
        all.emplace_back(certificate);
    }
    return all;
}

CMS_SignerInfo* onlySigner(CMS_ContentInfo* signedData) {
    STACK_OF(CMS_SignerInfo)* signers = CMS_get0_SignerInfos(signedData);
    return sk_CMS_SignerInfo_num(signers) == 1 ? sk_CMS_SignerInfo_value(signers, 0) : nullptr;
}

namespace {

// Not everything that can be embedded beside the signer's certificate is covered by a signature of
// its own: an altered name may leave its issuer unknown. What has the key of a known certificate
// must then be that certificate.
bool altered(X509* certificate, const std::vector<Certificate>& known) {
    bool issuerKnown = false;
    bool keyKnown = false;
    for (const Certificate& other : known) {
        EVP_PKEY* key = X509_get0_pubkey(other.get());
        if (key == nullptr || other.get() == certificate) continue;
        if (X509_cmp(other.get(), certificate) == 0) return false;
        const EVP_PKEY* own = X509_get0_pubkey(certificate);
        keyKnown = keyKnown || (own != nullptr && EVP_PKEY_eq(key, own) == 1);
    }
    for (const Certificate& issuer : known) {
        if (X509_NAME_cmp(X509_get_subject_name(issuer.get()), X509_get_issuer_name(certificate)) !=
            0)
            continue;
        issuerKnown = true;
        EVP_PKEY* key = X509_get0_pubkey(issuer.get());
        if (key != nullptr && X509_verify(certificate, key) == 1) return false;
    }
    return issuerKnown || keyKnown;
}

bool exactlyEncoded(std::string_view bytes) {
    // The older form keeps the order of certificates, which this one sorts: both are in use.
    return decodedExactly<SignedData>(bytes, d2i_CMS_ContentInfo, i2d_CMS_ContentInfo) ||
           decodedExactly<Owned<PKCS7, PKCS7_free>>(bytes, d2i_PKCS7, i2d_PKCS7);
}

}  // namespace

std::string formFault(std::string_view signedData, const std::vector<Certificate>& others) {
    const unsigned char* start = bytesOf(signedData);
    const SignedData read(
        exactlyEncoded(signedData)
            ? d2i_CMS_ContentInfo(nullptr, &start, static_cast<long>(signedData.size()))
            : nullptr);
    return formFault(read.get(), signedData, others);
}

std::string formFault(CMS_ContentInfo* read, std::string_view signedData,
                      const std::vector<Certificate>& others) {
    CMS_SignerInfo* signer = read != nullptr && OBJ_obj2nid(CMS_get0_type(read)) == NID_pkcs7_signed
                                 ? onlySigner(read)
                                 : nullptr;
    if (signer == nullptr) return "it is no DER of one signer";

    Outline parts = outline(signedData);
    ASN1_OCTET_STRING* keyId = nullptr;
    X509_NAME* issuer = nullptr;
    ASN1_INTEGER* serial = nullptr;
    CMS_SignerInfo_get0_signer_id(signer, &keyId, &issuer, &serial);
    const char signerVersion = keyId != nullptr ? 3 : 1;
    const bool plainData = OBJ_obj2nid(CMS_get0_eContentType(read)) == NID_pkcs7_data;
    Element firstSigner = next(parts.signers.content);
    if (!isNumber(parts.version, plainData && keyId == nullptr ? 1 : 3) ||
        !isNumber(next(firstSigner.content), signerVersion))
        return "a version in it is not the one for its contents";

    X509_ALGOR* digest = nullptr;
    X509_ALGOR* algorithm = nullptr;
    CMS_SignerInfo_get0_algs(signer, nullptr, nullptr, &digest, &algorithm);
    if (!plainDigest(digest) || !agrees(algorithm, digest))
        return "its algorithms are unknown or do not agree";
    const unsigned char* at = bytesOf(parts.digests.content);
    const Owned<X509_ALGOR, X509_ALGOR_free> stated(
        d2i_X509_ALGOR(nullptr, &at, static_cast<long>(parts.digests.content.size())));
    if (!stated || at != bytesOf(parts.digests.content) + parts.digests.content.size() ||
        !plainDigest(stated.get()) || OBJ_cmp(stated->algorithm, digest->algorithm) != 0)
        return "it states other digests than the signer's";

    std::vector<Certificate> known = certificatesIn(read);
    const std::size_t embedded = known.size();
    for (const Certificate& other : others) {
        X509_up_ref(other.get());
        known.emplace_back(other.get());
    }
    // Names are compared without regard to case, so an altered letter still finds the certificate.
    for (const Certificate& one : known)
        if (issuer != nullptr && CMS_SignerInfo_cert_cmp(signer, one.get()) == 0 &&
            encoded(i2d_X509_NAME, issuer) !=
                encoded(i2d_X509_NAME, X509_get_issuer_name(one.get())))
            return "it names the signer's certificate in other letters";
    for (std::size_t i = 0; i < embedded; ++i)
        if (altered(known[i].get(), known)) return "a certificate in it was altered";
    ERR_clear_error();
    return {};
}

}  // namespace model::openssl
