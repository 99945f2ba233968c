// SPDX-License-Identifier: Apache-2.0
#include "archive/backup_check.h"

#include <algorithm>
#include <filesystem>

#include "archive/archive_access.h"
#include "archive/dialect.h"
#include "archive/disk.h"
#include "archive/migration.h"
#include "archive/stored_file.h"

namespace model {
namespace {

namespace fs = std::filesystem;

/// A copy of an older schema has to be brought up to date to be checked whole; it stays as it is,
/// and a copy of its database is.
Result<Archive> openCopy(const std::string& folder, const BackupManifest& manifest,
                         const std::string& scratch, const Clock& clock) {
    const std::string database = folder + "/" + kBackupDatabase;
    if (manifest.schema == migrations().back().version)
        return Archive::openForReading(database, clock);
    if (auto made = makeFolder(scratch); !made) return made.error();
    const std::string copy = scratch + "/" + kBackupDatabase;
    if (auto copied = copyToNewFile(database, copy); !copied) return copied.error();
    std::error_code failure;
    if (manifest.files.contains(kBackupKey))
        if (auto copied = copyToNewFile(folder + "/" + kBackupKey, copy + ".key", 0600); !copied)
            return copied.error();
    fs::create_directory_symlink(folder + "/" + kBackupFiles, copy + ".files", failure);
    if (failure) return refusal(copy + ".files", "cannot be made: %1", {failure.message()});
    return Archive::open(copy, clock);
}

Result<BackupContent> contentOf(const Archive& archive, const BackupManifest& manifest) {
    SqlStatement statement(ArchiveAccess::connection(archive),
                           "SELECT (SELECT count(*) FROM certificate), "
                           "(SELECT coalesce(max(number), 0) FROM certificate_number), "
                           "(SELECT happened_at FROM history WHERE sequence = ?)");
    const auto row = statement.first(manifest.head.sequence);
    if (!row) return row.error();
    return BackupContent{manifest.made,      manifest.head,
                         statement.text(2),  statement.whole(0),
                         statement.whole(1), manifest.files.contains(kBackupKey)};
}

Result<BackupContent> verifyCopy(const std::string& folder, const BackupManifest& manifest,
                                 const std::string& place, const std::string& scratch,
                                 const Clock& clock, const Progress& progress) {
    const auto archive = openCopy(folder, manifest, scratch, clock);
    if (!archive) return archive.error();
    // The rows that bringing an older one up to date adds come behind the manifest's head.
    const auto checked = archive.value().verify(manifest.head, progress);
    if (!checked) return checked.error();
    if (!checked.value().findings.empty()) {
        // Named by its place in the archive, not in the folder of the copy, which goes.
        std::string finding = checked.value().findings.front().message();
        if (finding.starts_with(folder + "/")) finding.erase(0, folder.size() + 1);
        return Error{ErrorKind::Damaged,
                     place,
                     "is damaged, so that no good copy can be made: %1",
                     {std::move(finding)}};
    }
    return contentOf(archive.value(), manifest);
}

}  // namespace

std::string nameInBackup(const std::string& digest) {
    return storedFilePath(kBackupFiles, digest);
}

Result<BackupContent> checkCopy(const std::string& folder, const BackupManifest& manifest,
                                const std::string& place, const Clock& clock,
                                const Progress& progress) {
    const std::string scratch = folder + "/check";
    auto content = verifyCopy(folder, manifest, place, scratch, clock, progress);
    std::error_code ignored;
    fs::remove_all(scratch, ignored);
    if (!content) return content;
    for (const auto& [name, digest] : manifest.files) {
        const auto found = digestOfFile(within(folder, name));
        if (!found) return found.error();
        if (toHex(*found) != digest)
            return Error{ErrorKind::Damaged,
                         within(folder, name),
                         "is not what was written a moment ago: the disk is not to be trusted",
                         {}};
    }
    return content;
}

}  // namespace model
