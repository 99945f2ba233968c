// SPDX-License-Identifier: Apache-2.0
#include "archive/record_content.h"

#include "archive/canonical_records.h"
#include "archive/signed_test.h"
#include "archive/typed_rows.h"
#include "base/decimal.h"
#include "exchange/size_json.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

Canonical::Array texts(const std::vector<std::string>& list) {
    Canonical::Array array;
    for (const std::string& text : list) array.emplace_back(text);
    return array;
}

template <class Row>
Canonical::Array list(const std::vector<Row>& rows) {
    Canonical::Array array;
    for (const Row& row : rows) array.emplace_back(canonicalOf(row));
    return array;
}

/// Numbers as decimal text, as everywhere that is computed; what is null is left out.
Canonical::Object canonicalOf(const JsonValue& object) {
    Canonical::Object canonical;
    for (const auto& [name, value] : object.members()) {
        switch (value.type()) {
            case JsonValue::Type::Boolean:
                canonical[name] = value.boolean();
                break;
            case JsonValue::Type::Number:
                canonical[name] = formatMillionths(value.millionths());
                break;
            case JsonValue::Type::String:
                canonical[name] = value.string();
                break;
            case JsonValue::Type::Array: {  // of texts
                Canonical::Array array;
                for (const JsonValue& element : value.elements())
                    array.emplace_back(element.string());
                canonical[name] = std::move(array);
                break;
            }
            case JsonValue::Type::Object:
                canonical[name] = canonicalOf(value);
                break;
            case JsonValue::Type::Null:
                break;
        }
    }
    return canonical;
}

/// What each reading gave; `reflector`: the number of its row, from 1.
Canonical::Array sizes(const ExaminationDraft& draft) {
    Canonical::Array array;
    for (std::size_t i = 0; i < draft.reflectors.size(); ++i) {
        const ReadReflector read = model::read(draft.reflectors[i], draft.settings);
        if (!read.size) continue;
        Canonical::Object entry = canonicalOf(sizeToJson(*read.size));
        entry["reflector"] = static_cast<std::int64_t>(i) + 1;
        array.emplace_back(std::move(entry));
    }
    return array;
}

Canonical::Object canonicalOf(const Check& check) {
    Canonical::Object object;
    object["rule"] = word(check.rule);
    object["class"] = check.classText;
    object["level"] = check.level;
    object["locator"] = check.source.locator;
    object["grade"] = word(check.source.grade);
    if (check.measured) object["measured"] = formatMillionths(*check.measured);
    if (check.limit) object["limit"] = formatMillionths(*check.limit);
    object["comparison"] = word(check.comparison);
    if (check.passes) object["passes"] = *check.passes;
    if (!check.reason.empty()) object["reason"] = check.reason;
    return object;
}

Canonical::Object canonicalOf(const ExaminationVerdict& verdict) {
    Canonical::Object object;
    object["word"] = word(verdict.word);
    object["table"] = verdict.tableId;
    object["table_revision"] = verdict.tableRevision;
    object["table_sha256"] = verdict.tableDigest;
    object["table_attested"] = verdict.attested;
    Canonical::Array checks;
    for (const Check& check : verdict.checks) checks.emplace_back(canonicalOf(check));
    object["checks"] = std::move(checks);
    object["reasons"] = texts(verdict.reasons);
    object["notes"] = texts(verdict.notes);
    object["program_version"] = programVersion();
    return object;
}

}  // namespace

std::string programVersion() {
    return FETTLEMARK_VERSION;
}

Canonical::Object canonicalOf(const SignedContent& content) {
    const ExaminationDraft& draft = content.draft;
    Canonical::Object object;
    object["format"] = "fettlemark-record/1";
    object["examination"] = draft.id;
    object["version"] = draft.version;
    object["revision"] = content.revision;
    object["header"] = canonicalHeader(draft);
    object["rows"] = list(draft.rows);
    if (!draft.settings.empty()) object["settings"] = list(draft.settings);
    if (!draft.reflectors.empty()) object["reflectors"] = list(draft.reflectors);
    if (auto sized = sizes(draft); !sized.empty()) object["sizes"] = std::move(sized);

    addTo(object, content.test);

    const CastingFile& file = content.casting.file;
    Canonical::Object order = canonicalOf(file.order);
    order["version"] = content.casting.orderVersion;
    object["order"] = std::move(order);
    Canonical::Object part = canonicalOf(file.part);
    part["version"] = content.casting.partVersion;
    object["part"] = std::move(part);
    Canonical::Object casting = canonicalOf(file.casting);
    casting["version"] = content.casting.castingVersion;
    object["casting"] = std::move(casting);

    object["judged"] = canonicalOf(content.verdict);
    Canonical::Array beside;
    for (const std::int64_t id : content.beside) beside.emplace_back(id);
    object["judged_with"] = std::move(beside);
    if (!content.rejection.empty()) object["rejection"] = content.rejection;
    object["word"] = word(content.rejection.empty() ? content.verdict.word : Word::NotAcceptable);
    Canonical::Object inspector;
    inspector["id"] = content.inspector.id;
    inspector["name"] = content.inspector.name;
    const auto level = content.inspector.levels.find(draft.header.method);
    if (level != content.inspector.levels.end()) inspector["level"] = level->second;
    object["inspector"] = std::move(inspector);
    return object;
}

}  // namespace model
