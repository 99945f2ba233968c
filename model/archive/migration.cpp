// SPDX-License-Identifier: Apache-2.0
#include "archive/migration.h"

#include <cassert>
#include <filesystem>

#include "archive/dialect.h"
#include "archive/history_store.h"
#include "archive/schema_scripts.h"
#include "archive/transaction.h"

namespace model {
namespace {

/// Of each script in schema/, from 1; written into the history.
constexpr const char* kDescriptions[] = {"the first schema",
                                         "people, identities, seals and signatures",
                                         "finding certificates",
                                         "records, attestations, release and what follows it",
                                         "retention and disposal",
                                         "ultrasonic examinations",
                                         "order terms, test conditions and registers"};

/// What no migration may change.
struct Kept {
    Head head;
    std::int64_t historyBytes = 0;
    std::int64_t certificates = 0;
    std::int64_t certificateBytes = 0;

    friend bool operator==(const Kept&, const Kept&) = default;
};

Result<Kept> keptIn(const Connection& connection) {
    const auto head = historyHead(connection);
    if (!head) return head.error();
    SqlStatement statement(connection,
                           "SELECT (SELECT coalesce(sum(length(bytes)), 0) FROM history), "
                           "count(*), coalesce(sum(file_bytes), 0) FROM certificate");
    const auto row = statement.first();
    if (!row) return row.error();
    return Kept{*head, statement.whole(0), statement.whole(1), statement.whole(2)};
}

std::string freeBackupPath(const std::string& path, std::int64_t version) {
    const std::string first = path + ".schema-" + std::to_string(version) + ".backup";
    std::string candidate = first;
    std::error_code ignored;
    for (int number = 2; std::filesystem::exists(candidate, ignored); ++number)
        candidate = first + "-" + std::to_string(number);
    return candidate;
}

/// From a connection of its own, as the writing one is inside its transaction.
Result<void> makeBackup(const Connection& original, std::int64_t version, const Kept& kept) {
    const std::string target = freeBackupPath(original.place(), version);
    {
        const auto reader = dialect::openDatabase(original.place());
        if (!reader) return reader.error();
        if (auto copied = dialect::copyDatabase(**reader, target); !copied) return copied;
    }
    const auto copy = dialect::openDatabase(target);
    if (!copy) return copy.error();
    const auto id = dialect::applicationId(**copy);
    const auto itsVersion = dialect::schemaVersion(**copy);
    const auto broken = dialect::brokenThings(**copy);
    const auto itsKept = keptIn(**copy);
    if (!id) return id.error();
    if (!itsVersion) return itsVersion.error();
    if (!broken) return broken.error();
    if (!itsKept) return itsKept.error();
    if (*id != dialect::kApplicationId || *itsVersion != version || !broken->empty() ||
        *itsKept != kept)
        return Error{
            ErrorKind::Damaged, target, "is no true copy; the archive was left as it was", {}};
    return {};
}

Result<void> recordStep(WriteTransaction& transaction, const Migration& step) {
    Canonical::Object content;
    content["schema"] = step.version;
    content["description"] = step.description;
    return transaction.record(action::kArchiveMigrated, "schema " + std::to_string(step.version),
                              std::move(content));
}

/// From its first sealed schema on an archive has a key.
Result<void> recordFirstSealedStep(WriteTransaction& transaction, const Migration& step,
                                   ArchiveKey& key) {
    const auto made = key.make();
    if (!made) return made.error();
    transaction.sealWith(**made);
    if (auto done = recordStep(transaction, step); !done) return done;
    return addArchiveKey(transaction, **made, transaction.head().sequence);
}

Result<void> runSteps(WriteTransaction& transaction, std::int64_t version,
                      const std::vector<Migration>& steps, ArchiveKey& key) {
    const Connection& connection = transaction.connection();
    if (version >= kFirstSealedSchema) {
        const auto seal = key.forSealing(connection);
        if (!seal) return seal.error();
        transaction.sealWith(**seal);
    }
    for (const Migration& step : steps) {
        if (step.version <= version) continue;
        if (auto done = dialect::runScript(connection, step.script); !done) return done;
        if (auto done = dialect::setSchemaVersion(connection, step.version); !done) return done;
        if (auto done = step.version == kFirstSealedSchema
                            ? recordFirstSealedStep(transaction, step, key)
                            : recordStep(transaction, step);
            !done)
            return done;
    }
    return {};
}

Result<void> checkSteps(const Connection& connection, const Kept& before) {
    const auto broken = dialect::brokenThings(connection);
    if (!broken) return broken.error();
    if (!broken->empty())
        return connection.damaged("after bringing it up to date",
                                  broken->front() + "; the archive was left as it was");
    SqlStatement statement(connection, "SELECT hash FROM history WHERE sequence = ?");
    const auto row = statement.first(before.head.sequence);
    if (!row) return row.error();
    const auto after = keptIn(connection);
    if (!after) return after.error();
    const std::string_view hash(reinterpret_cast<const char*>(before.head.hash.data()),
                                before.head.hash.size());
    if (!*row || statement.blob(0) != hash || after->certificates != before.certificates ||
        after->certificateBytes != before.certificateBytes ||
        after->historyBytes < before.historyBytes)
        return connection.damaged("after bringing it up to date",
                                  "rows are missing; the archive was left as it was");
    return {};
}

Result<void> runAll(const Connection& connection, const std::vector<Migration>& steps,
                    ArchiveKey& key, const Clock& clock) {
    auto transaction = WriteTransaction::beginUnsealed(connection, clock, Actor{"Fettlemark"});
    if (!transaction) return transaction.error();
    // Read again: another program may have done it while this one waited.
    const auto version = knownSchema(connection, steps);
    if (!version) return version.error();
    if (*version == steps.back().version) return {};
    const auto kept = keptIn(connection);
    if (!kept) return kept.error();
    if (auto done = makeBackup(connection, *version, *kept); !done) return done;
    if (auto done = runSteps(**transaction, *version, steps, key); !done) return done;
    if (auto done = checkSteps(connection, *kept); !done) return done;
    return (*transaction)->commit();
}

}  // namespace

const std::vector<Migration>& migrations() {
    static const std::vector<Migration> all = [] {
        std::vector<Migration> steps;
        const auto scripts = schemaScripts();
        for (std::size_t i = 0; i < std::size(kDescriptions) && i < scripts.size(); ++i)
            steps.push_back({static_cast<int>(i) + 1, kDescriptions[i], scripts[i].text});
        return steps;
    }();
    assert(all.size() == schemaScripts().size());
    return all;
}

Result<std::int64_t> knownSchema(const Connection& connection,
                                 const std::vector<Migration>& steps) {
    auto version = dialect::schemaVersion(connection);
    if (!version) return version;
    if (*version < 1) return connection.damaged("schema", "its number is missing");
    if (*version > steps.back().version)
        return inputError(connection.place(),
                          "was written by a newer Fettlemark (schema %1, this program knows %2); "
                          "open it with that one",
                          {std::to_string(*version), std::to_string(steps.back().version)});
    return version;
}

Result<void> migrate(const Connection& connection, const std::vector<Migration>& steps,
                     ArchiveKey& key, const Clock& clock) {
    const auto version = knownSchema(connection, steps);
    if (!version) return version.error();
    if (*version == steps.back().version) return {};
    if (auto done = dialect::checkForeignKeys(connection, false); !done) return done;
    auto done = runAll(connection, steps, key, clock);
    if (!done) key.discard();
    if (auto checked = dialect::checkForeignKeys(connection, true); !checked) return checked;
    return done;
}

}  // namespace model
