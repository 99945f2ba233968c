// SPDX-License-Identifier: Apache-2.0
#include "demo_db/register_entries.h"

#include <algorithm>

#include "archive/registers.h"
#include "archive/signed_record.h"
#include "demo_db/scenario_files.h"
#include "exchange/json_document.h"
#include "judge/sheet_words.h"
#include "limits/words.h"
#include "registers/every_register.h"

namespace demo {
namespace {

using model::Canonical;
using model::JsonFields;
using model::JsonValue;
using model::Result;

constexpr std::size_t kMost = 1000;  // entries in one file

Canonical convert(const JsonFields& in, std::string_view name, const JsonValue& value) {
    switch (value.type()) {
        case JsonValue::Type::String:
            return value.string();
        case JsonValue::Type::Array: {
            Canonical::Array array;
            for (const JsonValue& element : value.elements())
                array.push_back(convert(in, name, element));
            return array;
        }
        case JsonValue::Type::Object: {
            Canonical::Object object;
            for (const model::JsonMember& member : value.members())
                object[member.name] = convert(in, name, member.value);
            return object;
        }
        default:
            in.report(name, "may hold texts only");
            return {};
    }
}

const model::EmbeddedFile* named(std::span<const model::EmbeddedFile> files,
                                 std::string_view name) {
    const auto found = std::ranges::find(files, name, &model::EmbeddedFile::name);
    return found == files.end() ? nullptr : &*found;
}

/// Keeps the entry's picture with the archive's files and names it in the entry.
Result<void> keepPicture(model::Archive& archive, const RegisterEntry& entry,
                         Canonical::Object& fields) {
    const model::EmbeddedFile* const picture = named(pictureFiles(), entry.picture);
    if (picture == nullptr)
        return model::inputError("demonstration", "has no picture %1", {entry.picture});
    auto digest = model::keepFile(archive, picture->text);
    if (!digest) return digest.error();
    fields["file_sha256"] = std::move(*digest);
    fields["file_name"] = entry.picture;
    fields["media_type"] = "image/png";
    fields["bytes"] = std::to_string(picture->text.size());
    return {};
}

template <class T>
Result<void> save(model::Archive& archive, const RegisterEntry& entry,
                  const Canonical::Object& fields, const SignedIns& staff) {
    const auto value = model::fromCanonicalFields<T>(fields);
    if (!value)
        return model::inputError("demonstration", "an entry of the register %1 has other fields",
                                 {entry.registerName});
    const auto saved = model::signersOf(T::kRegister).empty()
                           ? model::saveEntry(archive, *value, 0, model::Actor{entry.by})
                           : model::saveEntry(archive, *value, 0, staff.at(entry.by));
    if (!saved) return saved.error();
    return {};
}

}  // namespace

Canonical canonicalFrom(const JsonFields& in, std::string_view name) {
    const JsonValue* const value = in.required(name);
    return value == nullptr ? Canonical() : convert(in, name, *value);
}

RegisterEntry readRegisterEntry(const JsonValue& value, const std::string& path,
                                const std::string& casting, model::JsonProblem& problem) {
    const JsonFields in(value, path, problem, {"register", "on", "by", "entry", "picture"});
    RegisterEntry read;
    read.on = in.filledText("on");
    read.by = in.filledText("by");
    read.registerName = in.filledText("register");
    const Canonical fields = canonicalFrom(in, "entry");
    if (fields.object() == nullptr) {
        in.report("entry", "must be an object");
    } else {
        read.fields = *fields.object();
        if (!casting.empty()) read.fields["casting"] = casting;
    }
    if (in.has("picture")) read.picture = in.filledText("picture");
    return read;
}

Result<std::vector<RegisterEntry>> readWorksEntries() {
    const model::EmbeddedFile& file = worksFiles().front();
    const std::string name(file.name);
    const Result<JsonValue> document = model::parseJson(file.text, name);
    if (!document) return document.error();
    model::JsonProblem problem(name);
    const JsonFields in(*document, "", problem, {"entries"});
    std::vector<RegisterEntry> entries;
    for (const JsonValue& entry : in.array("entries", kMost))
        entries.push_back(
            readRegisterEntry(entry, model::elementPath("entries", entries.size()), "", problem));
    if (problem.first()) return *problem.first();
    return entries;
}

Result<std::string> recordNamed(const model::Archive& archive, const std::string& casting,
                                const std::string& text) {
    if (!text.starts_with('@')) return text;
    const auto file = archive.casting(casting);
    if (!file) return file.error();
    const auto states = model::examinationStates(archive, casting);
    if (!states) return states.error();
    for (const model::ExaminationDraft& draft : file->examinations) {
        const model::Examination& header = draft.header;
        const std::string name = "@" + header.zone + " " + std::string(model::word(header.method)) +
                                 " " + std::to_string(header.repairCycle);
        if (name != text) continue;
        const auto state =
            std::ranges::find(*states, draft.id, &model::ExaminationState::examination);
        if (state != states->end() && state->standing() != nullptr)
            return std::to_string(state->standing()->id);
    }
    return model::inputError("demonstration", "%1 has no signed record %2", {casting, text});
}

Result<void> enter(model::Archive& archive, const RegisterEntry& entry, const SignedIns& staff) {
    Canonical::Object fields = entry.fields;
    if (const auto record = fields.find("record");
        record != fields.end() && record->second.text() != nullptr) {
        const auto casting = fields.find("casting");
        auto number = recordNamed(archive, casting == fields.end() ? "" : *casting->second.text(),
                                  *record->second.text());
        if (!number) return number.error();
        record->second = std::move(*number);
    }
    if (!entry.picture.empty())
        if (auto kept = keepPicture(archive, entry, fields); !kept) return kept;
    Result<void> done;
    const bool found = model::withRegister(
        entry.registerName, [&]<class T>() { done = save<T>(archive, entry, fields, staff); });
    if (!found)
        return model::inputError("demonstration", "there is no register \"%1\"",
                                 {entry.registerName});
    return done;
}

}  // namespace demo
