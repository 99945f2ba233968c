// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <set>

#include "certificate/coverage.h"
#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "certificate/sections.h"
#include "limits/words.h"

namespace reports {

namespace {

using Row = std::vector<TableCell>;

std::string testText(model::Method method, model::Stage stage, int repairCycle, int repeat) {
    std::string text = std::string(model::word(method)) + ", " + stageWord(stage);
    if (repairCycle > 0)
        text += ", " + filled(phrases::kAfterRepair, {std::to_string(repairCycle)});
    if (repeat > 0) text += ", " + filled(phrases::kRepeat, {std::to_string(repeat)});
    return text;
}

std::string criteriaText(const std::string& table,
                         const std::map<std::string, std::string>& levels) {
    return (table.empty() ? std::string(phrases::kNotRecorded) : table) + ": " + levelsText(levels);
}

const model::RequiredTest* requiredTest(const Examined& examined) {
    if (examined.planned == nullptr) return nullptr;
    const model::Examination& header = examined.draft->header;
    for (const model::RequiredTest& test : examined.planned->tests)
        if (test.method == header.method && test.stage == header.stage) return &test;
    return nullptr;
}

Row examinedRow(const Examined& examined) {
    const model::Examination& header = examined.draft->header;
    const model::ExaminationVerdict& verdict = *examined.verdict;
    std::string criteria = criteriaText(verdict.tableId, verdict.levels);
    const model::RequiredTest* required = requiredTest(examined);
    if (required != nullptr &&
        (required->table != verdict.tableId || required->levels != verdict.levels))
        criteria += "\n" + filled(phrases::kRequiredInstead,
                                  {criteriaText(required->table, required->levels)});
    std::string word = lowerWord(verdict.word);
    if (verdict.superseded) word += std::string("\n") + phrases::kSupersededShort;
    return {{header.zone, Mark::None, true},
            {examined.planned != nullptr ? orNotRecorded(examined.planned->description)
                                         : phrases::kNotInPlan},
            {testText(header.method, header.stage, header.repairCycle, header.repeat)},
            {toText(header.thickness)},
            {criteria},
            {word, markOf(verdict.word), true}};
}

Row missingRow(const model::PlannedZone& zone, const model::RequiredTest& test) {
    return {{zone.name, Mark::None, true},
            {orNotRecorded(zone.description)},
            {testText(test.method, test.stage, 0, 0)},
            {toText(zone.thickness)},
            {criteriaText(test.table, test.levels)},
            {phrases::kNotExamined, Mark::NotJudged, true}};
}

Row untestedRow(const model::PlannedZone& zone) {
    return {{zone.name, Mark::None, true},
            {orNotRecorded(zone.description)},
            {phrases::kNoTestRequired},
            {toText(zone.thickness)},
            {phrases::kDash},
            {phrases::kDash}};
}

}  // namespace

void addZones(std::vector<Block>& blocks, const CertificateInput& input,
              const std::vector<Examined>& all) {
    blocks.push_back(Heading{1, phrases::kZones});
    Table table{{{phrases::kZone, Align::Left, 0.75},
                 {phrases::kWhere, Align::Left, 2},
                 {phrases::kTest, Align::Left, 1.3},
                 {phrases::kWall, Align::Right, 0.6},
                 {phrases::kLimitAndLevels, Align::Left, 2.2},
                 {phrases::kVerdict, Align::Left, 1.3}},
                {}};
    const std::vector<CoveredTest> tests = coverageOf(input.file, input.verdict);
    for (const model::PlannedZone& zone : input.file.plan.zones) {
        const std::size_t before = table.rows.size();
        for (const Examined& examined : all)
            if (examined.planned == &zone) table.rows.push_back(examinedRow(examined));
        for (const CoveredTest& covered : tests)
            if (covered.zone == &zone && covered.state == CoveredTest::State::Missing)
                table.rows.push_back(missingRow(zone, covered.test));
        if (table.rows.size() == before) table.rows.push_back(untestedRow(zone));
    }
    for (const Examined& examined : all)
        if (examined.planned == nullptr) table.rows.push_back(examinedRow(examined));

    if (table.rows.empty())
        blocks.push_back(Paragraph{Paragraph::Tone::Plain, phrases::kNoZones});
    else
        blocks.push_back(std::move(table));
}

}  // namespace reports
