// SPDX-License-Identifier: Apache-2.0
#include "trust/key_openssl.h"

#include <ctime>
#include <openssl/err.h>
#include <openssl/x509v3.h>

namespace model::openssl {

Certificate readCertificate(std::string_view der) {
    auto certificate = decodedExactly<Certificate>(der, d2i_X509, i2d_X509);
    ERR_clear_error();
    return certificate;
}

RevocationList readRevocationList(std::string_view der) {
    auto list = decodedExactly<RevocationList>(der, d2i_X509_CRL, i2d_X509_CRL);
    ERR_clear_error();
    return list;
}

std::string der(const X509* certificate) {
    return encoded(i2d_X509, certificate);
}

int noPassphrase(char* /*buffer*/, int /*size*/, int /*writing*/, void* /*data*/) {
    return -1;
}

std::optional<UtcTime> toTime(const ASN1_TIME* time) {
    std::tm parts{};
    if (time == nullptr || ASN1_TIME_to_tm(time, &parts) != 1) return std::nullopt;
    const std::chrono::year_month_day date(std::chrono::year(parts.tm_year + 1900),
                                           std::chrono::month(unsigned(parts.tm_mon + 1)),
                                           std::chrono::day(unsigned(parts.tm_mday)));
    if (!date.ok() || date.year() < std::chrono::year(1950)) return std::nullopt;
    return std::chrono::sys_days(date) + std::chrono::hours(parts.tm_hour) +
           std::chrono::minutes(parts.tm_min) + std::chrono::seconds(parts.tm_sec);
}

bool setTime(ASN1_TIME* field, UtcTime time) {
    return ASN1_TIME_set(field, static_cast<std::time_t>(time.time_since_epoch().count())) !=
           nullptr;
}

std::string nameEntry(const X509_NAME* name, int nid) {
    const int at = name == nullptr ? -1 : X509_NAME_get_index_by_NID(name, nid, -1);
    if (at < 0) return {};
    unsigned char* text = nullptr;
    const int size =
        ASN1_STRING_to_UTF8(&text, X509_NAME_ENTRY_get_data(X509_NAME_get_entry(name, at)));
    const Bytes owner(text);
    if (size < 0) {
        ERR_clear_error();
        return {};
    }
    return {reinterpret_cast<const char*>(text), static_cast<std::size_t>(size)};
}

std::string serialText(const ASN1_INTEGER* serial) {
    constexpr char kHex[] = "0123456789abcdef";
    std::string text;
    for (const char byte : view(serial)) {
        text += kHex[static_cast<unsigned char>(byte) >> 4];
        text += kHex[static_cast<unsigned char>(byte) & 15];
    }
    return text;
}

Error failure(std::string_view what) {
    char why[256] = "no reason given";
    // Only the last error: the first ones may tell of data, the last of the step that failed.
    if (const unsigned long code = ERR_peek_last_error(); code != 0)
        ERR_error_string_n(code, why, sizeof why);
    ERR_clear_error();
    return refusal("", "the cryptographic library failed at %1 (%2)", {std::string(what), why});
}

SigningKey holding(HeldKey held) {
    return SigningKey(std::make_unique<HeldKey>(std::move(held)));
}

}  // namespace model::openssl
