// SPDX-License-Identifier: Apache-2.0
// Registers from tables: every problem is told, by row and column; orders, parts, zone plans and
// castings come out of the lines that they go into.
#include "exchange/register_rows.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "exchange/json_document.h"
#include "registers/every_register.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

CsvTable tableOf(const std::string& text) {
    auto table = readCsv(text, "t.csv");
    EXPECT_TRUE(table.ok()) << (table.ok() ? "" : table.error().message());
    return table.ok() ? *table : CsvTable();
}

std::vector<std::string> messagesOf(const std::vector<ImportProblem>& problems) {
    std::vector<std::string> messages;
    messages.reserve(problems.size());
    for (const ImportProblem& problem : problems) messages.push_back(problem.message());
    return messages;
}

TEST(RegisterRows, AreReadByTheNamesOfTheirColumns) {
    const auto read = readRegister<Equipment>(
        tableOf("state,id,kind,calibration_due\r\nin use,Y-1, yoke ,2026-12-31\r\n"
                "withdrawn,Y-2,yoke,\r\n"));
    EXPECT_THAT(messagesOf(read.problems), IsEmpty());
    ASSERT_EQ(read.entries.size(), 2U);
    EXPECT_EQ(read.rows, 2U);
    EXPECT_EQ(read.entries[0].value.id, "Y-1");
    EXPECT_EQ(read.entries[0].value.kind, "yoke");
    EXPECT_EQ(read.entries[0].value.calibrationDue, "2026-12-31");
    EXPECT_EQ(read.entries[1].value.state, "withdrawn");
    EXPECT_EQ(read.entries[1].line, 3U);
}

TEST(RegisterRows, TellEverythingThatIsWrong) {
    const auto read =
        readRegister<Equipment>(tableOf("id,kind,calibration_due,colour,kind\n"
                                        "Y-1,hammer,31.12.2026,red,yoke\n"
                                        ",yoke,2026-02-30,,yoke\n"
                                        "Y-1,yoke,,,yoke\n"
                                        "Y-3,yoke\n"));
    EXPECT_THAT(messagesOf(read.problems),
                ElementsAre(HasSubstr("columns, colour: is no field of this register"),
                            HasSubstr("columns, kind: stands twice"),
                            HasSubstr("columns, state: is missing; every entry needs it"),
                            HasSubstr("row 1 (line 2), kind: takes one of: ultrasonic instrument"),
                            HasSubstr("row 1 (line 2), calibration_due: takes a date"),
                            HasSubstr("row 2 (line 3), id: is missing"),
                            HasSubstr("row 2 (line 3), calibration_due: takes a date"),
                            HasSubstr("row 3 (line 4): \"Y-1\" stands in row 1 already"),
                            HasSubstr("row 4 (line 5): has 2 fields, but there are 5 columns")));
    EXPECT_THAT(read.entries, SizeIs(3));
}

// Every register can be written as a line of CSV and read back, whatever its fields are.
TEST(RegisterRows, TakeEveryRegister) {
    std::vector<std::string> names;
    forEachRegister([&]<class T>() {
        std::vector<std::string> keys;
        std::vector<std::string> texts;
        T entry;
        for (const Field<T>& field : T::fields()) {
            std::string& text = entry.*field.text;
            switch (field.info.kind) {
                case FieldKind::Line:
                case FieldKind::List:
                    text = "a \"b\"; c";
                    break;
                case FieldKind::Paragraph:
                    text = "one,\ntwo";
                    break;
                case FieldKind::Date:
                    text = "2026-11-25";
                    break;
                case FieldKind::Moment:
                    text = "2026-11-25T09:30:00Z";
                    break;
                case FieldKind::Number:
                    text = "-1,5";
                    break;
                case FieldKind::Whole:
                    text = "7";
                    break;
                case FieldKind::Choice:
                    text = field.info.choices.substr(0, field.info.choices.find('|'));
                    break;
                case FieldKind::YesNo:
                    text = "yes";
                    break;
                case FieldKind::Sha256:
                    text = std::string(64, 'a');
                    break;
            }
            keys.emplace_back(field.info.key);
            texts.push_back(text);
        }
        const auto read = readRegister<T>(tableOf(csvLine(keys) + csvLine(texts)));
        EXPECT_THAT(messagesOf(read.problems), IsEmpty()) << T::kRegister;
        ASSERT_EQ(read.entries.size(), 1U) << T::kRegister;
        EXPECT_EQ(read.entries[0].value, entry) << T::kRegister;
        names.emplace_back(T::kRegister);
    });
    EXPECT_GE(names.size(), 15U);
}

