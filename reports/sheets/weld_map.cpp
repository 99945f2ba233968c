// SPDX-License-Identifier: Apache-2.0
#include "sheets/weld_map.h"

#include <algorithm>
#include <cctype>

#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "judge/sheet_words.h"
#include "repair/outcome.h"
#include "sheets/sheet_parts.h"
#include "sheets/sheet_phrases.h"

namespace reports {
namespace {

namespace words = sheet_phrases;
using model::RepairCase;

Mark markOf(model::Outcome outcome) {
    switch (outcome) {
        case model::Outcome::Conforms:
        case model::Outcome::ConformsAfterRepair:
            return Mark::Acceptable;
        case model::Outcome::UnderConcession:
            return Mark::Caution;
        case model::Outcome::DoesNotConform:
            return Mark::NotAcceptable;
        case model::Outcome::NotJudged:
            break;
    }
    return Mark::NotJudged;
}

std::string inCapitals(std::string_view text) {
    std::string capitals(text);
    for (char& c : capitals) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    return capitals;
}

template <class Entry>
std::vector<std::string> numbersOf(const std::vector<const Entry*>& entries) {
    std::vector<std::string> numbers;
    numbers.reserve(entries.size());
    for (const Entry* entry : entries) numbers.push_back(entry->number);
    return numbers;
}

/// "a, b" with a dash for what is empty.
std::string pairText(const std::string& a, const std::string& b) {
    return orNotRecorded(a) + ", " + orNotRecorded(b);
}

class WeldMap {
public:
    WeldMap(const SheetInput& input)
        : input_(input),
          dossier_(input.file.dossier),
          cases_(model::repairCasesOf(input.file, input.verdict, input.printedOn)) {}

    Document document() {
        Document made = beginSheet(input_, words::kWeldMap, words::kWeldMapFor);
        std::vector<Block>& blocks = made.blocks;
        const model::Outcome outcome =
            model::outcomeOf(input_.file, input_.verdict, input_.printedOn);
        blocks.emplace_back(
            Statement{markOf(outcome), inCapitals(model::word(outcome)), words::kOutcomeMeaning});
        addLooseEnds(blocks);
        for (const std::string& zone : zones()) addZone(blocks, zone);
        addHeatTreatments(blocks);
        for (const RepairCase& c : cases_) addCase(blocks, c);
        return made;
    }

private:
    [[nodiscard]] std::vector<std::string> zones() const {
        std::vector<std::string> names;
        for (const model::PlannedZone& zone : input_.file.plan.zones)
            if (std::ranges::count(dossier_.excavations, zone.name, &model::Excavation::zone) > 0)
                names.push_back(zone.name);
        for (const model::Excavation& excavation : dossier_.excavations)
            if (std::ranges::count(names, excavation.zone) == 0) names.push_back(excavation.zone);
        return names;
    }
    [[nodiscard]] const RepairCase* caseOf(const model::Excavation& excavation) const {
        for (const RepairCase& c : cases_)
            if (c.opened->number == excavation.nonconformance) return &c;
        return nullptr;
    }
    [[nodiscard]] const model::Excavation* excavationOf(const model::WeldRepair& weld) const {
        const auto found =
            std::ranges::find(dossier_.excavations, weld.excavation, &model::Excavation::number);
        return found == dossier_.excavations.end() ? nullptr : &*found;
    }
    [[nodiscard]] std::vector<std::string> weldsIn(const model::Excavation& excavation) const {
        std::vector<std::string> numbers;
        for (const model::WeldRepair& weld : dossier_.weldRepairs)
            if (weld.excavation == excavation.number) numbers.push_back(weld.number);
        return numbers;
    }
    [[nodiscard]] std::vector<std::string> treatmentsOf(const model::WeldRepair& weld) const {
        std::vector<std::string> numbers;
        for (const model::HeatTreatment& treatment : dossier_.heatTreatments)
            if (std::ranges::count(model::itemsOf(treatment.weldRepairs), weld.number) > 0)
                numbers.push_back(treatment.number);
        return numbers;
    }
    [[nodiscard]] std::vector<std::string> examinedAgain(const RepairCase& c) const;
    [[nodiscard]] std::string verdictText(const model::ExaminationDraft& draft) const;
    [[nodiscard]] std::string cavityText(const model::Excavation& excavation) const;
    [[nodiscard]] std::string severityText(const model::Excavation& excavation) const;
    [[nodiscard]] static std::string decisionsText(const RepairCase& c);
    [[nodiscard]] static std::string foundText(const RepairCase& c);
    [[nodiscard]] static std::string concessionsText(const RepairCase& c);

