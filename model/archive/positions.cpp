// SPDX-License-Identifier: Apache-2.0
#include "archive/positions.h"

#include "archive/stored_words.h"

namespace model {
namespace {

struct List {
    const char* table;
    std::vector<std::string> owner;  ///< columns that say what the list belongs to
};

const std::vector<List>& lists() {
    static const std::vector<List> all{
        {"order_forbidden_kind", {"order_number"}},
        {"planned_zone", {"part_number", "revision"}},
        {"required_test", {"part_number", "revision", "zone_position"}},
        {"examination_forbidden_kind", {"examination_id"}},
        {"not_examined", {"examination_id"}},
        {"indication", {"examination_id"}},
        {"examination_direction", {"examination_id"}},
        {"ultrasonic_setting", {"examination_id"}},
        {"reflector", {"examination_id"}},
        {"identity_certificate", {"identity"}}};
    return all;
}

}  // namespace

Result<std::vector<Error>> wrongPositions(const Connection& connection) {
    std::vector<Error> wrong;
    for (const auto& [table, owner] : lists()) {
        std::string columns;
        for (const std::string& column : owner) columns += (columns.empty() ? "" : ", ") + column;
        // No two entries of a list have the same number.
        SqlStatement statement(connection, "SELECT " + columns + " FROM " + table + " GROUP BY " +
                                               columns +
                                               " HAVING min(position) <> 1 "
                                               "OR max(position) <> count(*) ORDER BY " +
                                               columns);
        if (auto done = statement.run(); !done) return done.error();
        auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
            std::string what = std::string("entries of ") + table;
            for (std::size_t i = 0; i < owner.size(); ++i)
                what += ", " + owner[i] + " " + row.text(static_cast<int>(i));
            wrong.push_back(connection.damaged(what, "are not numbered 1, 2, 3 ... any more"));
            return {};
        });
        if (!read) return read.error();
    }
    return wrong;
}

}  // namespace model
