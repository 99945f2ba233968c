// SPDX-License-Identifier: Apache-2.0
#include "sheets/marking_out.h"

#include <algorithm>
#include <set>
#include <utility>

#include "base/decimal.h"
#include "certificate/figure_geometry.h"
#include "certificate/phrases.h"
#include "certificate/printed_values.h"
#include "judge/sheet_words.h"
#include "limits/words.h"
#include "repair/repair_case.h"
#include "sheets/sheet_parts.h"
#include "sheets/sheet_phrases.h"

namespace reports {
namespace {

namespace words = sheet_phrases;
using model::RepairCase;

/// What becomes of an indication.
enum class Plan { TakeOut, Undecided, Conceded, Stays };

struct Marked {
    std::string id;
    std::string label;  ///< in the figure and the tables; unlike any other of the zone
    const model::Examination* header = nullptr;
    FigureCapsule capsule;
    std::string x, y, length, width, angle, depth, kind;  ///< as printed
    Plan plan = Plan::Stays;
    const RepairCase* spokenOfBy = nullptr;
};

std::string exact(const model::Length& length) {
    return model::formatMillionths(length.millionths());
}

Marked markedOf(const model::Indication& one) {
    Marked marked;
    marked.id = one.id;
    marked.capsule = capsuleOf(one, one.id);
    marked.x = exact(one.x);
    marked.y = exact(one.y);
    marked.length = exact(one.length);
    marked.width = one.width ? exact(*one.width) : words::kNotMeasured;
    marked.angle = model::formatMillionths(one.angle.millionths());
    marked.depth = words::kAtSurface;
    marked.kind = one.kind ? std::string(model::word(*one.kind)) : phrases::kDash;
    return marked;
}

Marked markedOf(const model::Reflector& one) {
    const auto shown = [](const std::optional<model::Length>& length) {
        return length ? exact(*length) : words::kNotMeasured;
    };
    Marked marked;
    marked.id = one.id;
    marked.capsule = capsuleOf(one, one.id);
    marked.x = exact(one.x);
    marked.y = exact(one.y);
    marked.length = shown(one.length);
    marked.width = shown(one.width);
    marked.angle = model::formatMillionths(one.angle.millionths());
    marked.depth = shown(one.depth);
    marked.kind = one.kind ? std::string(model::word(*one.kind)) : phrases::kDash;
    return marked;
}

/// The zone's own indications that fail a check, groups by their members.
std::set<std::string> failingIn(const model::ExaminationVerdict& verdict) {
    std::set<std::string> failing;
    for (const model::Check& check : verdict.checks) {
        if (check.passes != false) continue;
        for (const std::string& member : check.members) {
            const auto group = std::ranges::find(verdict.groups, member, &model::JudgedGroup::id);
            if (group == verdict.groups.end())
                failing.insert(member);
            else
                failing.insert(group->members.begin(), group->members.end());
        }
    }
    return failing;
}

bool isRepairDecided(const RepairCase& c) {
    return c.decision() != nullptr && c.state != model::repair_state::kOnHold &&
           (c.decision()->decision == "grind only" || c.decision()->decision == "weld repair");
}

class ZoneMarking {
public:
    ZoneMarking(const SheetInput& input, const model::Sheet& sheet,
                const std::vector<RepairCase>& cases, std::string zone)
        : input_(input),
          cases_(cases),
          zone_(std::move(zone)),
          planned_(plannedZone(input.file, zone_)) {
        for (std::size_t i = 0; i < sheet.examinations.size(); ++i)
            if (i < input.verdict.examinations.size() &&
                !input.verdict.examinations[i].superseded && sheet.examinations[i].zone == zone_)
                take(sheet.examinations[i], input.file.examinations[i],
                     input.verdict.examinations[i]);
        label();
        for (const RepairCase& c : cases_)
            if (!c.closed && c.opened->zone == zone_ && c.found == nullptr)
                withoutPlace_.push_back(&c);
    }

