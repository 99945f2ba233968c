// SPDX-License-Identifier: Apache-2.0
// Checking many signatures of few people, as those of a history: a certificate is read, and its way
// to an authority found, once for all of them.
#pragma once

#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "trust/identity_certificate.h"

namespace model {
namespace openssl {
struct HeldCertificates;
}

class KnownSigner {
public:
    /// `certificates` as in Identity: the person's own first, then its issuers. Fails (Damaged)
    /// where one cannot be read.
    static Result<KnownSigner> read(const std::vector<std::string>& certificates,
                                    std::span<const std::string> anchors);
    KnownSigner(KnownSigner&&) noexcept;
    KnownSigner& operator=(KnownSigner&&) noexcept;
    ~KnownSigner();

    [[nodiscard]] const CertificateFacts& facts() const { return facts_; }
    /// Whether it leads to one of the anchors and may sign; regardless of dates and revocation.
    [[nodiscard]] bool trusted() const { return trusted_; }
    /// Whether no certificate on that way had ended at `time` or had not begun.
    [[nodiscard]] bool validAt(UtcTime time) const { return from_ <= time && time <= until_; }

    /// What stands against `signature` being signBeside()'s of `bytes` by this signer, in plain
    /// English; empty: it is. Every byte of it is accounted for. May be called from several threads
    /// at once.
    [[nodiscard]] std::string fault(std::string_view bytes, std::string_view signature) const;

private:
    explicit KnownSigner(std::unique_ptr<openssl::HeldCertificates> held);

    std::unique_ptr<openssl::HeldCertificates> held_;
    CertificateFacts facts_;
    UtcTime from_{};
    UtcTime until_{};
    bool trusted_ = false;
};

}  // namespace model
