// SPDX-License-Identifier: Apache-2.0
#include "pdf/write_file.h"

#include <cerrno>
#include <cstdio>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace reports {

namespace {

model::Error refused(const std::string& path, int code) {
    return model::refusal(path, "cannot be written: %1", {std::generic_category().message(code)});
}

/// A new file beside the final one, removed again unless it was given its name.
class TemporaryFile {
public:
    explicit TemporaryFile(const std::string& finalPath) {
        constexpr mode_t kReadWrite = 0666;  // less the process's mask
        for (int attempt = 0; descriptor_ < 0 && attempt < kAttempts; ++attempt) {
            name_ =
                finalPath + ".new-" + std::to_string(::getpid()) + "-" + std::to_string(attempt);
            descriptor_ =
                ::open(name_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, kReadWrite);
            if (descriptor_ < 0 && errno != EEXIST) return;
        }
        created_ = descriptor_ >= 0;
    }
    ~TemporaryFile() {
        if (descriptor_ >= 0) ::close(descriptor_);
        if (created_) ::unlink(name_.c_str());
    }
    TemporaryFile(const TemporaryFile&) = delete;
    TemporaryFile& operator=(const TemporaryFile&) = delete;

    [[nodiscard]] bool created() const { return created_; }

    // The following return false, with errno set, on a failure.

    bool write(std::string_view bytes) {
        while (!bytes.empty()) {
            const ssize_t written = ::write(descriptor_, bytes.data(), bytes.size());
            if (written < 0 && errno == EINTR) continue;
            if (written < 0) return false;
            bytes.remove_prefix(static_cast<std::size_t>(written));
        }
        return true;
    }

    bool setPermissions(mode_t permissions) { return ::fchmod(descriptor_, permissions) == 0; }

    /// Makes the bytes durable and gives the file its name.
    bool commit(const std::string& finalPath) {
        if (::fsync(descriptor_) != 0) return false;
        const int closed = ::close(descriptor_);
        descriptor_ = -1;
        if (closed != 0 || ::rename(name_.c_str(), finalPath.c_str()) != 0) return false;
        created_ = false;
        return true;
    }

private:
    static constexpr int kAttempts = 100;
    std::string name_;
    int descriptor_ = -1;
    bool created_ = false;
};

/// So that the new name survives a crash, too. A file system that cannot do it is no failure.
void syncFolderOf(const std::string& path) {
    const std::filesystem::path folder = std::filesystem::path(path).parent_path();
    const int descriptor =
        ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) return;
    ::fsync(descriptor);
    ::close(descriptor);
}

}  // namespace

model::Result<void> writeFile(const std::string& path, std::string_view bytes) {
    struct stat old = {};
    const bool replaces = ::stat(path.c_str(), &old) == 0;
    if (replaces && !S_ISREG(old.st_mode))
        return model::refusal(path, "cannot be written: it is there and is no ordinary file");
    constexpr mode_t kPermissions = 07777;
    TemporaryFile file(path);
    const bool written = file.created() &&
                         (!replaces || file.setPermissions(old.st_mode & kPermissions)) &&
                         file.write(bytes) && file.commit(path);
    if (!written) return refused(path, errno);
    syncFolderOf(path);
    return {};
}

}  // namespace reports
