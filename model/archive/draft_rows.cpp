// SPDX-License-Identifier: Apache-2.0
#include "archive/draft_rows.h"

#include "archive/draft_columns.h"
#include "archive/stored_words.h"

namespace model {
namespace {

template <class Quantity>
std::optional<std::int64_t> millionthsOf(const std::optional<Quantity>& quantity) {
    if (!quantity) return std::nullopt;
    return quantity->millionths();
}

Result<void> addRow(SqlStatement& add, std::int64_t examination, std::size_t position,
                    const TypedIndication& row) {
    const ExactFields exact = exactFields(row);
    return add.run(examination, static_cast<std::int64_t>(position), row.id, symbol(row.unit),
                   row.x, millionthsOf(exact.x), row.y, millionthsOf(exact.y), row.length,
                   millionthsOf(exact.length), row.width, millionthsOf(exact.width), row.removed,
                   millionthsOf(exact.removed), row.angle, millionthsOf(exact.angle), row.area,
                   millionthsOf(exact.area), row.kind, row.stated, row.relevance, row.reason);
}

}  // namespace

Result<void> writeRows(const Connection& connection, std::int64_t examination, std::size_t before,
                       const std::vector<TypedIndication>& rows, const Splice& splice) {
    // Positions have no gaps: where the number of rows changes, all that follow move.
    const bool tailMoves = splice.removed != splice.added;
    const std::size_t lastOld = tailMoves ? before : splice.from + splice.removed;
    const std::size_t lastNew = tailMoves ? rows.size() : splice.from + splice.added;
    if (lastOld > splice.from) {
        SqlStatement clear(connection,
                           "DELETE FROM indication WHERE examination_id = ? AND position > ? "
                           "AND position <= ?");
        if (auto done = clear.run(examination, static_cast<std::int64_t>(splice.from),
                                  static_cast<std::int64_t>(lastOld));
            !done)
            return done;
    }
    SqlStatement add(
        connection,
        "INSERT INTO indication (examination_id, position, id, unit, x, x_nm, y, y_nm, "
        "length, length_nm, width, width_nm, removed, removed_nm, angle, "
        "angle_millionth_deg, area, area_millionth_mm2, kind, stated, relevance, reason) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    for (std::size_t i = splice.from; i < lastNew; ++i)
        if (auto done = addRow(add, examination, i + 1, rows[i]); !done) return done;
    return {};
}

Result<std::vector<TypedIndication>> readRows(const Connection& connection,
                                              std::int64_t examination) {
    SqlStatement statement(connection, std::string("SELECT ") + kTypedColumns +
                                           " FROM indication WHERE examination_id = ? "
                                           "ORDER BY position");
    if (auto done = statement.run(examination); !done) return done.error();
    std::vector<TypedIndication> rows;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        rows.push_back(typedFrom(row, 0));
        return {};
    });
    if (!read) return read.error();
    return rows;
}

}  // namespace model
