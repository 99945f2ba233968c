// SPDX-License-Identifier: Apache-2.0
// Orders, parts and castings in the database. What functions do and how they fail: archive.h.
#pragma once

#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/transaction.h"

namespace model {

/// The version that a save makes, where the stored one (`selectVersion`, by its key) is the one
/// that the caller knows; else Conflict, or Input where there is none.
Result<std::int64_t> nextVersion(const Connection& connection, const char* selectVersion,
                                 const char* what, const std::string& key,
                                 std::int64_t knownVersion);

/// The same of one whose stored version (0: none) was read.
Result<std::int64_t> nextVersion(const Connection& connection, std::int64_t stored,
                                 const char* what, const std::string& key,
                                 std::int64_t knownVersion);

Result<std::int64_t> saveOrder(WriteTransaction& transaction, const Order& order,
                               std::int64_t knownVersion);
Result<std::int64_t> savePart(WriteTransaction& transaction, const Part& part,
                              std::int64_t knownVersion);
Result<std::int64_t> saveCasting(WriteTransaction& transaction, const Casting& casting,
                                 std::int64_t knownVersion);

// One by its number, or all of them by number where none is given.
Result<std::vector<Stored<Order>>> loadOrders(const Connection& connection,
                                              const std::optional<std::string>& number);
Result<std::vector<Stored<Part>>> loadParts(const Connection& connection,
                                            const std::optional<std::string>& number);
Result<std::vector<Stored<Casting>>> loadCastings(const Connection& connection,
                                                  const std::optional<std::string>& serial);

/// The only one in `found`; Input "there is no order 4711" where it is empty.
template <class T>
Result<Stored<T>> onlyOne(const Connection& connection, Result<std::vector<Stored<T>>> found,
                          const char* what, const std::string& key) {
    if (!found) return found.error();
    if (found->empty()) return inputError(connection.place(), "has no %1 %2", {what, key});
    return std::move(found->front());
}

}  // namespace model
