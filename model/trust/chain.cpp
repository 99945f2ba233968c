// SPDX-License-Identifier: Apache-2.0
#include "trust/chain.h"

#include <charconv>

namespace model {
namespace {

int digitOf(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

Error damagedRow(std::int64_t row, std::string reason, std::vector<std::string> arguments = {}) {
    return {ErrorKind::Damaged, "history row " + std::to_string(row), std::move(reason),
            std::move(arguments)};
}

}  // namespace

Digest chained(const Digest& previous, std::string_view bytes) {
    std::string both(previous.begin(), previous.end());
    both += bytes;
    return sha256(both);
}

std::string toText(const Head& head) {
    return std::to_string(head.sequence) + ":" + toHex(head.hash);
}

Result<Head> parseHead(std::string_view text) {
    const Error wrong =
        inputError("",
                   "is not a head of the history: a row number, a colon and 64 hexadecimal "
                   "digits");
    Head head;
    const char* const end = text.data() + text.size();
    const auto [colon, code] = std::from_chars(text.data(), end, head.sequence);
    if (code != std::errc{} || head.sequence < 0 || colon == end || *colon != ':') return wrong;
    const std::string_view digits(colon + 1, static_cast<std::size_t>(end - colon - 1));
    if (digits.size() != 2 * head.hash.size()) return wrong;
    for (std::size_t i = 0; i < head.hash.size(); ++i) {
        const int high = digitOf(digits[2 * i]);
        const int low = digitOf(digits[2 * i + 1]);
        if (high < 0 || low < 0) return wrong;
        head.hash[i] = static_cast<std::uint8_t>(high << 4 | low);
    }
    return head;
}

Result<void> ChainVerifier::add(std::int64_t sequence, std::string_view bytes, const Digest& hash) {
    const std::int64_t next = head_.sequence + 1;
    if (sequence != next)
        return damagedRow(next, "is missing; row %1 follows row %2",
                          {std::to_string(sequence), std::to_string(head_.sequence)});
    if (chained(head_.hash, bytes) != hash)
        return damagedRow(sequence, "was altered, or one before it: its hash does not fit");
    head_ = {sequence, hash};
    return {};
}

}  // namespace model
