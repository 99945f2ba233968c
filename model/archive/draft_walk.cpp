// SPDX-License-Identifier: Apache-2.0
#include "archive/draft_walk.h"

#include "archive/draft_columns.h"
#include "archive/stored_words.h"

namespace model {
namespace {

/// The rows of a table that belong to drafts, asked for by rising id.
class Belongings {
public:
    Belongings(const Connection& connection, const std::string& columns, const std::string& table,
               const std::string& order)
        : statement_(connection, "SELECT examination_id, " + columns + " FROM " + table +
                                     " ORDER BY examination_id, " + order) {}

    Result<void> begin() {
        if (auto done = statement_.run(); !done) return done;
        return advance();
    }
    /// take(row), which returns a Result, with each row of one draft.
    template <class Take>
    Result<void> rowsOf(std::int64_t id, Take take) {
        while (there_ && owner_ <= id) {
            if (owner_ == id)
                if (auto taken = take(statement_); !taken) return taken;
            if (auto done = advance(); !done) return done;
        }
        return {};
    }

private:
    Result<void> advance() {
        const auto row = statement_.next();
        if (!row) return row.error();
        there_ = *row;
        if (there_) owner_ = statement_.whole(0);
        return {};
    }

    SqlStatement statement_;
    bool there_ = false;
    std::int64_t owner_ = 0;
};

class Walk {
public:
    explicit Walk(const Connection& connection) : connection_(connection) {}

    Result<void> run(const std::function<Result<void>(const WalkedDraft&)>& take) {
        for (Belongings* each :
             {&levels_, &kinds_, &areas_, &directions_, &rows_, &settings_, &reflectors_})
            if (auto begun = each->begin(); !begun) return begun;
        SqlStatement drafts(connection_, std::string("SELECT ") + kDraftColumns +
                                             ", saved_at, saved_by FROM examination ORDER BY id");
        if (auto done = drafts.run(); !done) return done;
        return eachRow(drafts, [&](const SqlStatement& row) -> Result<void> {
            auto draft = draftFrom(connection_, row);
            if (!draft) return draft.error();
            WalkedDraft walked;
            walked.draft = std::move(*draft);
            walked.savedAt = row.text(kDraftColumnCount);
            walked.savedBy = row.text(kDraftColumnCount + 1);
            if (auto read = readBelongings(walked); !read) return read;
            return take(walked);
        });
    }

private:
    Result<void> readBelongings(WalkedDraft& walked) {
        ExaminationDraft& draft = walked.draft;
        auto read = levels_.rowsOf(draft.id, [&](const SqlStatement& row) -> Result<void> {
            takeLevel(row, 1, draft);
            return {};
        });
        if (!read) return read;
        read = kinds_.rowsOf(draft.id, [&](const SqlStatement& row) {
            return takeForbiddenKind(connection_, row, 1, draft);
        });
        if (!read) return read;
        read = areas_.rowsOf(draft.id, [&](const SqlStatement& row) -> Result<void> {
            takeNotExamined(row, 1, draft);
            return {};
        });
        if (!read) return read;
        read = directions_.rowsOf(draft.id, [&](const SqlStatement& row) -> Result<void> {
            takeDirection(row, 1, draft);
            return {};
        });
        if (!read) return read;
        read = readRows(rows_, draft.id, draft.rows, walked.rows);
        if (!read) return read;
        read = readRows(settings_, draft.id, draft.settings, walked.settings);
        if (!read) return read;
        return readRows(reflectors_, draft.id, draft.reflectors, walked.reflectors);
    }

    template <class Row>
    static Result<void> readRows(Belongings& list, std::int64_t id, std::vector<Row>& rows,
                                 std::vector<ExactValues>& exact) {
        return list.rowsOf(id, [&](const SqlStatement& row) -> Result<void> {
            rows.push_back(typedFrom<Row>(row, 1));
            exact.push_back(exactFrom<Row>(row, 1 + typedColumnCount<Row>()));
            return {};
        });
    }

    template <class Row>
    static Belongings rowsOf(const Connection& connection) {
        return {connection, typedColumns<Row>() + ", " + exactColumns<Row>(),
                typedTable<Row>().name, "position"};
    }

    const Connection& connection_;
    Belongings levels_{connection_, "level_key, level", "examination_level", "level_key"};
    Belongings kinds_{connection_, "kind", "examination_forbidden_kind", "position"};
    Belongings areas_{connection_, "area_millionth_mm2, reason, agreed", "not_examined",
                      "position"};
    Belongings directions_{connection_, "direction", "examination_direction", "position"};
    Belongings rows_ = rowsOf<TypedIndication>(connection_);
    Belongings settings_ = rowsOf<TypedSetting>(connection_);
    Belongings reflectors_ = rowsOf<TypedReflector>(connection_);
};

}  // namespace

Result<void> eachDraft(const Connection& connection,
                       const std::function<Result<void>(const WalkedDraft&)>& take) {
    return Walk(connection).run(take);
}

}  // namespace model
