// SPDX-License-Identifier: Apache-2.0
#include <map>

#include "base/digest.h"
#include "limits/statement.h"
#include "limits/table_lines.h"
#include "repair/repair_rule.h"

namespace model {
namespace {

using Of = MajorCriterion::Of;

class RuleParser {
public:
    explicit RuleParser(const std::string& file) { rule_.file = file; }

    Result<RepairRule> parse(std::string_view text);

private:
    std::optional<Error> read(const TableLine& line);
    void readStatement(std::string_view name, Statement& in);
    void major(Statement& in);
    static AfterMajor afterMajor(Statement& in);

    RepairRule rule_;
    std::map<std::string, int, std::less<>> lineOf_;
    bool ended_ = false;
};

Result<RepairRule> RuleParser::parse(std::string_view text) {
    rule_.digest = toHex(sha256(text));
    const auto lines = readTableLines(text, rule_.file);
    if (!lines) return lines.error();
    for (const TableLine& line : *lines)
        if (auto error = read(line)) return *error;
    const std::string last = placeInTable(rule_.file, lines->empty() ? 1 : lines->back().number);
    for (const std::string_view name : {"fettlemark-repair-rule", "id", "standard", "edition",
                                        "revision", "major", "heat-treatment", "agreement", "end"})
        if (!lineOf_.contains(name))
            return inputError(last, "the statement \"%1\" is missing", {std::string(name)});
    return std::move(rule_);
}

std::optional<Error> RuleParser::read(const TableLine& line) {
    Statement in(line, rule_.file);
    const std::string_view name = line.words[0].text;
    const bool repeats = name == "remark" || name == "major";
    if (line.words[0].quoted) {
        in.fail("the line begins with a quoted text instead of a statement");
    } else if (lineOf_.empty() && name != "fettlemark-repair-rule") {
        in.fail("the first statement must be: fettlemark-repair-rule 1");
    } else if (ended_) {
        in.fail("nothing follows the statement \"end\"");
    } else if (!lineOf_.emplace(name, line.number).second && !repeats) {
        in.fail("\"%1\" is stated a second time", {shownInError(name)});
    } else {
        readStatement(name, in);
        in.end();
    }
    return in.error();
}

void RuleParser::readStatement(std::string_view name, Statement& in) {
    if (name == "fettlemark-repair-rule") {
        if (in.whole("format", 1) != 1 && !in.error())
            in.fail("the format is not known; this program reads format 1");
    } else if (name == "id") {
        rule_.id = in.text("id");
    } else if (name == "standard") {
        rule_.standard = in.text("standard");
    } else if (name == "edition") {
        rule_.edition = in.text("edition");
    } else if (name == "revision") {
        rule_.revision = in.whole("revision", 1);
    } else if (name == "remark") {
        rule_.remarks.push_back(in.text("remark"));
    } else if (name == "major") {
        major(in);
    } else if (name == "heat-treatment") {
        rule_.heatTreatment = afterMajor(in);
    } else if (name == "agreement") {
        rule_.agreement = afterMajor(in);
    } else if (name == "end") {
        ended_ = true;
    } else {
        in.fail("\"%1\" is not a statement of a repair rule", {shownInError(name)});
    }
}

void RuleParser::major(Statement& in) {
    MajorCriterion criterion;
    const std::string_view of = in.word("criterion");
    const std::size_t from = in.here() + 1;  // after the comparison
    const auto compared = [&] {
        criterion.comparison = in.comparison({Comparison::More, Comparison::AtLeast});
    };
    if (in.error()) return;
    if (of == "share-of-wall") {
        criterion.of = Of::ShareOfWall;
        compared();
        criterion.limit = Rational(in.positive("share of the wall"), kMillion);
        in.expect({"%"});
    } else if (of == "depth") {
        criterion.of = Of::Depth;
        compared();
        criterion.limit = Rational(in.length("depth").millionths());
    } else if (of == "area") {
        criterion.of = Of::SurfaceArea;
        compared();
        criterion.limit = Rational(in.area("area").millionths());
    } else if (of == "leak") {
        criterion.of = Of::Leak;
    } else {
        in.fail("\"%1\" is not a known criterion", {shownInError(of)});
    }
    if (!in.error() && criterion.of != Of::Leak) criterion.written = in.since(from);
    if (criterion.of == Of::ShareOfWall) criterion.written += " of the wall";
    criterion.source = in.sourceClause();
    for (const MajorCriterion& other : rule_.major)
        if (other.of == criterion.of)
            in.fail("the criterion %1 is stated a second time", {std::string(of)});
    rule_.major.push_back(std::move(criterion));
}

AfterMajor RuleParser::afterMajor(Statement& in) {
    AfterMajor after;
    after.mandatory = in.take({"mandatory"});
    if (!after.mandatory) in.expect({"free"});
    after.source = in.sourceClause();
    return after;
}

}  // namespace

Result<RepairRule> parseRepairRule(std::string_view text, const std::string& file) {
    return RuleParser(file).parse(text);
}

}  // namespace model