constexpr char kOrders[] =
    "number,customer,certificate_type,language,forbidden_kinds,receiver,operator_level,"
    "test_zone,test_method,test_stage,test_table,test_levels,witness_what,witness_kind,"
    "witness_who\n"
    "O-1,Buyer,3.1,en,\"crack, hot tear\",Yard,2,Z1,MT,as cast,EN 1369:2012,"
    "\"linear=LM 2, aligned=AM 2\",Final,hold,Inspector\n"
    "O-1,,,,,,,,PT,finish machined,EN 1371-1:2011,isolated=SP 1,,,\n"
    "O-2,Other,2.2,en,,,,,,,,,,,\n";

TEST(RegisterRows, MakeAnOrderOfItsRows) {
    const auto read = readOrders(tableOf(kOrders));
    EXPECT_THAT(messagesOf(read.problems), IsEmpty());
    ASSERT_EQ(read.entries.size(), 2U);
    const Order& order = read.entries[0].value;
    EXPECT_EQ(order.number, "O-1");
    EXPECT_THAT(order.forbiddenKinds, ElementsAre(Kind::Crack, Kind::HotTear));
    EXPECT_EQ(order.terms.receiver, "Yard");
    EXPECT_EQ(order.terms.operatorLevel, "2");
    ASSERT_EQ(order.terms.tests.size(), 2U);
    EXPECT_EQ(order.terms.tests[0].zone, "Z1");
    EXPECT_EQ(order.terms.tests[0].levels, "linear=LM 2, aligned=AM 2");
    EXPECT_EQ(order.terms.tests[1].method, "PT");
    EXPECT_EQ(order.terms.tests[1].zone, "");
    ASSERT_EQ(order.terms.witnessPoints.size(), 1U);
    EXPECT_EQ(order.terms.witnessPoints[0].who, "Inspector");
    EXPECT_EQ(read.entries[1].value.certificateType, "2.2");
}

TEST(RegisterRows, TellWhatIsWrongWithAnOrder) {
    const auto read =
        readOrders(tableOf("number,customer,certificate_type,language,forbidden_kinds,test_method,"
                           "test_levels,witness_what\n"
                           "O-1,,3.1,en,craque,MT,linear,\n"
                           "O-1,Buyer,3.2,en,,,,Final\n"
                           "O-2,Buyer,3.1,en,unknown,,,\n"));
    EXPECT_THAT(
        messagesOf(read.problems),
        ElementsAre(HasSubstr("row 1 (line 2), customer: is missing"),
                    HasSubstr("row 1 (line 2), forbidden_kinds: \"craque\" is not a word"),
                    HasSubstr("row 1 (line 2), test_stage: is missing"),
                    HasSubstr("row 1 (line 2), test_table: is missing"),
                    HasSubstr("row 1 (line 2), test_levels: takes key=level"),
                    HasSubstr("row 2 (line 3), customer: is not what the first row"),
                    HasSubstr("row 2 (line 3), certificate_type: is not what the first row of it "
                              "says: 3.1"),
                    HasSubstr("row 2 (line 3), witness_kind: is missing"),
                    HasSubstr("row 2 (line 3), witness_who: is missing"),
                    HasSubstr("row 3 (line 4), forbidden_kinds: cannot be \"unknown\"")));
    EXPECT_THAT(read.entries, IsEmpty());
}

constexpr char kPlans[] =
    "part,revision,zone,width_mm,height_mm,thickness_mm,surface,surface_x_mm,surface_y_mm,"
    "surface_period_mm,drawing_minimum_mm,other_tests,method,stage,table,levels\n"
    "P-1,2,Z1,\"120,5\",80,40,S1,0,-5,1570.8,36,\"visual, radiographic\",MT,as cast,EN 1369:2012,"
    "linear=LM 2\n"
    "P-1,2,Z2,60,80,30,,,,,,,,,,\n"
    "P-1,2,Z1,,,,,,,,,,UT,heat treated,EN 12680-3:2003,all=2\n"
    "P-2,1,Z1,10,10,10,,,,,,,,,,\n";

