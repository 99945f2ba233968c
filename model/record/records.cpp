// SPDX-License-Identifier: Apache-2.0
#include "record/records.h"

#include <algorithm>

#include "judge/forbidden.h"
#include "judge/sheet_words.h"
#include "limits/words.h"
#include "record/row_fields.h"

namespace model {
namespace {

/// "casting S1, zone Z1 MT as cast, repair cycle 1, repeat 1"
std::string placeOf(const ExaminationDraft& draft) {
    const Examination& header = draft.header;
    std::string place = "casting " + draft.casting + ", zone " + header.zone + " " +
                        std::string(word(header.method)) + " " + std::string(word(header.stage));
    if (header.repairCycle != 0) place += ", repair cycle " + std::to_string(header.repairCycle);
    if (header.repeat != 0) place += ", repeat " + std::to_string(header.repeat);
    return place;
}

template <class Row>
std::string placeOf(const ExaminationDraft& draft, const std::vector<Row>& rows, std::size_t i) {
    return placeOf(draft) + ", row " + std::to_string(i + 1) +
           (rows[i].id.empty() ? "" : " (" + rows[i].id + ")");
}

/// Reads every row that holds something: read(row) gives a value or errors.
template <class Row, class Value, class Read>
Result<void> readRows(const ExaminationDraft& draft, const std::vector<Row>& rows, Read read,
                      std::vector<Value>& values) {
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (isBlank(rows[i])) continue;
        auto result = read(rows[i]);
        if (!result.value) {
            const FieldError& first = result.errors.front();
            Error error = first.error;
            error.place = placeOf(draft, rows, i) + ", " + first.field;
            return error;
        }
        values.push_back(std::move(*result.value));
    }
    return {};
}

/// Rows of another method are never left out unseen.
template <class Row>
Result<void> expectNone(const ExaminationDraft& draft, const std::vector<Row>& rows) {
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (!isBlank(rows[i]))
            return inputError(placeOf(draft, rows, i),
                              "was not typed for %1, the method of this examination; take it out",
                              {std::string(word(draft.header.method))});
    return {};
}

/// What forbidding a kind means in a method: an echo does not tell a crack from another planar
/// reflector, so where cracks are forbidden every planar one is. None: the method cannot tell it.
std::optional<Kind> toldBy(Method method, Kind kind) {
    const bool ultrasonic = method == Method::Ultrasonic;
    if (ultrasonic && isCrackLike(kind)) return Kind::Planar;
    if (isUltrasonic(kind) != ultrasonic) return std::nullopt;
    return kind;
}

/// The draft's kinds and then the order's, as the method can tell them.
std::vector<Kind> forbiddenKinds(const Examination& header, const Order& order) {
    std::vector<Kind> kinds;
    for (const std::vector<Kind>* list : {&header.forbiddenKinds, &order.forbiddenKinds})
        for (const Kind kind : *list)
            if (const auto told = toldBy(header.method, kind);
                told && std::ranges::find(kinds, *told) == kinds.end())
                kinds.push_back(*told);
    return kinds;
}

/// Those with text; what stands there twice is one direction.
std::vector<std::string> directionsOf(const std::vector<std::string>& typed) {
    std::vector<std::string> directions;
    for (const std::string& text : typed) {
        const std::string direction(trimmed(text));
        if (!direction.empty() && std::ranges::find(directions, direction) == directions.end())
            directions.push_back(direction);
    }
    return directions;
}

Result<Examination> examinationOf(const ExaminationDraft& draft, const Order& order) {
    if (!draft.header.indications.empty() || !draft.header.reflectors.empty())
        return inputError(placeOf(draft), "has indications outside its rows");
    Examination examination = draft.header;
    examination.forbiddenKinds = forbiddenKinds(draft.header, order);
    examination.ultrasonic.directions = directionsOf(draft.header.ultrasonic.directions);
    const bool ultrasonic = examination.method == Method::Ultrasonic;
    auto done = ultrasonic ? expectNone(draft, draft.rows) : expectNone(draft, draft.reflectors);
    if (done)
        done = ultrasonic
                   ? readRows(
                         draft, draft.reflectors,
                         [&](const TypedReflector& row) { return read(row, draft.settings); },
                         examination.reflectors)
                   : readRows(
                         draft, draft.rows, [](const TypedIndication& row) { return read(row); },
                         examination.indications);
    if (!done) return done.error();
    return examination;
}

}  // namespace

Result<Sheet> sheetOf(const CastingFile& file) {
    Sheet sheet;
    sheet.casting = {file.casting.serial, file.casting.heat, file.part.number, file.part.drawing,
                     file.part.material};
    for (const ExaminationDraft& draft : file.examinations) {
        if (draft.casting != file.casting.serial)
            return inputError(placeOf(draft), "does not belong to the casting %1",
                              {file.casting.serial});
        Result<Examination> examination = examinationOf(draft, file.order);
        if (!examination) return examination.error();
        sheet.examinations.push_back(std::move(*examination));
    }
    return sheet;
}

}  // namespace model
