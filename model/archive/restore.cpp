// SPDX-License-Identifier: Apache-2.0
#include <filesystem>

#include "archive/backup.h"
#include "archive/backup_check.h"
#include "archive/disk.h"
#include "archive/migration.h"
#include "archive/opening.h"

namespace model {
namespace {

Result<BackupManifest> readManifest(const std::string& folder) {
    const std::string file = folder + "/" + kBackupManifest;
    std::error_code code;
    if (!std::filesystem::is_directory(folder, code))
        return inputError(folder, isThere(folder) ? "is not a folder" : "does not exist");
    const auto text = readFile(file);
    if (!text && text.error().kind == ErrorKind::Damaged)
        return inputError(folder, "is no backup: it has no file %1", {kBackupManifest});
    if (!text) return text.error();
    auto manifest = parseBackupManifest(*text, file);
    if (manifest && manifest.value().schema > migrations().back().version)
        return inputError(
            folder,
            "was written by a newer Fettlemark (schema %1, this program knows %2); "
            "restore it with that one",
            {std::to_string(manifest.value().schema), std::to_string(migrations().back().version)});
    return manifest;
}

Result<void> copyBackup(const std::string& from, const std::string& to,
                        const BackupManifest& manifest, const Progress& progress) {
    if (auto made = makeFolder(to + "/" + kBackupFiles); !made) return made;
    std::int64_t done = 0;
    const auto total =
        static_cast<std::int64_t>(3 * manifest.files.size()) + manifest.head.sequence;
    for (const auto& [name, digest] : manifest.files) {
        const std::string source = within(from, name);
        const std::string copy = within(to, name);
        if (auto made = makeFolder(parentOf(copy)); !made) return made;
        const auto copied = copyToNewFile(source, copy, name == kBackupKey ? 0600 : 0644);
        if (!copied) return copied.error();
        if (toHex(*copied) != digest)
            return Error{ErrorKind::Damaged,
                         source,
                         "was altered: it is no longer what the backup's list says",
                         {}};
        if (progress && !progress(++done, total))
            return refusal(from, "was not restored: it was stopped");
    }
    return syncTree(to);
}

/// The database comes last: the archive is there once it is. What was moved before goes again
/// where that does not succeed.
Result<void> moveIntoPlace(const std::string& staging, const std::string& path,
                           const BackupManifest& manifest) {
    const std::string from = staging + "/" + kBackupDatabase;
    std::vector<std::string> moved;
    for (const std::string suffix : {".files", ".key", ""}) {
        if (suffix == ".key" && !manifest.files.contains(kBackupKey)) continue;
        if (auto done = moveToNew(from + suffix, path + suffix); !done) {
            std::error_code ignored;
            for (const std::string& one : moved) std::filesystem::remove_all(one, ignored);
            return done;
        }
        moved.push_back(path + suffix);
    }
    return {};
}

}  // namespace

Result<BackupContent> restore(const std::string& folder, const std::string& path,
                              const Clock& clock, const Progress& progress) {
    const auto source = absolutePath(folder);
    if (!source) return source.error();
    const auto target = absolutePath(path);
    if (!target) return target.error();
    const auto manifest = readManifest(*source);
    if (!manifest) return manifest.error();
    if (auto free = checkNothingThere(*target); !free) return free.error();
    const auto staging = Staging::make(*target + ".part");
    if (!staging) return staging.error();
    const std::string& copy = staging.value().path();
    if (auto copied = copyBackup(*source, copy, manifest.value(), progress); !copied)
        return copied.error();
    const auto copied = static_cast<std::int64_t>(manifest.value().files.size());
    const Progress checking = [&](std::int64_t done, std::int64_t total) {
        return !progress || progress(copied + done, copied + total);
    };
    auto content = checkCopy(copy, manifest.value(), *source, clock, checking);
    if (!content) return content;
    if (auto moved = moveIntoPlace(copy, *target, manifest.value()); !moved) return moved.error();
    return content;
}

}  // namespace model
