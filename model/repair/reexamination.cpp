// SPDX-License-Identifier: Apache-2.0
// What is open in the examination after a repair: by the test that found it, and of the finished
// surface of a weld.
#include <algorithm>
#include <utility>

#include "judge/sheet_words.h"
#include "limits/words.h"
#include "record/coverage.h"
#include "record/other_results.h"
#include "repair/case_context.h"

namespace model {
namespace {

/// A step of the work that the examination has to follow: "weld W-1", its day.
using Step = std::pair<std::string, std::string>;

/// Heat treatments of the casting count from its first weld on, whatever welds they name: the
/// finished surface is examined after any of them.
std::vector<Step> stepsOf(const RepairCase& c, const CastingFile& file) {
    std::vector<Step> steps;
    for (const Excavation* excavation : c.excavations)
        steps.emplace_back("excavation " + excavation->number, excavation->doneOn);
    for (const WeldRepair* weld : c.weldRepairs)
        steps.emplace_back("weld " + weld->number, weld->doneOn);
    for (const HeatTreatment& treatment : file.dossier.heatTreatments) {
        const bool follows = std::ranges::any_of(c.weldRepairs, [&](const WeldRepair* weld) {
            return !isDate(treatment.doneOn) || !isDate(weld->doneOn) ||
                   treatment.doneOn >= weld->doneOn;
        });
        if (follows) steps.emplace_back("heat treatment " + treatment.number, treatment.doneOn);
    }
    return steps;
}

/// The first step that an examination of that day is not known to follow; null: it follows all.
const Step* notFollowed(const std::vector<Step>& steps, const std::string& day) {
    const auto step =
        std::ranges::find_if(steps, [&](const Step& s) { return !isOnOrAfter(day, s.second); });
    return step == steps.end() ? nullptr : &*step;
}

class Reexamination {
public:
    Reexamination(RepairCase& c, const CaseContext& context)
        : case_(c),
          context_(context),
          open_(c),
          steps_(stepsOf(c, context.file)),
          conceding_(c.decision() != nullptr && c.decision()->decision == "concession") {}

    void all() {
        if (case_.carriedOnBy == nullptr) {
            if (case_.found != nullptr)
                byMethod(case_.found->header);
            else if (case_.foundByOther != nullptr)
                byOtherTest();
        }
        for (const WeldRepair* weld : case_.weldRepairs) surfaceOf(*weld);
    }

private:
    void add(std::string reason, std::vector<std::string> arguments) {
        open_.add(repair_state::kToExamine, "nonconformance " + case_.opened->number,
                  std::move(reason), std::move(arguments));
    }
    void byMethod(const Examination& found);
    void judgeCounting(const ExaminationDraft& draft, const Examination& found);
    [[nodiscard]] bool isToTheSameLimits(const Examination& made, const Examination& found) const;
    void byOtherTest();
    void surfaceOf(const WeldRepair& weld);
    [[nodiscard]] bool isSurfaceExamined(const std::string& zone) const;

