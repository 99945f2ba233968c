// SPDX-License-Identifier: Apache-2.0
#include "archive/draft_columns.h"

#include "archive/details.h"
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
    UltrasonicTest& ultrasonic = draft.header.ultrasonic;
    ultrasonic.zoneArea = quantityFrom<Area>(row, 22);
    if (row.whole(23) != 0)
        ultrasonic.testability = {quantityFrom<Length>(row, 24), quantityFrom<GainStep>(row, 25)};
    ultrasonic.deadZone = quantityFrom<Length>(row, 26);
    if (auto taken = takeDetails(connection, row.text(27), draft); !taken) return taken.error();
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

void takeDirection(const SqlStatement& row, int column, ExaminationDraft& draft) {
    draft.header.ultrasonic.directions.push_back(row.text(column));
}

}  // namespace model
