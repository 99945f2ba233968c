// SPDX-License-Identifier: Apache-2.0
// The hash chain of a history: every row's hash covers its bytes and, through the row before,
// everything earlier. Row 1 follows kGenesis. A row's hash is what is signed.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "base/digest.h"
#include "base/result.h"

namespace model {

/// What row 1 follows: 32 zero bytes, which no known input hashes to.
inline constexpr Digest kGenesis{};

/// SHA-256 over the 32 bytes of `previous` followed by `bytes`.
Digest chained(const Digest& previous, std::string_view bytes);

/// The last row of a chain; sequence 0 with kGenesis: no row yet.
struct Head {
    std::int64_t sequence = 0;
    Digest hash = kGenesis;

    friend bool operator==(const Head&, const Head&) = default;
};

/// "N:HASH", as printed on certificates: 17:0f3a... with 64 lower-case hexadecimal digits.
std::string toText(const Head& head);

/// Reads "N:HASH"; hexadecimal digits of either case. Fails with ErrorKind::Input.
Result<Head> parseHead(std::string_view text);

/// Walks a chain from row 1 and stops at the first row that does not fit.
class ChainVerifier {
public:
    /// Takes the next row. Fails with ErrorKind::Damaged, naming the row, where its number is not
    /// the next one or its hash is not that of its bytes after the row before; once it has failed
    /// it stays where it was.
    Result<void> add(std::int64_t sequence, std::string_view bytes, const Digest& hash);

    /// The last row that fitted.
    [[nodiscard]] const Head& head() const { return head_; }

private:
    Head head_;
};

}  // namespace model
