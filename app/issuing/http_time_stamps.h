// SPDX-License-Identifier: Apache-2.0
// A time-stamp service on the network: RFC 3161 over HTTP or HTTPS (its section 3.4).
#pragma once

#include <chrono>
#include <memory>
#include <string>

#include "base/result.h"
#include "trust/signature_time_stamp.h"

namespace app {

/// A service at `url`. Every stamp sends a hash and nothing else of what is signed. Fails (Input)
/// where the address is none of http or https, or carries a name or password. A stamp fails
/// (Refused) where the service does not answer within `patience`, or with anything but a time
/// stamp: no redirection is followed. A QCoreApplication must exist, on any thread.
model::Result<std::unique_ptr<model::TimeStampService>> httpTimeStamps(
    const std::string& url, std::chrono::milliseconds patience = std::chrono::seconds(20));

}  // namespace app