    /// Whether there is anything to be taken out here, or to be decided.
    [[nodiscard]] bool isNeeded() const {
        return !withoutPlace_.empty() || any(Plan::TakeOut) || any(Plan::Undecided);
    }
    void add(std::vector<Block>& blocks) const;

private:
    void take(const model::Examination& read, const model::ExaminationDraft& draft,
              const model::ExaminationVerdict& verdict);
    void label();
    [[nodiscard]] bool any(Plan plan) const {
        return std::ranges::any_of(marked_, [&](const Marked& m) { return m.plan == plan; });
    }
    [[nodiscard]] std::string atMostText() const;
    [[nodiscard]] std::string todo(const Marked& marked) const;
    void addFacts(std::vector<Block>& blocks) const;
    void addFigure(std::vector<Block>& blocks) const;
    void addFindings(std::vector<Block>& blocks) const;
    void addWithoutPlace(std::vector<Block>& blocks) const;
    void addToFillIn(std::vector<Block>& blocks) const;

    const SheetInput& input_;
    const std::vector<RepairCase>& cases_;
    std::string zone_;
    const model::PlannedZone* planned_;
    std::vector<Marked> marked_;
    std::vector<const RepairCase*> withoutPlace_;
};

void ZoneMarking::take(const model::Examination& read, const model::ExaminationDraft& draft,
                       const model::ExaminationVerdict& verdict) {
    const std::set<std::string> failing = failingIn(verdict);
    const auto speaks = [&](const RepairCase& c, const std::string& id) {
        if (c.found != &draft) return false;
        const std::vector<std::string> named = model::itemsOf(c.opened->indications);
        if (named.empty()) return failing.contains(id);
        return std::ranges::count(named, id) > 0 || std::ranges::count(named, zone_ + "/" + id) > 0;
    };
    const auto takeOne = [&](Marked marked) {
        marked.header = &draft.header;
        for (const RepairCase& c : cases_)
            if (speaks(c, marked.id)) marked.spokenOfBy = &c;
        const RepairCase* by = marked.spokenOfBy;
        if (by != nullptr && isRepairDecided(*by))
            marked.plan = Plan::TakeOut;
        else if (by != nullptr && by->decision() != nullptr &&
                 by->state != model::repair_state::kOnHold)
            marked.plan = Plan::Conceded;
        else if (by != nullptr || failing.contains(marked.id))
            marked.plan = Plan::Undecided;
        marked_.push_back(std::move(marked));
    };
    for (const model::Indication& one : read.indications) takeOne(markedOf(one));
    for (const model::Reflector& one : read.reflectors) takeOne(markedOf(one));
}

/// By its number alone where one examination lists any, else with method and stage.
void ZoneMarking::label() {
    const bool several = std::ranges::any_of(
        marked_, [&](const Marked& m) { return m.header != marked_.front().header; });
    for (Marked& marked : marked_) {
        marked.label = marked.id;
        if (several) {
            marked.label = std::string(model::word(marked.header->method)) + " " + marked.id;
            const bool isTwice = std::ranges::any_of(marked_, [&](const Marked& other) {
                return other.header != marked.header &&
                       other.header->method == marked.header->method && other.id == marked.id;
            });
            if (isTwice)
                marked.label =
                    filled(words::kPartText, {marked.label, stageWord(marked.header->stage)}) +
                    (marked.header->repeat > 0
                         ? ", " + filled(phrases::kRepeat, {std::to_string(marked.header->repeat)})
                         : "");
        }
    }
}

std::string ZoneMarking::atMostText() const {
    if (planned_ == nullptr || !planned_->drawingMinimum) return words::kAskFirst;
    const model::Length room = planned_->thickness - *planned_->drawingMinimum;
    if (room <= model::Length()) return words::kNothingToGrind;
    return filled(words::kAtMostText, {exact(room), exact(planned_->thickness)});
}

std::string ZoneMarking::todo(const Marked& marked) const {
    switch (marked.plan) {
        case Plan::TakeOut:
            return filled(words::kTakeOut, {marked.spokenOfBy->decision()->decision,
                                            marked.spokenOfBy->opened->number});
        case Plan::Conceded:
            return filled(words::kLeaveOther, {marked.spokenOfBy->decision()->decision,
                                               marked.spokenOfBy->opened->number});
        case Plan::Undecided:
        case Plan::Stays:
            break;
    }
    return words::kLeaveUndecided;
}

void ZoneMarking::addFacts(std::vector<Block>& blocks) const {
    const bool known = planned_ != nullptr;
    Fields facts;
    const auto add = [&](const char* name, const std::string& value) {
        facts.fields.push_back({"", name, value});
    };
    add(words::kZoneDescription, known ? orNotRecorded(planned_->description) : words::kNotInPlan);
    add(words::kPlannedWall,
        known ? millimetresText(std::optional(planned_->thickness)) : words::kNoMinimum);
    add(words::kDrawingMinimum, known && planned_->drawingMinimum
                                    ? millimetresText(planned_->drawingMinimum)
                                    : words::kNoMinimum);
    add(words::kAtMost, atMostText());
    blocks.emplace_back(std::move(facts));
}

void ZoneMarking::addFigure(std::vector<Block>& blocks) const {
    std::vector<FigureCapsule> capsules;
    std::vector<std::string> legend;
    for (const model::Excavation& excavation : input_.file.dossier.excavations)
        if (excavation.zone == zone_)
            if (auto capsule =
                    capsuleOf(excavation, excavation.number, FigureCapsule::Role::Neighbour))
                capsules.push_back(*capsule);
    const bool excavated = !capsules.empty();
    for (const Plan plan : {Plan::Stays, Plan::Conceded, Plan::Undecided, Plan::TakeOut})
        for (const Marked& marked : marked_) {
            if (marked.plan != plan) continue;
            FigureCapsule capsule = marked.capsule;
            capsule.role = plan == Plan::TakeOut     ? FigureCapsule::Role::Failing
                           : plan == Plan::Undecided ? FigureCapsule::Role::Counted
                                                     : FigureCapsule::Role::NotCounted;
            capsule.label = capsule.role == FigureCapsule::Role::NotCounted
                                ? filled(phrases::kBracketed, {marked.label})
                                : marked.label;
            capsules.push_back(std::move(capsule));
        }
    if (capsules.empty()) return;
    if (any(Plan::TakeOut)) legend.emplace_back(words::kLegendTakeOut);
    if (any(Plan::Undecided)) legend.emplace_back(words::kLegendUndecided);
    if (any(Plan::Stays) || any(Plan::Conceded)) legend.emplace_back(words::kLegendStays);
    if (excavated) legend.emplace_back(words::kLegendExcavated);
    legend.emplace_back(words::kLegendSmall);
    blocks.emplace_back(zoneSheetFigure(zone_, planned_, std::move(capsules), joined(legend, " ")));
}

void ZoneMarking::addFindings(std::vector<Block>& blocks) const {
    Table table;
    table.columns = {{words::kNumber, Align::Left, 1.0},  {words::kFoundBy, Align::Left, 2.7},
                     {phrases::kX, Align::Right, 1.0},    {phrases::kY, Align::Right, 1.0},
                     {words::kLength, Align::Right, 1.1}, {words::kWidth, Align::Right, 1.1},
                     {words::kAngle, Align::Right, 0.9},  {words::kDepth, Align::Right, 1.1},
                     {words::kKind, Align::Left, 1.3},    {words::kTodo, Align::Left, 2.7}};
    for (const Plan plan : {Plan::TakeOut, Plan::Undecided, Plan::Conceded})
        for (const Marked& m : marked_) {
            if (m.plan != plan) continue;
            const bool out = plan == Plan::TakeOut;
            table.rows.push_back({{m.label, Mark::None, true},
                                  {examinationText(*m.header)},
                                  {m.x},
                                  {m.y},
                                  {m.length},
                                  {m.width},
                                  {m.angle},
                                  {m.depth},
                                  {m.kind},
                                  {todo(m), out ? Mark::None : Mark::Caution, out}});
        }
    if (table.rows.empty()) return;
    blocks.emplace_back(Heading{3, words::kFindings});
    blocks.emplace_back(Paragraph{Paragraph::Tone::Small, words::kFindingsMeaning, true});
    blocks.emplace_back(std::move(table));
}

void ZoneMarking::addWithoutPlace(std::vector<Block>& blocks) const {
    if (withoutPlace_.empty()) return;
    Table table;
    table.columns = {{words::kNonconformance, Align::Left, 1.1},
                     {words::kMethod, Align::Left, 0.6},
                     {words::kFinding, Align::Left, 3},
                     {words::kDecision, Align::Left, 2},
                     {words::kState, Align::Left, 1.6}};
    for (const RepairCase* c : withoutPlace_) {
        const model::Disposition* d = c->decision();
        table.rows.push_back(
            {{c->opened->number, Mark::None, true},
             {c->opened->method},
             {orNotRecorded(c->opened->finding)},
             {d == nullptr ? words::kNoDecision
                           : filled(words::kDecidedBy, {d->decision, d->authority, d->decidedOn})},
             {std::string(c->state)}});
    }
    blocks.emplace_back(Heading{3, words::kWithoutPlace});
    blocks.emplace_back(std::move(table));
}

void ZoneMarking::addToFillIn(std::vector<Block>& blocks) const {
    Table table;
    table.columns = {{words::kNumber, Align::Left, 1.0},     {words::kLength, Align::Left, 1.0},
                     {words::kWidth, Align::Left, 1.0},      {words::kDepth, Align::Left, 1.0},
                     {words::kWallBefore, Align::Left, 1.1}, {words::kWallLeft, Align::Left, 1.0},
                     {words::kInstrument, Align::Left, 1.2}, {words::kCavityTest, Align::Left, 1.7},
                     {words::kDoneByOn, Align::Left, 1.7}};
    const auto addRow = [&](const std::string& name) {
        std::vector<TableCell> row(table.columns.size());
        row.front() = {name, Mark::None, true};
        row.back().text = "\n";  // room to write
        table.rows.push_back(std::move(row));
    };
    for (const Marked& marked : marked_)
        if (marked.plan == Plan::TakeOut) addRow(marked.label);
    for (const RepairCase* c : withoutPlace_)
        if (isRepairDecided(*c)) addRow(c->opened->number);
    if (table.rows.empty()) return;
    blocks.emplace_back(Heading{3, words::kToFillIn});
    blocks.emplace_back(Paragraph{Paragraph::Tone::Small, words::kToFillInMeaning, true});
    blocks.emplace_back(std::move(table));
}

void ZoneMarking::add(std::vector<Block>& blocks) const {
    blocks.emplace_back(Heading{1, filled(words::kZone, {zone_})});
    std::vector<std::string> undecided;
    for (const Marked& marked : marked_)
        if (marked.plan == Plan::Undecided) undecided.push_back(marked.label);
    for (const RepairCase* c : withoutPlace_)
        if (!isRepairDecided(*c)) undecided.push_back(c->opened->number);
    if (!undecided.empty())
        blocks.emplace_back(Statement{Mark::Caution, words::kUndecided,
                                      filled(words::kUndecidedText, {shortList(undecided, 12)})});
    addFacts(blocks);
    addFigure(blocks);
    addFindings(blocks);
    addWithoutPlace(blocks);
    addToFillIn(blocks);
}

/// Zones of the plan first, then those that only an examination or a nonconformance names.
std::vector<std::string> zonesOf(const model::CastingFile& file) {
    std::vector<std::string> zones;
    const auto add = [&](const std::string& name) {
        if (std::ranges::count(zones, name) == 0) zones.push_back(name);
    };
    for (const model::PlannedZone& zone : file.plan.zones) add(zone.name);
    for (const model::ExaminationDraft& draft : file.examinations) add(draft.header.zone);
    for (const model::Nonconformance& opened : file.dossier.nonconformances) add(opened.zone);
    return zones;
}

}  // namespace

model::Result<Document> markingOutOf(const SheetInput& input, const std::string& zone) {
    const model::CastingFile& file = input.file;
    const std::string place = "casting " + file.casting.serial;
    const auto sheet = model::sheetOf(file);
    if (!sheet) return sheet.error();
    std::vector<std::string> zones = zonesOf(file);
    if (!zone.empty()) {
        if (std::ranges::count(zones, zone) == 0)
            return model::inputError(place, "has no zone %1", {zone});
        zones = {zone};
    }
    const std::vector<RepairCase> cases =
        model::repairCasesOf(file, input.verdict, input.printedOn);
    Document document = beginSheet(input, words::kMarkingOut, words::kMarkingOutFor);
    document.blocks.emplace_back(Statement{Mark::Caution, words::kCaution, words::kCautionText});
    bool any = false;
    for (const std::string& name : zones) {
        const ZoneMarking marking(input, *sheet, cases, name);
        if (!marking.isNeeded()) continue;
        marking.add(document.blocks);
        any = true;
    }
    if (!any)
        return zone.empty()
                   ? model::inputError(place, "has nothing that is to be taken out or decided")
                   : model::inputError(place,
                                       "has nothing in zone %1 that is to be taken out or decided",
                                       {zone});
    return document;
}

}  // namespace reports