    RepairCase& case_;
    const CaseContext& context_;
    OpenItems open_;
    std::vector<Step> steps_;
    bool conceding_;
};

void Reexamination::byMethod(const Examination& found) {
    std::vector<const ExaminationDraft*> counting;
    for (const ExaminationDraft& draft : context_.file.examinations) {
        const ExaminationVerdict* verdict = verdictOn(context_, draft);
        if (isOf(draft, found.zone, found.method, found.stage) && verdict != nullptr &&
            !verdict->superseded && draft.header.repairCycle > found.repairCycle)
            counting.push_back(&draft);
    }
    if (counting.empty())
        return add(
            "the examination of %1 by %2 at stage %3 after the repair is missing; it is "
            "made in a later repair cycle than %4",
            {found.zone, std::string(word(found.method)), std::string(word(found.stage)),
             std::to_string(found.repairCycle)});
    for (const ExaminationDraft* draft : counting) judgeCounting(*draft, found);
    std::vector<std::string> tooEarly;
    for (const ExaminationDraft* draft : counting) {
        const Step* missed = notFollowed(steps_, draft->examinedOn);
        if (missed == nullptr) return;
        tooEarly = {nameOf(*draft), missed->first};
    }
    add("the examination %1 is not known to be later than %2", std::move(tooEarly));
}

void Reexamination::judgeCounting(const ExaminationDraft& draft, const Examination& found) {
    const ExaminationVerdict* verdict = verdictOn(context_, draft);
    const Word judged = verdict == nullptr ? Word::NotJudged : verdict->word;
    if (!reexamines(draft, *case_.opened))
        add("the examination %1 does not say that it examines after nonconformance %2",
            {nameOf(draft), case_.opened->number});
    if (judged == Word::NotJudged || (judged == Word::NotAcceptable && !conceding_))
        add("the examination %1 says \"%2\"", {nameOf(draft), std::string(word(judged))});
    if (!isToTheSameLimits(draft.header, found))
        add("the examination %1 was made neither to the limits of the examination that found it "
            "nor to those that are required",
            {nameOf(draft)});
}

bool Reexamination::isToTheSameLimits(const Examination& made, const Examination& found) const {
    if (made.table == found.table && made.levels == found.levels) return true;
    const RequiredTests required = requiredTestsOf(context_.file);
    return std::ranges::any_of(required.tests, [&](const ZoneTest& t) {
        return t.zone->name == made.zone && t.test.method == made.method &&
               t.test.stage == made.stage && t.test.table == made.table &&
               t.test.levels == made.levels;
    });
}

void Reexamination::byOtherTest() {
    const std::string& test = case_.foundByOther->test;
    bool any = false;
    for (const OtherResult* result : case_.otherReexaminations) {
        if (notFollowed(steps_, result->performedOn) != nullptr) continue;
        any = true;
        const Word said = wordOf(*result);
        if (said == Word::NotJudged || (said == Word::NotAcceptable && !conceding_))
            add("the %1 test after the repair, %2, says \"%3\"",
                {test, result->number, std::string(word(said))});
    }
    if (!any)
        add("the result of the %1 test of %2 after the repair is missing",
            {test, case_.opened->zone});
}

bool Reexamination::isSurfaceExamined(const std::string& zone) const {
    for (const ExaminationDraft& draft : context_.file.examinations) {
        const ExaminationVerdict* verdict = verdictOn(context_, draft);
        if (draft.header.zone == zone && draft.header.method != Method::Ultrasonic &&
            verdict != nullptr && !verdict->superseded && verdict->word == Word::Acceptable &&
            notFollowed(steps_, draft.examinedOn) == nullptr)
            return true;
    }
    return std::ranges::any_of(standingResultsOf(context_.file), [&](const OtherResult* result) {
        return (result->test == "magnetic particle" || result->test == "penetrant") &&
               concerns(*result, zone) && !isCavityTest(context_.file, *result) &&
               wordOf(*result) == Word::Acceptable &&
               notFollowed(steps_, result->performedOn) == nullptr;
    });
}

void Reexamination::surfaceOf(const WeldRepair& weld) {
    const auto excavation =
        std::ranges::find(case_.excavations, weld.excavation, &Excavation::number);
    const std::string& zone = (*excavation)->zone;
    // Where MT or PT found it, examining again by that method is the examination of the surface.
    if (case_.found != nullptr && case_.found->header.method != Method::Ultrasonic &&
        case_.found->header.zone == zone)
        return;
    if (!isSurfaceExamined(zone))
        open_.add(repair_state::kToExamine, "weld " + weld.number,
                  "MT or PT of the finished surface of zone %1, after welding and heat treatment, "
                  "is missing or not acceptable",
                  {zone});
}

}  // namespace

void checkReexamination(RepairCase& c, const CaseContext& context) {
    if (c.repaired()) Reexamination(c, context).all();
}

}  // namespace model
