// SPDX-License-Identifier: Apache-2.0
// How long an order's certificates are kept, and their disposal afterwards. Each act is signed by a
// QA manager or an administrator (Refused for anybody else). Errors are those of archive.h, and
// those of checkMaySign() (sign_in.h).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/sign_in.h"

namespace model {

/// What is stated for an order.
struct Retention {
    std::string order;
    std::int64_t version = 0;              ///< rises with every act; 0: nothing was ever stated
    std::optional<std::string> keepUntil;  ///< "2036-12-31", the last day; none: kept for ever
    std::optional<std::string> hold;       ///< why there is a legal hold; none: there is none

    friend bool operator==(const Retention&, const Retention&) = default;
};

/// Input: no such order.
Result<Retention> retention(const Archive& archive, const std::string& order);

/// States the last day on which the order's certificates are kept. An earlier day than the one
/// stated needs a reason (Input without one). Input: no such order or no date.
Result<void> keepUntil(Archive& archive, const std::string& order, const std::string& date,
                       const std::string& reason, const SignedIn& signer);

/// Nothing of the order is disposed of while it is on hold, whatever day it is. Input without a
/// reason; Conflict where it is on hold already, or is not.
Result<void> hold(Archive& archive, const std::string& order, const std::string& reason,
                  const SignedIn& signer);
Result<void> endHold(Archive& archive, const std::string& order, const std::string& reason,
                     const SignedIn& signer);

/// A certificate, or a casting returned under its number, as a disposal would take it out.
struct Disposable {
    std::int64_t number = 0;
    std::string serial;
    std::string type;                        ///< EN 10204:2004 type
    std::string at;                          ///< UTC: when it was issued or returned
    bool returned = false;                   ///< instead of released
    std::vector<std::string> files = {};     ///< SHA-256 of each PDF, the last one first
    std::vector<std::int64_t> records = {};  ///< signed examinations whose contents would go
    std::optional<Error> stays = {};         ///< why it cannot go today; none: it can
};

/// The order's certificates and returned castings, the newest first. Input: no such order.
Result<std::vector<Disposable>> disposables(const Archive& archive, const std::string& order);

/// Takes a certificate out of the archive, or a casting returned under that number: its entry, its
/// files, what was presented for it, and the contents of the records that it alone was made from.
/// The history keeps that it was there, with the SHA-256 of each, and everything else that it has;
/// what the bench recorded stays too.
///
/// Refused: its order has no keep-until day or that day is not over, the order is on hold, it waits
/// for release, or a certificate supersedes it, which has to go first. Input: no such certificate,
/// or no reason. A disposal whose files could not be deleted fails with Refused and can be asked
/// for again.
Result<void> dispose(Archive& archive, std::int64_t number, const std::string& reason,
                     const SignedIn& signer);

}  // namespace model