    void addLooseEnds(std::vector<Block>& blocks) const;
    void addZone(std::vector<Block>& blocks, const std::string& zone) const;
    void addFigure(std::vector<Block>& blocks, const std::string& zone) const;
    void addExcavations(std::vector<Block>& blocks, const std::string& zone) const;
    void addWelds(std::vector<Block>& blocks, const std::string& zone) const;
    void addHeatTreatments(std::vector<Block>& blocks) const;
    void addCase(std::vector<Block>& blocks, const RepairCase& c) const;

    const SheetInput& input_;
    const model::Dossier& dossier_;
    std::vector<RepairCase> cases_;
};

std::string WeldMap::verdictText(const model::ExaminationDraft& draft) const {
    const auto index = static_cast<std::size_t>(&draft - input_.file.examinations.data());
    if (index >= input_.verdict.examinations.size()) return lowerWord(model::Word::NotJudged);
    return lowerWord(input_.verdict.examinations[index].word);
}

std::vector<std::string> WeldMap::examinedAgain(const RepairCase& c) const {
    std::vector<std::string> texts;
    for (const model::ExaminationDraft* draft : c.reexaminations)
        texts.push_back(
            filled(words::kResult, {examinationText(draft->header),
                                    orNotRecorded(draft->examinedOn), verdictText(*draft)}));
    for (const model::OtherResult* result : c.otherReexaminations)
        texts.push_back(
            filled(words::kResult, {filled(words::kFoundOther, {result->number, result->test}),
                                    orNotRecorded(result->performedOn), result->verdict}));
    return texts;
}

std::string WeldMap::cavityText(const model::Excavation& excavation) const {
    if (excavation.cavityMethod.empty()) return words::kNotTested;
    const auto record = std::ranges::find(dossier_.otherResults, excavation.cavityRecord,
                                          &model::OtherResult::number);
    return filled(
        words::kCavityText,
        {excavation.cavityMethod, orNotRecorded(excavation.cavityRecord),
         record == dossier_.otherResults.end() ? phrases::kNotRecorded : record->verdict});
}

std::string WeldMap::severityText(const model::Excavation& excavation) const {
    const RepairCase* c = caseOf(excavation);
    if (c == nullptr) return phrases::kDash;
    for (std::size_t i = 0; i < c->excavations.size(); ++i)
        if (c->excavations[i] == &excavation)
            return std::string(model::word(c->severities[i].severity)) + ": " +
                   c->severities[i].reason;
    return phrases::kDash;
}

void WeldMap::addLooseEnds(std::vector<Block>& blocks) const {
    std::vector<std::string> ends;
    for (const model::Error& end : model::looseEndsOf(input_.file, input_.verdict))
        ends.push_back(end.message());
    if (!ends.empty())
        blocks.emplace_back(Statement{Mark::Caution, words::kLooseEnds, joined(ends, "\n")});
}

void WeldMap::addFigure(std::vector<Block>& blocks, const std::string& zone) const {
    std::vector<FigureCapsule> capsules;
    bool ground = false;
    bool welded = false;
    bool open = false;
    for (const model::Excavation& excavation : dossier_.excavations) {
        if (excavation.zone != zone) continue;
        const RepairCase* c = caseOf(excavation);
        const std::vector<std::string> welds = weldsIn(excavation);
        const bool isOpen = c == nullptr || !c->closed;
        const auto role = isOpen          ? FigureCapsule::Role::Failing
                          : welds.empty() ? FigureCapsule::Role::Counted
                                          : FigureCapsule::Role::Neighbour;
        std::string label = excavation.number;
        for (const std::string& weld : welds) label += " / " + weld;
        if (auto capsule = capsuleOf(excavation, label, role)) {
            capsules.push_back(*capsule);
            open = open || isOpen;
            ground = ground || (!isOpen && welds.empty());
            welded = welded || (!isOpen && !welds.empty());
        }
    }
    if (capsules.empty()) return;
    std::vector<std::string> legend;
    if (open) legend.emplace_back(words::kLegendOpen);
    if (welded) legend.emplace_back(words::kLegendWelded);
    if (ground) legend.emplace_back(words::kLegendGround);
    blocks.emplace_back(zoneSheetFigure(zone, plannedZone(input_.file, zone), std::move(capsules),
                                        joined(legend, " ")));
}

void WeldMap::addExcavations(std::vector<Block>& blocks, const std::string& zone) const {
    Table table;
    table.columns = {
        {words::kNumber, Align::Left, 0.8},       {words::kFor, Align::Left, 0.8},
        {words::kPlaceHeading, Align::Left, 1.3}, {words::kSizeHeading, Align::Left, 1.3},
        {words::kWallHeading, Align::Left, 1.2},  {words::kHow, Align::Left, 2.1},
        {words::kCavity, Align::Left, 1.4},       {words::kSeverity, Align::Left, 1.9},
        {words::kThen, Align::Left, 1.0}};
    for (const model::Excavation& e : dossier_.excavations) {
        if (e.zone != zone) continue;
        std::vector<std::string> then;
        for (const std::string& weld : weldsIn(e)) then.push_back(filled(words::kWeldedBy, {weld}));
        if (then.empty())
            then.emplace_back(e.blended == "yes" ? words::kBlended : words::kNotBlended);
        std::string place = placeText(e.x, e.y);
        if (!e.angle.empty()) place += ", " + filled(words::kDegrees, {e.angle});
        std::string how = filled(words::kHowText, {orNotRecorded(e.means), orNotRecorded(e.doneBy),
                                                   orNotRecorded(e.doneOn)});
        if (!e.preheat.empty()) how += ", " + filled(words::kPreheated, {e.preheat});
        table.rows.push_back({{e.number, Mark::None, true},
                              {e.nonconformance},
                              {place},
                              {sizeText(e)},
                              {filled(words::kWallText, {millimetresText(e.wallBefore),
                                                         millimetresText(e.wallLeft)})},
                              {how},
                              {cavityText(e)},
                              {severityText(e)},
                              {joined(then, ", ")}});
    }
    blocks.emplace_back(Heading{3, words::kExcavations});
    blocks.emplace_back(std::move(table));
}

void WeldMap::addWelds(std::vector<Block>& blocks, const std::string& zone) const {
    Table table;
    table.columns = {
        {words::kNumber, Align::Left, 0.8},       {words::kExcavation, Align::Left, 1.1},
        {words::kProcedure, Align::Left, 1.7},    {words::kWelder, Align::Left, 1.7},
        {words::kFiller, Align::Left, 1.5},       {words::kHeats, Align::Left, 1.3},
        {words::kWeldedOn, Align::Left, 1.1},     {words::kHeatTreatment, Align::Left, 1.1},
        {words::kExaminedAgain, Align::Left, 2.2}};
    for (const model::WeldRepair& weld : dossier_.weldRepairs) {
        const model::Excavation* excavation = excavationOf(weld);
        if (excavation == nullptr || excavation->zone != zone) continue;
        const RepairCase* c = caseOf(*excavation);
        const auto heat = [](const std::string& text) {
            return text.empty() ? std::string(phrases::kNotRecorded)
                                : filled(words::kDegreesCelsius, {text});
        };
        table.rows.push_back(
            {{weld.number, Mark::None, true},
             {weld.excavation},
             {pairText(weld.weldingProcedure, weld.procedureApproval)},
             {orNotRecorded(weld.welder) + ", " +
              filled(words::kUntil,
                     {orNotRecorded(weld.welderApproval), orNotRecorded(weld.welderUntil)})},
             {pairText(weld.filler, weld.fillerBatch)},
             {filled(words::kWallText, {heat(weld.preheat), heat(weld.interpass)})},
             {orNotRecorded(weld.doneOn)},
             {listedOrDash(treatmentsOf(weld))},
             {c == nullptr ? phrases::kDash : listedOrDash(examinedAgain(*c))}});
    }
    if (table.rows.empty()) return;
    blocks.emplace_back(Heading{3, words::kWelds});
    blocks.emplace_back(std::move(table));
}

void WeldMap::addZone(std::vector<Block>& blocks, const std::string& zone) const {
    blocks.emplace_back(Heading{1, filled(words::kZone, {zone})});
    const model::PlannedZone* planned = plannedZone(input_.file, zone);
    Fields facts;
    facts.columns = 2;
    facts.fields.push_back(
        {"", words::kZoneDescription,
         planned == nullptr ? words::kNotInPlan : orNotRecorded(planned->description)});
    facts.fields.push_back({"", words::kDrawingMinimum,
                            planned != nullptr && planned->drawingMinimum
                                ? millimetresText(planned->drawingMinimum)
                                : words::kNoMinimum});
    blocks.emplace_back(std::move(facts));
    addFigure(blocks, zone);
    addExcavations(blocks, zone);
    addWelds(blocks, zone);
}

void WeldMap::addHeatTreatments(std::vector<Block>& blocks) const {
    if (dossier_.heatTreatments.empty()) return;
    Table table;
    table.columns = {{words::kNumber, Align::Left, 0.8}, {words::kAfter, Align::Left, 1.2},
                     {words::kKind, Align::Left, 1.5},   {words::kHolding, Align::Left, 1.7},
                     {words::kChart, Align::Left, 1.1},  {words::kFurnace, Align::Left, 2},
                     {words::kOn, Align::Left, 1.1}};
    for (const model::HeatTreatment& h : dossier_.heatTreatments) {
        const std::string holding =
            (h.temperature.empty() ? std::string(phrases::kNotRecorded)
                                   : filled(words::kDegreesCelsius, {h.temperature})) +
            ", " +
            (h.holding.empty() ? std::string(phrases::kNotRecorded)
                               : filled(words::kMinutes, {h.holding}));
        table.rows.push_back({{h.number, Mark::None, true},
                              {listedOrDash(model::itemsOf(h.weldRepairs))},
                              {orNotRecorded(h.kind)},
                              {holding},
                              {orNotRecorded(h.chart)},
                              {pairText(h.furnace, h.thermocouples)},
                              {orNotRecorded(h.doneOn)}});
    }
    blocks.emplace_back(Heading{1, words::kHeatTreatments});
    blocks.emplace_back(std::move(table));
}

std::string WeldMap::foundText(const RepairCase& c) {
    if (c.found != nullptr)
        return filled(words::kFoundText,
                      {examinationText(c.found->header), orNotRecorded(c.opened->indications)});
    if (c.foundByOther != nullptr)
        return filled(words::kFoundOther, {c.foundByOther->number, c.foundByOther->test});
    return phrases::kNotRecorded;
}

std::string WeldMap::decisionsText(const RepairCase& c) {
    std::vector<std::string> texts;
    for (const model::Disposition* d : c.decisions) {
        std::string text = filled(words::kDecisionText, {d->decision, orNotRecorded(d->authority),
                                                         orNotRecorded(d->decidedOn)});
        if (!d->agreement.empty()) text += ", " + filled(words::kAgreement, {d->agreement});
        texts.push_back(std::move(text));
    }
    return texts.empty() ? words::kNoDecision : joined(texts, "\n");
}

std::string WeldMap::concessionsText(const RepairCase& c) {
    std::vector<std::string> texts;
    for (const model::Concession* one : c.concessions) {
        std::string text = filled(words::kConcessionText,
                                  {one->number, orNotRecorded(one->customerReference),
                                   orNotRecorded(one->grantedOn), orNotRecorded(one->indications)});
        if (!one->until.empty()) text += ", " + filled(words::kUntilDay, {one->until});
        texts.push_back(std::move(text));
    }
    return joined(texts, "\n");
}

void WeldMap::addCase(std::vector<Block>& blocks, const RepairCase& c) const {
    blocks.emplace_back(Heading{1, filled(words::kCaseHeading, {c.opened->number})});
    std::vector<std::string> open;
    for (const model::Error& error : c.open) open.push_back(error.message());
    const std::string state(c.state);
    blocks.emplace_back(Statement{reports::markOf(c),
                                  inCapitals(c.closed ? state : filled(words::kOpen, {state})),
                                  joined(open, "\n")});
    Fields facts;
    facts.columns = 2;
    const auto add = [&](const char* name, const std::string& value) {
        facts.fields.push_back({"", name, value});
    };
    add(words::kFinding, orNotRecorded(c.opened->finding));
    add(words::kFoundBy, foundText(c));
    add(words::kRuleBroken, orNotRecorded(c.opened->ruleBroken));
    add(words::kOpened, filled(words::kOpenedText, {orNotRecorded(c.opened->openedBy),
                                                    orNotRecorded(c.opened->openedOn)}));
    add(words::kDecisions, decisionsText(c));
    add(words::kRepairCycle, std::to_string(c.cycle));
    add(words::kExcavations, listedOrDash(numbersOf(c.excavations)));
    add(words::kWelds, listedOrDash(numbersOf(c.weldRepairs)));
    add(words::kHeatTreatments, listedOrDash(numbersOf(c.heatTreatments)));
    const std::vector<std::string> again = examinedAgain(c);
    add(words::kExaminedAgain, again.empty() ? words::kNone : joined(again, "\n"));
    if (!c.concessions.empty()) add(words::kConcession, concessionsText(c));
    if (c.carriedOnBy != nullptr) add(words::kCarriedOnBy, c.carriedOnBy->number);
    blocks.emplace_back(std::move(facts));
}

}  // namespace

model::Result<Document> weldMapOf(const SheetInput& input) {
    if (input.file.dossier.excavations.empty())
        return model::inputError("casting " + input.file.casting.serial,
                                 "has no excavation and no weld that could be shown");
    return WeldMap(input).document();
}

}  // namespace reports
