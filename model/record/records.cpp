// SPDX-License-Identifier: Apache-2.0
#include "record/records.h"

#include <algorithm>

#include "judge/sheet_words.h"
#include "limits/words.h"

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

Result<Examination> examinationOf(const ExaminationDraft& draft, const Order& order) {
    if (!draft.header.indications.empty())
        return inputError(placeOf(draft), "has indications outside its rows");
    Examination examination = draft.header;
    for (const Kind kind : order.forbiddenKinds)
        if (std::ranges::find(examination.forbiddenKinds, kind) == examination.forbiddenKinds.end())
            examination.forbiddenKinds.push_back(kind);
    for (std::size_t i = 0; i < draft.rows.size(); ++i) {
        const TypedIndication& row = draft.rows[i];
        if (isBlank(row)) continue;
        ReadIndication read = model::read(row);
        if (!read.value) {
            const FieldError& first = read.errors.front();
            Error error = first.error;
            error.place = placeOf(draft) + ", row " + std::to_string(i + 1) +
                          (row.id.empty() ? "" : " (" + row.id + ")") + ", " + first.field;
            return error;
        }
        examination.indications.push_back(std::move(*read.value));
    }
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
