// SPDX-License-Identifier: Apache-2.0
// What can be chosen for the fields of a test's conditions: from the registers with state and due
// date as they are on the day of the test, from the order, from the list of parameters.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "fields/entry_rows.h"
#include "record/records.h"

namespace app {

/// People by id, with their names.
using People = std::vector<std::pair<std::string, QString>>;

/// Procedures of the draft's method, by "number / revision". Obsolete ones only where the order
/// fixes them, or where the draft names one already.
Choices procedureChoices(const model::CastingFile& file, const model::ExaminationDraft& draft);
/// The same of technique sheets: those of the chosen procedure, and those of none.
Choices sheetChoices(const model::CastingFile& file, const model::ExaminationDraft& draft);
/// Number and revision of "number / revision"; the whole text and none where it is not of that
/// form.
std::pair<std::string, std::string> numberAndRevision(const std::string& key);
/// "number / revision"; empty where there is no number.
std::string procedureKey(const std::string& number, const std::string& revision);

/// What is in use; of `kinds` (parted by "|"; empty: of any) first.
Choices equipmentChoices(const model::Holdings& works, const std::string& on,
                         std::string_view kinds = {});
Choices consumableChoices(const model::Holdings& works, const std::string& on);
/// People with what they may do in the method.
Choices peopleChoices(const model::Holdings& works, const People& people, model::Method method);

/// Their names, as they stand by what they measured.
Choices nameChoices(const People& people);

/// How a cell of a measurement is entered: by its parameter.
std::optional<CellEntry> measurementEntry(const model::CastingFile& file,
                                          const model::ExaminationDraft& draft,
                                          const People& people, const EntryTexts& row,
                                          const std::string& key);
/// The unit in which a parameter is offered first; empty: none.
std::string usualUnit(const std::string& parameter);
/// Whether a unit is one of the parameter's.
bool isUnitOf(const std::string& unit, const std::string& parameter);

}  // namespace app
