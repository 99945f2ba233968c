// SPDX-License-Identifier: Apache-2.0
#include "archive/register_saves.h"

#include "archive/archive_access.h"
#include "archive/connection.h"
#include "archive/stored_words.h"

namespace model {

Result<std::vector<EntrySave>> savesOf(const Archive& archive, std::string_view registerName,
                                       const std::string& key) {
    const Connection& connection = ArchiveAccess::connection(archive);
    SqlStatement statement(
        connection,
        "SELECT entry.version, row.happened_at, row.person FROM register_entry AS entry "
        "JOIN history AS row ON row.sequence = entry.history_sequence "
        "WHERE entry.register = ? AND entry.entry = ? ORDER BY entry.version");
    if (auto done = statement.run(std::string(registerName), key); !done) return done.error();
    std::vector<EntrySave> saves;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        saves.push_back({row.whole(0), row.text(1), row.text(2)});
        return {};
    });
    if (!read) return read.error();
    return saves;
}

}  // namespace model
