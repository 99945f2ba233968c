// SPDX-License-Identifier: Apache-2.0
// Somebody who alters a database with the raw SQLite library, carefully: triggers are gone
// meanwhile and put back, and what can be is left valid for the database's own checks.
#pragma once

#include <cstdint>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "raw_database.h"

namespace app {

/// The same numbers everywhere; the library's distributions differ by vendor.
class Random {
public:
    explicit Random(std::uint64_t seed) : engine_(seed) {}
    /// From 0 to below `count`.
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(engine_() % count); }
    template <class T>
    const T& of(const std::vector<T>& all) {
        return all.at(below(all.size()));
    }

private:
    std::mt19937_64 engine_;
};

struct Column {
    std::string name;
    bool isKey = false;
    bool mayBeNull = false;
};

struct Table {
    std::string name;
    std::vector<Column> columns;

    /// Columns outside of the key.
    [[nodiscard]] std::vector<std::string> facts() const;
};

class Forger {
public:
    /// Opens the database and takes the triggers out.
    Forger(const std::string& path, Random& random);
    Forger(const Forger&) = delete;
    Forger& operator=(const Forger&) = delete;
    /// Puts the triggers back.
    ~Forger();

    /// Every table of the database, but not `left`.
    std::vector<Table> tables(const std::vector<std::string>& left);
    std::size_t rowCount(const Table& table);

    // Each says what was done; none where it cannot be done.
    /// One field of one row gets another value: another row's, or its own a little altered.
    std::optional<std::string> changeField(const Table& table, const Column& column);
    std::optional<std::string> deleteRow(const Table& table);
    /// A copy of a row under another key.
    std::optional<std::string> insertCopy(const Table& table);
    /// Two rows that differ change their keys.
    std::optional<std::string> swapRows(const Table& table);

    model::RawDatabase& raw() { return raw_; }

private:
    std::vector<std::string> literals(const std::string& sql) { return raw_.column(sql); }
    std::vector<std::string> keysOf(const Table& table);
    std::vector<std::string> candidates(const Table& table, const Column& column,
                                        const std::string& old);
    std::string altered(const std::string& literal);
    bool runs(const std::string& sql);
    std::string contentOf(const Table& table);

    model::RawDatabase raw_;
    Random& random_;
    std::vector<std::string> triggers_;
};

}  // namespace app
