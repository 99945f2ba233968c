// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <map>

#include "base/digest.h"
#include "base/word_table.h"
#include "conditions/condition_set.h"
#include "conditions/parameters.h"
#include "limits/statement.h"
#include "limits/table_lines.h"
#include "limits/words.h"
#include "registers/consumable.h"
#include "registers/equipment.h"
#include "registers/qualification.h"

namespace model {
namespace {

using Is = ConditionKind;

constexpr WordEntry<Reaction> kReactions[] = {
    {Reaction::Log, "log"}, {Reaction::Warn, "warn"}, {Reaction::Block, "block"}};

std::optional<Reaction> reactionFrom(std::string_view word) {
    return valueIn(kReactions, word);
}

constexpr WordEntry<Is> kKinds[] = {{Is::Limit, "limit"},
                                    {Is::Compare, "compare"},
                                    {Is::Stated, "stated"},
                                    {Is::OneOf, "one-of"},
                                    {Is::Same, "same"},
                                    {Is::Elapsed, "elapsed"},
                                    {Is::Check, "check"},
                                    {Is::Calibration, "calibration"},
                                    {Is::Expiry, "expiry"},
                                    {Is::OneMaker, "one-maker"},
                                    {Is::Designation, "designation"},
                                    {Is::Certificate, "batch-certificate"},
                                    {Is::Sulphur, "sulphur"},
                                    {Is::Halogens, "halogens"},
                                    {Is::CheckBefore, "setting-check-before"},
                                    {Is::CheckAfter, "setting-check-after"},
                                    {Is::CheckInterval, "setting-check-interval"},
                                    {Is::CheckTemperature, "setting-check-temperature"},
                                    {Is::DriftLoss, "drift-loss"},
                                    {Is::DriftGain, "drift-gain"},
                                    {Is::DriftRange, "drift-range"},
                                    {Is::Sight, "sight"},
                                    {Is::CertificatePeriod, "certificate-period"},
                                    {Is::Sector, "sector"},
                                    {Is::Authorisation, "authorisation"},
                                    {Is::PenetrantFirst, "penetrant-before-magnetic"}};

std::optional<Is> kindFromWord(std::string_view word) {
    return valueIn(kKinds, word);
}

bool isAboutPeople(Is kind) {
    return kind == Is::Sight || kind == Is::CertificatePeriod || kind == Is::Sector ||
           kind == Is::Authorisation;
}

/// The choices of a field of a register's entry.
template <class T>
std::vector<std::string_view> choicesOf(std::string_view key) {
    for (const Field<T>& field : T::fields())
        if (field.info.key == key) return partsOf(field.info.choices);
    return {};
}

class SetParser {
public:
    explicit SetParser(const std::string& file) { set_.file = file; }

    Result<ConditionSet> parse(std::string_view text);

private:
    std::optional<Error> read(const TableLine& line);
    void statement(std::string_view name, Statement& in);
    void methods(Statement& in);
    void begin(Statement& in);
    void subject(Statement& in);
    void onParameters(Statement& in);
    void onRegisters(Statement& in);
    void detail(std::string_view name, Statement& in);
    void clause(Statement& in, std::vector<WhenClause>& clauses);
    void value(Statement& in);
    std::optional<Error> finishRule();

    const Parameter* parameterNamed(Statement& in);
    ConditionValue amount(Statement& in, Dimension dimension);
    void bound(Statement& in, Dimension dimension) {
        rule().comparison = in.comparison(
            {Comparison::Less, Comparison::AtMost, Comparison::AtLeast, Comparison::More});
        rule().limit = amount(in, dimension);
    }
    void words(Statement& in, std::string_view what, const std::vector<std::string_view>& known,
               std::vector<std::string>& into);
    void every(Statement& in);
    ConditionRule& rule() { return set_.rules.back(); }

