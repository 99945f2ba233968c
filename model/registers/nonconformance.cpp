// SPDX-License-Identifier: Apache-2.0
#include "registers/nonconformance.h"

namespace model {
namespace {

using Need = FieldInfo::Need;

}  // namespace

std::span<const Field<Nonconformance>> Nonconformance::fields() {
    static const Field<Nonconformance> kFields[] = {
        {{"number", "Number", FieldKind::Line, Need::Key, "", "", ""}, &Nonconformance::number},
        {{"casting", "Casting", FieldKind::Line, Need::Required, "", "", "Serial number"},
         &Nonconformance::casting},
        {{"zone", "Zone", FieldKind::Line, Need::Required, "", "", ""}, &Nonconformance::zone},
        {{"method", "Method", FieldKind::Choice, Need::Required, "", "MT|PT|UT|VT|RT|other", ""},
         &Nonconformance::method},
        {{"stage", "Stage", FieldKind::Line, Need::Optional, "", "", ""}, &Nonconformance::stage},
        {{"record", "Record", FieldKind::Whole, Need::Optional, "", "",
          "Number of the signed record that found it"},
         &Nonconformance::record},
        {{"indications", "Indications", FieldKind::List, Need::Optional, "", "",
          "Their numbers in the record"},
         &Nonconformance::indications},
        {{"finding", "Finding", FieldKind::Paragraph, Need::Required, "", "", ""},
         &Nonconformance::finding},
        {{"rule_broken", "Rule broken", FieldKind::Line, Need::Required, "", "", ""},
         &Nonconformance::ruleBroken},
        {{"opened_by", "Opened by", FieldKind::Line, Need::Required, "", "", ""},
         &Nonconformance::openedBy},
        {{"opened_on", "Opened on", FieldKind::Date, Need::Required, "", "", ""},
         &Nonconformance::openedOn},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &Nonconformance::remarks},
    };
    return kFields;
}

std::span<const Field<Disposition>> Disposition::fields() {
    static const Field<Disposition> kFields[] = {
        {{"nonconformance", "Nonconformance", FieldKind::Line, Need::Key, "", "", ""},
         &Disposition::nonconformance},
        {{"sequence", "Decision number", FieldKind::Whole, Need::Key, "", "", ""},
         &Disposition::sequence},
        {{"casting", "Casting", FieldKind::Line, Need::Required, "", "", ""},
         &Disposition::casting},
        {{"decision", "Decision", FieldKind::Choice, Need::Required, "",
          "grind only|weld repair|concession|scrap|regrade", ""},
         &Disposition::decision},
        {{"reason", "Reason", FieldKind::Paragraph, Need::Required, "", "", ""},
         &Disposition::reason},
        {{"authority", "Decided by", FieldKind::Line, Need::Required, "", "", ""},
         &Disposition::authority},
        {{"decided_on", "Decided on", FieldKind::Date, Need::Required, "", "", ""},
         &Disposition::decidedOn},
        {{"agreement", "Purchaser's agreement", FieldKind::Line, Need::Optional, "", "",
          "Its number; needed where the order asks for agreement first, and for a major repair"},
         &Disposition::agreement},
        {{"extra_tests", "Extra tests agreed", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &Disposition::extraTests},
    };
    return kFields;
}

std::span<const Field<Excavation>> Excavation::fields() {
    static const Field<Excavation> kFields[] = {
        {{"number", "Number", FieldKind::Line, Need::Key, "", "", ""}, &Excavation::number},
        {{"nonconformance", "Nonconformance", FieldKind::Line, Need::Required, "", "", ""},
         &Excavation::nonconformance},
        {{"casting", "Casting", FieldKind::Line, Need::Required, "", "", ""}, &Excavation::casting},
        {{"zone", "Zone", FieldKind::Line, Need::Required, "", "", ""}, &Excavation::zone},
        {{"x", "x of its centre", FieldKind::Number, Need::Required, "mm", "", ""}, &Excavation::x},
        {{"y", "y of its centre", FieldKind::Number, Need::Required, "mm", "", ""}, &Excavation::y},
        {{"angle", "Angle of its length", FieldKind::Number, Need::Optional, "degrees", "", ""},
         &Excavation::angle},
        {{"length", "Length", FieldKind::Number, Need::Required, "mm", "", ""},
         &Excavation::length},
        {{"width", "Width", FieldKind::Number, Need::Required, "mm", "", ""}, &Excavation::width},
        {{"depth", "Depth", FieldKind::Number, Need::Required, "mm", "", ""}, &Excavation::depth},
        {{"wall_before", "Wall before", FieldKind::Number, Need::Optional, "mm", "", ""},
         &Excavation::wallBefore},
        {{"wall_left", "Wall left", FieldKind::Number, Need::Optional, "mm", "",
          "Measured; compared with the drawing's minimum"},
         &Excavation::wallLeft},
        {{"wall_measured_with", "Wall measured with", FieldKind::Line, Need::Optional, "", "",
          "Number of the instrument"},
         &Excavation::wallMeasuredWith},
        {{"means", "Means", FieldKind::Choice, Need::Required, "",
          "grinding|chipping|milling|air carbon arc gouging|other", ""},
         &Excavation::means},
        {{"preheat", "Preheat", FieldKind::Number, Need::Optional, "deg C", "", ""},
         &Excavation::preheat},
        {{"done_by", "Done by", FieldKind::Line, Need::Required, "", "", ""}, &Excavation::doneBy},
        {{"done_on", "Done on", FieldKind::Date, Need::Required, "", "", ""}, &Excavation::doneOn},
        {{"cavity_method", "Cavity tested by", FieldKind::Choice, Need::Optional, "", "MT|PT", ""},
         &Excavation::cavityMethod},
        {{"cavity_record", "Cavity record", FieldKind::Line, Need::Optional, "", "",
          "Number of the other result that holds the full record of the cavity test"},
         &Excavation::cavityRecord},
        {{"cleared", "Clear of the finding", FieldKind::YesNo, Need::Optional, "", "", ""},
         &Excavation::cleared},
        {{"blended", "Blended smoothly", FieldKind::YesNo, Need::Optional, "", "", ""},
         &Excavation::blended},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &Excavation::remarks},
    };
    return kFields;
}

