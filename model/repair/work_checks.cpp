// SPDX-License-Identifier: Apache-2.0
// What is open in the decision, the excavations, the welds and the heat treatments of a case.
#include <algorithm>
#include <initializer_list>
#include <utility>

#include "base/decimal.h"
#include "record/coverage.h"
#include "repair/case_context.h"

namespace model {
namespace {

using NamedText = std::pair<const char*, const std::string*>;

/// The names of those that are empty, parted by commas.
std::string emptyOf(std::initializer_list<NamedText> texts) {
    std::vector<std::string> names;
    for (const auto& [name, text] : texts)
        if (text->empty()) names.emplace_back(name);
    return listOf(names);
}

const PlannedZone* zoneOf(const CastingFile& file, const std::string& name) {
    const auto found = std::ranges::find(file.plan.zones, name, &PlannedZone::name);
    return found == file.plan.zones.end() ? nullptr : &*found;
}

/// The kind of steel or iron alone does not say whether a casting is magnetic; that it is tested
/// with magnetic particles does.
bool isMagnetic(const CastingFile& file) {
    return std::ranges::any_of(
               requiredTestsOf(file).tests,
               [](const ZoneTest& t) { return t.test.method == Method::Magnetic; }) ||
           std::ranges::any_of(file.examinations, [](const ExaminationDraft& draft) {
               return draft.header.method == Method::Magnetic;
           });
}

/// Things of the register that were overdue for calibration on a day. Of what is not in the
/// register here nothing is said.
std::string overdueOf(const CastingFile& file, const std::string& list, const std::string& day) {
    std::vector<std::string> overdue;
    for (const std::string& id : itemsOf(list)) {
        const auto thing = std::ranges::find(file.used.equipment, id, &Equipment::id);
        if (thing != file.used.equipment.end() && !thing->calibrationDue.empty() &&
            !isOnOrAfter(thing->calibrationDue, day))
            overdue.push_back(id);
    }
    return listOf(overdue);
}

std::vector<const WeldRepair*> weldsIn(const RepairCase& c, const Excavation& excavation) {
    std::vector<const WeldRepair*> welds;
    for (const WeldRepair* weld : c.weldRepairs)
        if (weld->excavation == excavation.number) welds.push_back(weld);
    return welds;
}

bool decides(const RepairCase& c, std::string_view decision) {
    return c.decision() != nullptr && c.decision()->decision == decision;
}

/// Whether a cavity still waits for its weld. What was decided when it was made (the last decision
/// up to that day, else the first) holds only as long as the last decision is to weld.
bool isToBeWelded(const RepairCase& c, const Excavation& excavation) {
    if (!decides(c, "weld repair")) return false;
    if (c.weldRepairs.empty()) return true;
    const Disposition* in = c.decisions.front();
    for (const Disposition* decision : c.decisions)
        if (isOnOrAfter(excavation.doneOn, decision->decidedOn)) in = decision;
    return in->decision == "weld repair";
}

class ExcavationCheck {
public:
    ExcavationCheck(RepairCase& c, const CaseContext& context, const Excavation& excavation)
        : excavation_(excavation),
          file_(context.file),
          welds_(weldsIn(c, excavation)),
          open_(c),
          toBeWelded_(welds_.empty() && isToBeWelded(c, excavation)),
          conceded_(welds_.empty() && decides(c, "concession")) {}

    void all() {
        if (!isDate(excavation_.doneOn))
            add(repair_state::kToExcavate, "the day on which it was made is missing");
        cavity();
        wall();
        if (toBeWelded_)
            add(repair_state::kToWeld, "weld repair was decided, and it is not welded yet");
        if (welds_.empty() && !toBeWelded_ && excavation_.blended != "yes")
            add(repair_state::kCavityOpen, "it is not stated to be blended smoothly");
    }

private:
    void add(std::string_view state, std::string reason, std::vector<std::string> arguments = {}) {
        open_.add(state, "excavation " + excavation_.number, std::move(reason),
                  std::move(arguments));
    }
    void cavity();
    void cavityRecord();
    void wall();

