// SPDX-License-Identifier: Apache-2.0
#include "base/digest.h"

#include <cstdio>
#include <cstdlib>
#include <openssl/evp.h>

namespace model {

Digest sha256(std::string_view bytes) {
    Digest digest;
    unsigned int size = 0;
    if (EVP_Digest(bytes.data(), bytes.size(), digest.data(), &size, EVP_sha256(), nullptr) != 1 ||
        size != digest.size()) {
        // Without a working hash nothing can be stored or proven: there is no way to go on.
        std::fputs("fettlemark: the cryptographic library has no working SHA-256\n", stderr);
        std::abort();
    }
    return digest;
}

std::string toHex(const Digest& digest) {
    constexpr char kHex[] = "0123456789abcdef";
    std::string text;
    text.reserve(2 * digest.size());
    for (const std::uint8_t byte : digest) {
        text += kHex[byte >> 4];
        text += kHex[byte & 15];
    }
    return text;
}

}  // namespace model
