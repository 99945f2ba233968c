// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "judge/sheet_words.h"
#include "repair/case_context.h"

namespace model {
namespace {

class LooseEnds {
public:
    LooseEnds(const CastingFile& file, const Verdict& verdict)
        : file_(file), context_{file, verdict, nullptr, {}} {}

    std::vector<Error> all() {
        entries();
        unspokenOf();
        return std::move(ends_);
    }

private:
    template <class Entry>
    void expect(const std::vector<Entry>& named, const std::string& number,
                const std::string& place, const char* what) {
        if (std::ranges::count(named, number, &Entry::number) == 0)
            ends_.push_back(inputError(place, "names the %1 %2, which is not there",
                                       {what, number.empty() ? "without number" : number}));
    }
    void entries();
    void unspokenOf();

    const CastingFile& file_;
    CaseContext context_;
    std::vector<Error> ends_;
};

void LooseEnds::entries() {
    const Dossier& dossier = file_.dossier;
    const auto& opened = dossier.nonconformances;
    const char* const nonconformance = "nonconformance";
    for (const Disposition& d : dossier.dispositions)
        expect(opened, d.nonconformance, "decision " + d.sequence, nonconformance);
    for (const Excavation& e : dossier.excavations) {
        const std::string place = "excavation " + e.number;
        expect(opened, e.nonconformance, place, nonconformance);
        if (std::ranges::count(file_.plan.zones, e.zone, &PlannedZone::name) == 0)
            ends_.push_back(
                inputError(place, "names the zone %1, which is not in the zone plan", {e.zone}));
    }
    for (const WeldRepair& weld : dossier.weldRepairs)
        expect(dossier.excavations, weld.excavation, "weld " + weld.number, "excavation");
    for (const HeatTreatment& treatment : dossier.heatTreatments)
        for (const std::string& weld : itemsOf(treatment.weldRepairs))
            expect(dossier.weldRepairs, weld, "heat treatment " + treatment.number, "weld");
    for (const Concession& concession : dossier.concessions)
        expect(opened, concession.nonconformance, "concession " + concession.number,
               nonconformance);
    for (const ExaminationDraft& draft : file_.examinations)
        for (const std::string& number : itemsOf(draft.conditions.nonconformance))
            expect(opened, number, "examination " + nameOf(draft), nonconformance);
}

/// A failed examination that a later cycle counts instead of has been repaired, and how is said
/// nowhere.
void LooseEnds::unspokenOf() {
    std::vector<const ExaminationDraft*> spokenOf;
    for (const Nonconformance& opened : file_.dossier.nonconformances)
        if (const ExaminationDraft* found = foundBy(context_, opened)) spokenOf.push_back(found);
    for (const ExaminationDraft& draft : file_.examinations) {
        const ExaminationVerdict* verdict = verdictOn(context_, draft);
        if (verdict == nullptr || !verdict->superseded || verdict->invalid ||
            verdict->word != Word::NotAcceptable)
            continue;
        const bool isSpokenOf = std::ranges::any_of(spokenOf, [&](const ExaminationDraft* found) {
            return isOf(*found, draft.header.zone, draft.header.method, draft.header.stage) &&
                   found->header.repairCycle == draft.header.repairCycle;
        });
        if (!isSpokenOf)
            ends_.push_back(inputError(
                "examination " + nameOf(draft),
                "says \"not acceptable\", a later repair cycle counts instead of it, and no "
                "nonconformance speaks of it"));
    }
}

}  // namespace

std::vector<Error> looseEndsOf(const CastingFile& file, const Verdict& verdict) {
    return LooseEnds(file, verdict).all();
}

}  // namespace model
