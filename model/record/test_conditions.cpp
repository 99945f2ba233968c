// SPDX-License-Identifier: Apache-2.0
#include "record/test_conditions.h"

namespace model {
namespace {

using Need = FieldInfo::Need;

}  // namespace

std::span<const Field<Measurement>> Measurement::fields() {
    static const Field<Measurement> kFields[] = {
        {{"parameter", "Parameter", FieldKind::Line, Need::Required, "", "",
          "Its name in the list of parameters (conditions/parameters.h)"},
         &Measurement::parameter},
        {{"value", "Value", FieldKind::Line, Need::Required, "", "", ""}, &Measurement::value},
        {{"unit", "Unit", FieldKind::Line, Need::Optional, "", "", ""}, &Measurement::unit},
        {{"instrument", "Instrument", FieldKind::Line, Need::Optional, "", "", "Equipment number"},
         &Measurement::instrument},
        {{"at", "Time", FieldKind::Moment, Need::Optional, "", "", ""}, &Measurement::at},
        {{"by", "Person", FieldKind::Line, Need::Optional, "", "", ""}, &Measurement::by},
        {{"place", "Place", FieldKind::Line, Need::Optional, "", "", ""}, &Measurement::place},
        {{"remarks", "Remarks", FieldKind::Line, Need::Optional, "", "", ""},
         &Measurement::remarks},
    };
    return kFields;
}

std::span<const Field<SettingCheck>> SettingCheck::fields() {
    static const Field<SettingCheck> kFields[] = {
        {{"id", "Number", FieldKind::Line, Need::Key, "", "", ""}, &SettingCheck::id},
        {{"setting", "Setting", FieldKind::Line, Need::Required, "", "", ""},
         &SettingCheck::setting},
        {{"at", "Time", FieldKind::Moment, Need::Required, "", "", ""}, &SettingCheck::at},
        {{"occasion", "Occasion", FieldKind::Choice, Need::Required, "",
          "start|interval|after a change|in doubt|end", ""},
         &SettingCheck::occasion},
        {{"by", "Person", FieldKind::Line, Need::Required, "", "", ""}, &SettingCheck::by},
        {{"block", "Block", FieldKind::Line, Need::Optional, "", "", "Equipment number"},
         &SettingCheck::block},
        {{"sensitivity_drift", "Sensitivity drift", FieldKind::Number, Need::Optional, "dB", "",
          "Echo now minus echo when set: a loss is negative"},
         &SettingCheck::sensitivityDrift},
        {{"range_drift", "Range drift", FieldKind::Number, Need::Optional, "%", "",
          "Reading now minus reading when set, in percent of the reading"},
         &SettingCheck::rangeDrift},
        {{"block_temperature", "Block temperature", FieldKind::Number, Need::Optional, "deg C", "",
          ""},
         &SettingCheck::blockTemperature},
        {{"part_temperature", "Part temperature", FieldKind::Number, Need::Optional, "deg C", "",
          ""},
         &SettingCheck::partTemperature},
        {{"corrected", "Setting corrected", FieldKind::YesNo, Need::Optional, "", "", ""},
         &SettingCheck::corrected},
        {{"remarks", "Remarks", FieldKind::Line, Need::Optional, "", "", ""},
         &SettingCheck::remarks},
    };
    return kFields;
}

std::span<const Field<Scan>> Scan::fields() {
    static const Field<Scan> kFields[] = {
        {{"id", "Number", FieldKind::Line, Need::Key, "", "", ""}, &Scan::id},
        {{"area", "Area", FieldKind::Line, Need::Required, "", "", ""}, &Scan::area},
        {{"setting", "Setting", FieldKind::Line, Need::Required, "", "", ""}, &Scan::setting},
        {{"after_check", "After check", FieldKind::Line, Need::Required, "", "",
          "Number of the setting check before it"},
         &Scan::afterCheck},
        {{"started_at", "Started", FieldKind::Moment, Need::Required, "", "", ""},
         &Scan::startedAt},
        {{"ended_at", "Ended", FieldKind::Moment, Need::Required, "", "", ""}, &Scan::endedAt},
        {{"direction", "Direction", FieldKind::Line, Need::Optional, "", "", ""}, &Scan::direction},
        {{"speed", "Speed", FieldKind::Number, Need::Optional, "mm/s", "", ""}, &Scan::speed},
        {{"overlap", "Overlap", FieldKind::Number, Need::Optional, "%", "", ""}, &Scan::overlap},
        {{"examined_again", "Examined again by scan", FieldKind::Line, Need::Optional, "", "",
          "Number of the scan that repeats it"},
         &Scan::examinedAgain},
    };
    return kFields;
}

std::span<const Field<Acknowledgement>> Acknowledgement::fields() {
    static const Field<Acknowledgement> kFields[] = {
        {{"finding", "Finding", FieldKind::Line, Need::Key, "", "", "Id of the condition's rule"},
         &Acknowledgement::finding},
        {{"reason", "Reason", FieldKind::Line, Need::Required, "", "", ""},
         &Acknowledgement::reason},
        {{"by", "Person", FieldKind::Line, Need::Required, "", "", ""}, &Acknowledgement::by},
    };
    return kFields;
}

std::span<const Field<TestConditions>> TestConditions::fields() {
    static const Field<TestConditions> kFields[] = {
        {{"purpose", "Purpose", FieldKind::Choice, Need::Optional, "",
          "production|repair check|final|witness", ""},
         &TestConditions::purpose},
        {{"place", "Place of test", FieldKind::Line, Need::Optional, "", "", ""},
         &TestConditions::place},
        {{"started_at", "Started", FieldKind::Moment, Need::Optional, "", "", ""},
         &TestConditions::startedAt},
        {{"ended_at", "Ended", FieldKind::Moment, Need::Optional, "", "", ""},
         &TestConditions::endedAt},
        {{"procedure_number", "Procedure", FieldKind::Line, Need::Optional, "", "", ""},
         &TestConditions::procedureNumber},
        {{"procedure_revision", "Procedure revision", FieldKind::Line, Need::Optional, "", "", ""},
         &TestConditions::procedureRevision},
        {{"sheet_number", "Technique sheet", FieldKind::Line, Need::Optional, "", "", ""},
         &TestConditions::sheetNumber},
        {{"sheet_revision", "Technique sheet revision", FieldKind::Line, Need::Optional, "", "",
          ""},
         &TestConditions::sheetRevision},
        {{"test_standard", "Test standard", FieldKind::Line, Need::Optional, "", "",
          "With edition"},
         &TestConditions::testStandard},
        {{"deviations", "Deviations", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &TestConditions::deviations},
        {{"deviations_agreed", "Deviations agreed by", FieldKind::Line, Need::Optional, "", "", ""},
         &TestConditions::deviationsAgreed},
        {{"delivery_state", "Heat-treatment state", FieldKind::Line, Need::Optional, "", "", ""},
         &TestConditions::deliveryState},
        {{"surface_preparation", "Surface preparation", FieldKind::Line, Need::Optional, "", "",
          ""},
         &TestConditions::surfacePreparation},
        {{"surface_finish", "Surface finish", FieldKind::Line, Need::Optional, "", "",
          "Comparator with class, or Ra with its unit"},
         &TestConditions::surfaceFinish},
        {{"coating", "Coating thickness", FieldKind::Number, Need::Optional, "um", "", ""},
         &TestConditions::coating},
        {{"equipment", "Equipment", FieldKind::List, Need::Optional, "", "", "Numbers"},
         &TestConditions::equipment},
        {{"consumables", "Consumables", FieldKind::List, Need::Optional, "", "", "Numbers"},
         &TestConditions::consumables},
        {{"evaluated_by", "Evaluated by", FieldKind::Line, Need::Optional, "", "",
          "Person of Level 2 or 3, where the examiner is of Level 1"},
         &TestConditions::evaluatedBy},
        {{"witnessed_by", "Witnessed by", FieldKind::Line, Need::Optional, "", "", ""},
         &TestConditions::witnessedBy},
        {{"pieces_tested", "Pieces tested", FieldKind::List, Need::Optional, "", "",
          "Serial numbers, of a series"},
         &TestConditions::piecesTested},
        {{"nonconformance", "Re-examination after nonconformance", FieldKind::Line, Need::Optional,
          "", "", ""},
         &TestConditions::nonconformance},
        {{"first_record", "First record", FieldKind::Whole, Need::Optional, "", "",
          "Number of the record that found what was repaired"},
         &TestConditions::firstRecord},
    };
    return kFields;
}

Canonical::Object canonicalOf(const TestConditions& conditions) {
    Canonical::Object object = canonicalFields(conditions);
    addList(object, "measurements", conditions.measurements);
    addList(object, "setting_checks", conditions.settingChecks);
    addList(object, "scans", conditions.scans);
    addList(object, "acknowledgements", conditions.acknowledgements);
    return object;
}

std::optional<TestConditions> testConditionsFrom(const Canonical::Object& object) {
    Canonical::Object fields = object;
    auto measurements = takeList<Measurement>(fields, "measurements");
    auto settingChecks = takeList<SettingCheck>(fields, "setting_checks");
    auto scans = takeList<Scan>(fields, "scans");
    auto acknowledgements = takeList<Acknowledgement>(fields, "acknowledgements");
    auto conditions = fromCanonicalFields<TestConditions>(fields);
    if (!conditions || !measurements || !settingChecks || !scans || !acknowledgements)
        return std::nullopt;
    conditions->measurements = std::move(*measurements);
    conditions->settingChecks = std::move(*settingChecks);
    conditions->scans = std::move(*scans);
    conditions->acknowledgements = std::move(*acknowledgements);
    return conditions;
}

}  // namespace model
