// SPDX-License-Identifier: Apache-2.0
#include "exporting/record_json.h"

#include "archive/signed_record.h"
#include "base/digest.h"
#include "exchange/canonical_json.h"
#include "exchange/json_document.h"
#include "exchange/json_text.h"
#include "exporting/certificate_json.h"
#include "judge/sheet_words.h"
#include "trust/chain.h"

namespace app {
namespace {

using model::JsonValue;
using model::Result;

JsonValue actOf(const model::SignedAct& act) {
    JsonValue::Members members{{"person", JsonValue::string(act.person)},
                               {"name", JsonValue::string(act.name)},
                               {"time", JsonValue::string(act.time)}};
    if (!act.reason.empty()) members.push_back({"reason", JsonValue::string(act.reason)});
    return JsonValue::object(std::move(members));
}

/// A finding about the conditions with its sentence whole, as it was shown.
JsonValue findingOf(const JsonValue& finding) {
    model::Error said;
    JsonValue::Members members;
    if (const JsonValue* arguments = finding.find("arguments"))
        for (const JsonValue& argument : arguments->elements())
            said.arguments.push_back(argument.string());
    for (const model::JsonMember& member : finding.members()) {
        if (member.name == "arguments") continue;
        if (member.name != "reason") {
            members.push_back(member);
            continue;
        }
        said.reason = member.value.string();
        members.push_back({"reason", JsonValue::string(said.message())});
    }
    return JsonValue::object(std::move(members));
}

JsonValue contentOf(const model::Canonical& content) {
    const JsonValue whole = model::jsonInUnits(content);
    JsonValue::Members members;
    for (const model::JsonMember& member : whole.members())
        members.push_back({member.name, member.name == "findings"
                                            ? JsonValue::arrayOf(member.value.elements(), findingOf)
                                            : member.value});
    return JsonValue::object(std::move(members));
}

Result<JsonValue> signedRecordOf(const model::Archive& archive, std::int64_t id) {
    const auto record = model::signedRecord(archive, id);
    if (!record) return record.error();
    const auto bytes = model::signedRecordContent(archive, id);
    if (!bytes) return bytes.error();
    const auto content = model::parseCanonical(*bytes);
    if (!content) return content.error();
    JsonValue::Members members{
        {"id", JsonValue::count(record->id)},
        {"examination", JsonValue::count(record->examination)},
        {"revision", JsonValue::count(record->revision)},
        {"word", JsonValue::string(word(record->word))},
        {"recorded", actOf(record->recorded)},
        {"content_sha256", JsonValue::string(model::toHex(model::sha256(*bytes)))}};
    if (record->invalid) members.push_back({"invalid", actOf(*record->invalid)});
    if (record->givenBack) members.push_back({"given_back", actOf(*record->givenBack)});
    members.push_back({"content", contentOf(*content)});
    return JsonValue::object(std::move(members));
}

/// The record with the sheet and the verdict behind its other members, as they are stored: they
/// hold what the strict reader refuses (null), but were written by writeJson() as the record is.
Result<std::string> withDocuments(std::string record, const std::string& sheet,
                                  const std::string& verdict) {
    const std::size_t end = record.rfind("\n}");
    if (end == std::string::npos)
        return model::Error{model::ErrorKind::Damaged, "", "the record is not understood", {}};
    record.resize(end);
    const auto indented = [](const std::string& document) {
        std::string text;
        for (const char c : document.substr(0, document.find_last_not_of('\n') + 1)) {
            text += c;
            if (c == '\n') text += "  ";
        }
        return text;
    };
    return record + ",\n  \"sheet\": " + indented(sheet) +
           ",\n  \"verdict\": " + indented(verdict) + "\n}\n";
}

}  // namespace

JsonValue::Members statedMembers(const model::FoundCertificate& found,
                                 const model::Certificate& certificate) {
    JsonValue::Members members = certificateMembers(found);
    const model::IssueFacts& facts = certificate.facts;
    members.push_back({"language", JsonValue::string(facts.language)});
    members.push_back({"history_head", facts.printedHead
                                           ? JsonValue::string(model::toText(*facts.printedHead))
                                           : JsonValue()});
    members.push_back({"limit_tables",
                       JsonValue::strings({facts.tableDigests.begin(), facts.tableDigests.end()})});
    members.push_back({"file_sha256", JsonValue::string(certificate.fileDigest)});
    members.push_back({"file_bytes", JsonValue::count(certificate.fileSize)});
    return members;
}

Result<std::string> recordJson(const model::Archive& archive, const model::FoundCertificate& found,
                               const model::Certificate& certificate,
                               const model::Presented& presented) {
    JsonValue::Elements records;
    for (const std::int64_t id : presented.records) {
        auto record = signedRecordOf(archive, id);
        if (!record) return record.error();
        records.push_back(std::move(*record));
    }
    const auto dossier = model::presentedDossier(archive, found.number);
    if (!dossier) return dossier.error();
    const auto sheet = model::presentedSheet(archive, found.number);
    if (!sheet) return sheet.error();
    const auto verdict = model::presentedVerdict(archive, found.number);
    if (!verdict) return verdict.error();
    const bool demonstration = archive.kind() == model::ArchiveKind::Demonstration;
    return withDocuments(model::writeJson(JsonValue::object(
                             {{"format", JsonValue::string("fettlemark-casting-record/1")},
                              {"demonstration", JsonValue::boolean(demonstration)},
                              {"certificate", JsonValue::object(statedMembers(found, certificate))},
                              {"records", JsonValue::array(std::move(records))},
                              {"missing_tests", JsonValue::strings(presented.missingTests)},
                              {"dossier", model::dossierToJson(*dossier)}})),
                         *sheet, *verdict);
}

}  // namespace app
