// SPDX-License-Identifier: Apache-2.0
#include "exchange/register_lines.h"

#include <algorithm>
#include <charconv>
#include <set>

#include "judge/sheet_words.h"
#include "limits/words.h"
#include "quantity/entry.h"

namespace model {
namespace {

/// Takes values from the texts of one line, and notes what is wrong.
class Taking {
public:
    Taking(std::size_t line, std::vector<LineError>& errors) : line_(line), errors_(errors) {}

    void fail(std::string_view field, std::string reason, std::vector<std::string> arguments = {}) {
        errors_.push_back(
            {line_, {std::string(field), inputError("", std::move(reason), std::move(arguments))}});
    }
    /// None where it is empty.
    std::optional<std::int64_t> number(std::string_view field, const std::string& text) {
        const auto value = numberOf(text);
        if (!value && !text.empty()) fail(field, "takes a decimal number, not: %1", {text});
        return value;
    }
    std::optional<Length> length(std::string_view field, const std::string& text) {
        const auto value = number(field, text);
        return value ? std::optional(Length::fromMillionths(*value)) : std::nullopt;
    }
    std::optional<Length> positive(std::string_view field, const std::string& text) {
        const auto value = length(field, text);
        if (value && *value <= Length()) fail(field, "must be above 0");
        return value;
    }
    int whole(std::string_view field, const std::string& text) {
        int value = 0;
        const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
        if (error != std::errc() || end != text.data() + text.size() || value < 1)
            fail(field, "takes a whole number from 1 on, not: %1", {text});
        return value;
    }
    /// Each item as a word of `from`.
    template <class Word>
    std::vector<Word> words(std::string_view field, const std::string& text,
                            std::optional<Word> (*from)(std::string_view)) {
        std::vector<Word> words;
        for (const std::string& item : itemsOf(text)) {
            const auto word = from(item);
            if (!word) fail(field, "\"%1\" is not a word for it", {item});
            if (word) words.push_back(*word);
        }
        return words;
    }
    std::map<std::string, std::string> levels(std::string_view field, const std::string& text) {
        auto levels = levelsFrom(text);
        if (!levels) fail(field, "takes key=level parted by commas, not: %1", {text});
        return levels.value_or(std::map<std::string, std::string>());
    }
    /// Notes each of them that is empty.
    void require(std::initializer_list<std::pair<std::string_view, const std::string*>> fields) {
        for (const auto& [field, text] : fields)
            if (text->empty()) fail(field, "is missing");
    }

private:
    std::size_t line_;
    std::vector<LineError>& errors_;
};

/// Fields of several lines that belong to their whole: taken from the first, and nowhere else
/// otherwise.
template <class Line>
Line wholeOf(std::span<const Line> lines, std::span<const std::size_t> members,
             std::vector<LineError>& errors) {
    Line whole = lines[members[0]];
    for (const std::size_t member : members.subspan(1))
        for (const Field<Line>& field : Line::fields()) {
            if (Line::isOfLine(field.info.key)) continue;
            const std::string& text = lines[member].*field.text;
            if (!text.empty() && text != whole.*field.text)
                Taking(member, errors)
                    .fail(field.info.key, "is not what the first row of it says: %1",
                          {whole.*field.text});
        }
    return whole;
}

template <class Line>
void requireOf(const Line& whole, std::size_t line, std::vector<LineError>& errors) {
    for (const Field<Line>& field : Line::fields())
        if (field.info.need != FieldInfo::Need::Optional && (whole.*field.text).empty())
            Taking(line, errors).fail(field.info.key, "is missing");
}

std::string textOf(std::optional<Length> length) {
    return length ? formatLength(*length, LengthUnit::Millimetre) : "";
}

void addOrderedTest(const OrderLine& line, Taking take, OrderTerms& terms) {
    OrderedTest test{line.testZone,  line.testMethod, line.testStage,
                     line.testTable, line.testLevels, line.testReason};
    if (test == OrderedTest()) return;
    take.require({{"test_method", &test.method},
                  {"test_stage", &test.stage},
                  {"test_table", &test.table},
                  {"test_levels", &test.levels}});
    take.levels("test_levels", test.levels);
    terms.tests.push_back(std::move(test));
}

void addWitnessPoint(const OrderLine& line, Taking take, OrderTerms& terms) {
    WitnessPoint point{line.witnessWhat,     line.witnessKind,       line.witnessWho,
                       line.witnessCalledOn, line.witnessAttendedOn, line.witnessWaived,
                       line.witnessResult};
    if (point == WitnessPoint()) return;
    take.require({{"witness_what", &point.what},
                  {"witness_kind", &point.kind},
                  {"witness_who", &point.who}});
    if (std::ranges::find(terms.witnessPoints, point.what, &WitnessPoint::what) !=
        terms.witnessPoints.end())
        take.fail("witness_what", "is a witness point of this order already: %1", {point.what});
    terms.witnessPoints.push_back(std::move(point));
}

std::optional<SurfacePlace> surfaceOf(const ZonePlanLine& line, const PlannedZone& zone,
                                      Taking& take) {
    const auto x = take.length("surface_x_mm", line.surfaceX);
    const auto y = take.length("surface_y_mm", line.surfaceY);
    const auto angle = take.number("surface_angle_deg", line.surfaceAngle);
    const auto width = take.positive("surface_width_mm", line.surfaceWidth);
    const auto height = take.positive("surface_height_mm", line.surfaceHeight);
    const auto period = take.positive("surface_period_mm", line.surfacePeriod);
    if (line.surface.empty()) {
        if (x || y || angle || width || height || period)
            take.fail("surface", "is missing: its place on a surface is given");
        return std::nullopt;
    }
    // A place that is not stated would join zones that lie apart.
    take.require({{"surface_x_mm", &line.surfaceX}, {"surface_y_mm", &line.surfaceY}});
    SurfacePlace place;
    place.id = line.surface;
    place.placement = {x.value_or(Length()), y.value_or(Length()),
                       Angle::fromMillionths(angle.value_or(0))};
    place.width = width.value_or(zone.width);
    place.height = height.value_or(zone.height);
    place.period = period;
    return place;
}

PlannedZone zoneFrom(const ZonePlanLine& line, Taking take) {
    PlannedZone zone;
    zone.name = line.zone;
    zone.description = line.description;
    zone.width = take.positive("width_mm", line.width).value_or(Length());
    zone.height = take.positive("height_mm", line.height).value_or(Length());
    zone.thickness = take.positive("thickness_mm", line.thickness).value_or(Length());
    zone.surface = surfaceOf(line, zone, take);
    zone.drawingMinimum = take.positive("drawing_minimum_mm", line.drawingMinimum);
    zone.otherTests = itemsOf(line.otherTests);
    return zone;
}

void addTest(const ZonePlanLine& line, Taking take, PlannedZone& zone) {
    if (line.method.empty() && line.stage.empty() && line.table.empty() && line.levels.empty())
        return;
    take.require({{"method", &line.method},
                  {"stage", &line.stage},
                  {"table", &line.table},
                  {"levels", &line.levels}});
    const auto method = methodFrom(line.method);
    const auto stage = stageFrom(line.stage);
    if (!method || !stage) return;  // wrongFields() says so
    for (const RequiredTest& test : zone.tests)
        if (test.method == *method && test.stage == *stage)
            take.fail("method", "and stage are required of this zone already: %1 %2",
                      {line.method, line.stage});
    zone.tests.push_back({*method, *stage, line.table, take.levels("levels", line.levels)});
}

std::vector<std::size_t> allOf(std::size_t count) {
    std::vector<std::size_t> members(count);
    for (std::size_t i = 0; i < count; ++i) members[i] = i;
    return members;
}

}  // namespace

Part partFrom(const PartLine& line, std::vector<LineError>& errors) {
    Part part{line.number, line.description,   line.drawing, line.drawingRevision,
              {},          line.materialGrade, line.pattern, line.mass};
    const auto material = materialFrom(line.material);
    if (!material)
        Taking(0, errors).fail("material", "\"%1\" is not a word for it", {line.material});
    part.material = material.value_or(Material::CastSteel);
    return part;
}

Casting castingFrom(const CastingLine& line, std::vector<LineError>& errors) {
    return {line.serial,
            line.heat,
            line.order,
            line.part,
            Taking(0, errors).whole("zone_plan_revision", line.zonePlanRevision),
            listOf(itemsOf(line.series)),
            line.marking,
            line.conditionOnReceipt};
}

Order orderFrom(std::span<const OrderLine> lines, std::vector<LineError>& errors) {
    const auto members = allOf(lines.size());
    const OrderLine whole = wholeOf(lines, members, errors);
    requireOf(whole, 0, errors);
    Taking take(0, errors);
    Order order;
    order.number = whole.number;
    order.customer = whole.customer;
    order.customerOrder = whole.customerOrder;
    order.certificateType = whole.certificateType;
    order.language = whole.language;
    order.forbiddenKinds = take.words("forbidden_kinds", whole.forbiddenKinds, kindFrom);
    if (std::ranges::find(order.forbiddenKinds, Kind::Unknown) != order.forbiddenKinds.end())
        take.fail("forbidden_kinds", "cannot be \"unknown\": name the kinds that are forbidden");
    order.decisionRule = whole.decisionRule;
    order.roundingRule = whole.roundingRule;
    order.remarks = whole.remarks;
    order.terms = static_cast<const OrderTerms&>(whole);
    order.terms.tests.clear();
    order.terms.witnessPoints.clear();
    for (const std::size_t member : members) {
        addOrderedTest(lines[member], Taking(member, errors), order.terms);
        addWitnessPoint(lines[member], Taking(member, errors), order.terms);
    }
    return order;
}

ZonePlan zonePlanFrom(std::span<const ZonePlanLine> lines, std::vector<LineError>& errors) {
    ZonePlan plan;
    plan.part = lines.front().part;
    plan.revision = Taking(0, errors).whole("revision", lines.front().revision);
    std::vector<std::pair<std::string, std::vector<std::size_t>>> zones;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        auto zone = std::ranges::find(zones, lines[i].zone,
                                      &std::pair<std::string, std::vector<std::size_t>>::first);
        if (zone == zones.end()) zone = zones.insert(zones.end(), {lines[i].zone, {}});
        zone->second.push_back(i);
    }
    for (const auto& [name, members] : zones) {
        const ZonePlanLine whole = wholeOf(lines, members, errors);
        requireOf(whole, members[0], errors);
        PlannedZone zone = zoneFrom(whole, Taking(members[0], errors));
        for (const std::size_t member : members)
            addTest(lines[member], Taking(member, errors), zone);
        plan.zones.push_back(std::move(zone));
    }
    return plan;
}

