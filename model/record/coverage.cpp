// SPDX-License-Identifier: Apache-2.0
#include "record/coverage.h"

#include <algorithm>

#include "judge/sheet_words.h"
#include "limits/words.h"
#include "record/other_results.h"

namespace model {

namespace {

/// A test of the order, read.
struct ReadTest {
    const OrderedTest* ordered = nullptr;
    RequiredTest test;
};

/// The order's tests that can be read; the others are named.
class OrderedTests {
public:
    explicit OrderedTests(const CastingFile& file) : file_(file) {
        for (const OrderedTest& ordered : file.order.terms.tests) read(ordered);
    }

    /// What the order requires of a zone by a method at a stage; null: nothing.
    [[nodiscard]] const ReadTest* find(const std::string& zone, const RequiredTest& like) const {
        for (const std::string& name : {zone, std::string()})
            for (const ReadTest& read : tests_)
                if (read.ordered->zone == name && isLike(read.test, like)) return &read;
        return nullptr;
    }
    [[nodiscard]] const std::vector<ReadTest>& all() const { return tests_; }
    [[nodiscard]] const std::vector<Error>& errors() const { return errors_; }

    static bool isLike(const RequiredTest& a, const RequiredTest& b) {
        return a.method == b.method && a.stage == b.stage;
    }

private:
    void read(const OrderedTest& ordered) {
        const auto wrong = [&](std::string reason, std::vector<std::string> arguments) {
            const auto number = &ordered - file_.order.terms.tests.data() + 1;
            errors_.push_back(
                inputError("order " + file_.order.number + ", test " + std::to_string(number),
                           std::move(reason), std::move(arguments)));
        };
        const auto method = methodFrom(ordered.method);
        const auto stage = stageFrom(ordered.stage);
        const auto levels = levelsFrom(ordered.levels);
        const bool isPlanned =
            ordered.zone.empty() ||
            std::ranges::count(file_.plan.zones, ordered.zone, &PlannedZone::name) > 0;
        if (!isPlanned)
            return wrong("the zone %1 is not in the zone plan of part %2",
                         {ordered.zone, file_.part.number});
        if (!method) return wrong("\"%1\" is not a method; take MT, PT or UT", {ordered.method});
        if (!stage) return wrong("\"%1\" is not a stage", {ordered.stage});
        if (ordered.table.empty()) return wrong("it names no limit table", {});
        if (!levels || levels->empty())
            return wrong("its levels \"%1\" are not written as key=level, key=level",
                         {ordered.levels});
        ReadTest read{&ordered, {*method, *stage, ordered.table, *levels}};
        for (const ReadTest& other : tests_)
            if (other.ordered->zone == ordered.zone && isLike(other.test, read.test) &&
                (other.test.table != read.test.table || other.test.levels != read.test.levels))
                wrong("%1 %2 is asked for a second time, by other limits",
                      {ordered.method, ordered.stage});
        tests_.push_back(std::move(read));
    }

    const CastingFile& file_;
    std::vector<ReadTest> tests_;
    std::vector<Error> errors_;
};

bool isMadeFor(const ExaminationVerdict& made, const PlannedZone& zone, const RequiredTest& test) {
    return !made.superseded && made.zone == zone.name && made.method == test.method &&
           made.stage == test.stage;
}

CoveredTest::State stateOf(const PlannedZone& zone, const RequiredTest& test,
                           const Verdict& verdict) {
    CoveredTest::State state = CoveredTest::State::Missing;
    for (const ExaminationVerdict& made : verdict.examinations) {
        if (!isMadeFor(made, zone, test)) continue;
        if (made.tableId == test.table && made.levels == test.levels)
            return CoveredTest::State::Made;
        state = CoveredTest::State::OtherCriteria;
    }
    return state;
}

/// What the examinations that count leave out of a zone.
std::vector<NotExamined> leftOut(const CastingFile& file, const Verdict& verdict,
                                 const PlannedZone& zone, const RequiredTest& test) {
    std::vector<NotExamined> parts;
    for (const ExaminationVerdict& made : verdict.examinations) {
        if (!isMadeFor(made, zone, test)) continue;
        for (const ExaminationDraft& draft : file.examinations) {
            const Examination& header = draft.header;
            if (header.zone == made.zone && header.method == made.method &&
                header.stage == made.stage && header.repairCycle == made.repairCycle &&
                header.repeat == made.repeat)
                std::ranges::copy(header.notExamined, std::back_inserter(parts));
        }
    }
    return parts;
}

}  // namespace

RequiredTests requiredTestsOf(const CastingFile& file) {
    const OrderedTests ordered(file);
    RequiredTests required;
    required.errors = ordered.errors();
    for (const PlannedZone& zone : file.plan.zones) {
        std::vector<RequiredTest> taken;
        const auto isTaken = [&](const RequiredTest& test) {
            return std::ranges::any_of(
                taken, [&](const RequiredTest& t) { return OrderedTests::isLike(t, test); });
        };
        for (const RequiredTest& test : zone.tests) {
            const ReadTest* instead = ordered.find(zone.name, test);
            if (instead == nullptr) {
                required.tests.push_back({&zone, test, false});
            } else if (!isTaken(test)) {
                taken.push_back(instead->test);
                required.tests.push_back({&zone, instead->test, true});
            }
        }
        for (const ReadTest& read : ordered.all()) {
            if (ordered.find(zone.name, read.test) != &read || isTaken(read.test)) continue;
            taken.push_back(read.test);
            required.tests.push_back({&zone, read.test, true});
        }
    }
    return required;
}

std::vector<CoveredTest> coverageOf(const CastingFile& file, const Verdict& verdict) {
    std::vector<CoveredTest> covered;
    for (const ZoneTest& required : requiredTestsOf(file).tests) {
        const PlannedZone& zone = *required.zone;
        covered.push_back({&zone, required.test, stateOf(zone, required.test, verdict),
                           required.ordered, leftOut(file, verdict, zone, required.test)});
    }
    return covered;
}

std::vector<CoveredOther> otherCoverageOf(const CastingFile& file) {
    const std::vector<const OtherResult*> standing = standingResultsOf(file);
    std::vector<CoveredOther> covered;
    for (const PlannedZone& zone : file.plan.zones) {
        for (const std::string& test : zone.otherTests) {
            CoveredOther other{&zone, test, nullptr, Word::NotJudged};
            for (const OtherResult* result : standing) {
                if (result->test != test || (!result->zone.empty() && result->zone != zone.name) ||
                    isCavityTest(file, *result))
                    continue;
                if (other.result != nullptr && wordOf(*result) <= other.word) continue;
                other.result = result;
                other.word = wordOf(*result);
            }
            covered.push_back(std::move(other));
        }
    }
    return covered;
}

Word castingWord(const CastingFile& file, const Verdict& verdict) {
    Word word = verdict.examinations.empty() ? Word::NotJudged : verdict.word;
    if (!requiredTestsOf(file).errors.empty()) word = std::max(word, Word::NotJudged);
    for (const CoveredTest& covered : coverageOf(file, verdict))
        if (covered.state != CoveredTest::State::Made) word = std::max(word, Word::NotJudged);
    for (const CoveredOther& covered : otherCoverageOf(file)) word = std::max(word, covered.word);
    for (const OtherResult* result : standingResultsOf(file))
        word = std::max(word, wordOf(*result));
    return word;
}

}  // namespace model
