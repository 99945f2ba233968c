// SPDX-License-Identifier: Apache-2.0
#include "trust/authority_certificate.h"

#include <openssl/err.h>
#include <openssl/rand.h>
#include <openssl/x509v3.h>

namespace model::openssl {
namespace {

using Name = Owned<X509_NAME, X509_NAME_free>;
using Constraints = Owned<NAME_CONSTRAINTS, NAME_CONSTRAINTS_free>;
using GeneralName = Owned<GENERAL_NAME, GENERAL_NAME_free>;
using Subtree = Owned<GENERAL_SUBTREE, GENERAL_SUBTREE_free>;
using Extension = Owned<X509_EXTENSION, X509_EXTENSION_free>;

Name makeName(const std::vector<NamePart>& parts) {
    Name name(X509_NAME_new());
    for (const NamePart& part : parts)
        if (!name ||
            X509_NAME_add_entry_by_NID(name.get(), part.nid, MBSTRING_UTF8, bytesOf(part.text),
                                       static_cast<int>(part.text.size()), -1, 0) != 1)
            return nullptr;
    return name;
}

bool setRandomSerial(ASN1_INTEGER* serial) {
    unsigned char bytes[16];
    if (RAND_bytes(bytes, sizeof bytes) != 1) return false;
    bytes[0] = static_cast<unsigned char>((bytes[0] & 0x7F) | 0x40);  // positive, of full length
    const Owned<BIGNUM, BN_free> number(BN_bin2bn(bytes, sizeof bytes, nullptr));
    return number && BN_to_ASN1_INTEGER(number.get(), serial) != nullptr;
}

// An empty DNS name, and an address with its mask of zeros, stand for all (RFC 5280, 4.2.1.10).
GeneralName octets(int type, std::string_view bytes) {
    GeneralName name(GENERAL_NAME_new());
    Owned<ASN1_STRING, ASN1_STRING_free> text(
        ASN1_STRING_type_new(type == GEN_IPADD ? V_ASN1_OCTET_STRING : V_ASN1_IA5STRING));
    if (!name || !text || ASN1_STRING_set(text.get(), bytes.data(), int(bytes.size())) != 1)
        return nullptr;
    GENERAL_NAME_set0_value(name.get(), type, text.release());
    return name;
}

bool append(STACK_OF(GENERAL_SUBTREE) * *list, GeneralName name) {
    if (*list == nullptr) *list = sk_GENERAL_SUBTREE_new_null();
    Subtree subtree(GENERAL_SUBTREE_new());
    if (*list == nullptr || !subtree || !name) return false;
    GENERAL_NAME_free(subtree->base);
    subtree->base = name.release();
    if (sk_GENERAL_SUBTREE_push(*list, subtree.get()) <= 0) return false;
    static_cast<void>(subtree.release());
    return true;
}

}  // namespace

CertificateDraft::CertificateDraft() : certificate_(X509_new()) {
    require(certificate_ && X509_set_version(get(), X509_VERSION_3) == 1 &&
            setRandomSerial(X509_get_serialNumber(get())));
}

void CertificateDraft::subject(const std::vector<NamePart>& parts) {
    const Name name = makeName(parts);
    require(name && X509_set_subject_name(get(), name.get()) == 1);
}

void CertificateDraft::issuer(const X509_NAME* name) {
    require(X509_set_issuer_name(get(), name) == 1);
}

void CertificateDraft::validity(UtcTime from, UtcTime until) {
    require(setTime(X509_getm_notBefore(get()), from) && setTime(X509_getm_notAfter(get()), until));
}

void CertificateDraft::publicKey(EVP_PKEY* key) {
    require(X509_set_pubkey(get(), key) == 1);
}

void CertificateDraft::extension(int nid, const char* value, X509* issuer) {
    X509V3_CTX context;
    X509V3_set_ctx(&context, issuer, get(), nullptr, nullptr, 0);
    X509V3_set_ctx_nodb(&context);
    const Extension made(X509V3_EXT_conf_nid(nullptr, &context, nid, value));
    require(made && X509_add_ext(get(), made.get(), -1) == 1);
}

void CertificateDraft::nameConstraints(const std::vector<NamePart>& subject) {
    const Constraints constraints(NAME_CONSTRAINTS_new());
    Name directory = makeName(subject);
    GeneralName permitted(GENERAL_NAME_new());
    if (!constraints || !directory || !permitted) return require(false);
    GENERAL_NAME_set0_value(permitted.get(), GEN_DIRNAME, directory.release());
    using namespace std::string_view_literals;
    require(append(&constraints->permittedSubtrees, std::move(permitted)) &&
            append(&constraints->permittedSubtrees, octets(GEN_EMAIL, ".invalid"sv)) &&
            append(&constraints->excludedSubtrees, octets(GEN_DNS, ""sv)) &&
            append(&constraints->excludedSubtrees, octets(GEN_IPADD, std::string(8, '\0'))) &&
            append(&constraints->excludedSubtrees, octets(GEN_IPADD, std::string(32, '\0'))));
    require(X509_add1_ext_i2d(get(), NID_name_constraints, constraints.get(), 1, 0) == 1);
}

Result<Certificate> CertificateDraft::signedBy(EVP_PKEY* key) {
    require(X509_sign(get(), key, EVP_sha256()) > 0);
    if (!sound_) return failure("making a certificate");
    return std::move(certificate_);
}

}  // namespace model::openssl