PartLine lineOf(const Part& part) {
    return {part.number,
            part.description,
            part.drawing,
            part.drawingRevision,
            std::string(word(part.material)),
            part.materialGrade,
            part.pattern,
            part.mass};
}

CastingLine lineOf(const Casting& casting) {
    return {casting.serial,
            casting.heat,
            casting.order,
            casting.part,
            std::to_string(casting.zonePlanRevision),
            casting.series,
            casting.marking,
            casting.conditionOnReceipt};
}

std::vector<OrderLine> linesOf(const Order& order) {
    OrderLine whole;
    static_cast<OrderTerms&>(whole) = order.terms;
    whole.tests.clear();
    whole.witnessPoints.clear();
    whole.number = order.number;
    whole.customer = order.customer;
    whole.customerOrder = order.customerOrder;
    whole.certificateType = order.certificateType;
    whole.language = order.language;
    std::vector<std::string> kinds;
    for (const Kind kind : order.forbiddenKinds) kinds.emplace_back(word(kind));
    whole.forbiddenKinds = listOf(kinds);
    whole.decisionRule = order.decisionRule;
    whole.roundingRule = order.roundingRule;
    whole.remarks = order.remarks;
    std::vector<OrderLine> lines{whole};
    const auto at = [&](std::size_t index) -> OrderLine& {
        if (index == lines.size()) lines.emplace_back().number = order.number;
        return lines[index];
    };
    for (std::size_t i = 0; i < order.terms.tests.size(); ++i) {
        const OrderedTest& test = order.terms.tests[i];
        OrderLine& line = at(i);
        line.testZone = test.zone;
        line.testMethod = test.method;
        line.testStage = test.stage;
        line.testTable = test.table;
        line.testLevels = test.levels;
        line.testReason = test.reason;
    }
    for (std::size_t i = 0; i < order.terms.witnessPoints.size(); ++i) {
        const WitnessPoint& point = order.terms.witnessPoints[i];
        OrderLine& line = at(i);
        line.witnessWhat = point.what;
        line.witnessKind = point.kind;
        line.witnessWho = point.who;
        line.witnessCalledOn = point.calledOn;
        line.witnessAttendedOn = point.attendedOn;
        line.witnessWaived = point.waived;
        line.witnessResult = point.result;
    }
    return lines;
}

