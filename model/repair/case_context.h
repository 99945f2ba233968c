// SPDX-License-Identifier: Apache-2.0
// What the parts of this folder share while a case is put together. For its .cpp files only.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "repair/repair_case.h"

namespace model {

struct CaseContext {
    const CastingFile& file;
    const Verdict& verdict;
    const RepairRule* rule = nullptr;  ///< null: none that is known
    std::string today;  ///< date on which concessions have to hold; empty: none known
};

/// The verdict on an examination; null where it has none.
const ExaminationVerdict* verdictOn(const CaseContext& context, const ExaminationDraft& draft);
/// Whether it is of a zone, method and stage.
bool isOf(const ExaminationDraft& draft, const std::string& zone, Method method, Stage stage);
/// "Z1 MT as cast, repair cycle 1"
std::string nameOf(const ExaminationDraft& draft);
/// Whether the draft says that it re-examines after this nonconformance.
bool reexamines(const ExaminationDraft& draft, const Nonconformance& opened);
/// The examination by MT, PT or UT that found it; null where none fits.
const ExaminationDraft* foundBy(const CaseContext& context, const Nonconformance& opened);
/// The result of another test that found it; null where none fits. MT, PT and UT are asked for
/// here too, as an outside laboratory may have made them.
const OtherResult* foundByOther(const CastingFile& file, const Nonconformance& opened);
/// Whether a result is of the zone, or of the whole casting.
bool concerns(const OtherResult& result, const std::string& zone);

/// Notes what is open in a case; the first thing noted gives its state.
class OpenItems {
public:
    explicit OpenItems(RepairCase& c) : case_(c) {}
    void add(std::string_view state, std::string place, std::string reason,
             std::vector<std::string> arguments = {});

private:
    RepairCase& case_;
};

/// Whether both are dates and `later` is on or after `earlier`: what has no date is never known to
/// be after anything.
bool isOnOrAfter(const std::string& later, const std::string& earlier);

/// The excavation that a weld fills, with how severe that repair is; null where it is not there.
const RepairSeverity* severityFor(const RepairCase& c, const WeldRepair& weld);

/// What is open, part by part, in the order of the work.
void checkDecision(RepairCase& c, const CaseContext& context);
void checkExcavations(RepairCase& c, const CaseContext& context);
void checkWelds(RepairCase& c);
void checkHeatTreatments(RepairCase& c, const CaseContext& context);
void checkReexamination(RepairCase& c, const CaseContext& context);
void checkConcessions(RepairCase& c, const CaseContext& context);

/// Indications that fail in what counts of a zone, method and stage, as "Z1/7".
struct FailedIndications {
    std::set<std::string> indications;
    std::string notKnown;  ///< why they cannot all be named; empty: they are all here
};
FailedIndications failedOf(const CaseContext& context, const std::string& zone, Method method,
                           Stage stage);
/// A list of indications as a person types it, "7, Z2/3", in the same form.
std::set<std::string> indicationsIn(const std::string& list, const std::string& zone);
/// What the concessions of a case accept that hold on the context's day.
std::set<std::string> concededBy(const RepairCase& c, const CaseContext& context);
/// Whether one of them was granted on or after a day.
bool isConcededAfter(const RepairCase& c, const std::string& day, const CaseContext& context);
/// The stage at which its finding counts; none where it is not known.
std::optional<Stage> stageOf(const RepairCase& c);

}  // namespace model
