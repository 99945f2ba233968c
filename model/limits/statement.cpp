// SPDX-License-Identifier: Apache-2.0
#include "limits/statement.h"

#include <algorithm>
#include <numeric>

#include "base/decimal.h"
#include "limits/words.h"

namespace model {
namespace {

// A fraction's parts stay at or below a million, so that times a thickness or an area (at most
// 1e12 millionths) they keep within what Rational compares.
constexpr std::int64_t kLargestPart = 1'000'000;

}  // namespace

void Statement::fail(std::string reason, std::vector<std::string> arguments) {
    if (!error_)
        error_ =
            inputError(placeInTable(file_, line_.number), std::move(reason), std::move(arguments));
}

bool Statement::take(std::initializer_list<std::string_view> words) {
    if (error_ || line_.words.size() - at_ < words.size()) return false;
    std::size_t next = at_;
    for (const std::string_view expected : words) {
        const TableWord& read = line_.words[next++];
        if (read.quoted || read.text != expected) return false;
    }
    at_ = next;
    return true;
}

void Statement::expect(std::initializer_list<std::string_view> words) {
    for (const std::string_view expected : words) {
        if (error_ || take({expected})) continue;
        if (more())
            fail("expected \"%1\" instead of \"%2\"",
                 {std::string(expected), shownInError(line_.words[at_].text)});
        else
            fail("expected \"%1\" at the end of the line", {std::string(expected)});
    }
}

void Statement::end() {
    if (more()) fail("\"%1\" was not expected here", {shownInError(line_.words[at_].text)});
}

std::string_view Statement::word(std::string_view what) {
    if (error_) return {};
    if (!more()) {
        fail("the " + std::string(what) + " is missing");
        return {};
    }
    return line_.words[at_++].text;
}

std::string Statement::text(std::string_view what) {
    if (more() && !line_.words[at_].quoted) {
        fail("the " + std::string(what) +
                 " is missing: expected a text in quotation marks instead "
                 "of \"%1\"",
             {shownInError(line_.words[at_].text)});
        return {};
    }
    std::string read(word(what));
    if (!error_ && read.find_first_not_of(" \t") == std::string::npos)
        fail("the " + std::string(what) + " is empty");
    return read;
}

std::string Statement::phrase() {
    const std::size_t from = at_;
    if (!error_) at_ = line_.words.size();
    return since(from);
}

std::string Statement::since(std::size_t from) const {
    std::string read;
    for (; from < at_; ++from) {
        if (!read.empty()) read += ' ';
        read += line_.words[from].text;
    }
    return read;
}

int Statement::whole(std::string_view what, int least) {
    const std::string_view read = word(what);
    if (error_) return least;
    const Result<std::int64_t> value = parseMillionths(read);
    if (!value || *value % kMillion != 0 || *value < least * kMillion) {
        fail("the " + std::string(what) + " \"%1\" is not a whole number from " +
                 std::to_string(least) + " up",
             {shownInError(read)});
        return least;
    }
    return static_cast<int>(*value / kMillion);
}

std::int64_t Statement::positive(std::string_view what) {
    const std::string_view read = word(what);
    if (error_) return 0;
    const Result<std::int64_t> value = parseMillionths(read);
    if (!value)
        fail("the " + std::string(what) + " \"%1\" " + value.error().reason, {shownInError(read)});
    else if (*value <= 0)
        fail("the " + std::string(what) + " must be above 0");
    return error_ ? 0 : *value;
}

Comparison Statement::comparison(std::initializer_list<Comparison> allowed) {
    const auto read = oneOf<Comparison>("comparison", comparisonFrom);
    if (!error_ && std::ranges::find(allowed, read) == allowed.end())
        fail("the comparison %1 has no meaning here", {std::string(model::word(read))});
    return read;
}

Source Statement::sourceClause() {
    expect({"at"});
    return source();
}

Source Statement::source() {
    Source read;
    read.locator = text("locator");
    read.grade = oneOf<Grade>("grade", gradeFrom);
    return read;
}

Rational Statement::percentage(std::string_view text, std::string_view whole) {
    const Result<std::int64_t> percent = parseMillionths(text);
    if (!percent || *percent <= 0 || *percent > 100 * kMillion) {
        fail("\"%1\" is not a percentage of the " + std::string(whole) + " above 0 and up to 100",
             {shownInError(text)});
        return {};
    }
    const std::int64_t divisor = std::gcd(*percent, 100 * kMillion);
    const Rational fraction(*percent / divisor, 100 * kMillion / divisor);
    if (fraction.denominator > kLargestPart)
        fail("the percentage \"%1\" has too many decimals", {shownInError(text)});
    return fraction;
}

Cell Statement::cell(Measured measured) {
    Cell read;
    const std::string_view text = word("cell");
    if (error_) return read;
    if (text == "none") {
        read.type = Cell::Type::None;
    } else if (text == "unknown") {
        read.type = Cell::Type::Unknown;
    } else if (text == "agreed") {
        read.type = Cell::Type::Agreed;
    } else if (text.starts_with("t/")) {
        const Result<std::int64_t> parts = parseMillionths(text.substr(2));
        read.type = Cell::Type::FractionOfThickness;
        if (!parts || *parts % kMillion != 0 || *parts < kMillion)
            fail("\"%1\" is not t divided by a whole number", {shownInError(text)});
        else
            read.fraction = Rational(1, *parts / kMillion);
    } else if (text.ends_with("%t")) {
        read.type = Cell::Type::FractionOfThickness;
        read.fraction = percentage(text.substr(0, text.size() - 2), "thickness");
        read.written = std::string(text.substr(0, text.size() - 2)) + " %";
    } else if (text.ends_with("%area")) {
        read.type = Cell::Type::FractionOfArea;
        read.fraction = percentage(text.substr(0, text.size() - 5), "area");
        read.written = std::string(text.substr(0, text.size() - 5)) + " %";
    } else {
        number(text, measured, read);
    }
    return read;
}

void Statement::rowEnd(Cell& cell, std::string& notMonotone) {
    cell.source = source();
    if (take({"note"})) cell.note = text("note");
    if (take({"not", "monotone"})) notMonotone = text("reason why the row is not monotone");
}

Known Statement::known() {
    if (take({"unknown"})) return Known::Unknown;
    if (take({"absent"})) return Known::Absent;
    return Known::Given;
}

FrameRule Statement::frame() {
    FrameRule read;
    read.known = known();
    if (read.known == Known::Given) {
        read.shape.circle = take({"circle"});
        if (!read.shape.circle) expect({"rectangle"});
        read.shape.width = Length::fromMillionths(positive("frame's size"));
        if (!read.shape.circle) expect({"x"});
        read.shape.height = read.shape.circle ? read.shape.width
                                              : Length::fromMillionths(positive("frame's height"));
        expect({"mm"});
    }
    read.source = sourceClause();
    return read;
}

std::optional<Length> Statement::bandEnd(std::string_view what, Comparison strict,
                                         Comparison including, Comparison& comparison) {
    const std::string_view text = word(what);
    if (error_ || text == "open") return std::nullopt;
    if (text.starts_with(model::word(including))) {
        comparison = including;
    } else if (text.starts_with(model::word(strict))) {
        comparison = strict;
    } else {
        fail("the " + std::string(what) + " \"%1\" has no comparison: it begins with " +
                 std::string(model::word(strict)) + " or " + std::string(model::word(including)) +
                 ", or is \"open\"",
             {shownInError(text)});
        return std::nullopt;
    }
    const Result<std::int64_t> value = parseMillionths(text.substr(model::word(comparison).size()));
    if (!value)
        fail("the " + std::string(what) + " \"%1\" " + value.error().reason, {shownInError(text)});
    else if (*value < 0)
        fail("the " + std::string(what) + " \"%1\" is negative", {shownInError(text)});
    if (error_) return std::nullopt;
    return Length::fromMillionths(*value);
}

Band Statement::band() {
    Band read;
    read.lower = bandEnd("lower end of the band", Comparison::More, Comparison::AtLeast,
                         read.lowerComparison);
    read.upper = bandEnd("upper end of the band", Comparison::Less, Comparison::AtMost,
                         read.upperComparison);
    const bool both =
        read.lowerComparison == Comparison::AtLeast && read.upperComparison == Comparison::AtMost;
    if (!error_ && read.lower && read.upper &&
        (*read.lower > *read.upper || (*read.lower == *read.upper && !both)))
        fail("the band contains no thickness");
    return read;
}

}  // namespace model
