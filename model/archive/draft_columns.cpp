// SPDX-License-Identifier: Apache-2.0
#include "archive/draft_columns.h"

#include "archive/stored_words.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

std::string nameOf(std::int64_t id) {
    return "examination " + std::to_string(id);
}

template <class Quantity>
std::optional<Quantity> quantityFrom(const SqlStatement& row, int column) {
    const auto millionths = row.wholeOrNone(column);
    if (!millionths) return std::nullopt;
    return Quantity::fromMillionths(*millionths);
}

}  // namespace

Result<ExaminationDraft> draftFrom(const Connection& connection, const SqlStatement& row) {
    ExaminationDraft draft;
    draft.id = row.whole(0);
    draft.version = row.whole(1);
    draft.casting = row.text(2);
    const auto method = known(connection, methodFrom(row.text(4)), nameOf(draft.id), row.text(4));
    if (!method) return method.error();
    const auto stage = known(connection, stageFrom(row.text(5)), nameOf(draft.id), row.text(5));
    if (!stage) return stage.error();
    draft.header.zone = row.text(3);
    draft.header.method = *method;
    draft.header.stage = *stage;
    draft.header.repairCycle = static_cast<int>(row.whole(6));
    draft.header.repeat = static_cast<int>(row.whole(7));
    draft.header.thickness = nanometres(row.whole(8));
    draft.header.surface = surfaceFrom(row, 9);
    draft.header.table = row.text(16);
    draft.header.noIndications = row.whole(17) != 0;
    draft.examinedBy = row.text(18);
    draft.examinedOn = row.text(19);
    draft.procedure = row.text(20);
    draft.remarks = row.text(21);
    return draft;
}

void takeLevel(const SqlStatement& row, int column, ExaminationDraft& draft) {
    draft.header.levels[row.text(column)] = row.text(column + 1);
}

Result<void> takeForbiddenKind(const Connection& connection, const SqlStatement& row, int column,
                               ExaminationDraft& draft) {
    const std::string text = row.text(column);
    const auto kind = known(connection, kindFrom(text), nameOf(draft.id), text);
    if (!kind) return kind.error();
    draft.header.forbiddenKinds.push_back(*kind);
    return {};
}

void takeNotExamined(const SqlStatement& row, int column, ExaminationDraft& draft) {
    draft.header.notExamined.push_back(
        {Area::fromMillionths(row.whole(column)), row.text(column + 1), row.text(column + 2)});
}

TypedIndication typedFrom(const SqlStatement& row, int column) {
    TypedIndication typed;
    typed.id = row.text(column);
    typed.unit = row.text(column + 1) == symbol(LengthUnit::Inch) ? LengthUnit::Inch
                                                                  : LengthUnit::Millimetre;
    typed.x = row.text(column + 2);
    typed.y = row.text(column + 3);
    typed.length = row.text(column + 4);
    typed.width = row.text(column + 5);
    typed.removed = row.text(column + 6);
    typed.angle = row.text(column + 7);
    typed.area = row.text(column + 8);
    typed.kind = row.text(column + 9);
    typed.stated = row.text(column + 10);
    typed.relevance = row.text(column + 11);
    typed.reason = row.text(column + 12);
    return typed;
}

ExactFields exactFrom(const SqlStatement& row, int column) {
    return {quantityFrom<Length>(row, column),     quantityFrom<Length>(row, column + 1),
            quantityFrom<Length>(row, column + 2), quantityFrom<Length>(row, column + 3),
            quantityFrom<Length>(row, column + 4), quantityFrom<Angle>(row, column + 5),
            quantityFrom<Area>(row, column + 6)};
}

}  // namespace model
