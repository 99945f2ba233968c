// SPDX-License-Identifier: Apache-2.0
#include "measure/record_crowd.h"

#include <algorithm>
#include <filesystem>

#include "archive/archive_access.h"
#include "archive/casting_store.h"
#include "archive/draft_store.h"
#include "archive/identities.h"
#include "archive/lifecycle_actions.h"
#include "archive/record_content.h"
#include "archive/record_store.h"
#include "archive/signed_record_store.h"
#include "judge/judge.h"
#include "judge/sheet_words.h"
#include "trust/canonical.h"

namespace app {
namespace {

using model::Result;

constexpr std::int64_t kRecordsACasting = 100;
constexpr std::int64_t kCastingsAWrite = 20;
constexpr char kTable[] = "EN 1369:2012";
const std::map<std::string, std::string> kLevels{
    {"non-linear", "SM 2"}, {"linear", "LM 4"}, {"aligned", "AM 4"}};

model::SecretBytes passphrase() {
    return model::SecretBytes("measured, not kept");
}

model::Person inspector() {
    return {"M-1",
            "Measurement",
            {model::Role::Inspector, model::Role::Administrator},
            false,
            {{model::Method::Magnetic, 2}},
            "",
            true};
}

model::TypedIndication typed(const std::string& id, const std::string& x) {
    model::TypedIndication row;
    row.id = id;
    row.x = x;
    row.y = "22.5";
    row.length = "3";
    row.width = "0.5";
    row.kind = "inclusion";
    return row;
}

/// What the records of a casting differ by is the zone.
model::ExaminationDraft draftOf(const std::string& serial, std::int64_t zone) {
    model::ExaminationDraft draft;
    draft.casting = serial;
    draft.header.zone = "Z" + std::to_string(zone);
    draft.header.stage = model::Stage::FinishMachined;
    draft.header.thickness = model::millimetres(40);
    draft.header.table = kTable;
    draft.header.levels = kLevels;
    draft.examinedBy = "Measurement";
    draft.examinedOn = "2026-11-24";
    draft.procedure = "MT-07 revision 3";
    draft.rows = {typed("1", "100"), typed("2", "150.5")};
    return draft;
}

/// The verdict on one of them, which is that on all.
Result<model::ExaminationVerdict> judgedOnce(const model::CastingFile& file,
                                             const model::TableSet& tables) {
    const auto sheet = model::sheetOf(file);
    if (!sheet) return sheet.error();
    const auto verdict = model::judge(*sheet, tables);
    if (!verdict) return verdict.error();
    return verdict->examinations.front();
}

Result<void> addSignedRecord(model::WriteTransaction& transaction,
                             const model::StoredCasting& casting,
                             const model::ExaminationVerdict& verdict, std::int64_t zone,
                             const model::SignedIn& signer) {
    model::ExaminationDraft draft = draftOf(casting.file.casting.serial, zone);
    const auto saved = model::saveDraft(transaction, draft, nullptr);
    if (!saved) return saved.error();
    draft.id = saved->id;
    draft.version = saved->version;
    const std::vector<std::int64_t> beside;
    const model::SignedTest unstated;  // its conditions
    const auto bytes = model::canonicalBytes(model::canonicalOf(
        model::SignedContent{casting, draft, verdict, beside, unstated, 1, "", signer.person()}));
    if (!bytes) return bytes.error();
    model::SignedRecord record;
    record.examination = draft.id;
    record.casting = draft.casting;
    record.word = verdict.word;
    model::Canonical::Object content;
    content["revision"] = record.revision;
    content["casting"] = record.casting;
    content["word"] = model::word(record.word);
    content["content_sha256"] = model::toHex(model::sha256(*bytes));
    if (auto done = transaction.recordSigned(model::action::kRecordSigned, std::to_string(draft.id),
                                             std::move(content), signer);
        !done)
        return done;
    record.id = transaction.head().sequence;
    record.recorded.person = signer.person().id;
    return model::addRecord(transaction.connection(), record, *bytes);
}

}  // namespace

Result<std::unique_ptr<RecordCrowd>> RecordCrowd::make(std::int64_t count) {
    std::unique_ptr<RecordCrowd> crowd(new RecordCrowd());
    if (!crowd->folder_.isValid())
        return model::refusal("", "no folder for temporary files can be made");
    auto archive =
        model::Archive::create(crowd->path(), model::ArchiveKind::Working, {inspector().name});
    if (!archive) return archive.error();
    crowd->archive_.emplace(std::move(*archive));
    const auto signer = crowd->setUp();
    if (!signer) return signer.error();
    if (auto done = crowd->fill(count, *signer); !done) return done.error();
    return crowd;
}

Result<model::SignedIn> RecordCrowd::setUp() {
    const model::UtcTime now = model::systemClock().now();
    const model::UtcTime until = now + std::chrono::days(30);
    const model::AuthorityRequest authority{"Measurement authority", "Quillmere Foundry", "", now,
                                            until};
    if (auto done =
            model::setUp(*archive_, authority, passphrase(), inspector(), passphrase(), until);
        !done)
        return done.error();
    const model::Actor actor{inspector().name};
    model::Order order;
    order.number = "O-1";
    order.customer = "Harrow Pumps";
    order.certificateType = "3.1";
    order.language = "en";
    if (auto saved = archive_->save(order, 0, actor); !saved) return saved.error();
    model::Part part;
    part.number = "P-1";
    if (auto saved = archive_->save(part, 0, actor); !saved) return saved.error();
    model::ZonePlan plan{"P-1", 1, {}};
    model::PlannedZone& zone = plan.zones.emplace_back();
    zone.name = "Z1";
    zone.width = zone.height = model::millimetres(600);
    zone.thickness = model::millimetres(40);
    if (auto added = archive_->add(plan, actor); !added) return added.error();
    return model::signIn(*archive_, inspector().id, passphrase());
}

Result<void> RecordCrowd::fill(std::int64_t count, const model::SignedIn& inspector) {
    const auto tables = archive_->tables();
    if (!tables) return tables.error();
    std::optional<model::ExaminationVerdict> verdict;
    const auto addCasting = [&](model::WriteTransaction& transaction,
                                std::int64_t number) -> Result<void> {
        const std::string serial = "QF-" + std::to_string(number);
        if (auto saved = model::saveCasting(
                transaction, {serial, "H " + std::to_string(number / 37), "O-1", "P-1", 1}, 0);
            !saved)
            return saved.error();
        auto casting = model::loadCastingFile(transaction.connection(), serial);
        if (!casting) return casting.error();
        if (!verdict) {
            casting->file.examinations = {draftOf(serial, 1)};
            const auto judged = judgedOnce(casting->file, *tables);
            if (!judged) return judged.error();
            verdict = *judged;
        }
        const std::int64_t records =
            std::min(kRecordsACasting, count - (number - 1) * kRecordsACasting);
        for (std::int64_t zone = 1; zone <= records; ++zone)
            if (auto added = addSignedRecord(transaction, *casting, *verdict, zone, inspector);
                !added)
                return added;
        return {};
    };
    const std::int64_t castings = (count + kRecordsACasting - 1) / kRecordsACasting;
    for (std::int64_t first = 1; first <= castings; first += kCastingsAWrite) {
        auto written = model::ArchiveAccess::write(
            *archive_, inspector.actor(),
            [&](model::WriteTransaction& transaction) -> Result<void> {
                for (std::int64_t number = first;
                     number < first + kCastingsAWrite && number <= castings; ++number)
                    if (auto added = addCasting(transaction, number); !added) return added;
                return {};
            });
        if (!written) return written;
    }
    return {};
}

std::int64_t RecordCrowd::bytesOnDisk() const {
    std::error_code ignored;
    std::int64_t bytes = 0;
    for (const char* suffix : {"", "-wal"})
        if (const auto size = std::filesystem::file_size(path() + suffix, ignored); !ignored)
            bytes += static_cast<std::int64_t>(size);
    return bytes;
}

}  // namespace app
