// SPDX-License-Identifier: Apache-2.0
#include "archive/draft_store.h"

#include <algorithm>

#include "archive/canonical_records.h"
#include "archive/draft_columns.h"
#include "archive/draft_rows.h"
#include "archive/history_store.h"
#include "archive/signed_record_store.h"
#include "archive/stored_words.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

Result<void> checkDraft(const Connection& connection, const ExaminationDraft& draft) {
    const std::string& place = connection.place();
    const Examination& header = draft.header;
    if (!header.indications.empty())
        return inputError(place, "stores an examination's indications as typed rows only");
    if (header.repairCycle < 0 || header.repeat < 0)
        return inputError(place, "stores no repair cycle and no repeat below 0");
    if (header.thickness < Length()) return inputError(place, "stores no thickness below 0");
    if (header.surface && header.surface->id.empty())
        return inputError(place, "stores no surface without a name");
    for (const NotExamined& area : header.notExamined)
        if (area.area < Area()) return inputError(place, "stores no area below 0");
    SqlStatement casting(connection, "SELECT count(*) FROM casting WHERE serial = ?");
    const auto row = casting.first(draft.casting);
    if (!row) return row.error();
    if (casting.whole(0) == 0) return inputError(place, "has no casting %1", {draft.casting});
    return {};
}

/// Two drafts of one examination could not both be judged.
Result<void> checkTheOnlyOne(const Connection& connection, const ExaminationDraft& draft) {
    const Examination& header = draft.header;
    SqlStatement statement(
        connection,
        "SELECT saved_by FROM examination WHERE casting_serial = ? AND zone = ? "
        "AND method = ? AND stage = ? AND repair_cycle = ? AND repeat_number = ? "
        "AND id <> ?");
    const auto row =
        statement.first(draft.casting, header.zone, word(header.method), word(header.stage),
                        header.repairCycle, header.repeat, draft.id);
    if (!row) return row.error();
    if (!*row) return {};
    return Error{ErrorKind::Conflict,
                 connection.place(),
                 "has an examination of zone %1 of the casting %2 by the same method, at the same "
                 "stage, repair cycle and repeat already, saved by %3",
                 {header.zone, draft.casting, statement.text(0)}};
}

Result<void> checkVersion(const Connection& connection, const ExaminationDraft& draft) {
    SqlStatement statement(connection,
                           "SELECT version, casting_serial, saved_by, saved_at FROM examination "
                           "WHERE id = ?");
    const auto row = statement.first(draft.id);
    if (!row) return row.error();
    if (!*row)
        return inputError(connection.place(), "has no examination %1", {std::to_string(draft.id)});
    if (statement.text(1) != draft.casting)
        return inputError(connection.place(), "keeps an examination with its casting %1",
                          {statement.text(1)});
    if (statement.whole(0) == draft.version) return {};
    return Error{ErrorKind::Conflict,
                 connection.place(),
                 "has another version of this examination than was loaded: saved by %1 at %2",
                 {statement.text(2), statement.text(3)}};
}

Result<std::int64_t> nextId(const Connection& connection) {
    SqlStatement statement(connection, "SELECT coalesce(max(id), 0) + 1 FROM examination");
    const auto row = statement.first();
    if (!row) return row.error();
    return statement.whole(0);
}

Result<void> writeHeader(WriteTransaction& transaction, const ExaminationDraft& draft) {
    const Examination& header = draft.header;
    const SurfaceColumns surface = columnsOf(header.surface);
    SqlStatement write(
        transaction.connection(),
        "INSERT INTO examination (id, version, casting_serial, zone, method, stage, "
        "repair_cycle, repeat_number, thickness_nm, surface, surface_x_nm, "
        "surface_y_nm, surface_angle_millionth_deg, surface_width_nm, "
        "surface_height_nm, surface_period_nm, limit_table, no_indications, "
        "examined_by, examined_on, written_procedure, remarks, saved_at, saved_by) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, "
        "?) ON CONFLICT (id) DO UPDATE SET version = excluded.version, "
        "zone = excluded.zone, method = excluded.method, stage = excluded.stage, "
        "repair_cycle = excluded.repair_cycle, "
        "repeat_number = excluded.repeat_number, "
        "thickness_nm = excluded.thickness_nm, surface = excluded.surface, "
        "surface_x_nm = excluded.surface_x_nm, surface_y_nm = excluded.surface_y_nm, "
        "surface_angle_millionth_deg = excluded.surface_angle_millionth_deg, "
        "surface_width_nm = excluded.surface_width_nm, "
        "surface_height_nm = excluded.surface_height_nm, "
        "surface_period_nm = excluded.surface_period_nm, "
        "limit_table = excluded.limit_table, "
        "no_indications = excluded.no_indications, "
        "examined_by = excluded.examined_by, examined_on = excluded.examined_on, "
        "written_procedure = excluded.written_procedure, "
        "remarks = excluded.remarks, saved_at = excluded.saved_at, "
        "saved_by = excluded.saved_by");
    return write.run(draft.id, draft.version, draft.casting, header.zone, word(header.method),
                     word(header.stage), header.repairCycle, header.repeat,
                     header.thickness.millionths(), surface.id, surface.x, surface.y, surface.angle,
                     surface.width, surface.height, surface.period, header.table,
                     header.noIndications, draft.examinedBy, draft.examinedOn, draft.procedure,
                     draft.remarks, transaction.time(), transaction.person());
}

