// SPDX-License-Identifier: Apache-2.0
// A client of the database file that goes past the program.
#pragma once

#include <sqlite3.h>
#include <stdexcept>
#include <string>
#include <vector>

namespace model {

class RawDatabase {
public:
    explicit RawDatabase(const std::string& path) {
        if (sqlite3_open(path.c_str(), &database_) != SQLITE_OK)
            throw std::runtime_error("cannot open " + path);
        sqlite3_extended_result_codes(database_, 1);
    }
    RawDatabase(const RawDatabase&) = delete;
    RawDatabase& operator=(const RawDatabase&) = delete;
    ~RawDatabase() { sqlite3_close(database_); }

    /// The extended result code: SQLITE_OK, or why not.
    int run(const std::string& sql) {
        return sqlite3_exec(database_, sql.c_str(), nullptr, nullptr, nullptr);
    }
    /// What run() last said.
    std::string message() { return sqlite3_errmsg(database_); }

    /// The first column of every row.
    std::vector<std::string> column(const std::string& sql) {
        std::vector<std::string> values;
        sqlite3_stmt* statement = nullptr;
        if (sqlite3_prepare_v2(database_, sql.c_str(), -1, &statement, nullptr) != SQLITE_OK)
            throw std::runtime_error(sqlite3_errmsg(database_));
        while (sqlite3_step(statement) == SQLITE_ROW) {
            const void* bytes = sqlite3_column_blob(statement, 0);
            const int size = sqlite3_column_bytes(statement, 0);
            values.emplace_back(static_cast<const char*>(bytes), static_cast<std::size_t>(size));
        }
        sqlite3_finalize(statement);
        return values;
    }
    std::string value(const std::string& sql) { return column(sql).at(0); }

    /// Takes every trigger out, as somebody would who wants to alter rows.
    void dropTriggers() {
        for (const std::string& name :
             column("SELECT name FROM sqlite_schema WHERE type = 'trigger'"))
            run("DROP TRIGGER " + name);
    }

private:
    sqlite3* database_ = nullptr;
};

}  // namespace model
