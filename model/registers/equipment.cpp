// SPDX-License-Identifier: Apache-2.0
#include "registers/equipment.h"

namespace model {
namespace {

using Need = FieldInfo::Need;

}  // namespace

std::span<const Field<Equipment>> Equipment::fields() {
    static const Field<Equipment> kFields[] = {
        {{"id", "Number", FieldKind::Line, Need::Key, "", "",
          "The works' own number, as marked on it"},
         &Equipment::id},
        {{"kind", "Kind", FieldKind::Choice, Need::Required, "",
          "ultrasonic instrument|probe|cable|calibration block|reference block|yoke|magnetising "
          "unit|field meter|light meter|UV-A meter|UV-A lamp|white light lamp|thermometer|residual "
          "field meter|test piece|comparator|furnace|thermocouple|other",
          ""},
         &Equipment::kind},
        {{"description", "Description", FieldKind::Line, Need::Optional, "", "", ""},
         &Equipment::description},
        {{"maker", "Maker", FieldKind::Line, Need::Optional, "", "", ""}, &Equipment::maker},
        {{"model", "Model", FieldKind::Line, Need::Optional, "", "", ""}, &Equipment::model},
        {{"serial", "Serial number", FieldKind::Line, Need::Optional, "", "", ""},
         &Equipment::serial},
        {{"calibrated_on", "Calibrated on", FieldKind::Date, Need::Optional, "", "", ""},
         &Equipment::calibratedOn},
        {{"calibration_due", "Calibration due", FieldKind::Date, Need::Optional, "", "",
          "Last day on which the calibration holds; empty where none is needed"},
         &Equipment::calibrationDue},
        {{"calibration_certificate", "Calibration certificate", FieldKind::Line, Need::Optional, "",
          "", ""},
         &Equipment::calibrationCertificate},
        {{"characteristics", "Characteristics", FieldKind::Line, Need::Optional, "", "",
          "What tests need to know of it: reflectors of a block, frequency and size of a probe, "
          "meter type and waveform"},
         &Equipment::characteristics},
        {{"place", "Kept at", FieldKind::Line, Need::Optional, "", "", ""}, &Equipment::place},
        {{"state", "State", FieldKind::Choice, Need::Required, "", "in use|withdrawn", ""},
         &Equipment::state},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &Equipment::remarks},
    };
    return kFields;
}

std::span<const Field<EquipmentCheck>> EquipmentCheck::fields() {
    static const Field<EquipmentCheck> kFields[] = {
        {{"equipment", "Equipment", FieldKind::Line, Need::Key, "", "", "Its number"},
         &EquipmentCheck::equipment},
        {{"check", "Check", FieldKind::Choice, Need::Key, "",
          "yoke pull|daily physical check|probe index and angle|weekly linearity|weekly "
          "sensitivity|UV-A lamp integrity|UV-A intensity|bath concentration|bath "
          "contamination|in-service block comparison|overall performance|residual "
          "field|ammeter|timer|quick break|other",
          ""},
         &EquipmentCheck::check},
        {{"at", "Time", FieldKind::Moment, Need::Key, "", "", ""}, &EquipmentCheck::at},
        {{"by", "Person", FieldKind::Line, Need::Required, "", "", ""}, &EquipmentCheck::by},
        {{"value", "Reading", FieldKind::Number, Need::Optional, "", "", ""},
         &EquipmentCheck::value},
        {{"unit", "Unit", FieldKind::Line, Need::Optional, "", "", ""}, &EquipmentCheck::unit},
        {{"condition", "Condition", FieldKind::Line, Need::Optional, "", "",
          "Such as the pole spacing of a yoke, with its unit"},
         &EquipmentCheck::condition},
        {{"with", "Made with", FieldKind::Line, Need::Optional, "", "",
          "Number of the meter, weight or block"},
         &EquipmentCheck::with},
        {{"result", "Result", FieldKind::Choice, Need::Required, "", "passed|failed", ""},
         &EquipmentCheck::result},
        {{"next_due", "Next due", FieldKind::Date, Need::Optional, "", "", ""},
         &EquipmentCheck::nextDue},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &EquipmentCheck::remarks},
    };
    return kFields;
}

}  // namespace model
