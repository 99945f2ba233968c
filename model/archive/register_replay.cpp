// SPDX-License-Identifier: Apache-2.0
#include "archive/register_replay.h"

#include "archive/history_store.h"
#include "archive/register_acts.h"
#include "archive/register_store.h"
#include "archive/replay_digest.h"

namespace model {
namespace {

std::string nameOf(const std::string& registerName, const std::string& key, std::int64_t version) {
    return registerName + " " + key + " version " + std::to_string(version);
}

/// What is compared: what names it, its fields, and what its columns repeat of them.
Digest digestOf(const StoredEntry& entry) {
    Canonical::Object object;
    object["register"] = entry.registerName;
    object["key"] = entry.key;
    object["version"] = entry.version;
    object["entry"] = entry.content;
    if (entry.casting) object["casting"] = *entry.casting;
    if (entry.file) object["file"] = *entry.file;
    return replayed::digestOf(object);
}

std::optional<std::string> textOrNone(const Canonical::Object& content, std::string_view key) {
    std::string text = textIn(content, key);
    return text.empty() ? std::nullopt : std::optional(std::move(text));
}

}  // namespace

bool RegisterReplay::follows(const std::string& action) {
    return action == action::kEntrySaved || !signedRegisterOf(action).empty();
}

bool RegisterReplay::take(const HistoryEntry& entry, const Canonical::Object& content) {
    const auto version = content.find("version");
    const auto fields = content.find("entry");
    StoredEntry expected;
    expected.registerName = textIn(content, "register");
    if (version == content.end() || !version->second.whole() || fields == content.end() ||
        !fields->second.object() || savingAction(expected.registerName) != entry.action)
        return false;
    expected.key = entry.subject;
    expected.version = *version->second.whole();
    expected.content = *fields->second.object();
    expected.casting = textOrNone(expected.content, "casting");
    expected.file = textOrNone(expected.content, "file_sha256");
    std::int64_t& last = versions_[expected.registerName + " " + expected.key];
    if (expected.version != ++last) return false;
    expected_[entry.sequence] = {nameOf(expected.registerName, expected.key, expected.version),
                                 digestOf(expected)};
    return true;
}

Result<void> RegisterReplay::compare(const Connection& connection, std::vector<Error>& findings) {
    const auto stored = loadEntries(connection, {.allVersions = true, .byKey = true});
    if (!stored) return stored.error();
    for (const StoredEntry& entry : *stored) {
        const std::string name = nameOf(entry.registerName, entry.key, entry.version);
        const auto expected = expected_.find(entry.sequence);
        if (expected == expected_.end()) {
            findings.push_back(connection.damaged(name, replayed::kUnknown));
            continue;
        }
        if (digestOf(entry) != expected->second.digest)
            findings.push_back(connection.damaged(expected->second.name, replayed::kAltered));
        expected_.erase(expected);
    }
    for (const auto& [sequence, expected] : expected_)
        findings.push_back(connection.damaged(expected.name, "is gone"));
    return {};
}

}  // namespace model