    ConditionSet set_;
    std::map<std::string, int, std::less<>> lineOf_;
    bool ended_ = false;
    bool hasReaction_ = false;
    bool hasSource_ = false;
};

Result<ConditionSet> SetParser::parse(std::string_view text) {
    set_.digest = toHex(sha256(text));
    const auto lines = readTableLines(text, set_.file);
    if (!lines) return lines.error();
    for (const TableLine& line : *lines)
        if (auto error = read(line)) return *error;
    const std::string last = placeInTable(set_.file, lines->empty() ? 1 : lines->back().number);
    for (const std::string_view name :
         {"fettlemark-conditions", "id", "standard", "edition", "revision", "for", "end"})
        if (!lineOf_.contains(name))
            return inputError(last, "the statement \"%1\" is missing", {std::string(name)});
    if (set_.rules.empty()) return inputError(last, "it holds no rule");
    return std::move(set_);
}

std::optional<Error> SetParser::read(const TableLine& line) {
    Statement in(line, set_.file);
    const std::string_view name = line.words[0].text;
    if (line.words[0].quoted) {
        in.fail("the line begins with a quoted text instead of a statement");
    } else if (lineOf_.empty() && name != "fettlemark-conditions") {
        in.fail("the first statement must be: fettlemark-conditions 1");
    } else if (ended_) {
        in.fail("nothing follows the statement \"end\"");
    } else if (name == "rule" || name == "end") {
        if (auto error = finishRule()) return error;
        lineOf_.emplace(name, line.number);
        if (name == "rule")
            begin(in);
        else
            ended_ = true;
        in.end();
    } else if (!set_.rules.empty()) {
        detail(name, in);
        in.end();
    } else if (!lineOf_.emplace(name, line.number).second && name != "remark") {
        in.fail("\"%1\" is stated a second time", {shownInError(name)});
    } else {
        statement(name, in);
        in.end();
    }
    return in.error();
}

void SetParser::statement(std::string_view name, Statement& in) {
    if (name == "fettlemark-conditions") {
        if (in.whole("format", 1) != 1 && !in.error())
            in.fail("the format is not known; this program reads format 1");
    } else if (name == "id") {
        set_.id = in.text("id");
    } else if (name == "standard") {
        set_.standard = in.text("standard");
    } else if (name == "edition") {
        set_.edition = in.text("edition");
    } else if (name == "revision") {
        set_.revision = in.whole("revision", 1);
    } else if (name == "remark") {
        set_.remarks.push_back(in.text("remark"));
    } else if (name == "for") {
        methods(in);
    } else {
        in.fail("\"%1\" is not a statement of a condition set", {shownInError(name)});
    }
}

void SetParser::methods(Statement& in) {
    if (in.take({"people"})) return;
    do {
        const auto method = in.oneOf<Method>("method", methodFrom);
        if (std::ranges::count(set_.methods, method) > 0) in.fail("a method is named twice");
        set_.methods.push_back(method);
    } while (in.more());
}

void SetParser::begin(Statement& in) {
    set_.rules.emplace_back();
    hasReaction_ = hasSource_ = false;
    rule().line = in.line();
    rule().id = in.text("id of the rule");
    for (const ConditionRule& other : set_.rules)
        if (&other != &rule() && other.id == rule().id)
            in.fail("the rule \"%1\" is stated a second time", {rule().id});
    rule().kind = in.oneOf<Is>("kind of rule", kindFromWord);
    if (in.error()) return;
    if (isAboutPeople(rule().kind) != set_.methods.empty())
        in.fail(set_.methods.empty() ? "a set for people has no such rule"
                                     : "only a set for people has such a rule");
    subject(in);
}

void SetParser::subject(Statement& in) {
    switch (rule().kind) {
        case Is::Limit:
        case Is::Compare:
        case Is::Stated:
        case Is::OneOf:
        case Is::Same:
        case Is::Elapsed:
            return onParameters(in);
        case Is::Check:
        case Is::Calibration:
        case Is::Expiry:
        case Is::OneMaker:
        case Is::Designation:
        case Is::Certificate:
        case Is::Sulphur:
        case Is::Halogens:
            return onRegisters(in);
        case Is::CheckInterval:
            rule().limit = amount(in, Dimension::Time);
            return;
        case Is::CheckTemperature:
            rule().limit = amount(in, Dimension::Temperature);
            return;
        case Is::DriftLoss:
        case Is::DriftGain:
            return bound(in, Dimension::Decibels);
        case Is::DriftRange:
            return bound(in, Dimension::Share);
        case Is::Sight:
            rule().check = in.text("eye test");
            if (!in.error() && std::ranges::count(choicesOf<EyeTest>("kind"), rule().check) == 0)
                in.fail("\"%1\" is not an eye test", {rule().check});
            return;
        case Is::Sector:
            return words(in, "sector", {}, rule().words);
        case Is::CertificatePeriod:
        case Is::CheckBefore:
        case Is::CheckAfter:
        case Is::Authorisation:
        case Is::PenetrantFirst:
            return;
    }
}

const Parameter* SetParser::parameterNamed(Statement& in) {
    const std::string_view name = in.word("parameter");
    const Parameter* known = parameter(name);
    if (known == nullptr) in.fail("\"%1\" is not a parameter", {shownInError(name)});
    return known;
}

void SetParser::onParameters(Statement& in) {
    const Parameter* first = parameterNamed(in);
    if (first == nullptr) return;
    rule().parameter = first->key;
    const auto needs = [&](const Parameter& of, ParameterKind kind) {
        if (of.kind != kind) in.fail("the parameter %1 is of another kind", {std::string(of.key)});
    };
    const auto takeSecond = [&] {
        if (const Parameter* other = parameterNamed(in)) {
            rule().second = other->key;
            needs(*other, first->kind);
            if (other->dimension != first->dimension)
                in.fail("%1 and %2 cannot be compared", {rule().parameter, rule().second});
        }
    };
    switch (rule().kind) {
        case Is::Limit:
            needs(*first, ParameterKind::Number);
            return bound(in, first->dimension);
        case Is::Compare:
            needs(*first, ParameterKind::Number);
            rule().comparison = in.comparison({Comparison::AtMost, Comparison::AtLeast});
            return takeSecond();
        case Is::OneOf:
            if (first->kind != ParameterKind::Choice && first->kind != ParameterKind::YesNo)
                in.fail("the parameter %1 has no choices", {rule().parameter});
            return words(in, "choice",
                         first->kind == ParameterKind::YesNo
                             ? std::vector<std::string_view>{"yes", "no"}
                             : partsOf(first->choices),
                         rule().words);
        case Is::Same:
            return takeSecond();
        case Is::Elapsed:
            needs(*first, ParameterKind::Moment);
            in.expect({"after"});
            takeSecond();
            return bound(in, Dimension::Time);
        default:
            return;
    }
}

void SetParser::onRegisters(Statement& in) {
    if (rule().kind == Is::Check) {
        rule().check = in.text("check");
        if (!in.error() &&
            std::ranges::count(choicesOf<EquipmentCheck>("check"), rule().check) == 0)
            in.fail("\"%1\" is not a check of equipment", {rule().check});
    } else if (rule().kind == Is::Sulphur || rule().kind == Is::Halogens) {
        bound(in, Dimension::MassShare);
    }
    in.expect({"of"});
    if (rule().kind != Is::Check && rule().kind != Is::Calibration)
        return words(in, "kind of consumable", choicesOf<Consumable>("kind"), rule().words);
    if (rule().kind == Is::Check && in.take({"any"})) return;
    auto kinds = choicesOf<Equipment>("kind");
    kinds.emplace_back(kAngleProbe);
    words(in, "kind of equipment", kinds, rule().words);
}

ConditionValue SetParser::amount(Statement& in, Dimension dimension) {
    const std::string_view number = in.word("number");
    std::string unit;
    if (dimension != Dimension::None) {
        unit = in.word("unit");
        if (unit == "deg") unit += " " + std::string(in.word("unit"));
    }
    if (in.error()) return {};
    auto read = ConditionValue::read(number, unit, dimension);
    if (read) return *read;
    in.fail(read.error().reason, read.error().arguments);
    return {};
}

void SetParser::words(Statement& in, std::string_view what,
                      const std::vector<std::string_view>& known, std::vector<std::string>& into) {
    do {
        std::string read = in.text(what);
        if (in.error()) return;
        if (!known.empty() && std::ranges::count(known, read) == 0)
            in.fail("\"%1\" is not a known " + std::string(what), {shownInError(read)});
        if (std::ranges::count(into, read) > 0)
            in.fail("\"%1\" is named twice", {shownInError(read)});
        into.push_back(std::move(read));
    } while (in.more());
}

void SetParser::every(Statement& in) {
    if (in.take({"on", "the", "day"})) {
        rule().every = Every{0, Every::Unit::Days};
        return;
    }
    Every every;
    every.count = in.whole("interval", 1);
    const std::string_view unit = in.word("unit");
    if (unit == "hours")
        every.unit = Every::Unit::Hours;
    else if (unit == "days")
        every.unit = Every::Unit::Days;
    else if (unit != "months")
        in.fail("\"%1\" is not an interval's unit; take hours, days or months",
                {shownInError(unit)});
    if (rule().kind != Is::Check && every.unit != Every::Unit::Months)
        in.fail("this interval is counted in months");
    rule().every = every;
}

void SetParser::clause(Statement& in, std::vector<WhenClause>& clauses) {
    const Parameter* known = parameterNamed(in);
    if (known == nullptr) return;
    WhenClause clause{std::string(known->key), {}};
    if (!in.take({"stated"})) {
        if (known->kind == ParameterKind::Choice)
            words(in, "choice", partsOf(known->choices), clause.values);
        else if (known->kind == ParameterKind::YesNo)
            words(in, "choice", {"yes", "no"}, clause.values);
        else
            in.fail("the parameter %1 has no choices; take \"stated\"", {clause.parameter});
    }
    clauses.push_back(std::move(clause));
}

void SetParser::value(Statement& in) {
    if (rule().kind != Is::Check) in.fail("only a check has values");
    CheckValue value;
    value.comparison = in.comparison(
        {Comparison::Less, Comparison::AtMost, Comparison::AtLeast, Comparison::More});
    const Dimension dimension = rule().check == "yoke pull"            ? Dimension::Force
                                : rule().check == "bath concentration" ? Dimension::VolumeShare
                                                                       : Dimension::None;
    if (dimension == Dimension::None) in.fail("the check \"%1\" has no values", {rule().check});
    value.limit = amount(in, dimension);
    if (in.take({"spaced"})) {
        value.from = amount(in, Dimension::Extent);
        in.expect({"to"});
        value.to = amount(in, Dimension::Extent);
    }
    rule().values.push_back(std::move(value));
}

void SetParser::detail(std::string_view name, Statement& in) {
    if (name == "when") {
        clause(in, rule().when);
    } else if (name == "unless") {
        clause(in, rule().unless);
    } else if (name == "every" && !rule().every) {
        every(in);
    } else if (name == "value") {
        value(in);
    } else if (name == "if-stated" && !rule().ifStated) {
        rule().ifStated = true;
    } else if (name == "reaction" && !hasReaction_) {
        hasReaction_ = true;
        rule().reaction = in.oneOf<Reaction>("reaction", reactionFrom);
    } else if (name == "source" && !hasSource_) {
        hasSource_ = true;
        rule().source = in.source();
    } else if (name == "note" && rule().note.empty()) {
        rule().note = in.text("note");
    } else {
        in.fail("\"%1\" is not a statement of this rule, or is stated a second time",
                {shownInError(name)});
    }
}

std::optional<Error> SetParser::finishRule() {
    if (set_.rules.empty()) return std::nullopt;
    const auto missing = [&](const char* what) {
        return inputError(placeInTable(set_.file, rule().line), "the rule \"%1\" has no %2",
                          {rule().id, what});
    };
    if (!hasReaction_) return missing("reaction");
    if (!hasSource_) return missing("source");
    const bool takes = rule().kind == Is::Check || rule().kind == Is::Calibration ||
                       rule().kind == Is::Sight || rule().kind == Is::CertificatePeriod;
    if (rule().every && !takes)
        return inputError(placeInTable(set_.file, rule().line),
                          "the rule \"%1\" cannot have an interval", {rule().id});
    if (takes && !rule().every && rule().kind != Is::Check) return missing("interval");
    return std::nullopt;
}

}  // namespace

Result<ConditionSet> parseConditionSet(std::string_view text, const std::string& file) {
    return SetParser(file).parse(text);
}

}  // namespace model
