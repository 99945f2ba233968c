// SPDX-License-Identifier: Apache-2.0
#include "archive/stored_file.h"

#include <cerrno>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace model {
namespace {

Error systemRefusal(const std::string& path, const char* what) {
    const int code = errno;
    if (code == ENOSPC || code == EDQUOT || code == EFBIG)
        return refusal(path, "cannot be written: the disk is full");
    return refusal(path, "cannot be %1: %2", {what, std::generic_category().message(code)});
}

class Descriptor {
public:
    Descriptor(const std::string& path, int flags)
        : number_(::open(path.c_str(), flags | O_CLOEXEC, 0644)) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() {
        if (number_ >= 0) ::close(number_);
    }
    [[nodiscard]] int number() const { return number_; }
    [[nodiscard]] bool ok() const { return number_ >= 0; }
    /// Some file systems report only here that a write failed.
    bool close() {
        const int number = number_;
        number_ = -1;
        return ::close(number) == 0;
    }

private:
    int number_;
};

Result<void> syncFolder(const std::string& folder) {
    const Descriptor descriptor(folder, O_RDONLY | O_DIRECTORY);
    if (!descriptor.ok() || ::fsync(descriptor.number()) != 0)
        return systemRefusal(folder, "written");
    return {};
}

std::string parentOf(const std::string& path) {
    return std::filesystem::path(path).parent_path().string();
}

Result<void> makeFolder(const std::string& folder) {
    if (::mkdir(folder.c_str(), 0755) == 0) return syncFolder(parentOf(folder));
    if (errno == EEXIST) return {};
    return systemRefusal(folder, "made");
}

bool writeAll(int descriptor, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

Result<std::string> readAll(const Descriptor& descriptor, const std::string& path) {
    std::string bytes;
    char part[1 << 16];
    while (true) {
        const ssize_t count = ::read(descriptor.number(), part, sizeof part);
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) return systemRefusal(path, "read");
        if (count == 0) return bytes;
        bytes.append(part, static_cast<std::size_t>(count));
    }
}

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
    const Descriptor descriptor(path, O_RDONLY);
    if (!descriptor.ok()) {
        if (errno == ENOENT || errno == ENOTDIR)
            return Error{ErrorKind::Damaged, path, "is gone", {}};
        return systemRefusal(path, "read");
    }
    auto bytes = readAll(descriptor, path);
    if (bytes && toHex(sha256(*bytes)) != digest)
        return Error{
            ErrorKind::Damaged, path, "was altered: its SHA-256 is no longer its name", {}};
    return bytes;
}

void removeStoredFile(const std::string& folder, const std::string& digest) {
    ::unlink(storedFilePath(folder, digest).c_str());
}

Result<void> syncFile(const std::string& path) {
    const Descriptor descriptor(path, O_RDONLY);
    if (!descriptor.ok() || ::fsync(descriptor.number()) != 0)
        return systemRefusal(path, "written");
    return syncFolder(parentOf(path));
}

}  // namespace model
