// SPDX-License-Identifier: Apache-2.0
// The rows of the history. What each action's content holds is described in HISTORY.md.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/connection.h"
#include "trust/canonical.h"

namespace model {

namespace action {
inline constexpr char kArchiveCreated[] = "archive created";
inline constexpr char kArchiveMigrated[] = "archive migrated";
inline constexpr char kOrderSaved[] = "order saved";
inline constexpr char kPartSaved[] = "part saved";
inline constexpr char kZonePlanAdded[] = "zone plan added";
inline constexpr char kCastingSaved[] = "casting saved";
inline constexpr char kExaminationSaved[] = "examination saved";
inline constexpr char kTableAdded[] = "limit table added";
inline constexpr char kNumberReserved[] = "certificate number reserved";
inline constexpr char kCertificateAdded[] = "certificate added";
}  // namespace action

/// The bytes of a row, as CANONICAL.md of trust/ lays them down.
Result<std::string> historyBytes(std::int64_t sequence, const std::string& time,
                                 const std::string& person, const std::string& action,
                                 const std::string& subject, Canonical::Object content);

/// Adds a row, within a write transaction; only WriteTransaction::record() calls it.
Result<void> appendHistory(const Connection& connection, const std::string& time,
                           const std::string& person, const std::string& action,
                           const std::string& subject, Canonical::Object content);

Result<Head> historyHead(const Connection& connection);

/// The rows from number `from` on, rising, until `take` returns false.
Result<void> readHistory(const Connection& connection, std::int64_t from,
                         const std::function<bool(HistoryEntry)>& take);

}  // namespace model