Result<void> writeLists(const Connection& connection, const ExaminationDraft& draft) {
    for (const char* table : {"examination_level", "examination_forbidden_kind", "not_examined"}) {
        SqlStatement clear(connection,
                           std::string("DELETE FROM ") + table + " WHERE examination_id = ?");
        if (auto done = clear.run(draft.id); !done) return done;
    }
    SqlStatement addLevel(connection,
                          "INSERT INTO examination_level (examination_id, level_key, level) "
                          "VALUES (?, ?, ?)");
    for (const auto& [key, level] : draft.header.levels)
        if (auto done = addLevel.run(draft.id, key, level); !done) return done;
    SqlStatement addKind(connection,
                         "INSERT INTO examination_forbidden_kind (examination_id, position, kind) "
                         "VALUES (?, ?, ?)");
    int position = 0;
    for (const Kind kind : draft.header.forbiddenKinds)
        if (auto done = addKind.run(draft.id, ++position, word(kind)); !done) return done;
    SqlStatement addArea(connection,
                         "INSERT INTO not_examined (examination_id, position, area_millionth_mm2, "
                         "reason, agreed) VALUES (?, ?, ?, ?, ?)");
    position = 0;
    for (const NotExamined& area : draft.header.notExamined)
        if (auto done =
                addArea.run(draft.id, ++position, area.area.millionths(), area.reason, area.agreed);
            !done)
            return done;
    return {};
}

Result<void> readLists(const Connection& connection, ExaminationDraft& draft) {
    SqlStatement levels(connection,
                        "SELECT level_key, level FROM examination_level WHERE examination_id = ?");
    if (auto done = levels.run(draft.id); !done) return done;
    auto read = eachRow(levels, [&](const SqlStatement& row) -> Result<void> {
        takeLevel(row, 0, draft);
        return {};
    });
    if (!read) return read;
    SqlStatement kinds(connection,
                       "SELECT kind FROM examination_forbidden_kind WHERE examination_id = ? "
                       "ORDER BY position");
    if (auto done = kinds.run(draft.id); !done) return done;
    read = eachRow(kinds, [&](const SqlStatement& row) {
        return takeForbiddenKind(connection, row, 0, draft);
    });
    if (!read) return read;
    SqlStatement areas(connection,
                       "SELECT area_millionth_mm2, reason, agreed FROM not_examined "
                       "WHERE examination_id = ? ORDER BY position");
    if (auto done = areas.run(draft.id); !done) return done;
    return eachRow(areas, [&](const SqlStatement& row) -> Result<void> {
        takeNotExamined(row, 0, draft);
        return {};
    });
}

Result<std::vector<ExaminationDraft>> loadWhere(const Connection& connection,
                                                const std::string& condition, const auto& value) {
    SqlStatement statement(connection, std::string("SELECT ") + kDraftColumns +
                                           " FROM examination WHERE " + condition + " ORDER BY id");
    if (auto done = statement.run(value); !done) return done.error();
    std::vector<ExaminationDraft> drafts;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        auto draft = draftFrom(connection, row);
        if (!draft) return draft.error();
        drafts.push_back(std::move(*draft));
        return {};
    });
    if (!read) return read.error();
    for (ExaminationDraft& draft : drafts) {
        if (auto done = readLists(connection, draft); !done) return done.error();
        auto rows = readRows(connection, draft.id);
        if (!rows) return rows.error();
        draft.rows = std::move(*rows);
    }
    return drafts;
}

