// SPDX-License-Identifier: Apache-2.0
#include "certificate/coverage.h"

#include <algorithm>

#include "certificate/certificate.h"

namespace reports {

namespace {

CoveredTest::State stateOf(const model::PlannedZone& zone, const model::RequiredTest& test,
                           const model::Verdict& verdict) {
    CoveredTest::State state = CoveredTest::State::Missing;
    for (const model::ExaminationVerdict& made : verdict.examinations) {
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

std::vector<CoveredTest> coverageOf(const model::CastingFile& file, const model::Verdict& verdict) {
    std::vector<CoveredTest> tests;
    for (const model::PlannedZone& zone : file.plan.zones)
        for (const model::RequiredTest& test : zone.tests)
            tests.push_back({&zone, &test, stateOf(zone, test, verdict)});
    return tests;
}

model::Word resultOf(const model::CastingFile& file, const model::Verdict& verdict) {
    if (verdict.word == model::Word::NotAcceptable) return verdict.word;
    const std::vector<CoveredTest> tests = coverageOf(file, verdict);
    const bool allMade = std::ranges::all_of(tests, [](const CoveredTest& covered) {
        return covered.state == CoveredTest::State::Made;
    });
    if (verdict.examinations.empty() || !allMade) return model::Word::NotJudged;
    return verdict.word;
}

}  // namespace reports
