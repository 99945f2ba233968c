// SPDX-License-Identifier: Apache-2.0
// Reads the rules of a limit table: a line "rule NAME" and the statements below it.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "limits/limit_table.h"
#include "limits/statement.h"

namespace model {

class RuleReader {
public:
    /// Rules are appended to `table`, whose levels have been read.
    explicit RuleReader(LimitTable& table) : table_(table) {}

    /// Begins the rule that `in` names.
    void begin(Statement& in);
    /// Reads a statement of the rule begun last.
    void read(std::string_view name, Statement& in);
    /// Ends the rule begun last, if any; says what it lacks.
    std::optional<Error> finish();

private:
    using Reader = void (RuleReader::*)(Statement&);

    void key(Statement& in);
    void classes(Statement& in);
    void passes(Statement& in);
    void framed(Statement& in);
    void frame(Statement& in);
    void margin(Statement& in);
    void only(Statement& in);
    void measures(Statement& in);
    void columns(Statement& in);
    void row(Statement& in);

    const std::vector<std::string>& keyLevels() const;
    /// The levels that the unquoted word "every" or a quoted level stands for.
    std::vector<std::string> levelsNamed(Statement& in);
    [[nodiscard]] Measured measured() const;
    void checkUnit(Statement& in, const Cell& cell) const;

    LimitTable& table_;
    Rule rule_;
    bool begun_ = false;
    bool banded_ = false;
    std::set<std::string, std::less<>> seen_;
    std::map<std::string, Cell, std::less<>> margins_;  // by level
};

}  // namespace model
