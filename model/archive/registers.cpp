// SPDX-License-Identifier: Apache-2.0
#include "archive/registers.h"

#include "archive/archive_access.h"
#include "archive/history_store.h"
#include "archive/holdings_store.h"
#include "archive/record_store.h"
#include "archive/register_acts.h"
#include "archive/register_checks.h"
#include "archive/register_store.h"
#include "archive/stored_file.h"
#include "registers/condition_attestation.h"

namespace model {
namespace {

/// Every character of a key is seen, and keys of several texts cannot be mistaken for others.
template <class T>
Result<void> checkKey(const T& entry) {
    int keys = 0;
    for (const Field<T>& field : T::fields())
        keys += field.info.need == FieldInfo::Need::Key ? 1 : 0;
    for (const Field<T>& field : T::fields()) {
        if (field.info.need != FieldInfo::Need::Key) continue;
        const std::string& text = entry.*field.text;
        if (text.front() == ' ' || text.back() == ' ' ||
            text.find_first_of("\t\r\n") != std::string::npos)
            return inputError(std::string(field.info.key),
                              "begins or ends with a blank, or holds a tabulator");
        if (keys > 1 && text.find(" / ") != std::string::npos)
            return inputError(std::string(field.info.key), "cannot hold \" / \"");
    }
    return {};
}

template <class T>
StoredEntry entryOf(const T& entry) {
    StoredEntry stored;
    stored.registerName = std::string(T::kRegister);
    stored.key = keyOf(entry);
    stored.content = canonicalFields(entry);
    if (std::string casting = textIn(stored.content, "casting"); !casting.empty())
        stored.casting = std::move(casting);
    if (std::string file = textIn(stored.content, "file_sha256"); !file.empty())
        stored.file = std::move(file);
    return stored;
}

template <class T>
Result<StoredEntry> checkedEntry(const T& entry) {
    for (FieldError& wrong : wrongFields(entry)) {
        wrong.error.place = wrong.field;
        return std::move(wrong.error);
    }
    if (auto checked = checkKey(entry); !checked) return checked.error();
    return entryOf(entry);
}

Result<std::int64_t> save(Archive& archive, StoredEntry entry, std::int64_t knownVersion,
                          const Actor& actor, const SignedIn* signer) {
    const bool isSigned = !signersOf(entry.registerName).empty();
    if (isSigned && !signer)
        return refusal("", "the register of %1 takes signed entries only: sign in first",
                       {entry.registerName});
    const std::string& folder = ArchiveAccess::folder(archive);
    return ArchiveAccess::write(
        archive, actor, [&](WriteTransaction& transaction) -> Result<std::int64_t> {
            const Connection& connection = transaction.connection();
            const auto stored = loadEntries(
                connection, {.registerName = entry.registerName, .key = entry.key, .byKey = true});
            if (!stored) return stored.error();
            const StoredEntry* before = stored->empty() ? nullptr : &stored->front();
            auto version = nextVersion(connection, before ? before->version : 0,
                                       entry.registerName.c_str(), entry.key, knownVersion);
            if (!version) return version;
            if (before && before->casting != entry.casting)
                return inputError("casting", "cannot change: the entry belongs to the casting %1",
                                  {before->casting.value_or("")});
            if (signer)
                if (auto may = checkSigner(entry, before, *signer); !may) return may.error();
            const auto wrong = wrongReferences(connection, folder, entry);
            if (!wrong) return wrong.error();
            if (!wrong->empty()) return wrong->front();
            if (before && before->content == entry.content) {
                transaction.leaveAsIs();
                return before->version;
            }
            entry.version = *version;
            Canonical::Object content;
            content["register"] = entry.registerName;
            content["version"] = entry.version;
            content["entry"] = entry.content;
            const std::string action = savingAction(entry.registerName);
            const auto recorded =
                isSigned ? transaction.recordSigned(action, entry.key, std::move(content), *signer)
                         : transaction.record(action, entry.key, std::move(content));
            if (!recorded) return recorded.error();
            entry.sequence = transaction.head().sequence;
            if (auto added = addEntry(connection, entry); !added) return added.error();
            return entry.version;
        });
}

}  // namespace

const std::set<Role>& signersOf(std::string_view registerName) {
    static const std::set<Role> kNobody;
    const auto found = signedRegisters().find(registerName);
    return found == signedRegisters().end() ? kNobody : found->second;
}

template <class T>
Result<std::int64_t> saveEntry(Archive& archive, const T& entry, std::int64_t knownVersion,
                               const Actor& actor) {
    auto checked = checkedEntry(entry);
    if (!checked) return checked.error();
    return save(archive, std::move(*checked), knownVersion, actor, nullptr);
}

template <class T>
Result<std::int64_t> saveEntry(Archive& archive, const T& entry, std::int64_t knownVersion,
                               const SignedIn& signer) {
    auto checked = checkedEntry(entry);
    if (!checked) return checked.error();
    return save(archive, std::move(*checked), knownVersion, signer.actor(), &signer);
}

template <class T>
Result<std::vector<FieldError>> wrongReferences(const Archive& archive, const T& entry) {
    auto wrong = wrongReferences(ArchiveAccess::connection(archive), ArchiveAccess::folder(archive),
                                 entryOf(entry));
    if (!wrong) return wrong.error();
    std::vector<FieldError> errors;
    for (Error& error : *wrong) {
        std::string field = std::move(error.place);
        error.place.clear();
        errors.push_back({std::move(field), std::move(error)});
    }
    return errors;
}

Result<std::string> keepFile(Archive& archive, std::string_view bytes) {
    if (bytes.empty()) return inputError("", "the file is empty");
    if (bytes.size() > kLargestEntryFile)
        return inputError("", "the file has %1 bytes; at most %2 are kept",
                          {std::to_string(bytes.size()), std::to_string(kLargestEntryFile)});
    const Connection& connection = ArchiveAccess::connection(archive);
    if (connection.isReadOnly())
        return refusal(connection.place(),
                       "was opened for reading only: nothing was written to it");
    auto file = storeFile(ArchiveAccess::folder(archive), bytes);
    if (!file) return file.error();
    return std::move(file->digest);
}

Result<std::string> entryFile(const Archive& archive, const std::string& digest) {
    FieldInfo sha256;
    sha256.kind = FieldKind::Sha256;
    if (wrongText(sha256, digest) || digest.empty())
        return inputError("", "is no SHA-256: %1", {digest});
    return loadStoredFile(ArchiveAccess::folder(archive), digest);
}

template <class T>
Result<std::vector<Stored<T>>> entries(const Archive& archive) {
    return loadEntriesAs<T>(ArchiveAccess::connection(archive), {.byKey = true});
}

template <class T>
Result<std::vector<Stored<T>>> entriesOf(const Archive& archive, const std::string& casting) {
    return loadEntriesAs<T>(ArchiveAccess::connection(archive), {.casting = casting});
}

template <class T>
Result<Stored<T>> entry(const Archive& archive, const std::string& key) {
    const Connection& connection = ArchiveAccess::connection(archive);
    return onlyOne(connection, loadEntriesAs<T>(connection, {.key = key, .byKey = true}),
                   std::string(T::kRegister).c_str(), key);
}

template <class T>
Result<std::vector<Stored<T>>> versionsOf(const Archive& archive, const std::string& key) {
    return loadEntriesAs<T>(ArchiveAccess::connection(archive),
                            {.key = key, .allVersions = true, .byKey = true});
}

Result<Holdings> holdings(const Archive& archive) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    return loadHoldings(connection);
}

