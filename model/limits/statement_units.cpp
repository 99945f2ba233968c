// SPDX-License-Identifier: Apache-2.0
// The values of a statement that have a unit, and a cell's number.
#include "base/decimal.h"
#include "limits/statement.h"
#include "limits/words.h"

namespace model {

std::int64_t Statement::converted(std::int64_t millionths, const Unit& unit,
                                  std::string_view shown) {
    const std::optional<std::int64_t> own = inOwnUnit(millionths, unit);
    const char* name = unit.of == Measured::Mm ? "mm" : "mm2";
    if (!own)
        fail("\"%1 %2\" is larger than 1000000 %3, or has too many decimals to be exact in %3",
             {shownInError(shown), std::string(unit.word), name});
    return own.value_or(0);
}

std::int64_t Statement::withUnit(std::string_view what, Measured measured) {
    const std::int64_t value = positive(what);
    if (error_) return 0;
    const std::string_view shown = line_.words[at_ - 1].text;
    const std::string_view name = word("unit of the " + std::string(what));
    if (error_) return 0;
    const Unit* unit = unitFrom(name);
    if (unit == nullptr || unit->of != measured) {
        fail("\"%1\" is not a unit of the " + std::string(what), {shownInError(name)});
        return 0;
    }
    return converted(value, *unit, shown);
}

Length Statement::length(std::string_view what) {
    return Length::fromMillionths(withUnit(what, Measured::Mm));
}

Area Statement::area(std::string_view what) {
    return Area::fromMillionths(withUnit(what, Measured::SquareMm));
}

Rational Statement::fraction(std::string_view what) {
    const std::string_view text = word(what);
    if (error_) return {};
    const std::size_t slash = text.find('/');
    if (slash != std::string_view::npos) {
        const Result<std::int64_t> over = parseMillionths(text.substr(0, slash));
        const Result<std::int64_t> under = parseMillionths(text.substr(slash + 1));
        if (over && under && *over % kMillion == 0 && *under % kMillion == 0 && *over > 0 &&
            *under > *over)
            return {*over / kMillion, *under / kMillion};
    }
    fail("the " + std::string(what) + " \"%1\" is not a fraction above 0 and below 1, such as 1/3",
         {shownInError(text)});
    return {};
}

ReflectorMeasure Statement::reflectorMeasure() {
    using enum ReflectorMeasure;
    if (take({"length", "to", "width"})) return LengthToWidth;
    if (take({"over", "reference"})) return OverReference;
    if (take({"back-wall", "loss"})) return BackWallLoss;
    return oneOf<ReflectorMeasure>("measure of an indication", reflectorMeasureFrom);
}

void Statement::number(std::string_view text, Measured measured, Cell& cell) {
    const Result<std::int64_t> read = parseMillionths(text);
    cell.type = Cell::Type::Number;
    if (!read)
        return fail(
            "the cell \"%1\" is neither a number nor a fraction nor one of none, unknown, "
            "agreed: it " +
                read.error().reason,
            {shownInError(text)});
    if (*read < 0 && measured != Measured::SignedDecibel)
        return fail("the cell \"%1\" is negative", {shownInError(text)});
    cell.number = *read;
    if (!more() || line_.words[at_].quoted) return;
    const Unit* unit = unitFrom(line_.words[at_].text);
    if (unit == nullptr) return;  // the locator is missing: its reader says so
    if (unit->of != measured)
        return fail("\"%1\" is not a unit of what is limited here", {std::string(unit->word)});
    cell.number = converted(*read, *unit, text);
    ++at_;
    cell.written = since(at_ - 2);
}

}  // namespace model
