// SPDX-License-Identifier: Apache-2.0
#include "registers/consumable.h"

namespace model {
namespace {

using Need = FieldInfo::Need;

}  // namespace

std::span<const Field<Consumable>> Consumable::fields() {
    static const Field<Consumable> kFields[] = {
        {{"id", "Number", FieldKind::Line, Need::Key, "", "", "The works' own number of the batch"},
         &Consumable::id},
        {{"kind", "Kind", FieldKind::Choice, Need::Required, "",
          "penetrant|remover|developer|magnetic ink|magnetic powder|contrast "
          "paint|couplant|cleaner|other",
          ""},
         &Consumable::kind},
        {{"product", "Product", FieldKind::Line, Need::Required, "", "", ""}, &Consumable::product},
        {{"maker", "Maker", FieldKind::Line, Need::Required, "", "", ""}, &Consumable::maker},
        {{"batch", "Batch", FieldKind::Line, Need::Required, "", "", ""}, &Consumable::batch},
        {{"expires_on", "Expires on", FieldKind::Date, Need::Optional, "", "",
          "The last day on which it may be used"},
         &Consumable::expiresOn},
        {{"type", "Type", FieldKind::Choice, Need::Optional, "",
          "fluorescent|colour contrast|dual purpose", ""},
         &Consumable::type},
        {{"designation", "Designation", FieldKind::Line, Need::Optional, "", "",
          "Of a penetrant system: type, method, developer form and level (ISO 3452-1)"},
         &Consumable::designation},
        {{"sensitivity_level", "Sensitivity level", FieldKind::Line, Need::Optional, "", "",
          "Of a penetrant: 1/2 to 4 fluorescent, 1 or 2 colour contrast (ISO 3452-2)"},
         &Consumable::sensitivityLevel},
        {{"batch_certificate", "Batch certificate", FieldKind::Line, Need::Optional, "", "",
          "Number of the maker's certificate of sulphur and halogens"},
         &Consumable::batchCertificate},
        {{"sulphur", "Sulphur", FieldKind::Number, Need::Optional, "mg/kg", "", ""},
         &Consumable::sulphur},
        {{"halogens", "Chlorine and fluorine", FieldKind::Number, Need::Optional, "mg/kg", "", ""},
         &Consumable::halogens},
        {{"opened_on", "Opened on", FieldKind::Date, Need::Optional, "", "", ""},
         &Consumable::openedOn},
        {{"state", "State", FieldKind::Choice, Need::Required, "", "in use|used up|withdrawn", ""},
         &Consumable::state},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &Consumable::remarks},
    };
    return kFields;
}

}  // namespace model
