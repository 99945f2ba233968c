// SPDX-License-Identifier: Apache-2.0
#include "record/coverage.h"

#include <algorithm>

namespace model {

namespace {

CoveredTest::State stateOf(const PlannedZone& zone, const RequiredTest& test,
                           const Verdict& verdict) {
    CoveredTest::State state = CoveredTest::State::Missing;
    for (const ExaminationVerdict& made : verdict.examinations) {
        if (made.superseded || made.zone != zone.name || made.method != test.method ||
            made.stage != test.stage)
            continue;
        if (made.tableId == test.table && made.levels == test.levels)
            return CoveredTest::State::Made;
        state = CoveredTest::State::OtherCriteria;
    }
    return state;
}

}  // namespace

std::vector<CoveredTest> coverageOf(const CastingFile& file, const Verdict& verdict) {
    std::vector<CoveredTest> tests;
    for (const PlannedZone& zone : file.plan.zones)
        for (const RequiredTest& test : zone.tests)
            tests.push_back({&zone, &test, stateOf(zone, test, verdict)});
    return tests;
}

Word castingWord(const CastingFile& file, const Verdict& verdict) {
    if (verdict.word == Word::NotAcceptable) return verdict.word;
    const std::vector<CoveredTest> tests = coverageOf(file, verdict);
    const bool allMade = std::ranges::all_of(tests, [](const CoveredTest& covered) {
        return covered.state == CoveredTest::State::Made;
    });
    if (verdict.examinations.empty() || !allMade) return Word::NotJudged;
    return verdict.word;
}

}  // namespace model
