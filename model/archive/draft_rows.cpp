// SPDX-License-Identifier: Apache-2.0
#include "archive/draft_rows.h"

#include "archive/stored_words.h"

namespace model {
namespace {

template <class Row>
std::string insertion() {
    const auto& table = typedTable<Row>();
    std::string columns = typedColumns<Row>() + ", " + exactColumns<Row>();
    std::string values = "?, ?";
    for (auto count = 1 + std::ranges::count(columns, ','); count > 0; --count) values += ", ?";
    return std::string("INSERT INTO ") + table.name + " (examination_id, position, " + columns +
           ") VALUES (" + values + ")";
}

template <class Row>
SqlStatement::Values valuesOf(std::int64_t examination, std::size_t position, const Row& row) {
    SqlStatement::Values values{examination, static_cast<std::int64_t>(position),
                                std::string(symbol(row.unit))};
    for (const auto& field : typedTable<Row>().fields) values.emplace_back(row.*field.text);
    for (const auto& exact : exactValuesOf(row)) values.emplace_back(exact);
    return values;
}

template <class Row>
Result<void> readList(const Connection& connection, std::int64_t examination,
                      std::vector<Row>& rows) {
    SqlStatement statement(connection, "SELECT " + typedColumns<Row>() + " FROM " +
                                           typedTable<Row>().name +
                                           " WHERE examination_id = ? ORDER BY position");
    if (auto done = statement.run(examination); !done) return done;
    return eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        rows.push_back(typedFrom<Row>(row, 0));
        return {};
    });
}

}  // namespace

template <class Row>
Result<void> writeRows(const Connection& connection, std::int64_t examination, std::size_t before,
                       const std::vector<Row>& rows, const Splice& splice) {
    if (!splice.changes()) return {};
    // Positions have no gaps: where the number of rows changes, all that follow move.
    const bool tailMoves = splice.removed != splice.added;
    const std::size_t lastOld = tailMoves ? before : splice.from + splice.removed;
    const std::size_t lastNew = tailMoves ? rows.size() : splice.from + splice.added;
    if (lastOld > splice.from) {
        SqlStatement clear(connection, std::string("DELETE FROM ") + typedTable<Row>().name +
                                           " WHERE examination_id = ? AND position > ? "
                                           "AND position <= ?");
        if (auto done = clear.run(examination, static_cast<std::int64_t>(splice.from),
                                  static_cast<std::int64_t>(lastOld));
            !done)
            return done;
    }
    SqlStatement add(connection, insertion<Row>());
    for (std::size_t i = splice.from; i < lastNew; ++i)
        if (auto done = add.runWith(valuesOf(examination, i + 1, rows[i])); !done) return done;
    return {};
}

template Result<void> writeRows(const Connection&, std::int64_t, std::size_t,
                                const std::vector<TypedIndication>&, const Splice&);
template Result<void> writeRows(const Connection&, std::int64_t, std::size_t,
                                const std::vector<TypedSetting>&, const Splice&);
template Result<void> writeRows(const Connection&, std::int64_t, std::size_t,
                                const std::vector<TypedReflector>&, const Splice&);

Result<void> readRows(const Connection& connection, ExaminationDraft& draft) {
    if (auto done = readList(connection, draft.id, draft.rows); !done) return done;
    if (auto done = readList(connection, draft.id, draft.settings); !done) return done;
    return readList(connection, draft.id, draft.reflectors);
}

}  // namespace model
