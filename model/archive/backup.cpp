// SPDX-License-Identifier: Apache-2.0
#include "archive/backup.h"

#include <algorithm>
#include <cassert>
#include <optional>

#include "archive/backup_check.h"
#include "archive/dialect.h"
#include "archive/disk.h"
#include "archive/history_store.h"
#include "archive/migration.h"
#include "archive/opening.h"
#include "archive/retention_store.h"
#include "archive/stored_file.h"

namespace model {
namespace {

/// How often a copy is begun anew because files went meanwhile that its database names.
constexpr int kAttempts = 5;

class Backup {
public:
    Backup(std::string path, std::string folder, const Clock& clock, const Progress& progress)
        : path_(std::move(path)), folder_(std::move(folder)), clock_(clock), progress_(progress) {}

    Result<BackupContent> make() {
        for (int attempt = 1; attempt <= kAttempts; ++attempt) {
            auto content = attemptOne();
            if (!content || *content)
                return content ? **content : Result<BackupContent>(content.error());
        }
        return refusal(path_, "was not copied: files of it were disposed of all the while");
    }

private:
    /// None: begin again.
    Result<std::optional<BackupContent>> attemptOne() {
        auto staging = Staging::make(folder_ + ".part");
        if (!staging) return staging.error();
        const std::string& target = staging.value().path();
        BackupManifest manifest;
        manifest.made = toText(clock_.now());
        const auto files = copyDatabase(target, manifest);
        if (!files) return files.error();
        const auto whole = copyFiles(*files, target, manifest);
        if (!whole) return whole.error();
        if (!*whole) return std::optional<BackupContent>();
        if (auto copied = copyKey(target, manifest); !copied) return copied.error();
        const auto database = digestOfFile(target + "/" + kBackupDatabase);
        if (!database) return database.error();
        manifest.files[kBackupDatabase] = toHex(*database);
        if (auto done = writeNewFile(target + "/" + kBackupManifest, toText(manifest)); !done)
            return done.error();
        if (auto done = syncTree(target); !done) return done.error();
        auto content = checkCopy(target, manifest, path_, clock_, checking(files->size()));
        if (!content) return content.error();
        if (auto done = staging.value().become(folder_); !done) return done.error();
        return std::optional(std::move(*content));
    }

    /// As of one moment; returns the files that the copy names.
    Result<std::vector<std::string>> copyDatabase(const std::string& target,
                                                  BackupManifest& manifest) {
        const std::string file = target + "/" + kBackupDatabase;
        {
            const auto source = openToRead(path_);
            if (!source) return source.error();
            const auto schema = knownSchema(**source, migrations());
            if (!schema) return schema.error();
            manifest.schema = *schema;
            if (auto done = dialect::copyDatabase(**source, file); !done) return done.error();
        }
        const auto copy = openToRead(file);
        if (!copy) return copy.error();
        const auto head = historyHead(**copy);
        if (!head) return head.error();
        manifest.head = *head;
        return namedFiles(**copy);
    }

    /// False: one was disposed of after the database was copied.
    Result<bool> copyFiles(const std::vector<std::string>& files, const std::string& target,
                           BackupManifest& manifest) {
        if (auto made = makeFolder(target + "/" + kBackupFiles); !made) return made.error();
        std::int64_t done = 0;
        for (const std::string& digest : files) {
            const std::string source = storedFilePath(path_ + ".files", digest);
            const std::string copy = target + "/" + nameInBackup(digest);
            if (auto made = makeFolder(parentOf(copy)); !made) return made.error();
            const auto copied = copyToNewFile(source, copy);
            if (!copied && copied.error().kind == ErrorKind::Damaged) {
                const auto isNamed = stillNames(digest);
                if (!isNamed) return isNamed.error();
                if (!*isNamed) return false;
            }
            if (!copied) return copied.error();
            if (toHex(*copied) != digest)
                return Error{ErrorKind::Damaged,
                             source,
                             "was altered, so that no good copy can be made",
                             {}};
            manifest.files[nameInBackup(digest)] = digest;
            const auto total = static_cast<std::int64_t>(3 * files.size()) + manifest.head.sequence;
            if (progress_ && !progress_(++done, total))
                return refusal(path_, "was not copied: it was stopped");
        }
        return true;
    }

    Result<bool> stillNames(const std::string& digest) {
        const auto source = openToRead(path_);
        if (!source) return source.error();
        const auto files = namedFiles(**source);
        if (!files) return files.error();
        return std::ranges::binary_search(*files, digest);
    }

    Result<void> copyKey(const std::string& target, BackupManifest& manifest) {
        if (!isThere(path_ + ".key")) return {};
        const auto copied = copyToNewFile(path_ + ".key", target + "/" + kBackupKey, 0600);
        if (!copied) return copied.error();
        manifest.files[kBackupKey] = toHex(*copied);
        return {};
    }

    /// The progress of checking, which comes after the copying of `files` files.
    Progress checking(std::size_t files) {
        if (!progress_) return {};
        return [this, copied = static_cast<std::int64_t>(files)](std::int64_t done,
                                                                 std::int64_t total) {
            return progress_(copied + done, copied + total);
        };
    }

    const std::string path_;
    const std::string folder_;
    const Clock& clock_;
    const Progress& progress_;
};

}  // namespace

Result<BackupContent> backUp(const std::string& path, const std::string& folder, const Clock& clock,
                             const Progress& progress) {
    const auto source = absolutePath(path);
    if (!source) return source.error();
    const auto target = absolutePath(folder);
    if (!target) return target.error();
    if (auto there = checkThere(*source); !there) return there.error();
    if (isThere(*target)) return inputError(*target, "exists already; a backup needs a new folder");
    return Backup(*source, *target, clock, progress).make();
}

}  // namespace model
