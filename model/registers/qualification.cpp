// SPDX-License-Identifier: Apache-2.0
#include "registers/qualification.h"

namespace model {
namespace {

using Need = FieldInfo::Need;

}  // namespace

std::span<const Field<Qualification>> Qualification::fields() {
    static const Field<Qualification> kFields[] = {
        {{"person", "Person", FieldKind::Line, Need::Key, "", "", "Id of the person"},
         &Qualification::person},
        {{"method", "Method", FieldKind::Choice, Need::Key, "", "MT|PT|UT|VT|RT", ""},
         &Qualification::method},
        {{"certificate", "Certificate number", FieldKind::Line, Need::Key, "", "", ""},
         &Qualification::certificate},
        {{"scheme", "Scheme", FieldKind::Line, Need::Required, "", "",
          "Such as ISO 9712:2021 or SNT-TC-1A with its edition"},
         &Qualification::scheme},
        {{"level", "Level", FieldKind::Choice, Need::Required, "", "1|2|3", ""},
         &Qualification::level},
        {{"sector", "Sector", FieldKind::Line, Need::Optional, "", "",
          "Product or industrial sector that it holds for, such as castings"},
         &Qualification::sector},
        {{"body", "Certification body", FieldKind::Line, Need::Optional, "", "", ""},
         &Qualification::body},
        {{"issued_on", "Issued on", FieldKind::Date, Need::Required, "", "", ""},
         &Qualification::issuedOn},
        {{"expires_on", "Expires on", FieldKind::Date, Need::Required, "", "",
          "The last day on which it holds"},
         &Qualification::expiresOn},
        {{"state", "State", FieldKind::Choice, Need::Required, "", "valid|interrupted|withdrawn",
          "Interrupted: a long break in the work ended it"},
         &Qualification::state},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &Qualification::remarks},
    };
    return kFields;
}

std::span<const Field<EyeTest>> EyeTest::fields() {
    static const Field<EyeTest> kFields[] = {
        {{"person", "Person", FieldKind::Line, Need::Key, "", "", "Id of the person"},
         &EyeTest::person},
        {{"kind", "Kind", FieldKind::Choice, Need::Key, "", "near vision|colour perception", ""},
         &EyeTest::kind},
        {{"tested_on", "Tested on", FieldKind::Date, Need::Key, "", "", ""}, &EyeTest::testedOn},
        {{"chart", "Chart", FieldKind::Line, Need::Optional, "", "",
          "Such as Jaeger 1 at 30 cm or ISO 18490"},
         &EyeTest::chart},
        {{"by", "Tested by", FieldKind::Line, Need::Optional, "", "", ""}, &EyeTest::by},
        {{"result", "Result", FieldKind::Choice, Need::Required, "",
          "passed|passed with glasses|failed", ""},
         &EyeTest::result},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &EyeTest::remarks},
    };
    return kFields;
}

std::span<const Field<Authorisation>> Authorisation::fields() {
    static const Field<Authorisation> kFields[] = {
        {{"person", "Person", FieldKind::Line, Need::Key, "", "", "Id of the person"},
         &Authorisation::person},
        {{"method", "Method", FieldKind::Choice, Need::Key, "", "MT|PT|UT|VT|RT", ""},
         &Authorisation::method},
        {{"granted_on", "Granted on", FieldKind::Date, Need::Key, "", "", ""},
         &Authorisation::grantedOn},
        {{"procedures", "Procedures", FieldKind::List, Need::Optional, "", "",
          "Numbers; empty: all procedures of the method"},
         &Authorisation::procedures},
        {{"scope", "Scope", FieldKind::Line, Need::Optional, "", "",
          "What the person may do, in words"},
         &Authorisation::scope},
        {{"by", "Granted by", FieldKind::Line, Need::Required, "", "", ""}, &Authorisation::by},
        {{"until", "Holds until", FieldKind::Date, Need::Optional, "", "",
          "Empty: until withdrawn"},
         &Authorisation::until},
        {{"state", "State", FieldKind::Choice, Need::Required, "", "valid|withdrawn", ""},
         &Authorisation::state},
        {{"remarks", "Remarks", FieldKind::Paragraph, Need::Optional, "", "", ""},
         &Authorisation::remarks},
    };
    return kFields;
}

}  // namespace model
