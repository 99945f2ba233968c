// SPDX-License-Identifier: Apache-2.0
#include "forger.h"

#include <algorithm>
#include <cctype>
#include <iterator>

namespace app {
namespace {

std::string joined(const std::vector<std::string>& parts, const std::string& between) {
    std::string text;
    for (const std::string& part : parts) text += (text.empty() ? "" : between) + part;
    return text;
}

std::vector<std::string> prefixed(const std::string& prefix, std::vector<std::string> names) {
    for (std::string& name : names) name.insert(0, prefix);
    return names;
}

}  // namespace

std::vector<std::string> Table::facts() const {
    std::vector<std::string> names;
    for (const Column& column : columns)
        if (!column.isKey) names.push_back(column.name);
    return names;
}

Forger::Forger(const std::string& path, Random& random)
    : raw_(path),
      random_(random),
      triggers_(raw_.column("SELECT sql FROM sqlite_schema WHERE type = 'trigger'")) {
    // Nothing here has to survive the machine, and every commit costs a wait for the disk.
    raw_.run("PRAGMA synchronous = OFF");
    raw_.run("BEGIN");
    raw_.dropTriggers();
}

Forger::~Forger() {
    for (const std::string& trigger : triggers_) raw_.run(trigger);
    raw_.run("COMMIT");
}

std::vector<Table> Forger::tables(const std::vector<std::string>& left) {
    std::vector<Table> tables;
    for (const std::string& name : raw_.column(
             "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' "
             "ORDER BY name")) {
        if (std::ranges::find(left, name) != left.end()) continue;
        Table& table = tables.emplace_back();
        table.name = name;
        const std::string info = " FROM pragma_table_info('" + name + "') ORDER BY cid";
        const auto names = raw_.column("SELECT name" + info);
        const auto keys = raw_.column("SELECT pk > 0" + info);
        const auto nullable = raw_.column("SELECT \"notnull\" = 0 AND pk = 0" + info);
        for (std::size_t i = 0; i < names.size(); ++i)
            table.columns.push_back({names[i], keys[i] == "1", nullable[i] == "1"});
    }
    return tables;
}

std::size_t Forger::rowCount(const Table& table) {
    return std::stoul(raw_.value("SELECT count(*) FROM " + table.name));
}

bool Forger::runs(const std::string& sql) {
    return raw_.run(sql) == SQLITE_OK;
}

std::string Forger::contentOf(const Table& table) {
    std::vector<std::string> quoted;
    for (const Column& column : table.columns) quoted.push_back("quote(" + column.name + ")");
    auto rows = literals("SELECT " + joined(quoted, " || ',' || ") + " FROM " + table.name);
    std::ranges::sort(rows);
    return joined(rows, "\n");
}

std::vector<std::string> Forger::keysOf(const Table& table) {
    std::vector<std::string> parts;
    for (const Column& column : table.columns)
        if (column.isKey) parts.push_back("'" + column.name + " = ' || quote(" + column.name + ")");
    return literals("SELECT " + joined(parts, " || ' AND ' || ") + " FROM " + table.name);
}

std::string Forger::altered(const std::string& literal) {
    if (literal == "NULL") return random_.below(2) == 0 ? "1" : "'x'";
    std::string text = literal;
    if (text.front() != '\'' && !text.starts_with("X'")) {
        const std::int64_t value = std::stoll(text);
        const std::int64_t steps[] = {1, -1, 1000};
        return std::to_string(value + steps[random_.below(std::size(steps))]);
    }
    const bool isBlob = text.front() == 'X';
    std::vector<std::size_t> places;
    for (std::size_t i = isBlob ? 2 : 1; i + 1 < text.size(); ++i)
        if (isBlob ? std::isxdigit(static_cast<unsigned char>(text[i])) != 0
                   : std::isalnum(static_cast<unsigned char>(text[i])) != 0)
            places.push_back(i);
    if (places.empty()) return isBlob ? "X'00'" : "'x'";
    char& c = text[random_.of(places)];
    // Another letter or digit of the same kind, so that numbers, dates and SHA-256s stay such.
    if (c >= '0' && c <= '9')
        c = c == '9' ? '0' : static_cast<char>(c + 1);
    else if (isBlob)
        c = c == 'F' ? 'A' : static_cast<char>(c + 1);
    else
        c = c == 'f' || c == 'F' || c == 'z' || c == 'Z' ? static_cast<char>(c - 1)
                                                         : static_cast<char>(c + 1);
    return text;
}

std::vector<std::string> Forger::candidates(const Table& table, const Column& column,
                                            const std::string& old) {
    auto all = literals("SELECT DISTINCT quote(" + column.name + ") FROM " + table.name);
    std::erase(all, old);
    std::vector<std::string> chosen;
    for (int i = 0; i < 2 && !all.empty(); ++i) chosen.push_back(random_.of(all));
    for (int i = 0; i < 4; ++i) chosen.push_back(altered(old));
    if (column.mayBeNull && old != "NULL") chosen.emplace_back("NULL");
    std::rotate(chosen.begin(),
                chosen.begin() + static_cast<std::ptrdiff_t>(random_.below(chosen.size())),
                chosen.end());
    return chosen;
}

std::optional<std::string> Forger::changeField(const Table& table, const Column& column) {
    const auto rows = keysOf(table);
    if (rows.empty()) return std::nullopt;
    for (const char* ignoring : {"OFF", "ON"}) {
        raw_.run(std::string("PRAGMA ignore_check_constraints = ") + ignoring);
        for (int attempt = 0; attempt < 8; ++attempt) {
            const std::string row = random_.of(rows);
            const std::string where = " WHERE " + row;
            const std::string old =
                raw_.value("SELECT quote(" + column.name + ") FROM " + table.name + where);
            for (const std::string& value : candidates(table, column, old)) {
                if (value == old) continue;
                const std::string sql =
                    "UPDATE " + table.name + " SET " + column.name + " = " + value;
                if (runs(sql + where))
                    return sql.substr(0, 300) + where.substr(0, 200) + " (was " +
                           old.substr(0, 100) + ")";
            }
        }
    }
    return std::nullopt;
}

std::optional<std::string> Forger::deleteRow(const Table& table) {
    const auto rows = keysOf(table);
    if (rows.empty()) return std::nullopt;
    const std::string sql = "DELETE FROM " + table.name + " WHERE " + random_.of(rows);
    return runs(sql) ? std::optional(sql) : std::nullopt;
}

std::optional<std::string> Forger::insertCopy(const Table& table) {
    const auto rows = keysOf(table);
    if (rows.empty()) return std::nullopt;
    raw_.run("PRAGMA ignore_check_constraints = ON");
    const std::string row = random_.of(rows);
    std::vector<std::string> names;
    std::vector<std::string> values;
    for (const Column& column : table.columns) {
        names.push_back(column.name);
        values.push_back(
            raw_.value("SELECT quote(" + column.name + ") FROM " + table.name + " WHERE " + row));
    }
    // Whatever has to differ from all other rows is altered until it does.
    for (std::size_t i = table.columns.size(); i-- > 0;)
        if (table.columns[i].isKey) {
            values[i] = altered(values[i]);
            break;
        }
    for (int attempt = 0; attempt < 200; ++attempt) {
        const std::string sql = "INSERT INTO " + table.name + " (" + joined(names, ", ") +
                                ") VALUES (" + joined(values, ", ") + ")";
        if (runs(sql)) return sql.substr(0, 300);
        const std::string message = raw_.message();
        std::vector<std::size_t> named;
        for (std::size_t i = 0; i < names.size(); ++i)
            if ((message + ",").find("." + names[i] + ",") != std::string::npos) named.push_back(i);
        if (named.empty()) return std::nullopt;
        std::string& value = values[random_.of(named)];
        value = altered(value);
    }
    return std::nullopt;
}

std::optional<std::string> Forger::swapRows(const Table& table) {
    const auto facts = table.facts();
    const auto rows = keysOf(table);
    if (facts.empty() || rows.size() < 2) return std::nullopt;
    raw_.run("PRAGMA ignore_check_constraints = ON");
    std::vector<std::string> keys;
    for (const Column& column : table.columns)
        if (column.isKey) keys.push_back(column.name);
    const std::string before = contentOf(table);
    for (int attempt = 0; attempt < 40; ++attempt) {
        const std::string& one = random_.of(rows);
        const std::string& other = random_.of(rows);
        if (one == other) continue;
        const std::string into = "INSERT INTO " + table.name + " (" + joined(keys, ", ") + ", " +
                                 joined(facts, ", ") + ") SELECT ";
        const auto crossed = [&](const std::string& key, const std::string& fact) {
            return into + joined(prefixed(key, keys), ", ") + ", " +
                   joined(prefixed(fact, facts), ", ") + " FROM one, other";
        };
        raw_.run("SAVEPOINT swap");
        const bool done =
            runs("CREATE TEMP TABLE one AS SELECT * FROM " + table.name + " WHERE " + one) &&
            runs("CREATE TEMP TABLE other AS SELECT * FROM " + table.name + " WHERE " + other) &&
            runs("DELETE FROM " + table.name + " WHERE (" + one + ") OR (" + other + ")") &&
            runs(crossed("one.", "other.")) && runs(crossed("other.", "one.")) &&
            runs("DROP TABLE temp.one") && runs("DROP TABLE temp.other") &&
            contentOf(table) != before;
        if (done && runs("RELEASE swap"))
            return "swapped in " + table.name + ": " + one + " and " + other;
        raw_.run("ROLLBACK TO swap; RELEASE swap");
    }
    return std::nullopt;
}

}  // namespace app
