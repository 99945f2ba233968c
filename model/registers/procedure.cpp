// SPDX-License-Identifier: Apache-2.0
#include "registers/procedure.h"

namespace model {
namespace {

using Need = FieldInfo::Need;

}  // namespace

std::span<const Field<Procedure>> Procedure::fields() {
    static const Field<Procedure> kFields[] = {
        {{"number", "Number", FieldKind::Line, Need::Key, "", "", ""}, &Procedure::number},
        {{"revision", "Revision", FieldKind::Line, Need::Key, "", "", ""}, &Procedure::revision},
        {{"kind", "Kind", FieldKind::Choice, Need::Required, "", "procedure|technique sheet", ""},
         &Procedure::kind},
        {{"title", "Title", FieldKind::Line, Need::Required, "", "", ""}, &Procedure::title},
        {{"method", "Method", FieldKind::Choice, Need::Required, "", "MT|PT|UT", ""},
         &Procedure::method},
        {{"standards", "Test standards", FieldKind::List, Need::Optional, "", "",
          "With edition: ISO 9934-1:2016"},
         &Procedure::standards},
        {{"condition_sets", "Test conditions by", FieldKind::List, Need::Optional, "", "",
          "The sets of condition limits that a test by it has to keep"},
         &Procedure::conditionSets},
        {{"drift_rule", "Drift of settings by", FieldKind::Line, Need::Optional, "", "",
          "The set that says what follows from a drifted ultrasonic setting"},
         &Procedure::driftRule},
        {{"parent_procedure", "Belongs to procedure", FieldKind::Line, Need::Optional, "", "",
          "Of a technique sheet: number / revision of its procedure"},
         &Procedure::parentProcedure},
        {{"approved_by", "Approved by", FieldKind::Line, Need::Optional, "", "",
          "Person of Level 3 in the method"},
         &Procedure::approvedBy},
        {{"approved_on", "Approved on", FieldKind::Date, Need::Optional, "", "", ""},
         &Procedure::approvedOn},
        {{"state", "State", FieldKind::Choice, Need::Required, "", "current|obsolete", ""},
         &Procedure::state},
        {{"obsolete_from", "Obsolete from", FieldKind::Date, Need::Optional, "", "", ""},
         &Procedure::obsoleteFrom},
        {{"file_sha256", "File", FieldKind::Sha256, Need::Optional, "", "", ""},
         &Procedure::fileSha256},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &Procedure::remarks},
    };
    return kFields;
}

}  // namespace model
