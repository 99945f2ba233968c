// SPDX-License-Identifier: Apache-2.0
#include "trust/signature_time_stamp.h"

#include <openssl/err.h>
#include <openssl/rand.h>
#include <openssl/ts.h>

#include "trust/key_openssl.h"
#include "trust/signature_form.h"
#include "trust/signature_token.h"

namespace model {
namespace openssl {
namespace {

using Token = Owned<PKCS7, PKCS7_free>;
using TokenInfo = Owned<TS_TST_INFO, TS_TST_INFO_free>;
using Context = Owned<TS_VERIFY_CTX, TS_VERIFY_CTX_free>;

bool isAbout(TS_TST_INFO* info, const Digest& digest) {
    TS_MSG_IMPRINT* imprint = TS_TST_INFO_get_msg_imprint(info);
    const X509_ALGOR* algorithm = TS_MSG_IMPRINT_get_algo(imprint);
    const std::string_view value = view(TS_MSG_IMPRINT_get_msg(imprint));
    return OBJ_obj2nid(algorithm->algorithm) == NID_sha256 &&
           value == std::string_view(reinterpret_cast<const char*>(digest.data()), digest.size());
}

// Without anchors every chain passes: then only the token's own signature is asked.
bool signatureHolds(PKCS7* token, std::span<const std::string> anchors, UtcTime at, bool anyChain) {
    X509_STORE* store = X509_STORE_new();
    const Context context(TS_VERIFY_CTX_new());
    if (store == nullptr || !context) {
        X509_STORE_free(store);
        return false;
    }
    for (const std::string& bytes : anchors)
        if (const Certificate anchor = readCertificate(bytes))
            X509_STORE_add_cert(store, anchor.get());
    X509_VERIFY_PARAM* parameters = X509_STORE_get0_param(store);
    X509_VERIFY_PARAM_set_time(parameters, static_cast<time_t>(at.time_since_epoch().count()));
    X509_VERIFY_PARAM_set_flags(parameters, X509_V_FLAG_PARTIAL_CHAIN);
    if (anyChain) X509_STORE_set_verify_cb(store, [](int, X509_STORE_CTX*) { return 1; });
    TS_VERIFY_CTX_set_flags(context.get(), TS_VFY_SIGNATURE | TS_VFY_VERSION);
    TS_VERIFY_CTX_set_store(context.get(), store);  // takes it over
    const bool holds = TS_RESP_verify_token(context.get(), token) == 1;
    ERR_clear_error();
    return holds;
}

}  // namespace

TimeStampReport verifyToken(std::string_view token, const Digest& digest,
                            std::span<const std::string> anchors, UtcTime at) {
    TimeStampReport report;
    std::vector<Certificate> issuers;
    for (const std::string& bytes : anchors)
        if (Certificate anchor = readCertificate(bytes)) issuers.push_back(std::move(anchor));
    const auto read = decodedExactly<Token>(token, d2i_PKCS7, i2d_PKCS7);
    if (!read || PKCS7_type_is_signed(read.get()) == 0) return report;
    const TokenInfo info(PKCS7_to_TS_TST_INFO(read.get()));
    const auto time = info ? toTime(TS_TST_INFO_get_time(info.get())) : std::nullopt;
    if (!time) {
        ERR_clear_error();
        return report;
    }
    report.time = *time;
    const Owned<STACK_OF(X509), [](STACK_OF(X509) * stack) { sk_X509_free(stack); }> signers(
        PKCS7_get0_signers(read.get(), nullptr, 0));
    if (sk_X509_num(signers.get()) == 1)
        report.authority =
            nameEntry(X509_get_subject_name(sk_X509_value(signers.get(), 0)), NID_commonName);
    report.intact = isAbout(info.get(), digest) && formFault(token, issuers).empty() &&
                    signatureHolds(read.get(), {}, at, true);
    report.trusted = report.intact && !anchors.empty() &&
                     signatureHolds(read.get(), anchors, at, false) && report.time <= at;
    ERR_clear_error();
    return report;
}

}  // namespace openssl

namespace {

using Request = openssl::Owned<TS_REQ, TS_REQ_free>;
using Response = openssl::Owned<TS_RESP, TS_RESP_free>;

Result<Request> makeRequest(const Digest& digest) {
    Request request(TS_REQ_new());
    const openssl::Owned<TS_MSG_IMPRINT, TS_MSG_IMPRINT_free> imprint(TS_MSG_IMPRINT_new());
    const openssl::Owned<X509_ALGOR, X509_ALGOR_free> algorithm(X509_ALGOR_new());
    const openssl::Owned<ASN1_INTEGER, ASN1_INTEGER_free> nonce(ASN1_INTEGER_new());
    std::uint64_t random = 0;
    auto bytes = digest;
    if (!request || !imprint || !algorithm || !nonce ||
        RAND_bytes(reinterpret_cast<unsigned char*>(&random), sizeof random) != 1 ||
        X509_ALGOR_set0(algorithm.get(), OBJ_nid2obj(NID_sha256), V_ASN1_NULL, nullptr) != 1 ||
        TS_MSG_IMPRINT_set_algo(imprint.get(), algorithm.get()) != 1 ||
        TS_MSG_IMPRINT_set_msg(imprint.get(), bytes.data(), static_cast<int>(bytes.size())) != 1 ||
        ASN1_INTEGER_set_uint64(nonce.get(), random) != 1 ||
        TS_REQ_set_version(request.get(), 1) != 1 ||
        TS_REQ_set_msg_imprint(request.get(), imprint.get()) != 1 ||
        TS_REQ_set_nonce(request.get(), nonce.get()) != 1 ||
        TS_REQ_set_cert_req(request.get(), 1) != 1)
        return openssl::failure("asking for a time stamp");
    return request;
}

}  // namespace

Result<std::string> Rfc3161Service::stamp(const Digest& digest) const {
    constexpr std::size_t kLongestAnswer = 1U << 20U;
    auto request = makeRequest(digest);
    if (!request) return request.error();
    const auto answer = transport_(openssl::encoded(i2d_TS_REQ, request->get()));
    if (!answer) return answer.error();
    const unsigned char* next = openssl::bytesOf(*answer);
    const Response response(answer->size() > kLongestAnswer
                                ? nullptr
                                : d2i_TS_RESP(nullptr, &next, static_cast<long>(answer->size())));
    if (!response) {
        ERR_clear_error();
        return refusal("", "the time-stamp service's answer cannot be read");
    }
    const openssl::Context context(TS_REQ_to_TS_VERIFY_CTX(request->get(), nullptr));
    if (!context || TS_RESP_verify_response(context.get(), response.get()) != 1)
        return openssl::failure("checking the time-stamp service's answer");
    PKCS7* token = TS_RESP_get_token(response.get());
    std::string bytes = token == nullptr ? "" : openssl::encoded(i2d_PKCS7, token);
    const auto time = openssl::toTime(TS_TST_INFO_get_time(TS_RESP_get_tst_info(response.get())));
    if (!time || !openssl::verifyToken(bytes, digest, {}, *time).intact)
        return refusal("", "the time-stamp service's answer is not validly signed");
    return bytes;
}

}  // namespace model
