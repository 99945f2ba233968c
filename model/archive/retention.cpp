// SPDX-License-Identifier: Apache-2.0
#include "archive/retention.h"

#include <functional>

#include "archive/archive_access.h"
#include "archive/given_reason.h"
#include "archive/record_store.h"
#include "archive/retention_store.h"

namespace model {
namespace {

Result<void> checkMayState(const SignedIn& signer) {
    if (signer.has(Role::QaManager) || signer.has(Role::Administrator)) return {};
    return refusal(signer.person().name,
                   "is neither QA manager nor administrator, who alone state how long "
                   "certificates are kept");
}

/// Changes what is stated for an order; `change` gets it and says what is wrong with that.
Result<void> state(Archive& archive, const std::string& order, const std::string& reason,
                   const SignedIn& signer,
                   const std::function<Result<void>(Retention& retention)>& change) {
    if (auto may = checkMayState(signer); !may) return may;
    return ArchiveAccess::write(
        archive, signer.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const Connection& connection = transaction.connection();
            if (auto there = checkOrder(connection, order); !there) return there;
            auto stated = loadRetention(connection, order);
            if (!stated) return stated.error();
            if (auto changed = change(*stated); !changed) return changed;
            ++stated->version;
            Canonical::Object content = canonicalOf(*stated);
            if (!reason.empty()) content["reason"] = reason;
            if (auto done = transaction.recordSigned(action::kRetentionStated, order,
                                                     std::move(content), signer);
                !done)
                return done;
            return storeRetention(connection, *stated);
        });
}

}  // namespace

Result<Retention> retention(const Archive& archive, const std::string& order) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    if (auto there = checkOrder(connection, order); !there) return there.error();
    return loadRetention(connection, order);
}

Result<void> keepUntil(Archive& archive, const std::string& order, const std::string& date,
                       const std::string& reason, const SignedIn& signer) {
    if (!timeFrom(date + "T00:00:00Z"))
        return inputError("", "\"%1\" is no date like 2036-12-31", {date});
    const std::string why = trimmed(reason);
    return state(archive, order, why, signer, [&](Retention& retention) -> Result<void> {
        if (retention.keepUntil && date < *retention.keepUntil && why.empty())
            return inputError("order " + order,
                              "is to be kept until %1; an earlier day needs a reason",
                              {*retention.keepUntil});
        retention.keepUntil = date;
        return {};
    });
}

Result<void> hold(Archive& archive, const std::string& order, const std::string& reason,
                  const SignedIn& signer) {
    const auto why = givenReason(reason);
    if (!why) return why.error();
    return state(archive, order, *why, signer, [&](Retention& retention) -> Result<void> {
        if (retention.hold)
            return Error{
                ErrorKind::Conflict, "order " + order, "is on hold already: %1", {*retention.hold}};
        retention.hold = *why;
        return {};
    });
}

Result<void> endHold(Archive& archive, const std::string& order, const std::string& reason,
                     const SignedIn& signer) {
    const auto why = givenReason(reason);
    if (!why) return why.error();
    return state(archive, order, *why, signer, [&](Retention& retention) -> Result<void> {
        if (!retention.hold)
            return Error{ErrorKind::Conflict, "order " + order, "is not on hold", {}};
        retention.hold.reset();
        return {};
    });
}

}  // namespace model
