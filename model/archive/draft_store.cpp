// SPDX-License-Identifier: Apache-2.0
#include "archive/draft_store.h"

#include "archive/canonical_records.h"
#include "archive/draft_columns.h"
#include "archive/draft_header.h"
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
    if (!header.indications.empty() || !header.reflectors.empty())
        return inputError(place, "stores an examination's indications as typed rows only");
    if (header.repairCycle < 0 || header.repeat < 0)
        return inputError(place, "stores no repair cycle and no repeat below 0");
    if (header.thickness < Length()) return inputError(place, "stores no thickness below 0");
    if (header.surface && header.surface->id.empty())
        return inputError(place, "stores no surface without a name");
    for (const NotExamined& area : header.notExamined)
        if (area.area < Area()) return inputError(place, "stores no area below 0");
    if (header.ultrasonic.zoneArea.value_or(Area()) < Area())
        return inputError(place, "stores no area below 0");
    const auto testability = header.ultrasonic.testability.value_or(Testability());
    for (const auto& length : {header.ultrasonic.deadZone, testability.smallestFbh})
        if (length.value_or(Length()) < Length())
            return inputError(place, "stores no dead zone and no hole below 0");
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
        if (auto done = readRows(connection, draft); !done) return done.error();
    }
    return drafts;
}

/// What a save writes and tells the history: where each of the lists differs from before.
struct Splices {
    Splices(const ExaminationDraft& before, const ExaminationDraft& after)
        : rows(spliceBetween(before.rows, after.rows)),
          settings(spliceBetween(before.settings, after.settings)),
          reflectors(spliceBetween(before.reflectors, after.reflectors)) {}

    [[nodiscard]] bool change() const {
        return rows.changes() || settings.changes() || reflectors.changes();
    }

    Splice rows;
    Splice settings;
    Splice reflectors;
};

template <class Row>
Canonical::Object contentOf(const std::vector<Row>& list, const Splice& splice) {
    Canonical::Array added;
    for (std::size_t i = 0; i < splice.added; ++i)
        added.emplace_back(canonicalOf(list[splice.from + i]));
    Canonical::Object rows;
    rows["from"] = static_cast<std::int64_t>(splice.from) + 1;
    rows["removed"] = static_cast<std::int64_t>(splice.removed);
    rows["added"] = std::move(added);
    return rows;
}

Canonical::Object contentOf(const ExaminationDraft& draft, const Splices& splices,
                            bool conditionsChanged) {
    Canonical::Object content;
    content["version"] = draft.version;
    content["header"] = canonicalHeader(draft);
    if (conditionsChanged) content["conditions"] = canonicalOf(draft.conditions);
    content["rows"] = contentOf(draft.rows, splices.rows);
    if (splices.settings.changes())
        content["settings"] = contentOf(draft.settings, splices.settings);
    if (splices.reflectors.changes())
        content["reflectors"] = contentOf(draft.reflectors, splices.reflectors);
    return content;
}

Result<void> writeRows(const Connection& connection, const ExaminationDraft& draft,
                       const ExaminationDraft& before, const Splices& splices) {
    if (auto done = writeRows(connection, draft.id, before.rows.size(), draft.rows, splices.rows);
        !done)
        return done;
    if (auto done = writeRows(connection, draft.id, before.settings.size(), draft.settings,
                              splices.settings);
        !done)
        return done;
    return writeRows(connection, draft.id, before.reflectors.size(), draft.reflectors,
                     splices.reflectors);
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
                         const ExaminationDraft& before, bool listsChanged) {
    const Connection& connection = transaction.connection();
    const Splices splices(before, draft);
    if (auto done = writeHeader(transaction, draft); !done) return done.error();
    if (listsChanged)
        if (auto done = writeLists(connection, draft); !done) return done.error();
    if (auto done = writeRows(connection, draft, before, splices); !done) return done.error();
    if (auto done =
            transaction.record(action::kExaminationSaved, std::to_string(draft.id),
                               contentOf(draft, splices, before.conditions != draft.conditions));
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
    return write(transaction, numbered, ExaminationDraft(), true);
}

}  // namespace

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
    if (!headerChanged && known->conditions == draft.conditions &&
        !Splices(*known, draft).change()) {
        transaction.leaveAsIs();
        return SavedDraft{draft.id, draft.version};
    }
    if (auto checked = checkNotSigned(connection, draft); !checked) return checked.error();
    ExaminationDraft next = draft;
    ++next.version;
    return write(transaction, next, *known, headerChanged);
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
