// SPDX-License-Identifier: Apache-2.0
#include "archive/stored_file.h"

#include <cstdio>

#include "archive/disk.h"

namespace model {
namespace {

/// Writes a new file of a name that nobody reads, then gives it its own.
Result<void> writeAndRename(const std::string& path, std::string_view bytes) {
    const std::string temporary = path + ".new";
    Descriptor descriptor(temporary, O_WRONLY | O_CREAT | O_TRUNC);
    if (!descriptor.ok()) return systemRefusal(temporary, "written");
    if (!writeAll(descriptor.number(), bytes) || ::fsync(descriptor.number()) != 0 ||
        !descriptor.close() || ::rename(temporary.c_str(), path.c_str()) != 0) {
        Error error = systemRefusal(path, "written");
        ::unlink(temporary.c_str());
        return error;
    }
    return syncFolder(parentOf(path));
}

}  // namespace

std::string storedFilePath(const std::string& folder, const std::string& digest) {
    return folder + "/" + digest.substr(0, 2) + "/" + digest.substr(2) + ".pdf";
}

Result<StoredFile> storeFile(const std::string& folder, std::string_view bytes) {
    StoredFile file{toHex(sha256(bytes)), false};
    if (loadStoredFile(folder, file.digest).ok()) return file;
    const std::string path = storedFilePath(folder, file.digest);
    if (auto made = makeFolder(folder); !made) return made.error();
    if (auto made = makeFolder(parentOf(path)); !made) return made.error();
    if (auto written = writeAndRename(path, bytes); !written) return written.error();
    file.added = true;
    return file;
}

Result<std::string> loadStoredFile(const std::string& folder, const std::string& digest) {
    const std::string path = storedFilePath(folder, digest);
    auto bytes = readFile(path);
    if (bytes && toHex(sha256(*bytes)) != digest)
        return Error{
            ErrorKind::Damaged, path, "was altered: its SHA-256 is no longer its name", {}};
    return bytes;
}

void removeStoredFile(const std::string& folder, const std::string& digest) {
    ::unlink(storedFilePath(folder, digest).c_str());
}

}  // namespace model
