// SPDX-License-Identifier: Apache-2.0
#include "archive/casting_store.h"

#include "archive/draft_store.h"
#include "archive/holdings_store.h"
#include "archive/plan_store.h"
#include "archive/record_store.h"
#include "archive/signed_record_store.h"

namespace model {
namespace {

/// What was stated against the standing records, and what the registers hold.
Result<void> addRest(const Connection& connection, CastingFile& file) {
    const auto records = loadRecordsOf(connection, file.casting.serial);
    if (!records) return records.error();
    std::set<std::string> signers;
    for (ExaminationDraft& draft : file.examinations) {
        const SignedRecord* record = standingOf(*records, draft.id);
        if (!record) continue;
        signers.insert(record->recorded.person);
        if (!record->recorded.reason.empty())
            draft.header.rejected = Objection{record->recorded.name, record->recorded.reason};
        if (record->invalid)
            draft.header.invalid = Objection{record->invalid->name, record->invalid->reason};
    }
    auto dossier = loadDossier(connection, file.casting.serial);
    if (!dossier) return dossier.error();
    file.dossier = std::move(*dossier);
    auto used = loadUsed(connection, file.examinations, signers);
    if (!used) return used.error();
    file.used = std::move(*used);
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
    if (auto added = addRest(connection, file); !added) return added.error();
    return stored;
}

}  // namespace model
