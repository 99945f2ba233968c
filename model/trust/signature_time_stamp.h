// SPDX-License-Identifier: Apache-2.0
// Time stamps by RFC 3161: somebody else's signed word that a signature existed at a time.
#pragma once

#include <functional>
#include <string>

#include "base/digest.h"
#include "base/result.h"

namespace model {

class TimeStampService {
public:
    TimeStampService() = default;
    TimeStampService(const TimeStampService&) = delete;
    TimeStampService& operator=(const TimeStampService&) = delete;
    virtual ~TimeStampService() = default;

    /// A time-stamp token (DER) over a SHA-256 digest.
    [[nodiscard]] virtual Result<std::string> stamp(const Digest& digest) const = 0;
};

/// Asks a service by RFC 3161. How the request travels is the caller's: `transport` is handed the
/// request (DER, application/timestamp-query) and returns the answer
/// (application/timestamp-reply).
class Rfc3161Service final : public TimeStampService {
public:
    using Transport = std::function<Result<std::string>(const std::string& request)>;

    explicit Rfc3161Service(Transport transport) : transport_(std::move(transport)) {}

    /// Fails when the transport does, and when the answer is a refusal, does not fit the request
    /// or is not validly signed by the certificate in it. Whether that certificate is trusted is
    /// for the verification to say.
    [[nodiscard]] Result<std::string> stamp(const Digest& digest) const override;

private:
    Transport transport_;
};

}  // namespace model
