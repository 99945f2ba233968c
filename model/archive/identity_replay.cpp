// SPDX-License-Identifier: Apache-2.0
#include "archive/identity_replay.h"

#include <algorithm>

#include "archive/archive_key.h"
#include "archive/history_store.h"
#include "archive/identity_store.h"
#include "archive/person_store.h"

namespace model {
namespace {

std::string identityName(std::int64_t number) {
    return "identity " + std::to_string(number);
}

std::string keyName(std::int64_t identity) {
    return "key of " + identityName(identity);
}

std::string withdrawalName(std::int64_t identity) {
    return "withdrawal of " + identityName(identity);
}

std::string listName(std::int64_t number) {
    return "revocation list " + std::to_string(number);
}

const std::int64_t* wholeIn(const Canonical::Object& object, const char* key) {
    const auto found = object.find(key);
    return found == object.end() ? nullptr : found->second.whole();
}

/// Moves what `keys` name out of `content`, as far as it is there.
Canonical::Object taken(Canonical::Object& content, std::initializer_list<const char*> keys) {
    Canonical::Object object;
    for (const char* key : keys) {
        const auto found = content.find(key);
        if (found == content.end()) continue;
        object[key] = std::move(found->second);
        content.erase(found);
    }
    return object;
}

Canonical::Object withdrawalContent(const Withdrawal& withdrawal) {
    Canonical::Object content;
    content["reason"] = withdrawal.reason;
    if (!withdrawal.remark.empty()) content["remark"] = withdrawal.remark;
    content["row"] = withdrawal.row;
    return content;
}

}  // namespace

bool IdentityReplay::follows(const std::string& action) {
    static constexpr std::string_view kActions[] = {
        action::kArchiveKeyMade,     action::kArchiveKeyReplaced,
        action::kAuthorityMade,      action::kAuthorityTrusted,
        action::kPersonSaved,        action::kIdentityIssued,
        action::kIdentityImported,   action::kIdentityWithdrawn,
        action::kPassphraseChanged,  action::kPassphraseWrong,
        action::kPassphraseRight,    action::kAuthorityPassphraseChanged,
        action::kRevocationListTaken};
    return std::ranges::find(kActions, action) != std::end(kActions);
}

bool IdentityReplay::take(const HistoryEntry& entry, const Canonical::Object& content) {
    const std::string& did = entry.action;
    if (did == action::kPersonSaved) {
        expected_["person " + entry.subject] = content;
        return true;
    }
    // The first is made with the archive; every other one is an administrator's act.
    if (did == action::kArchiveKeyMade || did == action::kArchiveKeyReplaced)
        return (did == action::kArchiveKeyMade) == (entry.subject == "1") &&
               expected_.emplace("archive key " + entry.subject, content).second;
    if (did == action::kIdentityWithdrawn) return takeWithdrawal(entry, content);
    if (did == action::kRevocationListTaken)
        return content.contains("revocation_list") && takeRevocationList(content);
    return takeIdentity(entry, content);
}

bool IdentityReplay::takeIdentity(const HistoryEntry& entry, Canonical::Object content) {
    const std::int64_t* number = wholeIn(content, "identity");
    if (!number) return false;
    const std::int64_t identity = *number;
    content.erase("identity");
    if (!takeRevocationList(content)) return false;
    content.erase("revocation_list");
    Canonical::Object key =
        taken(content, {"encrypted_key_sha256", "wrong_passphrases", "last_wrong_at"});
    static constexpr std::string_view kOnlyTheKey[] = {
        action::kPassphraseChanged, action::kAuthorityPassphraseChanged, action::kPassphraseWrong,
        action::kPassphraseRight};
    const bool isNew = std::ranges::find(kOnlyTheKey, entry.action) == std::end(kOnlyTheKey);
    if (isNew != !content.empty()) return false;
    if (isNew) expected_[identityName(identity)] = std::move(content);
    if (!key.empty()) expected_[keyName(identity)] = std::move(key);
    return true;
}

bool IdentityReplay::takeWithdrawal(const HistoryEntry& entry, const Canonical::Object& content) {
    const auto identities = content.find("identities");
    if (identities == content.end() || !identities->second.array()) return false;
    Canonical::Object left = content;
    Canonical::Object withdrawal = taken(left, {"reason", "remark"});
    withdrawal["row"] = entry.sequence;
    for (const Canonical& number : *identities->second.array()) {
        if (!number.whole()) return false;
        expected_[withdrawalName(*number.whole())] = withdrawal;
    }
    return takeRevocationList(content);
}

bool IdentityReplay::takeRevocationList(const Canonical::Object& content) {
    const auto list = content.find("revocation_list");
    if (list == content.end()) return true;
    const Canonical* number = list->second.member("number");
    if (!number || !number->whole()) return false;
    expected_[listName(*number->whole())] = list->second;
    return true;
}

void IdentityReplay::compareOne(const Connection& connection, const std::string& name,
                                const Canonical& content, std::vector<Error>& findings) {
    const auto expected = expected_.find(name);
    if (expected == expected_.end()) {
        findings.push_back(connection.damaged(name, "is stored, but not in the history"));
        return;
    }
    if (!(expected->second == content))
        findings.push_back(connection.damaged(name, "is not what the history says was written"));
    expected_.erase(expected);
}

Result<void> IdentityReplay::compareIdentities(const Connection& connection,
                                               std::vector<Error>& findings) {
    const auto rows = loadIdentities(connection);
    if (!rows) return rows.error();
    for (const IdentityRow& row : *rows) {
        compareOne(connection, identityName(row.number), canonicalOf(row), findings);
        if (!row.identity.encryptedKey.empty())
            compareOne(connection, keyName(row.number), canonicalKeyOf(row), findings);
        if (row.withdrawal)
            compareOne(connection, withdrawalName(row.number), withdrawalContent(*row.withdrawal),
                       findings);
    }
    const auto lists = loadRevocationLists(connection);
    if (!lists) return lists.error();
    for (const RevocationListRow& list : *lists)
        compareOne(connection, listName(list.number), canonicalOf(list), findings);
    return {};
}

Result<void> IdentityReplay::compare(const Connection& connection, std::vector<Error>& findings) {
    const auto people = loadPeople(connection, std::nullopt);
    if (!people) return people.error();
    for (const auto& person : *people)
        compareOne(connection, "person " + person.value.id, canonicalOf(person), findings);
    if (auto done = compareIdentities(connection, findings); !done) return done;
    const auto keys = archivePublicKeys(connection);
    if (!keys) return keys.error();
    for (const ArchivePublicKey& key : *keys)
        compareOne(connection, "archive key " + std::to_string(key.number), canonicalOf(key),
                   findings);
    for (const auto& [name, content] : expected_)
        findings.push_back(connection.damaged(name, "is gone"));
    return {};
}

}  // namespace model
