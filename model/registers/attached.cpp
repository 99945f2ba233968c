// SPDX-License-Identifier: Apache-2.0
#include "registers/attached.h"

namespace model {
namespace {

using Need = FieldInfo::Need;

}  // namespace

std::span<const Field<OtherResult>> OtherResult::fields() {
    static const Field<OtherResult> kFields[] = {
        {{"number", "Number", FieldKind::Line, Need::Key, "", "", ""}, &OtherResult::number},
        {{"casting", "Casting", FieldKind::Line, Need::Required, "", "", ""},
         &OtherResult::casting},
        {{"zone", "Zone", FieldKind::Line, Need::Optional, "", "", "Empty: the whole casting"},
         &OtherResult::zone},
        {{"test", "Test", FieldKind::Choice, Need::Required, "",
          "visual|radiographic|dimensional|hardness|pressure|chemical|mechanical|magnetic "
          "particle|penetrant|ultrasonic|other",
          ""},
         &OtherResult::test},
        {{"standard", "Standard", FieldKind::Line, Need::Required, "", "", "With edition"},
         &OtherResult::standard},
        {{"criteria", "Acceptance criteria", FieldKind::Line, Need::Optional, "", "",
          "Standard, edition and level"},
         &OtherResult::criteria},
        {{"verdict", "Verdict", FieldKind::Choice, Need::Required, "",
          "acceptable|not acceptable|not judged", ""},
         &OtherResult::verdict},
        {{"performed_by", "Performed by", FieldKind::Line, Need::Required, "", "",
          "Person, and firm where it is not the works"},
         &OtherResult::performedBy},
        {{"subcontracted", "From an outside laboratory", FieldKind::YesNo, Need::Optional, "", "",
          ""},
         &OtherResult::subcontracted},
        {{"customer_supplied", "Supplied by the customer", FieldKind::YesNo, Need::Optional, "", "",
          ""},
         &OtherResult::customerSupplied},
        {{"performed_on", "Performed on", FieldKind::Date, Need::Required, "", "", ""},
         &OtherResult::performedOn},
        {{"report", "Report", FieldKind::Line, Need::Required, "", "", "Number and revision"},
         &OtherResult::report},
        {{"file_sha256", "File", FieldKind::Sha256, Need::Optional, "", "", ""},
         &OtherResult::fileSha256},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &OtherResult::remarks},
    };
    return kFields;
}

std::span<const Field<Attachment>> Attachment::fields() {
    static const Field<Attachment> kFields[] = {
        {{"number", "Number", FieldKind::Line, Need::Key, "", "", ""}, &Attachment::number},
        {{"casting", "Casting", FieldKind::Line, Need::Required, "", "", ""}, &Attachment::casting},
        {{"zone", "Zone", FieldKind::Line, Need::Optional, "", "", ""}, &Attachment::zone},
        {{"indication", "Indication", FieldKind::Line, Need::Optional, "", "", ""},
         &Attachment::indication},
        {{"record", "Record", FieldKind::Whole, Need::Optional, "", "", ""}, &Attachment::record},
        {{"title", "Title", FieldKind::Line, Need::Required, "", "", ""}, &Attachment::title},
        {{"revision", "Revision", FieldKind::Line, Need::Optional, "", "", ""},
         &Attachment::revision},
        {{"kind", "Kind", FieldKind::Choice, Need::Required, "",
          "photo|drawing|sketch|chart|report|certificate|other", ""},
         &Attachment::kind},
        {{"scale", "Scale", FieldKind::Line, Need::Optional, "", "",
          "Of a photo: what shows the size in it, such as a 100 mm rule"},
         &Attachment::scale},
        {{"datum", "Datum", FieldKind::Line, Need::Optional, "", "",
          "Of a photo: where it is on the casting, and which way is up"},
         &Attachment::datum},
        {{"file_name", "File name", FieldKind::Line, Need::Required, "", "", ""},
         &Attachment::fileName},
        {{"media_type", "Type of file", FieldKind::Line, Need::Required, "", "", ""},
         &Attachment::mediaType},
        {{"file_sha256", "File", FieldKind::Sha256, Need::Required, "", "", ""},
         &Attachment::fileSha256},
        {{"bytes", "Size", FieldKind::Whole, Need::Required, "bytes", "", ""}, &Attachment::bytes},
        {{"printed", "Printed on the certificate", FieldKind::YesNo, Need::Optional, "", "", ""},
         &Attachment::printed},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &Attachment::remarks},
    };
    return kFields;
}

}  // namespace model
