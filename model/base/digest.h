// SPDX-License-Identifier: Apache-2.0
// SHA-256 (FIPS 180-4) of bytes, computed by OpenSSL.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace model {

using Digest = std::array<std::uint8_t, 32>;

Digest sha256(std::string_view bytes);

/// 64 lower-case hexadecimal digits.
std::string toHex(const Digest& digest);

}  // namespace model
