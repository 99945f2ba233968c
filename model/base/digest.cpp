// SPDX-License-Identifier: Apache-2.0
#include "base/digest.h"

#include <cstdio>
#include <cstdlib>
#include <openssl/evp.h>

namespace model {

namespace {

/// Without a working hash nothing can be stored or proven: there is no way to go on.
void require(bool works) {
    if (works) return;
    std::fputs("fettlemark: the cryptographic library has no working SHA-256\n", stderr);
    std::abort();
}

}  // namespace

Digest sha256(std::string_view bytes) {
    Digest digest;
    unsigned int size = 0;
    require(EVP_Digest(bytes.data(), bytes.size(), digest.data(), &size, EVP_sha256(), nullptr) ==
                1 &&
            size == digest.size());
    return digest;
}

struct Sha256::State {
    State() : context(EVP_MD_CTX_new()) {}
    State(const State&) = delete;
    State& operator=(const State&) = delete;
    ~State() { EVP_MD_CTX_free(context); }
    EVP_MD_CTX* context;
};

Sha256::Sha256() : state_(std::make_unique<State>()) {
    require(state_->context != nullptr &&
            EVP_DigestInit_ex(state_->context, EVP_sha256(), nullptr) == 1);
}

Sha256::~Sha256() = default;

void Sha256::add(std::string_view bytes) {
    require(EVP_DigestUpdate(state_->context, bytes.data(), bytes.size()) == 1);
}

Digest Sha256::finish() {
    Digest digest;
    unsigned int size = 0;
    require(EVP_DigestFinal_ex(state_->context, digest.data(), &size) == 1 &&
            size == digest.size());
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