std::span<const Field<WeldRepair>> WeldRepair::fields() {
    static const Field<WeldRepair> kFields[] = {
        {{"number", "Number", FieldKind::Line, Need::Key, "", "", ""}, &WeldRepair::number},
        {{"excavation", "Excavation", FieldKind::Line, Need::Required, "", "", ""},
         &WeldRepair::excavation},
        {{"casting", "Casting", FieldKind::Line, Need::Required, "", "", ""}, &WeldRepair::casting},
        {{"welding_procedure", "Welding procedure specification", FieldKind::Line, Need::Required,
          "", "", ""},
         &WeldRepair::weldingProcedure},
        {{"procedure_approval", "Procedure approval", FieldKind::Line, Need::Optional, "", "",
          "Number of its qualification record, such as by ISO 11970"},
         &WeldRepair::procedureApproval},
        {{"welder", "Welder", FieldKind::Line, Need::Required, "", "", ""}, &WeldRepair::welder},
        {{"welder_approval", "Welder's approval", FieldKind::Line, Need::Optional, "", "", ""},
         &WeldRepair::welderApproval},
        {{"welder_until", "Welder's approval until", FieldKind::Date, Need::Optional, "", "", ""},
         &WeldRepair::welderUntil},
        {{"filler", "Filler", FieldKind::Line, Need::Required, "", "", ""}, &WeldRepair::filler},
        {{"filler_batch", "Filler batch", FieldKind::Line, Need::Required, "", "", ""},
         &WeldRepair::fillerBatch},
        {{"preheat", "Preheat", FieldKind::Number, Need::Optional, "deg C", "", ""},
         &WeldRepair::preheat},
        {{"interpass", "Interpass temperature, highest", FieldKind::Number, Need::Optional, "deg C",
          "", ""},
         &WeldRepair::interpass},
        {{"done_on", "Done on", FieldKind::Date, Need::Required, "", "", ""}, &WeldRepair::doneOn},
        {{"agreement", "Purchaser's agreement", FieldKind::Line, Need::Optional, "", "", ""},
         &WeldRepair::agreement},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &WeldRepair::remarks},
    };
    return kFields;
}

std::span<const Field<HeatTreatment>> HeatTreatment::fields() {
    static const Field<HeatTreatment> kFields[] = {
        {{"number", "Number", FieldKind::Line, Need::Key, "", "", ""}, &HeatTreatment::number},
        {{"casting", "Casting", FieldKind::Line, Need::Required, "", "", ""},
         &HeatTreatment::casting},
        {{"weld_repairs", "Weld repairs", FieldKind::List, Need::Optional, "", "",
          "Numbers of those that it covers"},
         &HeatTreatment::weldRepairs},
        {{"kind", "Kind", FieldKind::Choice, Need::Required, "",
          "stress relief|normalising|quenching and tempering|tempering|annealing|other", ""},
         &HeatTreatment::kind},
        {{"temperature", "Holding temperature", FieldKind::Number, Need::Optional, "deg C", "", ""},
         &HeatTreatment::temperature},
        {{"holding", "Holding time", FieldKind::Number, Need::Optional, "min", "", ""},
         &HeatTreatment::holding},
        {{"chart", "Chart", FieldKind::Line, Need::Optional, "", "",
          "Number of the recorder's chart"},
         &HeatTreatment::chart},
        {{"furnace", "Furnace", FieldKind::Line, Need::Optional, "", "", "Equipment number"},
         &HeatTreatment::furnace},
        {{"thermocouples", "Thermocouples", FieldKind::List, Need::Optional, "", "",
          "Equipment numbers"},
         &HeatTreatment::thermocouples},
        {{"done_on", "Done on", FieldKind::Date, Need::Required, "", "", ""},
         &HeatTreatment::doneOn},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &HeatTreatment::remarks},
    };
    return kFields;
}

std::span<const Field<Concession>> Concession::fields() {
    static const Field<Concession> kFields[] = {
        {{"number", "Number", FieldKind::Line, Need::Key, "", "", ""}, &Concession::number},
        {{"nonconformance", "Nonconformance", FieldKind::Line, Need::Required, "", "", ""},
         &Concession::nonconformance},
        {{"casting", "Casting", FieldKind::Line, Need::Required, "", "", ""}, &Concession::casting},
        {{"customer_reference", "Purchaser's reference", FieldKind::Line, Need::Required, "", "",
          ""},
         &Concession::customerReference},
        {{"granted_by", "Granted by", FieldKind::Line, Need::Required, "", "",
          "Person and function at the purchaser"},
         &Concession::grantedBy},
        {{"granted_on", "Granted on", FieldKind::Date, Need::Required, "", "", ""},
         &Concession::grantedOn},
        {{"indications", "Indications", FieldKind::List, Need::Required, "", "",
          "Exactly those that it accepts"},
         &Concession::indications},
        {{"scope", "Scope and conditions", FieldKind::Paragraph, Need::Required, "", "", ""},
         &Concession::scope},
        {{"until", "Holds until", FieldKind::Date, Need::Optional, "", "", ""}, &Concession::until},
        {{"file_sha256", "File", FieldKind::Sha256, Need::Optional, "", "", ""},
         &Concession::fileSha256},
    };
    return kFields;
}

}  // namespace model
