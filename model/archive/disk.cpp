// SPDX-License-Identifier: Apache-2.0
#include "archive/disk.h"

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <sys/stat.h>
#include <system_error>

namespace model {
namespace {

namespace fs = std::filesystem;

/// Gives all bytes of an open file to take(), piece by piece.
template <class Take>
Result<void> eachPiece(const Descriptor& descriptor, const std::string& path, Take take) {
    char part[1 << 16];
    while (true) {
        const ssize_t count = ::read(descriptor.number(), part, sizeof part);
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) return systemRefusal(path, "read");
        if (count == 0) return {};
        if (auto taken = take(std::string_view(part, static_cast<std::size_t>(count))); !taken)
            return taken;
    }
}

Error cannotRead(const std::string& path) {
    if (errno == ENOENT || errno == ENOTDIR) return {ErrorKind::Damaged, path, "is gone", {}};
    return systemRefusal(path, "read");
}

}  // namespace

Error systemRefusal(const std::string& path, const char* what) {
    const int code = errno;
    if (code == ENOSPC || code == EDQUOT || code == EFBIG)
        return refusal(path, "cannot be written: the disk is full");
    return refusal(path, "cannot be %1: %2", {what, std::generic_category().message(code)});
}

std::string parentOf(const std::string& path) {
    return fs::path(path).parent_path().string();
}

bool isThere(const std::string& path) {
    std::error_code ignored;
    return fs::symlink_status(path, ignored).type() != fs::file_type::not_found;
}

Result<void> expectNothing(const std::string& path, const char* advice) {
    std::error_code failure;
    const fs::file_type type = fs::symlink_status(path, failure).type();
    if (type == fs::file_type::not_found) return {};
    if (type == fs::file_type::none)
        return refusal(path, "cannot be written: %1", {failure.message()});
    return inputError(path, "exists already; %1", {advice});
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

Result<std::string> readFile(const std::string& path) {
    const Descriptor descriptor(path, O_RDONLY);
    if (!descriptor.ok()) return cannotRead(path);
    std::string bytes;
    auto read = eachPiece(descriptor, path, [&](std::string_view part) -> Result<void> {
        bytes.append(part);
        return {};
    });
    if (!read) return read.error();
    return bytes;
}

Result<void> syncFolder(const std::string& folder) {
    const Descriptor descriptor(folder, O_RDONLY | O_DIRECTORY);
    if (!descriptor.ok() || ::fsync(descriptor.number()) != 0)
        return systemRefusal(folder, "written");
    return {};
}

Result<void> syncFile(const std::string& path) {
    const Descriptor descriptor(path, O_RDONLY);
    if (!descriptor.ok() || ::fsync(descriptor.number()) != 0)
        return systemRefusal(path, "written");
    return syncFolder(parentOf(path));
}

Result<void> syncTree(const std::string& folder) {
    std::error_code failure;
    for (fs::recursive_directory_iterator entry(folder, failure), end; !failure && entry != end;
         entry.increment(failure)) {
        const std::string path = entry->path().string();
        const Descriptor descriptor(path, O_RDONLY);
        if (!descriptor.ok() || ::fsync(descriptor.number()) != 0)
            return systemRefusal(path, "written");
    }
    if (failure) return refusal(folder, "cannot be read: %1", {failure.message()});
    if (auto done = syncFolder(folder); !done) return done;
    return syncFolder(parentOf(folder));
}

Result<void> writeNewFile(const std::string& path, std::string_view bytes) {
    Descriptor descriptor(path, O_WRONLY | O_CREAT | O_EXCL);
    if (!descriptor.ok() || !writeAll(descriptor.number(), bytes) || !descriptor.close())
        return systemRefusal(path, "written");
    return {};
}

Result<Digest> copyToNewFile(const std::string& from, const std::string& to, unsigned mode) {
    const Descriptor source(from, O_RDONLY);
    if (!source.ok()) return cannotRead(from);
    Descriptor target(to, O_WRONLY | O_CREAT | O_EXCL, mode);
    if (!target.ok()) return systemRefusal(to, "written");
    Sha256 digest;
    auto copied = eachPiece(source, from, [&](std::string_view part) -> Result<void> {
        digest.add(part);
        if (!writeAll(target.number(), part)) return systemRefusal(to, "written");
        return {};
    });
    if (!copied) return copied.error();
    if (!target.close()) return systemRefusal(to, "written");
    return digest.finish();
}

Result<Digest> digestOfFile(const std::string& path) {
    const Descriptor descriptor(path, O_RDONLY);
    if (!descriptor.ok()) return cannotRead(path);
    // What was written a moment ago would else be read back from memory.
    ::posix_fadvise(descriptor.number(), 0, 0, POSIX_FADV_DONTNEED);
    Sha256 digest;
    auto read = eachPiece(descriptor, path, [&](std::string_view part) -> Result<void> {
        digest.add(part);
        return {};
    });
    if (!read) return read.error();
    return digest.finish();
}

Result<void> moveToNew(const std::string& from, const std::string& to) {
    int done = ::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE);
    // Some file systems cannot tell; two programs that make the same name at once do not meet
    // there.
    if (done != 0 && (errno == EINVAL || errno == ENOSYS) && !isThere(to))
        done = std::rename(from.c_str(), to.c_str());
    if (done != 0) {
        if (errno == EEXIST || isThere(to)) return inputError(to, "exists already");
        return systemRefusal(to, "written");
    }
    return syncFolder(parentOf(to));
}

Result<Staging> Staging::make(const std::string& folder) {
    std::error_code code;
    if (!fs::is_directory(parentOf(folder), code))
        return inputError(parentOf(folder), "is not a folder");
    // For its owner alone: the key of an archive may lie in it.
    if (::mkdir(folder.c_str(), 0700) == 0) return Staging(folder);
    if (errno == EEXIST)
        return inputError(folder,
                          "exists already: another program is at work there, or one was broken "
                          "off; if none is running, delete it and try again");
    return systemRefusal(folder, "made");
}

Staging::Staging(Staging&& other) noexcept : path_(std::move(other.path_)) {
    other.path_.clear();
}

Staging::~Staging() {
    std::error_code ignored;
    if (!path_.empty()) fs::remove_all(path_, ignored);
}

Result<void> Staging::become(const std::string& final) {
    auto moved = moveToNew(path_, final);
    if (moved) path_.clear();
    return moved;
}

}  // namespace model