std::vector<ZonePlanLine> linesOf(const ZonePlan& plan) {
    std::vector<ZonePlanLine> lines;
    for (const PlannedZone& zone : plan.zones) {
        ZonePlanLine line;
        line.part = plan.part;
        line.revision = std::to_string(plan.revision);
        line.zone = zone.name;
        const ZonePlanLine keys = line;
        line.description = zone.description;
        line.width = textOf(zone.width);
        line.height = textOf(zone.height);
        line.thickness = textOf(zone.thickness);
        if (zone.surface) {
            const SurfacePlace& surface = *zone.surface;
            line.surface = surface.id;
            line.surfaceX = textOf(surface.placement.x);
            line.surfaceY = textOf(surface.placement.y);
            line.surfaceAngle = formatMillionths(surface.placement.angle.millionths());
            line.surfaceWidth = textOf(surface.width);
            line.surfaceHeight = textOf(surface.height);
            line.surfacePeriod = textOf(surface.period);
        }
        line.drawingMinimum = textOf(zone.drawingMinimum);
        line.otherTests = listOf(zone.otherTests);
        for (std::size_t i = 0; i < std::max<std::size_t>(zone.tests.size(), 1); ++i) {
            if (i > 0) line = keys;
            if (i < zone.tests.size()) {
                const RequiredTest& test = zone.tests[i];
                line.method = word(test.method);
                line.stage = word(test.stage);
                line.table = test.table;
                line.levels = levelsText(test.levels);
            }
            lines.push_back(line);
        }
    }
    return lines;
}

}  // namespace model
