// SPDX-License-Identifier: Apache-2.0
#include "limits/parser.h"

#include <algorithm>
#include <map>

#include "base/digest.h"
#include "limits/by_method.h"
#include "limits/rule_reader.h"
#include "limits/statement.h"
#include "limits/table_check.h"
#include "limits/table_lines.h"
#include "limits/ultrasonic_reader.h"
#include "limits/words.h"

namespace model {
namespace {

class TableParser {
public:
    explicit TableParser(const std::string& file) { table_.file = file; }

    Result<LimitTable> parse(std::string_view text);

private:
    using Reader = void (TableParser::*)(Statement&);

    std::optional<Error> read(const TableLine& line);
    std::optional<Error> checkStatements(const std::string& lastLine) const;
    void readInHead(std::string_view name, Statement& in);

    void format(Statement& in);
    void id(Statement& in) { table_.id = in.text("id"); }
    void standard(Statement& in) { table_.standard = in.text("standard"); }
    void edition(Statement& in) { table_.edition = in.text("edition"); }
    void revision(Statement& in) { table_.revision = in.whole("revision", 1); }
    void remark(Statement& in) { table_.remarks.push_back(in.text("remark")); }
    void method(Statement& in) { table_.method = in.oneOf<Method>("method", methodFrom); }
    void materials(Statement& in);
    void levels(Statement& in);
    void linear(Statement& in);
    void threshold(Statement& in);
    void thresholdColumns(Statement& in);
    void thresholdRow(Statement& in);
    void rows(Statement& in);
    void joins(Statement& in);
    void frame(Statement& in) { table_.frame = in.frame(); }
    void summed(Statement& in);
    void rim(Statement& in) { ultrasonic_.rim(in); }
    void recording(Statement& in) { ultrasonic_.recording(in); }
    void notMeasurable(Statement& in) { ultrasonic_.notMeasurable(in); }
    void clusters(Statement& in) { ultrasonic_.clusters(in); }
    void forbidden(Statement& in);

    void checkKey(Statement& in, const LevelKey& key) const;