// A type is no expression, which the check takes it for.
// NOLINTBEGIN(bugprone-macro-parentheses)
#define FETTLEMARK_REGISTER(T)                                                                  \
    template Result<std::int64_t> saveEntry(Archive&, const T&, std::int64_t, const Actor&);    \
    template Result<std::int64_t> saveEntry(Archive&, const T&, std::int64_t, const SignedIn&); \
    template Result<std::vector<FieldError>> wrongReferences(const Archive&, const T&);         \
    template Result<std::vector<Stored<T>>> entries(const Archive&);                            \
    template Result<std::vector<Stored<T>>> entriesOf(const Archive&, const std::string&);      \
    template Result<Stored<T>> entry(const Archive&, const std::string&);                       \
    template Result<std::vector<Stored<T>>> versionsOf(const Archive&, const std::string&);
// NOLINTEND(bugprone-macro-parentheses)

FETTLEMARK_REGISTER(Equipment)
FETTLEMARK_REGISTER(EquipmentCheck)
FETTLEMARK_REGISTER(Consumable)
FETTLEMARK_REGISTER(Procedure)
FETTLEMARK_REGISTER(Qualification)
FETTLEMARK_REGISTER(EyeTest)
FETTLEMARK_REGISTER(Authorisation)
FETTLEMARK_REGISTER(Nonconformance)
FETTLEMARK_REGISTER(Disposition)
FETTLEMARK_REGISTER(Excavation)
FETTLEMARK_REGISTER(WeldRepair)
FETTLEMARK_REGISTER(HeatTreatment)
FETTLEMARK_REGISTER(Concession)
FETTLEMARK_REGISTER(OtherResult)
FETTLEMARK_REGISTER(Attachment)
FETTLEMARK_REGISTER(ConditionSetAttestation)
#undef FETTLEMARK_REGISTER

}  // namespace model