Canonical::Object contentOf(const ExaminationDraft& draft, const Splice& splice) {
    Canonical::Array added;
    for (std::size_t i = 0; i < splice.added; ++i)
        added.emplace_back(canonicalOf(draft.rows[splice.from + i]));
    Canonical::Object rows;
    rows["from"] = static_cast<std::int64_t>(splice.from) + 1;
    rows["removed"] = static_cast<std::int64_t>(splice.removed);
    rows["added"] = std::move(added);
    Canonical::Object content;
    content["version"] = draft.version;
    content["header"] = canonicalHeader(draft);
    content["rows"] = std::move(rows);
    return content;
}

Result<void> checkNotSigned(const Connection& connection, const ExaminationDraft& draft) {
    const auto standing = loadStanding(connection, draft.id);
    if (!standing) return standing.error();
    if (!*standing) return {};
    return inputError(connection.place(),
                      "does not change an examination that was signed: %1 signed this one at %2; "
                      "for a correction a QA manager gives its casting back",
                      {(*standing)->recorded.name, (*standing)->recorded.time});
}

Result<SavedDraft> write(WriteTransaction& transaction, const ExaminationDraft& draft,
                         const std::vector<TypedIndication>& before, bool listsChanged) {
    const Connection& connection = transaction.connection();
    const Splice splice = spliceBetween(before, draft.rows);
    if (auto done = writeHeader(transaction, draft); !done) return done.error();
    if (listsChanged)
        if (auto done = writeLists(connection, draft); !done) return done.error();
    if (auto done = writeRows(connection, draft.id, before.size(), draft.rows, splice); !done)
        return done.error();
    if (auto done = transaction.record(action::kExaminationSaved, std::to_string(draft.id),
                                       contentOf(draft, splice));
        !done)
        return done.error();
    return SavedDraft{draft.id, draft.version};
}

Result<SavedDraft> saveNew(WriteTransaction& transaction, const ExaminationDraft& draft) {
    const auto id = nextId(transaction.connection());
    if (!id) return id.error();
    ExaminationDraft numbered = draft;
    numbered.id = *id;
    numbered.version = 1;
    return write(transaction, numbered, {}, true);
}

}  // namespace

Splice spliceBetween(const std::vector<TypedIndication>& before,
                     const std::vector<TypedIndication>& after) {
    const auto firsts = std::ranges::mismatch(before, after);
    const auto from = static_cast<std::size_t>(firsts.in1 - before.begin());
    std::size_t common = 0;
    const std::size_t most = std::min(before.size(), after.size()) - from;
    while (common < most && before[before.size() - 1 - common] == after[after.size() - 1 - common])
        ++common;
    return {from, before.size() - from - common, after.size() - from - common};
}

Result<SavedDraft> saveDraft(WriteTransaction& transaction, const ExaminationDraft& draft,
                             const ExaminationDraft* known) {
    const Connection& connection = transaction.connection();
    if (auto checked = checkDraft(connection, draft); !checked) return checked.error();
    if (draft.id != 0)
        if (auto checked = checkVersion(connection, draft); !checked) return checked.error();
    if (auto checked = checkTheOnlyOne(connection, draft); !checked) return checked.error();
    if (draft.id == 0) return saveNew(transaction, draft);

    std::optional<ExaminationDraft> loaded;
    if (!known) {
        auto stored = loadDraft(connection, draft.id);
        if (!stored) return stored.error();
        loaded = std::move(*stored);
        known = &*loaded;
    }
    const bool headerChanged = canonicalHeader(*known) != canonicalHeader(draft);
    if (!headerChanged && known->rows == draft.rows) {
        transaction.leaveAsIs();
        return SavedDraft{draft.id, draft.version};
    }
    if (auto checked = checkNotSigned(connection, draft); !checked) return checked.error();
    ExaminationDraft next = draft;
    ++next.version;
    return write(transaction, next, known->rows, headerChanged);
}

Result<ExaminationDraft> loadDraft(const Connection& connection, std::int64_t id) {
    auto drafts = loadWhere(connection, "id = ?", id);
    if (!drafts) return drafts.error();
    if (drafts->empty())
        return inputError(connection.place(), "has no examination %1", {std::to_string(id)});
    return std::move(drafts->front());
}

Result<std::vector<ExaminationDraft>> loadDraftsOf(const Connection& connection,
                                                   const std::string& serial) {
    return loadWhere(connection, "casting_serial = ?", serial);
}

}  // namespace model
