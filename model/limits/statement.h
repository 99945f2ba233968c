// SPDX-License-Identifier: Apache-2.0
// One line of a limit table, read word by word from the left. The first thing that is not as
// expected is kept as the statement's error, and from then on every reader returns a value of no
// meaning without moving on; so a statement is read in one go and asked once whether it failed.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "limits/limit_table.h"
#include "limits/table_lines.h"
#include "limits/units.h"

namespace model {

class Statement {
public:
    Statement(const TableLine& line, const std::string& file) : line_(line), file_(file) {}

    [[nodiscard]] int line() const { return line_.number; }
    [[nodiscard]] const std::optional<Error>& error() const { return error_; }
    void fail(std::string reason, std::vector<std::string> arguments = {});

    /// Whether a word is left.
    [[nodiscard]] bool more() const { return !error_ && at_ < line_.words.size(); }
    /// Steps past the unquoted `words` if they come next.
    bool take(std::initializer_list<std::string_view> words);
    /// The unquoted `words` must come next.
    void expect(std::initializer_list<std::string_view> words);
    /// Nothing may be left.
    void end();

    /// The next word, quoted or not. `what` says in errors what it should be.
    std::string_view word(std::string_view what);
    /// The next word, which must be quoted and not blank: a name or a free text.
    std::string text(std::string_view what);
    /// The words up to the end of the line, with single spaces between them.
    std::string phrase();
    /// Where the next word stands, and the words read from there on.
    [[nodiscard]] std::size_t here() const { return at_; }
    [[nodiscard]] std::string since(std::size_t from) const;

    /// The next word as one of an enumeration's words.
    template <class T>
    T oneOf(std::string_view what, std::optional<T> (*from)(std::string_view)) {
        const std::string_view read = word(what);
        if (error_) return T{};
        const std::optional<T> value = from(read);
        if (!value) fail("\"%1\" is not a known " + std::string(what), {shownInError(read)});
        return value.value_or(T{});
    }
    /// A whole number from `least` up to 1 000 000.
    int whole(std::string_view what, int least);
    /// A decimal number above 0, in millionths.
    std::int64_t positive(std::string_view what);
    /// A number above 0 and its unit: 3 mm, 1 in.
    Length length(std::string_view what);
    /// A number above 0 and its unit: 600 mm2, 232 cm2, 0.15 in2.
    Area area(std::string_view what);
    /// A fraction above 0 and below 1, such as 1/3.
    Rational fraction(std::string_view what);
    /// One of `allowed`, as its sign.
    Comparison comparison(std::initializer_list<Comparison> allowed);
    /// "at", a quoted locator and a grade.
    Source sourceClause();
    /// A quoted locator and a grade.
    Source source();
    /// One of a reflector's measures, which may have several words.
    ReflectorMeasure reflectorMeasure();
    /// A number, a fraction such as t/3, 20%t or 10%area, none, unknown or agreed. A number may
    /// state a unit of what is measured other than the program's own: 0.8 in2.
    Cell cell(Measured measured = Measured::Plain);
    /// What ends a row: locator and grade, then perhaps note "..." and not monotone "...".
    void rowEnd(Cell& cell, std::string& notMonotone);
    /// "unknown" or "absent"; anything else is Given and stays to be read.
    Known known();
    /// A frame with its source: rectangle 105 x 148 mm, circle 150 mm, absent or unknown.
    FrameRule frame();
    /// Both ends of a thickness band: ">19 <=57"; "open" where the band has no end.
    Band band();

private:
    std::optional<Length> bandEnd(std::string_view what, Comparison strict, Comparison including,
                                  Comparison& comparison);
    Rational percentage(std::string_view text, std::string_view whole);
    std::int64_t withUnit(std::string_view what, Measured measured);
    std::int64_t converted(std::int64_t millionths, const Unit& unit, std::string_view shown);
    void number(std::string_view text, Measured measured, Cell& cell);

    const TableLine& line_;
    const std::string& file_;
    std::size_t at_ = 1;  // words[0] names the statement
    std::optional<Error> error_;
};

}  // namespace model
