// SPDX-License-Identifier: Apache-2.0
#include "record/typed_indication.h"

#include <string_view>
#include <tuple>

#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// Areas and angles are typed by the same grammar as millimetres: point or comma, no exponent.
Result<std::int64_t> millionthsOf(std::string_view text) {
    const auto entry = parseLength(text, LengthUnit::Millimetre);
    if (!entry) return entry.error();
    return entry->value.millionths();
}

class RowReader {
public:
    explicit RowReader(const TypedIndication& row) : row_(row) {}

    ReadIndication read() {
        Indication indication;
        indication.id = row_.id;
        if (trimmed(row_.id).empty()) fail("id", "is missing");
        readPlace(indication);
        readSize(indication);
        readWords(indication);
        ReadIndication result;
        result.errors = std::move(errors_);
        if (result.errors.empty()) result.value = std::move(indication);
        return result;
    }

private:
    void fail(const char* field, std::string reason, std::vector<std::string> arguments = {}) {
        errors_.push_back({field, inputError("", std::move(reason), std::move(arguments))});
    }

    std::optional<Length> length(const char* field, const std::string& text) {
        const auto entry = parseLength(text, row_.unit);
        if (entry) return entry->value;
        errors_.push_back({field, entry.error()});
        return std::nullopt;
    }

    /// A length that was typed and is more than 0; none where the field is empty or wrong.
    std::optional<Length> size(const char* field, const std::string& text) {
        if (trimmed(text).empty()) return std::nullopt;
        auto value = length(field, text);
        if (value && *value <= Length()) {
            fail(field, "must be more than 0");
            value.reset();
        }
        return value;
    }

    void readPlace(Indication& indication) {
        for (auto [field, text, target] : {std::tuple{"x_mm", &row_.x, &indication.x},
                                           std::tuple{"y_mm", &row_.y, &indication.y}}) {
            if (trimmed(*text).empty())
                fail(field, "is missing");
            else if (const auto value = length(field, *text))
                *target = *value;
        }
        if (trimmed(row_.angle).empty()) return;
        const auto angle = millionthsOf(row_.angle);
        if (angle)
            indication.angle = Angle::fromMillionths(*angle);
        else
            errors_.push_back({"angle_deg", angle.error()});
    }

    void readSize(Indication& indication) {
        if (trimmed(row_.length).empty()) fail("length_mm", "is missing");
        const auto itsLength = size("length_mm", row_.length);
        if (itsLength) indication.length = *itsLength;

        indication.width = size("width_mm", row_.width);
        if (trimmed(row_.width).empty() && trimmed(row_.stated) != word(StatedClass::Linear))
            fail("width_mm", "is missing; a hairline without a measurable width is stated linear");
        if (itsLength && indication.width && *indication.width > *itsLength)
            fail("width_mm", "is more than the length");

        indication.removed = size("removed_mm", row_.removed);

        if (trimmed(row_.area).empty()) return;
        const auto area = millionthsOf(row_.area);
        if (!area)
            errors_.push_back({"area_mm2", area.error()});
        else if (*area <= 0)
            fail("area_mm2", "must be more than 0");
        else
            indication.area = Area::fromMillionths(*area);
    }

    void readWords(Indication& indication) {
        if (const auto text = trimmed(row_.kind); !text.empty()) {
            indication.kind = kindFrom(text);
            if (!indication.kind) fail("kind", "is not a kind: %1", {row_.kind});
        }
        if (const auto text = trimmed(row_.stated); !text.empty()) {
            indication.stated = statedClassFrom(text);
            if (!indication.stated)
                fail("class", "must be linear, non-linear or empty, not: %1", {row_.stated});
        }
        indication.reason = row_.reason;
        if (const auto text = trimmed(row_.relevance); !text.empty()) {
            const auto relevance = relevanceFrom(text);
            if (!relevance)
                fail("relevance", "must be relevant, non-relevant, false or empty, not: %1",
                     {row_.relevance});
            else
                indication.relevance = *relevance;
        }
        if (indication.relevance != Relevance::Relevant && trimmed(row_.reason).empty())
            fail("reason", "is missing; why the indication is %1 must be stated",
                 {std::string(word(indication.relevance))});
    }

    const TypedIndication& row_;
    std::vector<FieldError> errors_;
};

template <class Quantity>
std::optional<Quantity> quantityIn(const std::string& text) {
    const auto value = millionthsOf(text);
    if (!value) return std::nullopt;
    return Quantity::fromMillionths(*value);
}

}  // namespace

ReadIndication read(const TypedIndication& row) {
    return RowReader(row).read();
}

ExactFields exactFields(const TypedIndication& row) {
    const auto length = [&](const std::string& text) -> std::optional<Length> {
        const auto entry = parseLength(text, row.unit);
        if (!entry) return std::nullopt;
        return entry->value;
    };
    return {length(row.x),
            length(row.y),
            length(row.length),
            length(row.width),
            length(row.removed),
            quantityIn<Angle>(row.angle),
            quantityIn<Area>(row.area)};
}

bool isBlank(const TypedIndication& row) {
    for (const std::string* text :
         {&row.x, &row.y, &row.length, &row.width, &row.removed, &row.angle, &row.area, &row.kind,
          &row.stated, &row.relevance, &row.reason})
        if (!trimmed(*text).empty()) return false;
    return true;
}

}  // namespace model
