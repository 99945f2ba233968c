// SPDX-License-Identifier: Apache-2.0
// The tables' own definitions, and the triggers that keep rows from being changed.
#include "changed_archive.h"

namespace app {
namespace {

class SchemaChanged : public ChangedArchive {
protected:
    /// Runs `sql` without putting triggers back.
    void change(const std::string& sql) {
        {
            model::RawDatabase raw(path());
            raw.run("PRAGMA synchronous = OFF");
            ASSERT_EQ(raw.run(sql), SQLITE_OK) << raw.message() << "\n" << sql;
        }
        expectFound(sql);
        undo();
    }

    [[nodiscard]] std::vector<std::string> names(const std::string& type) const {
        model::RawDatabase raw(path());
        return raw.column("SELECT name FROM sqlite_schema WHERE sql IS NOT NULL AND type = '" +
                          type + "' ORDER BY name");
    }
};

TEST_F(SchemaChanged, TriggersTakenOut) {
    const auto all = names("trigger");
    ASSERT_GE(all.size(), 90U);
    for (int time = 0; time < 50; ++time) change("DROP TRIGGER " + random_.of(all));
}

TEST_F(SchemaChanged, TriggersThatNoLongerDoAnything) {
    const auto all = names("trigger");
    for (int time = 0; time < 25; ++time) {
        const std::string name = random_.of(all);
        change(
            "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, "
            "'BEGIN SELECT RAISE', 'WHEN 0 BEGIN SELECT RAISE') || ' ' WHERE name = '" +
            name + "'");
    }
}

TEST_F(SchemaChanged, IndexesTakenOut) {
    for (const std::string& name : names("index")) change("DROP INDEX " + name);
}

TEST_F(SchemaChanged, ObjectsAdded) {
    for (const char* sql :
         {"CREATE TABLE extra (a)", "CREATE VIEW seen AS SELECT * FROM certificate",
          "CREATE INDEX extra ON history (person)",
          "CREATE TRIGGER extra AFTER INSERT ON history BEGIN DELETE FROM release_queue; END",
          "ALTER TABLE certificate ADD COLUMN extra TEXT",
          "CREATE TEMP TABLE passing (a); CREATE TABLE kept (a)"})
        change(sql);
}

TEST_F(SchemaChanged, ChecksTakenOutOfTables) {
    for (const char* check :
         {" CHECK (id = 1)", " CHECK (sequence >= 1)", " CHECK (length(hash) = 32)",
          " CHECK (revision >= 1)", " CHECK (file_bytes > 0)"})
        change("PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, '" +
               std::string(check) + "', '') WHERE type = 'table'");
}

}  // namespace
}  // namespace app
