// SPDX-License-Identifier: Apache-2.0
// The fields of the lines of register_lines.h.
#include "exchange/register_lines.h"

namespace model {
namespace {

using Need = FieldInfo::Need;

constexpr std::string_view kMaterials = "cast steel|spheroidal graphite iron|grey iron";
constexpr std::string_view kMethods = "MT|PT|UT";
constexpr std::string_view kStages = "as cast|heat treated|rough machined|finish machined";

std::vector<Field<OrderLine>> orderFields() {
    std::vector<Field<OrderLine>> fields{
        {{"number", "Number", FieldKind::Line, Need::Key, "", "", "The works' own"},
         &OrderLine::number},
        {{"customer", "Customer", FieldKind::Line, Need::Required, "", "", ""},
         &OrderLine::customer},
        {{"customer_order", "Customer's order", FieldKind::Line, Need::Optional, "", "",
          "Number and item"},
         &OrderLine::customerOrder},
        {{"certificate_type", "Certificate", FieldKind::Choice, Need::Required, "", "2.2|3.1|3.2",
          "Type by EN 10204:2004"},
         &OrderLine::certificateType},
        {{"language", "Language", FieldKind::Choice, Need::Required, "", "en",
          "Of the certificate"},
         &OrderLine::language},
        {{"forbidden_kinds", "Forbidden kinds", FieldKind::List, Need::Optional, "", "",
          "Never acceptable, at any size: crack, hot tear"},
         &OrderLine::forbiddenKinds},
        {{"decision_rule", "Decision rule", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &OrderLine::decisionRule},
        {{"rounding_rule", "Rounding rule", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &OrderLine::roundingRule},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &OrderLine::remarks},
    };
    for (const Field<OrderTerms>& term : OrderTerms::fields())
        fields.push_back({term.info, term.text});
    const Field<OrderLine> ofLine[] = {
        {{"test_zone", "Ordered test: zone", FieldKind::Line, Need::Optional, "", "",
          "Empty: every zone of the plan"},
         &OrderLine::testZone},
        {{"test_method", "Ordered test: method", FieldKind::Choice, Need::Optional, "", kMethods,
          ""},
         &OrderLine::testMethod},
        {{"test_stage", "Ordered test: stage", FieldKind::Choice, Need::Optional, "", kStages, ""},
         &OrderLine::testStage},
        {{"test_table", "Ordered test: limit table", FieldKind::Line, Need::Optional, "", "", ""},
         &OrderLine::testTable},
        {{"test_levels", "Ordered test: levels", FieldKind::List, Need::Optional, "", "",
          "key=level, such as non-linear=SM 2"},
         &OrderLine::testLevels},
        {{"test_reason", "Ordered test: agreed by", FieldKind::Line, Need::Optional, "", "", ""},
         &OrderLine::testReason},
        {{"witness_what", "Witness point: what", FieldKind::Line, Need::Optional, "", "", ""},
         &OrderLine::witnessWhat},
        {{"witness_kind", "Witness point: kind", FieldKind::Choice, Need::Optional, "",
          "witness|hold", ""},
         &OrderLine::witnessKind},
        {{"witness_who", "Witness point: who", FieldKind::Line, Need::Optional, "", "", ""},
         &OrderLine::witnessWho},
        {{"witness_called_on", "Witness point: called on", FieldKind::Date, Need::Optional, "", "",
          ""},
         &OrderLine::witnessCalledOn},
        {{"witness_attended_on", "Witness point: attended on", FieldKind::Date, Need::Optional, "",
          "", ""},
         &OrderLine::witnessAttendedOn},
        {{"witness_waived", "Witness point: waived by", FieldKind::Line, Need::Optional, "", "",
          ""},
         &OrderLine::witnessWaived},
        {{"witness_result", "Witness point: result", FieldKind::Line, Need::Optional, "", "", ""},
         &OrderLine::witnessResult},
    };
    fields.insert(fields.end(), std::begin(ofLine), std::end(ofLine));
    return fields;
}

}  // namespace

std::span<const Field<PartLine>> PartLine::fields() {
    static const Field<PartLine> kFields[] = {
        {{"number", "Number", FieldKind::Line, Need::Key, "", "", ""}, &PartLine::number},
        {{"description", "Description", FieldKind::Line, Need::Optional, "", "", ""},
         &PartLine::description},
        {{"drawing", "Drawing", FieldKind::Line, Need::Required, "", "", ""}, &PartLine::drawing},
        {{"drawing_revision", "Drawing revision", FieldKind::Line, Need::Optional, "", "", ""},
         &PartLine::drawingRevision},
        {{"material", "Material", FieldKind::Choice, Need::Required, "", kMaterials, ""},
         &PartLine::material},
        {{"material_grade", "Material grade", FieldKind::Line, Need::Optional, "", "",
          "As ordered, with its standard"},
         &PartLine::materialGrade},
        {{"pattern", "Pattern", FieldKind::Line, Need::Optional, "", "", "Its number"},
         &PartLine::pattern},
        {{"mass", "Mass", FieldKind::Line, Need::Optional, "", "", "With its unit"},
         &PartLine::mass},
    };
    return kFields;
}

std::span<const Field<CastingLine>> CastingLine::fields() {
    static const Field<CastingLine> kFields[] = {
        {{"serial", "Serial number", FieldKind::Line, Need::Key, "", "", ""}, &CastingLine::serial},
        {{"heat", "Heat", FieldKind::Line, Need::Required, "", "", ""}, &CastingLine::heat},
        {{"order", "Order", FieldKind::Line, Need::Required, "", "", "The works' number of it"},
         &CastingLine::order},
        {{"part", "Part", FieldKind::Line, Need::Required, "", "", "Its number"},
         &CastingLine::part},
        {{"zone_plan_revision", "Zone plan revision", FieldKind::Whole, Need::Required, "", "", ""},
         &CastingLine::zonePlanRevision},
        {{"series", "Series", FieldKind::List, Need::Optional, "", "",
          "Serial numbers that it stands for; empty: itself alone"},
         &CastingLine::series},
        {{"marking", "Marking", FieldKind::Line, Need::Optional, "", "", "As found on it"},
         &CastingLine::marking},
        {{"condition_on_receipt", "Condition on receipt", FieldKind::Line, Need::Optional, "", "",
          ""},
         &CastingLine::conditionOnReceipt},
    };
    return kFields;
}

std::span<const Field<OrderLine>> OrderLine::fields() {
    static const std::vector<Field<OrderLine>> kFields = orderFields();
    return kFields;
}

bool OrderLine::isOfLine(std::string_view key) {
    return key.starts_with("test_") || key.starts_with("witness_");
}

std::span<const Field<ZonePlanLine>> ZonePlanLine::fields() {
    static const Field<ZonePlanLine> kFields[] = {
        {{"part", "Part", FieldKind::Line, Need::Key, "", "", "Its number"}, &ZonePlanLine::part},
        {{"revision", "Revision", FieldKind::Whole, Need::Key, "", "",
          "1, or the highest that is there plus 1"},
         &ZonePlanLine::revision},
        {{"zone", "Zone", FieldKind::Line, Need::Key, "", "", ""}, &ZonePlanLine::zone},
        {{"description", "Description", FieldKind::Line, Need::Optional, "", "",
          "Where it is, and where its datum is"},
         &ZonePlanLine::description},
        {{"width_mm", "Width", FieldKind::Number, Need::Required, "mm", "", ""},
         &ZonePlanLine::width},
        {{"height_mm", "Height", FieldKind::Number, Need::Required, "mm", "", ""},
         &ZonePlanLine::height},
        {{"thickness_mm", "Smallest wall", FieldKind::Number, Need::Required, "mm", "", ""},
         &ZonePlanLine::thickness},
        {{"surface", "Surface", FieldKind::Line, Need::Optional, "", "",
          "Developed surface that it shares with its neighbours"},
         &ZonePlanLine::surface},
        {{"surface_x_mm", "x on the surface", FieldKind::Number, Need::Optional, "mm", "", ""},
         &ZonePlanLine::surfaceX},
        {{"surface_y_mm", "y on the surface", FieldKind::Number, Need::Optional, "mm", "", ""},
         &ZonePlanLine::surfaceY},
        {{"surface_angle_deg", "Angle on the surface", FieldKind::Number, Need::Optional, "degrees",
          "", "Empty: 0"},
         &ZonePlanLine::surfaceAngle},
        {{"surface_width_mm", "Width on the surface", FieldKind::Number, Need::Optional, "mm", "",
          "Empty: that of the zone"},
         &ZonePlanLine::surfaceWidth},
        {{"surface_height_mm", "Height on the surface", FieldKind::Number, Need::Optional, "mm", "",
          "Empty: that of the zone"},
         &ZonePlanLine::surfaceHeight},
        {{"surface_period_mm", "Period of the surface", FieldKind::Number, Need::Optional, "mm", "",
          "Of a round surface: its way around"},
         &ZonePlanLine::surfacePeriod},
        {{"drawing_minimum_mm", "Smallest wall of the drawing", FieldKind::Number, Need::Optional,
          "mm", "", "That the drawing allows"},
         &ZonePlanLine::drawingMinimum},
        {{"other_tests", "Tests by others", FieldKind::List, Need::Optional, "", "",
          "Such as radiographic"},
         &ZonePlanLine::otherTests},
        {{"method", "Test: method", FieldKind::Choice, Need::Optional, "", kMethods, ""},
         &ZonePlanLine::method},
        {{"stage", "Test: stage", FieldKind::Choice, Need::Optional, "", kStages, ""},
         &ZonePlanLine::stage},
        {{"table", "Test: limit table", FieldKind::Line, Need::Optional, "", "", ""},
         &ZonePlanLine::table},
        {{"levels", "Test: levels", FieldKind::List, Need::Optional, "", "",
          "key=level, such as non-linear=SM 2"},
         &ZonePlanLine::levels},
    };
    return kFields;
}

bool ZonePlanLine::isOfLine(std::string_view key) {
    return key == "method" || key == "stage" || key == "table" || key == "levels";
}

std::span<const Field<PersonLine>> PersonLine::fields() {
    static const Field<PersonLine> kFields[] = {
        {{"id", "Id", FieldKind::Line, Need::Key, "", "", "Never given to a second person"},
         &PersonLine::id},
        {{"name", "Name", FieldKind::Line, Need::Required, "", "", ""}, &PersonLine::name},
        {{"roles", "Roles", FieldKind::List, Need::Required, "", "",
          "Of inspector, QA manager, auditor, administrator, third party"},
         &PersonLine::roles},
        {{"levels", "Levels", FieldKind::List, Need::Optional, "", "", "Such as MT 2, PT 3"},
         &PersonLine::levels},
        {{"manufacturing", "Of the manufacturing department", FieldKind::YesNo, Need::Optional, "",
          "", "Empty: no"},
         &PersonLine::manufacturing},
        {{"body", "Acts for", FieldKind::Line, Need::Optional, "", "", "Of a third party"},
         &PersonLine::body},
        {{"active", "Active", FieldKind::YesNo, Need::Optional, "", "", "Empty: yes"},
         &PersonLine::active},
    };
    return kFields;
}

}  // namespace model
