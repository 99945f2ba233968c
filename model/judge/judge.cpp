// SPDX-License-Identifier: Apache-2.0
#include "judge/judge.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "judge/zone_judge.h"
#include "limits/words.h"

namespace model {
namespace {

using Counting = std::tuple<std::string, Method, Stage>;

Counting countingOf(const Examination& examination) {
    return {examination.zone, examination.method, examination.stage};
}

/// Of a zone, method and stage the highest repair cycle counts, without what was declared invalid.
void markSuperseded(const Sheet& sheet, Verdict& verdict) {
    std::map<Counting, int> cycles;
    for (const Examination& e : sheet.examinations) {
        int& highest = cycles[countingOf(e)];
        highest = std::max(highest, e.repairCycle);
    }
    for (std::size_t i = 0; i < sheet.examinations.size(); ++i) {
        const Examination& e = sheet.examinations[i];
        verdict.examinations[i].superseded = e.invalid || e.repairCycle < cycles[countingOf(e)];
    }
}

/// The worst of what counts; where all of a zone's last examinations are invalid, nothing speaks
/// for it.
Word worstOf(const Sheet& sheet, const Verdict& verdict) {
    if (sheet.examinations.empty()) return Word::NotJudged;
    std::map<Counting, bool> counts;
    Word worst = Word::Acceptable;
    for (std::size_t i = 0; i < sheet.examinations.size(); ++i) {
        bool& any = counts[countingOf(sheet.examinations[i])];
        if (verdict.examinations[i].superseded) continue;
        any = true;
        worst = std::max(worst, verdict.examinations[i].word);
    }
    for (const auto& [what, any] : counts)
        if (!any) worst = std::max(worst, Word::NotJudged);
    return worst;
}

void applyObjections(const Examination& examination, ExaminationVerdict& verdict) {
    verdict.rejected = examination.rejected;
    verdict.invalid = examination.invalid;
    if (verdict.rejected) {
        verdict.word = Word::NotAcceptable;
        verdict.notes.push_back("rejected by " + verdict.rejected->by + ": " +
                                verdict.rejected->reason);
    }
    if (verdict.invalid)
        verdict.notes.push_back("declared invalid by " + verdict.invalid->by + ": " +
                                verdict.invalid->reason);
}

bool failsAlready(const ExaminationVerdict& verdict, RuleKind rule) {
    return std::any_of(verdict.checks.begin(), verdict.checks.end(), [&](const Check& check) {
        return check.rule == rule && check.passes == false;
    });
}

/// A zone learns that something of its own was counted where a neighbour's limits failed, unless
/// its own limits say the same.
void noteNeighboursFailures(const Bundle& bundle, Verdict& verdict) {
    for (const BundleMember& from : bundle.members) {
        if (!from.judged) continue;
        for (const Check& check : verdict.examinations[from.index].checks) {
            if (check.passes != false) continue;
            for (const BundleMember& to : bundle.members) {
                const std::string& zone = to.examination->zone;
                const bool counted = to.judged && to.index != from.index &&
                                     !failsAlready(verdict.examinations[to.index], check.rule) &&
                                     std::any_of(check.members.begin(), check.members.end(),
                                                 [&](const std::string& member) {
                                                     return member.starts_with(zone + "/");
                                                 });
                if (counted)
                    verdict.examinations[to.index].notes.push_back(
                        "counted in a failed check of zone " + from.examination->zone + ": " +
                        std::string(word(check.rule)));
            }
        }
    }
}

}  // namespace

Result<Verdict> judge(const Sheet& sheet, const TableSet& tables) {
    if (const auto valid = validate(sheet, tables); !valid) return valid.error();
    Verdict verdict;
    verdict.examinations.resize(sheet.examinations.size());
    for (const Bundle& bundle : bundlesOf(sheet, tables)) {
        ZoneJudge zones(sheet, bundle);
        for (std::size_t m = 0; m < bundle.members.size(); ++m) {
            if (!bundle.members[m].judged) continue;
            ExaminationVerdict& examination = verdict.examinations[bundle.members[m].index];
            examination = zones.judge(m);
            examination.attested = tables.isAttested(*bundle.table);
            applyObjections(*bundle.members[m].examination, examination);
        }
        noteNeighboursFailures(bundle, verdict);
    }
    markSuperseded(sheet, verdict);
    verdict.word = worstOf(sheet, verdict);
    return verdict;
}

}  // namespace model
