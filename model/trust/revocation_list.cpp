// SPDX-License-Identifier: Apache-2.0
#include "trust/revocation_list.h"

#include <openssl/err.h>
#include <openssl/pem.h>

#include "trust/identity_open.h"
#include "trust/identity_revocation.h"
#include "trust/signature_checks.h"

namespace model {
namespace {

bool isSignedBy(X509_CRL* list, X509* issuer) {
    return X509_NAME_cmp(X509_CRL_get_issuer(list), X509_get_subject_name(issuer)) == 0 &&
           X509_CRL_verify(list, X509_get0_pubkey(issuer)) == 1;
}

}  // namespace

Result<std::string> revocationListFrom(std::string_view file) {
    constexpr std::size_t kLongest = 64U << 20U;
    if (openssl::readRevocationList(file)) return std::string(file);
    std::string list;
    if (!file.empty() && file.size() <= kLongest) {
        const openssl::Memory memory(BIO_new_mem_buf(file.data(), static_cast<int>(file.size())));
        const openssl::RevocationList read(
            PEM_read_bio_X509_CRL(memory.get(), nullptr, &openssl::noPassphrase, nullptr));
        if (read) list = openssl::encoded(i2d_X509_CRL, read.get());
    }
    ERR_clear_error();
    if (!openssl::readRevocationList(list))
        return inputError("", "the file is no revocation list, in DER or PEM");
    return list;
}

Result<RevocationListFacts> describeRevocationList(std::string_view list,
                                                   std::span<const std::string> issuers) {
    const openssl::RevocationList read = openssl::readRevocationList(list);
    const auto issued = read ? openssl::toTime(X509_CRL_get0_lastUpdate(read.get())) : std::nullopt;
    if (!issued) return inputError("", "the bytes are no revocation list");
    RevocationListFacts facts;
    facts.issuer = openssl::nameEntry(X509_CRL_get_issuer(read.get()), NID_commonName);
    facts.issued = *issued;
    facts.next = openssl::toTime(X509_CRL_get0_nextUpdate(read.get()));
    if (const auto* entries = X509_CRL_get_REVOKED(read.get()))
        facts.revoked = static_cast<std::size_t>(sk_X509_REVOKED_num(entries));
    if (!openssl::isUnderstood(read.get()))
        return inputError("",
                          "the list of %1 is one of some of its certificates or of changes "
                          "only; take its complete list",
                          {facts.issuer});
    for (const std::string& bytes : issuers) {
        const openssl::Certificate issuer = openssl::readCertificate(bytes);
        if (issuer && isSignedBy(read.get(), issuer.get())) {
            facts.issuerCertificate = bytes;
            break;
        }
    }
    ERR_clear_error();
    if (facts.issuerCertificate.empty())
        return inputError("", "no trusted authority signed the list, which names %1 as its issuer",
                          {facts.issuer});
    return facts;
}

bool isOfIssuer(std::string_view list, std::string_view certificate) {
    const openssl::RevocationList read = openssl::readRevocationList(list);
    const openssl::Certificate issuer = openssl::readCertificate(certificate);
    return read && issuer &&
           X509_NAME_cmp(X509_CRL_get_issuer(read.get()), X509_get_subject_name(issuer.get())) == 0;
}

Result<std::optional<Revocation>> revocationOf(const std::vector<std::string>& certificates,
                                               std::span<const std::string> lists) {
    const auto chain = openssl::readCertificates(certificates);
    if (!chain) return chain.error();
    std::optional<Revocation> first;
    for (std::size_t i = 0; i + 1 < chain->size(); ++i) {
        const auto found =
            openssl::lookUp((*chain)[i].get(), (*chain)[i + 1].get(), lists, UtcTime{});
        if (found.damaged)
            return Error{
                ErrorKind::Damaged, "", "a revocation list is damaged or of an unknown kind", {}};
        if (found.revoked && (!first || found.revoked->since < first->since)) first = found.revoked;
    }
    return first;
}

Result<std::vector<std::string>> upToAnchor(const std::vector<std::string>& certificates,
                                            const TrustedCertificates& trusted) {
    const auto own = openssl::readCertificates(certificates);
    if (!own) return own.error();
    const auto readable = [](const std::vector<std::string>& all) {
        std::vector<openssl::Certificate> read;
        for (const std::string& bytes : all)
            if (auto certificate = openssl::readCertificate(bytes))
                read.push_back(std::move(certificate));
        return read;
    };
    std::vector<openssl::Certificate> helpers = readable(certificates);
    for (auto& one : readable(trusted.intermediates)) helpers.push_back(std::move(one));
    std::string fault;
    const auto chain =
        openssl::chainOf(own->front().get(), helpers, readable(trusted.anchors), fault);
    ERR_clear_error();
    if (!fault.empty()) return certificates;
    std::vector<std::string> all;
    all.reserve(static_cast<std::size_t>(sk_X509_num(chain.get())));
    for (int i = 0; i < sk_X509_num(chain.get()); ++i)
        all.push_back(openssl::der(sk_X509_value(chain.get(), i)));
    return all;
}

}  // namespace model
