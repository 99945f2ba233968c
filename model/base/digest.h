// SPDX-License-Identifier: Apache-2.0
// SHA-256 (FIPS 180-4) of bytes, computed by OpenSSL.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

namespace model {

using Digest = std::array<std::uint8_t, 32>;

Digest sha256(std::string_view bytes);

/// The same of bytes that come piece by piece, such as a file's.
class Sha256 {
public:
    Sha256();
    Sha256(const Sha256&) = delete;
    Sha256& operator=(const Sha256&) = delete;
    ~Sha256();

    void add(std::string_view bytes);
    /// Of all that was added; nothing can be added afterwards.
    Digest finish();

private:
    struct State;
    std::unique_ptr<State> state_;
};

/// 64 lower-case hexadecimal digits.
std::string toHex(const Digest& digest);

}  // namespace model
