// SPDX-License-Identifier: Apache-2.0
#include "archive/register_checks.h"

#include <algorithm>

#include "archive/register_acts.h"
#include "archive/stored_file.h"
#include "limits/words.h"
#include "registers/attached.h"
#include "registers/equipment.h"
#include "registers/nonconformance.h"
#include "registers/procedure.h"
#include "registers/qualification.h"

namespace model {
namespace {

constexpr std::string_view kPeople = "person";
constexpr std::string_view kRecords = "record";

/// A field of a register's entries that names something of another; empty names nothing.
struct Reference {
    std::string_view from;
    std::string_view field;
    std::string_view to;  ///< a register, kPeople or kRecords
};

constexpr Reference kReferences[] = {
    {EquipmentCheck::kRegister, "equipment", Equipment::kRegister},
    {Qualification::kRegister, "person", kPeople},
    {EyeTest::kRegister, "person", kPeople},
    {Authorisation::kRegister, "person", kPeople},
    {Procedure::kRegister, "parent_procedure", Procedure::kRegister},
    {Nonconformance::kRegister, "record", kRecords},
    {Disposition::kRegister, "nonconformance", Nonconformance::kRegister},
    {Excavation::kRegister, "nonconformance", Nonconformance::kRegister},
    {Excavation::kRegister, "cavity_record", OtherResult::kRegister},
    {WeldRepair::kRegister, "excavation", Excavation::kRegister},
    {HeatTreatment::kRegister, "weld_repairs", WeldRepair::kRegister},
    {Concession::kRegister, "nonconformance", Nonconformance::kRegister},
    {Attachment::kRegister, "record", kRecords},
};

Error notThere(std::string_view field, std::string_view what, const std::string& name) {
    return inputError(std::string(field), "names the %1 %2, which is not there",
                      {std::string(what), name});
}

Error ofAnother(std::string_view field, std::string_view what, const std::string& name) {
    return inputError(std::string(field), "names the %1 %2, which belongs to another casting",
                      {std::string(what), name});
}

/// `sql`: selects the casting of the one of this name, where it is there.
Result<void> checkOne(const Connection& connection, const StoredEntry& entry,
                      const Reference& reference, const std::string& name) {
    if (reference.to == kPeople) {
        SqlStatement statement(connection, "SELECT 1 FROM person WHERE id = ?");
        const auto row = statement.first(name);
        if (!row) return row.error();
        if (!*row) return notThere(reference.field, reference.to, name);
        return {};
    }
    const bool isRecord = reference.to == kRecords;
    SqlStatement statement(
        connection, isRecord ? "SELECT casting_serial FROM record WHERE CAST(id AS TEXT) = ?"
                             : "SELECT casting_serial FROM register_entry WHERE register = ? AND "
                               "entry = ? AND version = 1");
    const auto row =
        isRecord ? statement.first(name) : statement.first(std::string(reference.to), name);
    if (!row) return row.error();
    if (!*row) return notThere(reference.field, reference.to, name);
    if (entry.casting && statement.textOrNone(0) && *entry.casting != statement.text(0))
        return ofAnother(reference.field, reference.to, name);
    return {};
}

Result<void> checkFile(const std::string& folder, const StoredEntry& entry) {
    if (!entry.file) return {};
    const auto bytes = loadStoredFile(folder, *entry.file);
    if (!bytes && bytes.error().kind != ErrorKind::Damaged) return bytes.error();
    if (!bytes)
        return inputError("file_sha256", "names a file that the archive does not keep: %1",
                          {*entry.file});
    const std::string said = textIn(entry.content, "bytes");
    if (!said.empty() && said != std::to_string(bytes->size()))
        return inputError("bytes", "is not the size of the file, which has %1 bytes",
                          {std::to_string(bytes->size())});
    return {};
}

Result<void> checkApproval(const StoredEntry& entry, const StoredEntry* before,
                           const SignedIn& signer) {
    const std::string approver = textIn(entry.content, "approved_by");
    // That an approved one is no longer to be used is not the approval's to say.
    const auto unchanging = [](Canonical::Object content) {
        for (const char* key : {"state", "obsolete_from", "remarks"}) content.erase(key);
        return content;
    };
    const std::string approvedBefore = before ? textIn(before->content, "approved_by") : "";
    if (approver.empty() && approvedBefore.empty()) return {};
    if (before && unchanging(before->content) == unchanging(entry.content)) return {};
    const Person& person = signer.person();
    const auto method = methodFrom(textIn(entry.content, "method"));
    const auto level = method ? person.levels.find(*method) : person.levels.end();
    if (!signer.has(Role::Inspector) || level == person.levels.end() || level->second < 3)
        return refusal("approved_by",
                       "%1 cannot approve a procedure, nor change an approved one: that needs "
                       "Level 3 in %2 (ISO 9712)",
                       {person.name, textIn(entry.content, "method")});
    if (!approver.empty() && approver != person.id && approver != person.name)
        return inputError("approved_by", "names %1, but %2 signs it", {approver, person.name});
    return {};
}

}  // namespace

Result<std::vector<Error>> wrongReferences(const Connection& connection, const std::string& folder,
                                           const StoredEntry& entry) {
    std::vector<Error> wrong;
    const auto isWrong = [&](const Result<void>& checked) -> Result<void> {
        if (checked) return {};
        if (checked.error().kind != ErrorKind::Input) return checked;
        wrong.push_back(checked.error());
        return {};
    };
    if (entry.casting) {
        SqlStatement statement(connection, "SELECT 1 FROM casting WHERE serial = ?");
        const auto row = statement.first(*entry.casting);
        if (!row) return row.error();
        if (!*row) wrong.push_back(notThere("casting", "casting", *entry.casting));
    }
    for (const Reference& reference : kReferences) {
        if (reference.from != entry.registerName) continue;
        const std::string text = textIn(entry.content, reference.field);
        const bool isList = reference.field == "weld_repairs";
        for (const std::string& name : isList ? itemsOf(text) : std::vector{text})
            if (!name.empty())
                if (auto done = isWrong(checkOne(connection, entry, reference, name)); !done)
                    return done.error();
    }
    if (auto done = isWrong(checkFile(folder, entry)); !done) return done.error();
    return wrong;
}

Result<void> checkSigner(const StoredEntry& entry, const StoredEntry* before,
                         const SignedIn& signer) {
    const auto found = signedRegisters().find(entry.registerName);
    if (found == signedRegisters().end()) return {};
    if (std::ranges::none_of(found->second, [&](Role role) { return signer.has(role); })) {
        std::string roles;
        for (const Role role : found->second)
            roles += (roles.empty() ? "" : " or ") + std::string(word(role));
        return refusal("", "%1 cannot sign this entry: that needs the role %2",
                       {signer.person().name, roles});
    }
    if (entry.registerName == Procedure::kRegister) return checkApproval(entry, before, signer);
    return {};
}

}  // namespace model
