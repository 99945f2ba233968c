// SPDX-License-Identifier: Apache-2.0
// What became of each nonconformance of a casting: the chain from the finding to its end, and what
// is still to be done. Everything is taken from the registers and judged again; nobody states that
// a case is closed.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "judge/verdict.h"
#include "record/records.h"
#include "repair/severity.h"

namespace model {

/// States of a case, in the words of screens and papers.
namespace repair_state {
inline constexpr std::string_view kOnHold = "on hold, to be decided";
inline constexpr std::string_view kToExcavate = "to be excavated";
inline constexpr std::string_view kCavityOpen = "cavity not cleared";
inline constexpr std::string_view kToWeld = "to be welded";
inline constexpr std::string_view kToHeatTreat = "to be heat treated";
inline constexpr std::string_view kToExamine = "to be examined again";
inline constexpr std::string_view kIncomplete = "repaired, record incomplete";
inline constexpr std::string_view kCarriedOn = "carried on by a later nonconformance";
inline constexpr std::string_view kToConcede = "concession asked for";
inline constexpr std::string_view kGround = "closed after grinding";
inline constexpr std::string_view kWelded = "closed after weld repair";
inline constexpr std::string_view kConceded = "under concession";
inline constexpr std::string_view kScrapped = "scrapped";
inline constexpr std::string_view kRegraded = "regraded, not to this order";
}  // namespace repair_state

/// One nonconformance with everything that names it. Pointers point into the file.
struct RepairCase {
    const Nonconformance* opened = nullptr;     ///< never null
    const ExaminationDraft* found = nullptr;    ///< by MT, PT, UT: what found it; null: not there
    const OtherResult* foundByOther = nullptr;  ///< the same of another test
    std::vector<const Disposition*> decisions;  ///< by their number; the last one stands
    std::vector<const Excavation*> excavations;
    std::vector<RepairSeverity> severities;  ///< of each excavation
    std::vector<const OtherResult*> cavityTests;
    std::vector<const WeldRepair*> weldRepairs;
    std::vector<const HeatTreatment*> heatTreatments;
    std::vector<const Concession*> concessions;
    std::vector<const ExaminationDraft*> reexaminations;  ///< that name it, by repair cycle
    std::vector<const OtherResult*> otherReexaminations;  ///< of a finding by another test
    const Nonconformance* carriedOnBy = nullptr;          ///< opened on what a re-examination found
    int cycle = 0;                                        ///< the repair cycle that it has come to
    bool closed = false;                                  ///< exactly while nothing is open
    std::string_view state = repair_state::kOnHold;
    std::vector<Error> open;  ///< what is still to be done; place: the entry that it is about

    [[nodiscard]] const Disposition* decision() const {
        return decisions.empty() ? nullptr : decisions.back();
    }
    /// Whether metal was taken out or added.
    [[nodiscard]] bool repaired() const { return !excavations.empty() || !weldRepairs.empty(); }
};

/// In the order of the dossier. `verdict` is that of the file's examinations. `today` is the day on
/// which concessions have to hold; empty: the last date that the casting's record bears.
std::vector<RepairCase> repairCasesOf(const CastingFile& file, const Verdict& verdict,
                                      std::string_view today = {});

/// What no case accounts for: an entry that names another which is not there, and an examination
/// that found the casting not acceptable, that a later repair cycle counts instead of, and of which
/// no nonconformance speaks. While there is any, the casting does not conform.
std::vector<Error> looseEndsOf(const CastingFile& file, const Verdict& verdict);

}  // namespace model
