// SPDX-License-Identifier: Apache-2.0
#include "trust/key_secret.h"

#include <algorithm>
#include <openssl/crypto.h>
#include <utility>

namespace model {

SecretBytes::SecretBytes(std::string_view bytes)
    : bytes_(std::make_unique<char[]>(bytes.size() + 1)), size_(bytes.size()) {
    std::copy(bytes.begin(), bytes.end(), bytes_.get());
}

SecretBytes::SecretBytes(SecretBytes&& other) noexcept
    : bytes_(std::move(other.bytes_)), size_(std::exchange(other.size_, 0)) {}

SecretBytes& SecretBytes::operator=(SecretBytes&& other) noexcept {
    if (this != &other) {
        wipe();
        bytes_ = std::move(other.bytes_);
        size_ = std::exchange(other.size_, 0);
    }
    return *this;
}

SecretBytes::~SecretBytes() {
    wipe();
}

SecretBytes SecretBytes::takeFrom(std::string& source) {
    SecretBytes taken{std::string_view(source)};
    OPENSSL_cleanse(source.data(), source.size());
    source.clear();
    return taken;
}

void SecretBytes::wipe() {
    if (bytes_) OPENSSL_cleanse(bytes_.get(), size_);
}

}  // namespace model
