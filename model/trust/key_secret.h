// SPDX-License-Identifier: Apache-2.0
// A passphrase in memory: held once, wiped when it is no longer needed.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>

namespace model {

/// Secret bytes that cannot be copied and are overwritten on destruction. They never belong into a
/// log, an error or the database.
class SecretBytes {
public:
    SecretBytes() = default;
    /// Copies `bytes`; the source stays the caller's to wipe. takeFrom() avoids that.
    explicit SecretBytes(std::string_view bytes);
    SecretBytes(const SecretBytes&) = delete;
    SecretBytes& operator=(const SecretBytes&) = delete;
    SecretBytes(SecretBytes&& other) noexcept;
    SecretBytes& operator=(SecretBytes&& other) noexcept;
    ~SecretBytes();

    /// Takes what `source` holds, then wipes and empties it.
    static SecretBytes takeFrom(std::string& source);

    [[nodiscard]] std::string_view view() const { return {bytes_.get(), size_}; }

private:
    void wipe();

    std::unique_ptr<char[]> bytes_;
    std::size_t size_ = 0;
};

}  // namespace model
