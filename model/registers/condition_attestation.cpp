// SPDX-License-Identifier: Apache-2.0
#include "registers/condition_attestation.h"

namespace model {
namespace {

using Need = FieldInfo::Need;

}  // namespace

std::span<const Field<ConditionSetAttestation>> ConditionSetAttestation::fields() {
    static const Field<ConditionSetAttestation> kFields[] = {
        {{"set", "Set of test conditions", FieldKind::Line, Need::Key, "", "", "Its id"},
         &ConditionSetAttestation::set},
        {{"sha256", "SHA-256 of the set", FieldKind::Sha256, Need::Key, "", "", ""},
         &ConditionSetAttestation::sha256},
        {{"company_copy", "Compared with", FieldKind::Line, Need::Required, "", "",
          "The company's own copy of the standard"},
         &ConditionSetAttestation::companyCopy},
        {{"state", "State", FieldKind::Choice, Need::Required, "", "attested|withdrawn", ""},
         &ConditionSetAttestation::state},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "",
          "Why it was withdrawn"},
         &ConditionSetAttestation::remarks},
    };
    return kFields;
}

}  // namespace model