TEST(RegisterRows, MakeAZonePlanOfItsRows) {
    const auto read = readZonePlans(tableOf(kPlans));
    EXPECT_THAT(messagesOf(read.problems), IsEmpty());
    ASSERT_EQ(read.entries.size(), 2U);
    const ZonePlan& plan = read.entries[0].value;
    EXPECT_EQ(plan.part, "P-1");
    EXPECT_EQ(plan.revision, 2);
    ASSERT_EQ(plan.zones.size(), 2U);
    const PlannedZone& zone = plan.zones[0];
    EXPECT_EQ(zone.width, Length::fromMillionths(120'500'000));
    EXPECT_EQ(zone.thickness, millimetres(40));
    ASSERT_TRUE(zone.surface);
    EXPECT_EQ(zone.surface->placement.y, millimetres(-5));
    EXPECT_EQ(zone.surface->width, zone.width);
    EXPECT_EQ(zone.surface->period, Length::fromMillionths(1'570'800'000));
    EXPECT_EQ(zone.drawingMinimum, millimetres(36));
    EXPECT_THAT(zone.otherTests, ElementsAre("visual", "radiographic"));
    ASSERT_EQ(zone.tests.size(), 2U);
    EXPECT_EQ(zone.tests[1].method, Method::Ultrasonic);
    EXPECT_EQ(zone.tests[1].levels.at("all"), "2");
    EXPECT_FALSE(plan.zones[1].surface);
    EXPECT_FALSE(plan.zones[1].drawingMinimum);
    EXPECT_THAT(plan.zones[1].tests, IsEmpty());
}

TEST(RegisterRows, TellWhatIsWrongWithAZonePlan) {
    const auto read = readZonePlans(
        tableOf("part,revision,zone,width_mm,height_mm,thickness_mm,surface,surface_x_mm,"
                "surface_y_mm,method,stage,table,levels\n"
                "P-1,0,Z1,0,80,,,0,,MT,as cast,EN 1369:2012,linear=LM 2\n"
                "P-1,0,Z1,,,,,,,MT,as cast,,linear\n"
                "P-1,0,Z2,10,10,10,S,1,,,,,\n"));
    EXPECT_THAT(messagesOf(read.problems),
                ElementsAre(HasSubstr("row 1 (line 2), revision: takes a whole number from 1"),
                            HasSubstr("row 1 (line 2), thickness_mm: is missing"),
                            HasSubstr("row 1 (line 2), width_mm: must be above 0"),
                            HasSubstr("row 1 (line 2), surface: is missing"),
                            HasSubstr("row 2 (line 3), table: is missing"),
                            HasSubstr("row 2 (line 3), method: and stage are required of this zone "
                                      "already"),
                            HasSubstr("row 2 (line 3), levels: takes key=level"),
                            HasSubstr("row 3 (line 4), surface_y_mm: is missing")));
    EXPECT_THAT(read.entries, IsEmpty());
}

template <class Line>
CsvTable writtenAndRead(const std::vector<Line>& lines) {
    std::vector<std::string> keys;
    for (const Field<Line>& field : Line::fields()) keys.emplace_back(field.info.key);
    std::string text = csvLine(keys);
    for (const Line& line : lines) {
        std::vector<std::string> texts;
        for (const Field<Line>& field : Line::fields()) texts.push_back(line.*field.text);
        text += csvLine(texts);
    }
    return tableOf(text);
}

TEST(RegisterRows, GiveOrdersAndPlansBackAsTheyWent) {
    const Order order = readOrders(tableOf(kOrders)).entries[0].value;
    const auto orders = readOrders(writtenAndRead(linesOf(order)));
    EXPECT_THAT(messagesOf(orders.problems), IsEmpty());
    ASSERT_EQ(orders.entries.size(), 1U);
    EXPECT_EQ(orders.entries[0].value.terms, order.terms);
    EXPECT_EQ(orders.entries[0].value.forbiddenKinds, order.forbiddenKinds);
    EXPECT_EQ(orders.entries[0].value.customer, "Buyer");

    const ZonePlan plan = readZonePlans(tableOf(kPlans)).entries[0].value;
    const auto plans = readZonePlans(writtenAndRead(linesOf(plan)));
    EXPECT_THAT(messagesOf(plans.problems), IsEmpty());
    ASSERT_EQ(plans.entries.size(), 1U);
    const ZonePlan& back = plans.entries[0].value;
    ASSERT_EQ(back.zones.size(), 2U);
    EXPECT_EQ(back.zones[0].width, plan.zones[0].width);
    EXPECT_EQ(back.zones[0].surface->period, plan.zones[0].surface->period);
    EXPECT_EQ(back.zones[0].tests[1].table, "EN 12680-3:2003");
    EXPECT_EQ(back.zones[0].otherTests, plan.zones[0].otherTests);
}

TEST(RegisterRows, GivePartsAndCastingsBackAsTheyWent) {
    const auto parts = readRegister<PartLine>(tableOf(
        "number,drawing,material,mass\nP-1,D-1,spheroidal graphite iron,2.4 t\nP-2,D,brass,\n"));
    EXPECT_THAT(messagesOf(parts.problems),
                ElementsAre(HasSubstr("row 2 (line 3), material: takes one of")));
    EXPECT_THAT(parts.absent,
                ElementsAre("description", "drawing_revision", "material_grade", "pattern"));
    std::vector<LineError> errors;
    const Part part = partFrom(parts.entries[0].value, errors);
    EXPECT_THAT(errors, IsEmpty());
    EXPECT_EQ(part.material, Material::SpheroidalGraphiteIron);
    EXPECT_EQ(part.mass, "2.4 t");
    EXPECT_EQ(lineOf(part), parts.entries[0].value);
    static_cast<void>(partFrom(parts.entries[1].value, errors));
    EXPECT_THAT(errors, SizeIs(1));

    const auto castings = readRegister<CastingLine>(
        tableOf("serial,heat,order,part,zone_plan_revision,series\n"
                "C-1,H1,O-1,P-1,2,\"C-1,C-2\"\nC-2,H1,O-1,P-1,two,\nC-3,H1,O-1,P-1,0,\n"));
    EXPECT_THAT(messagesOf(castings.problems),
                ElementsAre(HasSubstr("row 2 (line 3), zone_plan_revision: takes a whole number")));
    errors.clear();
    const Casting casting = castingFrom(castings.entries[0].value, errors);
    EXPECT_THAT(errors, IsEmpty());
    EXPECT_EQ(casting.zonePlanRevision, 2);
    EXPECT_EQ(casting.series, "C-1, C-2");
    EXPECT_EQ(lineOf(casting).zonePlanRevision, "2");
    static_cast<void>(castingFrom(castings.entries[2].value, errors));
    ASSERT_THAT(errors, SizeIs(1));
    EXPECT_EQ(errors[0].error.field, "zone_plan_revision");
}

std::string refusedEntry(const std::string& json) {
    const auto document = parseJson(json, "e.json");
    EXPECT_TRUE(document.ok());
    const auto table = entryFromJson(*document, "e.json", "equipment");
    return table ? "read" : table.error().message();
}

TEST(RegisterRows, TakeAnEntryFromJson) {
    const auto document = parseJson(
        R"({"format": "fettlemark-entry/1", "register": "equipment",
            "rows": [{"id": "Y-1", "kind": "yoke"}, {"kind": "yoke", "state": "in use"}]})",
        "e.json");
    ASSERT_TRUE(document.ok());
    const auto table = entryFromJson(*document, "e.json", "equipment");
    ASSERT_TRUE(table.ok()) << table.error().message();
    EXPECT_THAT(table->names.fields, ElementsAre("id", "kind", "state"));
    EXPECT_THAT(table->rows[0].fields, ElementsAre("Y-1", "yoke", ""));
    EXPECT_THAT(table->rows[1].fields, ElementsAre("", "yoke", "in use"));
    const auto read = readRegister<Equipment>(*table);
    EXPECT_THAT(messagesOf(read.problems),
                ElementsAre("row 1, state: is missing", "row 2, id: is missing"));
    EXPECT_THAT(refusedEntry(R"({"format": "x", "register": "equipment", "rows": [{}]})"),
                HasSubstr("e.json: format: must be"));
    EXPECT_THAT(
        refusedEntry(R"({"format": "fettlemark-entry/1", "register": "part", "rows": [{}]})"),
        HasSubstr("e.json: register: must be \"equipment\""));
    EXPECT_THAT(
        refusedEntry(R"({"format": "fettlemark-entry/1", "register": "equipment", "rows": []})"),
        HasSubstr("e.json: rows: holds no row"));
    EXPECT_THAT(refusedEntry(R"({"format": "fettlemark-entry/1", "register": "equipment",
                                 "rows": [{"id": 7}]})"),
                HasSubstr("e.json: rows[0].id: must be a string"));
    EXPECT_THAT(refusedEntry(R"({"format": "fettlemark-entry/1", "register": "equipment",
                                 "rows": ["Y"]})"),
                HasSubstr("e.json: rows[0]: must be an object"));
}

}  // namespace
}  // namespace model
