// SPDX-License-Identifier: Apache-2.0
#include "archive/casting_store.h"

#include "archive/draft_store.h"
#include "archive/plan_store.h"
#include "archive/record_store.h"
#include "archive/signed_record_store.h"

namespace model {
namespace {

Result<void> addObjections(const Connection& connection, CastingFile& file) {
    const auto records = loadRecordsOf(connection, file.casting.serial);
    if (!records) return records.error();
    for (ExaminationDraft& draft : file.examinations) {
        const SignedRecord* record = standingOf(*records, draft.id);
        if (!record) continue;
        if (!record->recorded.reason.empty())
            draft.header.rejected = Objection{record->recorded.name, record->recorded.reason};
        if (record->invalid)
            draft.header.invalid = Objection{record->invalid->name, record->invalid->reason};
    }
    return {};
}

}  // namespace

Result<StoredCasting> loadCastingFile(const Connection& connection, const std::string& serial) {
    auto entry = onlyOne(connection, loadCastings(connection, serial), "casting", serial);
    if (!entry) return entry.error();
    StoredCasting stored;
    CastingFile& file = stored.file;
    file.casting = std::move(entry->value);
    auto part =
        onlyOne(connection, loadParts(connection, file.casting.part), "part", file.casting.part);
    if (!part) return part.error();
    auto order = onlyOne(connection, loadOrders(connection, file.casting.order), "order",
                         file.casting.order);
    if (!order) return order.error();
    auto plan = loadZonePlan(connection, file.casting.part, file.casting.zonePlanRevision);
    if (!plan) return plan.error();
    auto drafts = loadDraftsOf(connection, serial);
    if (!drafts) return drafts.error();
    file.part = std::move(part->value);
    file.order = std::move(order->value);
    file.plan = std::move(*plan);
    file.examinations = std::move(*drafts);
    stored.castingVersion = entry->version;
    stored.partVersion = part->version;
    stored.orderVersion = order->version;
    if (auto added = addObjections(connection, file); !added) return added.error();
    return stored;
}

}  // namespace model
