// SPDX-License-Identifier: Apache-2.0
// Takes a row's fields from text and collects what is wrong with them. For the .cpp files of this
// folder only.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/entry.h"
#include "quantity/quantities.h"
#include "record/typed_indication.h"

namespace model {

/// Without spaces and tabs at both ends.
std::string_view trimmed(std::string_view text);

inline bool isEmpty(const std::string& text) {
    return trimmed(text).empty();
}
bool areEmpty(std::initializer_list<const std::string*> texts);

/// Every number that is no length is typed by the same grammar as millimetres: point or comma, no
/// exponent.
Result<std::int64_t> millionthsOf(std::string_view text);

enum class Allowed { Any, NotNegative, Positive };

class RowFields {
public:
    explicit RowFields(LengthUnit unit) : unit_(unit) {}

    void fail(std::string field, std::string reason, std::vector<std::string> arguments = {});
    void add(std::vector<FieldError> errors);
    /// In millionths; none where the field is empty or wrong, and only the latter is noted.
    std::optional<std::int64_t> number(const std::string& field, const std::string& text,
                                       Allowed allowed);
    std::optional<Length> length(const std::string& field, const std::string& text,
                                 Allowed allowed);
    template <class Quantity>
    std::optional<Quantity> quantity(const std::string& field, const std::string& text,
                                     Allowed allowed) {
        const auto millionths = number(field, text, allowed);
        if (!millionths) return std::nullopt;
        return Quantity::fromMillionths(*millionths);
    }
    /// Notes an empty field; whether it is filled.
    bool require(const std::string& field, const std::string& text);
    /// The relevance, and that a reason is there unless relevant.
    Relevance relevance(const std::string& text, const std::string& reason);

    [[nodiscard]] bool sound() const { return errors_.empty(); }
    [[nodiscard]] std::vector<FieldError> take() { return std::move(errors_); }

private:
    std::optional<std::int64_t> within(const std::string& field, std::int64_t millionths,
                                       Allowed allowed);

    LengthUnit unit_;
    std::vector<FieldError> errors_;
};

}  // namespace model