    const Excavation& excavation_;
    const CastingFile& file_;
    std::vector<const WeldRepair*> welds_;
    OpenItems open_;
    bool toBeWelded_;
    bool conceded_;  ///< what is left in the open cavity is the concession's to accept
};

void ExcavationCheck::cavity() {
    const std::string_view state = repair_state::kCavityOpen;
    if (excavation_.cavityMethod.empty())
        return add(state, "the cavity is not tested; test it by MT or PT before anything else");
    if (excavation_.cavityMethod == "MT" && !isMagnetic(file_))
        return add(state,
                   "the cavity was tested by MT, and nothing says that the material is magnetic; "
                   "test it by PT");
    if (excavation_.cavityMethod != "MT" && excavation_.cavityMethod != "PT")
        return add(state, "the cavity was tested by %1; MT or PT is needed",
                   {excavation_.cavityMethod});
    if (excavation_.cleared != "yes" && !conceded_)
        return add(state, "the cavity is not cleared of the finding");
    cavityRecord();
}

void ExcavationCheck::cavityRecord() {
    const std::string_view state = repair_state::kCavityOpen;
    if (excavation_.cavityRecord.empty())
        return add(state, "the record of the cavity test is missing");
    const auto& results = file_.dossier.otherResults;
    const auto record = std::ranges::find(results, excavation_.cavityRecord, &OtherResult::number);
    if (record == results.end())
        return add(state, "the record of the cavity test, %1, is not there",
                   {excavation_.cavityRecord});
    const bool magnetic = excavation_.cavityMethod == "MT";
    if (record->test != (magnetic ? "magnetic particle" : "penetrant") ||
        (!record->zone.empty() && record->zone != excavation_.zone))
        return add(state, "the record of the cavity test, %1, is of another test or zone",
                   {record->number});
    if (record->verdict != "acceptable" && !conceded_)
        return add(state, "the record of the cavity test, %1, says \"%2\"",
                   {record->number, record->verdict});
    if (!isOnOrAfter(record->performedOn, excavation_.doneOn))
        add(state, "the cavity test %1 is not known to be later than the excavation",
            {record->number});
    for (const WeldRepair* weld : welds_)
        if (!isOnOrAfter(weld->doneOn, record->performedOn))
            add(state, "weld %1 is not known to be later than the cavity test %2",
                {weld->number, record->number});
}

void ExcavationCheck::wall() {
    const std::string_view state = repair_state::kCavityOpen;
    const auto left = numberOf(excavation_.wallLeft);
    if (!left) return add(state, "the wall left is not measured");
    if (excavation_.wallMeasuredWith.empty())
        add(repair_state::kIncomplete, "with what the wall left was measured is missing");
    else if (const std::string overdue =
                 overdueOf(file_, excavation_.wallMeasuredWith, excavation_.doneOn);
             !overdue.empty())
        add(repair_state::kIncomplete, "overdue for calibration on that day: %1", {overdue});
    if (const auto before = numberOf(excavation_.wallBefore); before && *left > *before)
        add(state, "the wall left of %1 mm is more than the wall before of %2 mm",
            {formatMillionths(*left), formatMillionths(*before)});
    if (!welds_.empty() || toBeWelded_) return;  // welding restores the wall
    const PlannedZone* zone = zoneOf(file_, excavation_.zone);
    if (zone == nullptr || !zone->drawingMinimum)
        return add(state,
                   "the zone plan has no smallest wall of the drawing for zone %1, so that the "
                   "wall left cannot be compared; add it in a new revision of the plan",
                   {excavation_.zone});
    if (*left < zone->drawingMinimum->millionths())
        add(state, "the wall left of %1 mm is below the drawing's minimum of %2 mm",
            {formatMillionths(*left), formatMillionths(zone->drawingMinimum->millionths())});
}

bool isWeldingDecided(const RepairCase& c) {
    return std::ranges::any_of(c.decisions, [](const Disposition* decision) {
        return decision->decision == "weld repair";
    });
}

/// Number of the purchaser's agreement to the welding decided last; empty: there is none.
std::string agreementOf(const RepairCase& c) {
    std::string agreement;
    for (const Disposition* decision : c.decisions)
        if (decision->decision == "weld repair") agreement = decision->agreement;
    return agreement;
}

/// The first cavity whose repair has to be agreed upon because it is major, or may be.
const RepairSeverity* majorOf(const RepairCase& c, const CaseContext& context) {
    if (context.rule != nullptr && !context.rule->agreement.mandatory) return nullptr;
    const auto major = std::ranges::find_if(c.severities, &RepairSeverity::treatedAsMajor);
    return major == c.severities.end() ? nullptr : &*major;
}

/// The purchaser agrees before anything is welded.
void checkAgreement(RepairCase& c, const CaseContext& context) {
    if (!decides(c, "weld repair") && c.weldRepairs.empty()) return;
    if (!agreementOf(c).empty()) return;
    const bool allAgreed =
        !c.weldRepairs.empty() && std::ranges::none_of(c.weldRepairs, [](const WeldRepair* weld) {
            return weld->agreement.empty();
        });
    if (allAgreed) return;
    OpenItems open(c);
    const std::string_view state =
        c.weldRepairs.empty() ? repair_state::kOnHold : repair_state::kIncomplete;
    const std::string place = "nonconformance " + c.opened->number;
    if (context.file.order.terms.finishingWelds == "agreement first")
        return open.add(state, place,
                        "the order asks for the purchaser's agreement before welding, and its "
                        "number is missing");
    if (const RepairSeverity* major = majorOf(c, context))
        open.add(state, place,
                 "the purchaser's agreement to welding is missing; the repair is %1: %2",
                 {std::string(word(major->severity)), major->reason});
}

}  // namespace

const RepairSeverity* severityFor(const RepairCase& c, const WeldRepair& weld) {
    for (std::size_t i = 0; i < c.excavations.size(); ++i)
        if (c.excavations[i]->number == weld.excavation) return &c.severities[i];
    return nullptr;
}

void checkDecision(RepairCase& c, const CaseContext& context) {
    OpenItems open(c);
    const std::string place = "nonconformance " + c.opened->number;
    if (c.decisions.empty())
        return open.add(repair_state::kOnHold, place, "nothing is decided; a QA manager decides");
    const Disposition& decision = *c.decision();
    if (decision.authority.empty() || !isDate(decision.decidedOn))
        open.add(repair_state::kOnHold, place, "who decided, or on which day, is missing");
    const bool givenUp = decision.decision == "scrap" || decision.decision == "regrade";
    if (!givenUp) checkAgreement(c, context);
    if ((decision.decision == "grind only" || decision.decision == "weld repair") &&
        c.excavations.empty())
        open.add(repair_state::kToExcavate, place, "the excavation is missing");
}

void checkExcavations(RepairCase& c, const CaseContext& context) {
    for (const Excavation* excavation : c.excavations)
        ExcavationCheck(c, context, *excavation).all();
}

void checkWelds(RepairCase& c) {
    OpenItems open(c);
    if (!c.weldRepairs.empty() && !isWeldingDecided(c))
        open.add(repair_state::kOnHold, "nonconformance " + c.opened->number,
                 "it is welded, and weld repair was never decided");
    for (const WeldRepair* weld : c.weldRepairs) {
        const std::string place = "weld " + weld->number;
        const std::string missing = emptyOf({{"welding procedure", &weld->weldingProcedure},
                                             {"procedure approval", &weld->procedureApproval},
                                             {"welder", &weld->welder},
                                             {"welder's approval", &weld->welderApproval},
                                             {"welder's approval until", &weld->welderUntil},
                                             {"filler", &weld->filler},
                                             {"filler batch", &weld->fillerBatch},
                                             {"preheat", &weld->preheat},
                                             {"interpass temperature", &weld->interpass},
                                             {"day of welding", &weld->doneOn}});
        if (!missing.empty())
            open.add(repair_state::kIncomplete, place, "not recorded: %1", {missing});
        if (!weld->welderUntil.empty() && !isOnOrAfter(weld->welderUntil, weld->doneOn))
            open.add(repair_state::kIncomplete, place,
                     "the welder's approval, which ended on %1, is not known to hold on the day of "
                     "welding",
                     {weld->welderUntil});
        const auto excavation =
            std::ranges::find(c.excavations, weld->excavation, &Excavation::number);
        if (excavation != c.excavations.end() && !isOnOrAfter(weld->doneOn, (*excavation)->doneOn))
            open.add(repair_state::kIncomplete, place,
                     "it is not known to be later than excavation %1", {weld->excavation});
    }
}

void checkHeatTreatments(RepairCase& c, const CaseContext& context) {
    OpenItems open(c);
    const bool free = context.rule != nullptr && !context.rule->heatTreatment.mandatory;
    for (const WeldRepair* weld : c.weldRepairs) {
        const RepairSeverity* severity = severityFor(c, *weld);
        if (severity == nullptr || !severity->treatedAsMajor() || free) continue;
        const bool treated = std::ranges::any_of(c.heatTreatments, [&](const HeatTreatment* t) {
            return std::ranges::count(itemsOf(t->weldRepairs), weld->number) > 0 &&
                   isOnOrAfter(t->doneOn, weld->doneOn);
        });
        if (!treated)
            open.add(repair_state::kToHeatTreat, "weld " + weld->number,
                     "heat treatment after welding is missing; the repair is %1: %2",
                     {std::string(word(severity->severity)), severity->reason});
    }
    for (const HeatTreatment* treatment : c.heatTreatments) {
        const std::string missing = emptyOf({{"temperature", &treatment->temperature},
                                             {"holding time", &treatment->holding},
                                             {"chart", &treatment->chart},
                                             {"furnace", &treatment->furnace},
                                             {"thermocouples", &treatment->thermocouples},
                                             {"day", &treatment->doneOn}});
        if (!missing.empty())
            open.add(repair_state::kIncomplete, "heat treatment " + treatment->number,
                     "not recorded: %1", {missing});
        const std::string overdue = overdueOf(
            context.file, treatment->furnace + "," + treatment->thermocouples, treatment->doneOn);
        if (!overdue.empty())
            open.add(repair_state::kIncomplete, "heat treatment " + treatment->number,
                     "overdue for calibration on that day: %1", {overdue});
    }
}

}  // namespace model
