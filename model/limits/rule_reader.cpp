// SPDX-License-Identifier: Apache-2.0
#include "limits/rule_reader.h"

#include <algorithm>

#include "base/decimal.h"
#include "limits/ultrasonic_reader.h"
#include "limits/words.h"

namespace model {
namespace {

bool countsWhole(RuleKind kind) {
    return kind == RuleKind::Count || kind == RuleKind::CountAtMaximum ||
           kind == RuleKind::LineOfIndications;
}
bool measuresLength(RuleKind kind) {
    return kind == RuleKind::IndividualLength || kind == RuleKind::CumulativeLength ||
           kind == RuleKind::Spacing || kind == RuleKind::ThroughWallExtent ||
           kind == RuleKind::EquivalentReflector;
}
bool measuresArea(RuleKind kind) {
    return kind == RuleKind::TotalArea || kind == RuleKind::IndividualArea;
}

}  // namespace

void RuleReader::begin(Statement& in) {
    rule_ = Rule{};
    rule_.line = in.line();
    seen_.clear();
    margins_.clear();
    begun_ = true;
    banded_ = false;
    const std::string name = in.phrase();
    const std::optional<RuleKind> kind = ruleFrom(name);
    if (!kind) return in.fail("\"%1\" is not a known rule", {shownInError(name)});
    if (*kind == RuleKind::ForbiddenKind)
        return in.fail("kinds are forbidden by the table's statement \"forbidden\"");
    rule_.kind = *kind;
}

void RuleReader::read(std::string_view name, Statement& in) {
    static const std::map<std::string_view, Reader> kReaders = {
        {"key", &RuleReader::key},         {"classes", &RuleReader::classes},
        {"passes", &RuleReader::passes},   {"framed", &RuleReader::framed},
        {"columns", &RuleReader::columns}, {"frame", &RuleReader::frame},
        {"margin", &RuleReader::margin},   {"row", &RuleReader::row},
        {"only", &RuleReader::only},       {"measures", &RuleReader::measures}};
    const auto reader = kReaders.find(name);
    if (reader == kReaders.end())
        return in.fail("\"%1\" is not a statement of a rule", {shownInError(name)});
    const bool repeats = name == "frame" || name == "margin" || name == "only" || name == "row";
    if (!repeats && seen_.contains(name))
        return in.fail("\"%1\" is already stated in this rule", {std::string(name)});
    if (name != "key" && !seen_.contains("key"))
        return in.fail("the first statement of a rule must be \"key\"");
    seen_.emplace(name);
    (this->*reader->second)(in);
}

std::optional<Error> RuleReader::finish() {
    if (!begun_) return std::nullopt;
    begun_ = false;
    const auto lacks = [&](std::string reason, std::vector<std::string> arguments = {}) {
        return inputError(placeInTable(table_.file, rule_.line), std::move(reason),
                          std::move(arguments));
    };
    for (const std::string_view name : {"key", "classes", "passes", "framed", "columns", "row"})
        if (!seen_.contains(name))
            return lacks("the rule lacks the statement \"%1\"", {std::string(name)});
    if (!rule_.framed && !rule_.frames.empty())
        return lacks("the rule has a frame, but says framed no");
    if (rule_.kind != RuleKind::CountAtMaximum && !margins_.empty())
        return lacks("only a count at the maximum has a margin");
    if (rule_.kind == RuleKind::Testability && (!rule_.classes.empty() || rule_.framed))
        return lacks("testability is the casting's: classes all, framed no");
    const bool upTo = rule_.passes == Comparison::AtMost || rule_.passes == Comparison::Less;
    if (rule_.kind == RuleKind::Testability &&
        upTo != (rule_.testability == TestabilityMeasure::SmallestFbh))
        return lacks("the smallest hole passes up to its limit, signal to noise from it");
    for (RuleRow& row : rule_.rows) {
        if (rule_.kind != RuleKind::CountAtMaximum) break;
        const auto margin = margins_.find(row.level);
        if (margin == margins_.end())
            return lacks("there is no margin for the level \"%1\"", {shownInError(row.level)});
        row.margin = margin->second;
    }
    table_.rules.push_back(std::move(rule_));
    return std::nullopt;
}

void RuleReader::key(Statement& in) {
    const std::string_view name = in.word("key");
    if (in.error()) return;
    if (table_.key(name) == nullptr)
        return in.fail("the key \"%1\" has no levels in this table", {shownInError(name)});
    rule_.key = name;
}

void RuleReader::classes(Statement& in) {
    if (in.take({"all"})) return;
    do {
        const auto read = in.oneOf<IndicationClass>("class", classFrom);
        if (in.error()) return;
        if (std::ranges::find(rule_.classes, read) != rule_.classes.end())
            return in.fail("the class %1 is named twice", {std::string(word(read))});
        rule_.classes.push_back(read);
    } while (in.more());
}

void RuleReader::passes(Statement& in) {
    if (in.take({"at", "most"}))
        rule_.passes = Comparison::AtMost;
    else if (in.take({"less", "than"}))
        rule_.passes = Comparison::Less;
    else if (in.take({"at", "least"}))
        rule_.passes = Comparison::AtLeast;
    else if (in.take({"more", "than"}))
        rule_.passes = Comparison::More;
    else
        in.fail("expected one of: at most, less than, at least, more than");
}

void RuleReader::framed(Statement& in) {
    rule_.framed = in.take({"yes"});
    if (!rule_.framed) in.expect({"no"});
}

const std::vector<std::string>& RuleReader::keyLevels() const {
    return table_.key(rule_.key)->levels;
}

std::vector<std::string> RuleReader::levelsNamed(Statement& in) {
    if (in.take({"every"})) return keyLevels();
    std::string level = in.text("level");
    if (!in.error() && std::ranges::find(keyLevels(), level) == keyLevels().end())
        in.fail("\"%1\" is not a level of %2", {shownInError(level), rule_.key});
    return {std::move(level)};
}

void RuleReader::frame(Statement& in) {
    const std::vector<std::string> levels = levelsNamed(in);
    const FrameRule read = in.frame();
    for (const std::string& level : levels)
        if (!rule_.frames.emplace(level, read).second)
            in.fail("the level \"%1\" already has a frame", {shownInError(level)});
}

void RuleReader::margin(Statement& in) {
    const std::vector<std::string> levels = levelsNamed(in);
    Cell read = in.cell();
    if (!in.error() && read.type != Cell::Type::Number && read.type != Cell::Type::Unknown &&
        read.type != Cell::Type::Agreed)
        in.fail("a margin is a length in mm, unknown or agreed");
    in.expect({"at"});
    std::string notMonotone;
    in.rowEnd(read, notMonotone);
    if (!notMonotone.empty()) in.fail("a margin is not compared between levels");
    for (const std::string& level : levels)
        if (!margins_.emplace(level, read).second)
            in.fail("the level \"%1\" already has a margin", {shownInError(level)});
}

void RuleReader::only(Statement& in) {
    if (table_.method != Method::Ultrasonic)
        return in.fail("only rules for ultrasonic indications have conditions");
    if (rule_.kind == RuleKind::Testability)
        return in.fail("testability is the casting's: it has no condition");
    rule_.conditions.push_back(readCondition(in));
}

void RuleReader::measures(Statement& in) {
    if (rule_.kind != RuleKind::Testability)
        return in.fail("\"measures\" is a statement of a rule \"testability\" only");
    const std::string name = in.phrase();
    const std::optional<TestabilityMeasure> measure = testabilityMeasureFrom(name);
    if (!measure)
        return in.fail("\"%1\" is not one of: smallest fbh, signal to noise", {shownInError(name)});
    rule_.testability = *measure;
}

void RuleReader::columns(Statement& in) {
    in.expect({"level"});
    banded_ = in.take({"from", "to"});
    in.expect({"limit", "locator", "grade"});
}

void RuleReader::row(Statement& in) {
    if (!seen_.contains("columns")) return in.fail("\"columns\" must stand above the rows");
    if (rule_.kind == RuleKind::Testability && !seen_.contains("measures"))
        return in.fail("\"measures\" must stand above the rows");
    RuleRow read;
    read.line = in.line();
    const std::vector<std::string> levels = levelsNamed(in);
    if (banded_) read.band = in.band();
    read.limit = in.cell(measured());
    checkUnit(in, read.limit);
    in.rowEnd(read.limit, read.notMonotone);
    for (const std::string& level : levels) {
        read.level = level;
        rule_.rows.push_back(read);
    }
}

Measured RuleReader::measured() const {
    if (measuresArea(rule_.kind)) return Measured::SquareMm;
    const bool isHole =
        rule_.kind == RuleKind::Testability && rule_.testability == TestabilityMeasure::SmallestFbh;
    return isHole || measuresLength(rule_.kind) ? Measured::Mm : Measured::Plain;
}

void RuleReader::checkUnit(Statement& in, const Cell& cell) const {
    const std::string kind(word(rule_.kind));
    if (cell.type == Cell::Type::Number && countsWhole(rule_.kind) && cell.number % kMillion != 0)
        in.fail("the limit of a rule \"%1\" is a whole number", {kind});
    if (cell.type == Cell::Type::FractionOfThickness && !measuresLength(rule_.kind))
        in.fail("a rule \"%1\" does not measure a length: no fraction of the thickness", {kind});
    if (cell.type == Cell::Type::FractionOfArea && !measuresArea(rule_.kind))
        in.fail("a rule \"%1\" does not measure an area: no fraction of the area", {kind});
}

}  // namespace model