    LimitTable table_;
    UltrasonicReader ultrasonic_{table_};
    RuleReader rules_{table_};
    std::map<std::string, int, std::less<>> lineOf_;  // of the table's own statements
    enum class Block { Head, Threshold, Rules } block_ = Block::Head;
    bool columnsStated_ = false;  // of the threshold
    bool ended_ = false;
};

Result<LimitTable> TableParser::parse(std::string_view text) {
    table_.digest = toHex(sha256(text));
    const Result<std::vector<TableLine>> lines = readTableLines(text, table_.file);
    if (!lines) return lines.error();
    for (const TableLine& line : *lines)
        if (const std::optional<Error> error = read(line)) return *error;

    const std::string lastLine =
        placeInTable(table_.file, lines->empty() ? 1 : lines->back().number);
    // A file cut short between two rules would judge by the rules that are left.
    if (!ended_ && !lineOf_.empty())
        return inputError(lastLine, "the file stops before the statement \"end\"");
    if (const std::optional<Error> error = checkStatements(lastLine)) return *error;
    if (table_.rules.empty()) return inputError(lastLine, "the table has no rule");
    if (table_.method == Method::Ultrasonic)
        table_.ratio.known = table_.threshold.known = table_.rows.known = Known::Absent;
    if (const Result<void> checked = checkTable(table_, lineOf_); !checked) return checked.error();
    return std::move(table_);
}

std::optional<Error> TableParser::checkStatements(const std::string& lastLine) const {
    for (const auto& [name, whose] : kTableStatements) {
        const auto stated = lineOf_.find(name);
        const bool needed = isOf(whose, table_.method);
        if (needed && stated == lineOf_.end())
            return inputError(lastLine, "the statement \"%1\" is missing", {std::string(name)});
        if (!needed && stated != lineOf_.end())
            return inputError(placeInTable(table_.file, stated->second),
                              "\"%1\" is not a statement of a table for %2",
                              {std::string(name), std::string(word(table_.method))});
    }
    return std::nullopt;
}

std::optional<Error> TableParser::read(const TableLine& line) {
    Statement in(line, table_.file);
    const std::string_view name = line.words[0].text;
    if (line.words[0].quoted) {
        in.fail("the line begins with a quoted text instead of a statement");
    } else if (lineOf_.empty() && name != "fettlemark-table") {
        in.fail("the first statement must be: fettlemark-table 1");
    } else if (ended_) {
        in.fail("nothing follows the statement \"end\"");
    } else if (name == "end") {
        if (std::optional<Error> error = rules_.finish()) return error;
        ended_ = true;
    } else if (name == "rule") {
        if (std::optional<Error> error = ultrasonic_.finish()) return error;
        if (std::optional<Error> error = rules_.finish()) return error;
        block_ = Block::Rules;
        rules_.begin(in);
    } else if (block_ == Block::Rules) {
        rules_.read(name, in);
    } else if (block_ == Block::Threshold && name == "columns") {
        thresholdColumns(in);
    } else if (block_ == Block::Threshold && name == "row") {
        thresholdRow(in);
    } else if (ultrasonic_.inRecording() && name == "columns") {
        ultrasonic_.columns(in);
    } else if (ultrasonic_.inRecording() && name == "row") {
        ultrasonic_.row(in);
    } else {
        if (std::optional<Error> error = ultrasonic_.finish()) return error;
        block_ = Block::Head;
        readInHead(name, in);
    }
    in.end();
    return in.error();
}

void TableParser::readInHead(std::string_view name, Statement& in) {
    static const std::map<std::string_view, Reader> kReaders = {
        {"fettlemark-table", &TableParser::format},
        {"id", &TableParser::id},
        {"standard", &TableParser::standard},
        {"edition", &TableParser::edition},
        {"revision", &TableParser::revision},
        {"remark", &TableParser::remark},
        {"method", &TableParser::method},
        {"materials", &TableParser::materials},
        {"levels", &TableParser::levels},
        {"linear", &TableParser::linear},
        {"threshold", &TableParser::threshold},
        {"rows", &TableParser::rows},
        {"joins", &TableParser::joins},
        {"frame", &TableParser::frame},
        {"summed", &TableParser::summed},
        {"rim", &TableParser::rim},
        {"recording", &TableParser::recording},
        {"not-measurable", &TableParser::notMeasurable},
        {"clusters", &TableParser::clusters},
        {"forbidden", &TableParser::forbidden}};
    const auto reader = kReaders.find(name);
    if (reader == kReaders.end())
        return in.fail("\"%1\" is not a statement of a limit table", {shownInError(name)});
    const auto [first, isNew] = lineOf_.try_emplace(std::string(name), in.line());
    if (!isNew && name != "remark" && name != "levels" && name != "recording")
        return in.fail("\"%1\" is already stated in line %2",
                       {std::string(name), std::to_string(first->second)});
    (this->*reader->second)(in);
}

void TableParser::format(Statement& in) {
    if (in.word("number of the format") != "1")
        in.fail("this program reads the format fettlemark-table 1 only");
}

void TableParser::materials(Statement& in) {
    do {
        const auto material = in.oneOf<Material>("material", materialFrom);
        if (in.error()) return;
        if (std::ranges::find(table_.materials, material) != table_.materials.end())
            return in.fail("the material %1 is named twice", {std::string(word(material))});
        table_.materials.push_back(material);
    } while (in.more());
}

void TableParser::levels(Statement& in) {
    if (!lineOf_.contains("method")) return in.fail("\"method\" must stand above \"levels\"");
    LevelKey key;
    key.line = in.line();
    key.name = in.word("key");
    if (in.take({"of"})) {
        do {
            key.classes.push_back(in.oneOf<IndicationClass>("class", classFrom));
        } while (in.more() && !in.take({"are"}));
    } else {
        in.expect({"are"});
    }
    do {
        std::string level = in.text("level");
        if (in.error()) return;
        if (std::ranges::find(key.levels, level) != key.levels.end())
            return in.fail("the level \"%1\" is named twice", {shownInError(level)});
        key.levels.push_back(std::move(level));
        if (key.levels.size() > kMostLevels)
            return in.fail("a key has at most %1 levels", {std::to_string(kMostLevels)});
    } while (in.more());
    checkKey(in, key);
    table_.keys.push_back(std::move(key));
}

void TableParser::checkKey(Statement& in, const LevelKey& key) const {
    if (!isLevelKey(table_.method, key.name))
        return in.fail("\"%1\" is not a level key of %2",
                       {shownInError(key.name), std::string(word(table_.method))});
    if (table_.key(key.name) != nullptr)
        return in.fail("the key \"%1\" already has its levels", {key.name});
    if (!table_.keys.empty() && (key.name == "all" || table_.key("all") != nullptr))
        return in.fail("a table with the key \"all\" has no other key");
    if (key.classes.empty())
        return in.fail("the classes that \"%1\" orders are missing: of CLASS ...", {key.name});
    for (const IndicationClass each : key.classes)
        if (!isClassOf(table_.method, each))
            return in.fail("%1 has no class %2",
                           {std::string(word(table_.method)), std::string(word(each))});
    for (auto it = key.classes.begin(); it != key.classes.end(); ++it)
        if (std::find(key.classes.begin(), it, *it) != it || table_.keyOf(*it) != nullptr)
            return in.fail("the class %1 is ordered twice", {std::string(word(*it))});
    const auto ordered = [&](IndicationClass asked) {
        return table_.keyOf(asked) != nullptr ||
               std::ranges::find(key.classes, asked) != key.classes.end();
    };
    if (ordered(IndicationClass::NonLinear) &&
        (ordered(IndicationClass::Isolated) || ordered(IndicationClass::Clustered)))
        in.fail("non-linear includes isolated and clustered: a table orders it or them");
}

void TableParser::linear(Statement& in) {
    ClassRatio& ratio = table_.ratio;
    ratio.known = in.known();
    if (ratio.known == Known::Given) {
        in.expect({"length"});
        ratio.comparison = in.comparison({Comparison::AtLeast, Comparison::More});
        ratio.factor = Rational(in.whole("ratio", 1));
        in.expect({"widths"});
    }
    ratio.source = in.sourceClause();
}

void TableParser::threshold(Statement& in) {
    Threshold& read = table_.threshold;
    if (!lineOf_.contains("levels")) return in.fail("\"levels\" must stand above \"threshold\"");
    read.known = in.known();
    if (read.known == Known::Given) {
        in.expect({"length"});
        read.comparison = in.comparison({Comparison::AtLeast, Comparison::More});
        in.expect({"limit"});
        read.afterGrouping = in.take({"after"});
        if (!read.afterGrouping) in.expect({"before"});
        in.expect({"grouping"});
        block_ = Block::Threshold;
    }
    read.source = in.sourceClause();
}

void TableParser::thresholdColumns(Statement& in) {
    if (columnsStated_) return in.fail("\"columns\" is already stated for the threshold");
    columnsStated_ = true;
    in.expect({"key", "level", "limit", "locator", "grade"});
}

void TableParser::thresholdRow(Statement& in) {
    if (!columnsStated_) return in.fail("\"columns\" must stand above the rows");
    ThresholdRow read;
    read.line = in.line();
    read.key = in.word("key");
    if (!in.error() && table_.key(read.key) == nullptr)
        return in.fail("the key \"%1\" has no levels in this table", {shownInError(read.key)});
    read.level = in.text("level");
    read.cell = in.cell(Measured::Mm);
    if (read.cell.type == Cell::Type::FractionOfArea)
        in.fail("a threshold is a length: no fraction of the area");
    in.rowEnd(read.cell, read.notMonotone);
    table_.threshold.rows.push_back(std::move(read));
}

void TableParser::rows(Statement& in) {
    RowRule& read = table_.rows;
    read.known = in.known();
    if (read.known == Known::Given) {
        read.members = in.whole("number of members", 2);
        in.expect({"or", "more", "gap"});
        read.comparison = in.comparison({Comparison::Less, Comparison::AtMost});
        read.gap = Length::fromMillionths(in.positive("gap"));
        in.expect({"mm", "become"});
        if (in.take({"aligned"}))
            read.becomes = RowRule::Becomes::Aligned;
        else if (in.take({"non-linear"}))
            read.becomes = RowRule::Becomes::NonLinear;
        else if (in.take({"line", "only"}))
            read.becomes = RowRule::Becomes::LineOnly;
        else
            in.fail("rows become one of: aligned, non-linear, line only");
        in.expect({"members"});
        read.membersStay = in.take({"stay"});
        if (!read.membersStay) in.expect({"replaced"});
    }
    read.source = in.sourceClause();
}

void TableParser::joins(Statement& in) {
    JoinRule& read = table_.joins;
    read.known = in.known();
    if (read.known == Known::Given) {
        read.who = in.take({"all"}) ? JoinRule::Who::All : JoinRule::Who::Linear;
        if (read.who == JoinRule::Who::Linear) in.expect({"linear"});
        in.expect({"gap"});
        read.comparison = in.comparison({Comparison::Less, Comparison::AtMost});
        if (in.take({"longest", "member"})) {
            read.reach = JoinRule::Reach::LongestMember;
        } else if (in.take({"smaller", "set"})) {
            read.reach = JoinRule::Reach::SmallerSet;
        } else {
            read.reach = JoinRule::Reach::Constant;
            read.gap = Length::fromMillionths(in.positive("gap"));
            in.expect({"mm"});
        }
        in.expect({"become"});
        read.becomes = in.take({"own"}) ? JoinRule::Becomes::Own : JoinRule::Becomes::Aligned;
        if (read.becomes == JoinRule::Becomes::Aligned) in.expect({"aligned"});
    }
    read.source = in.sourceClause();
}

void TableParser::summed(Statement& in) {
    table_.summedTogether = in.take({"together"});
    if (!table_.summedTogether) in.expect({"apart"});
    table_.summedSource = in.sourceClause();
}

void TableParser::forbidden(Statement& in) {
    if (!in.take({"none"})) {
        do {
            const auto kind = in.oneOf<Kind>("kind", kindFrom);
            if (in.error()) return;
            if (kind == Kind::Unknown) return in.fail("\"unknown\" is not a kind to forbid");
            if (std::ranges::find(table_.forbiddenKinds, kind) != table_.forbiddenKinds.end())
                return in.fail("the kind %1 is named twice", {std::string(word(kind))});
            table_.forbiddenKinds.push_back(kind);
        } while (in.more() && !in.take({"at"}));
        table_.forbiddenSource = in.source();
        return;
    }
    table_.forbiddenSource = in.sourceClause();
}

}  // namespace

Result<LimitTable> parseTable(std::string_view text, const std::string& file) {
    return TableParser(file).parse(text);
}

}  // namespace model
