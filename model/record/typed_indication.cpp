// SPDX-License-Identifier: Apache-2.0
#include "record/typed_indication.h"

#include <tuple>

#include "judge/sheet_words.h"
#include "limits/words.h"
#include "record/row_fields.h"

namespace model {
namespace {

class RowReader {
public:
    explicit RowReader(const TypedIndication& row) : row_(row), fields_(row.unit) {}

    ReadIndication read() {
        Indication indication;
        indication.id = row_.id;
        fields_.require("id", row_.id);
        readPlace(indication);
        readSize(indication);
        readWords(indication);
        ReadIndication result;
        if (fields_.sound()) result.value = std::move(indication);
        result.errors = fields_.take();
        return result;
    }

private:
    std::optional<Length> length(const char* field, const std::string& text,
                                 Allowed allowed = Allowed::Positive) {
        return fields_.length(field, text, allowed);
    }

    void readPlace(Indication& indication) {
        for (auto [field, text, target] : {std::tuple{"x_mm", &row_.x, &indication.x},
                                           std::tuple{"y_mm", &row_.y, &indication.y}})
            if (fields_.require(field, *text))
                *target = length(field, *text, Allowed::Any).value_or(Length());
        indication.angle =
            fields_.quantity<Angle>("angle_deg", row_.angle, Allowed::Any).value_or(Angle());
    }

    void readSize(Indication& indication) {
        fields_.require("length_mm", row_.length);
        const auto itsLength = length("length_mm", row_.length);
        if (itsLength) indication.length = *itsLength;

        indication.width = length("width_mm", row_.width);
        if (isEmpty(row_.width) && trimmed(row_.stated) != word(StatedClass::Linear))
            fields_.fail("width_mm",
                         "is missing; a hairline without a measurable width is stated linear");
        if (itsLength && indication.width && *indication.width > *itsLength)
            fields_.fail("width_mm", "is more than the length");

        indication.removed = length("removed_mm", row_.removed);
        indication.area = fields_.quantity<Area>("area_mm2", row_.area, Allowed::Positive);
    }

    void readWords(Indication& indication) {
        if (const auto text = trimmed(row_.kind); !text.empty()) {
            indication.kind = kindFrom(text);
            if (!indication.kind || isUltrasonic(*indication.kind))
                fields_.fail("kind", "is not a kind: %1", {row_.kind});
        }
        if (const auto text = trimmed(row_.stated); !text.empty()) {
            indication.stated = statedClassFrom(text);
            if (!indication.stated)
                fields_.fail("class", "must be linear, non-linear or empty, not: %1",
                             {row_.stated});
        }
        indication.reason = row_.reason;
        indication.relevance = fields_.relevance(row_.relevance, row_.reason);
    }

    const TypedIndication& row_;
    RowFields fields_;
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
    return areEmpty({&row.x, &row.y, &row.length, &row.width, &row.removed, &row.angle, &row.area,
                     &row.kind, &row.stated, &row.relevance, &row.reason});
}

}  // namespace model
