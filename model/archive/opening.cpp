// SPDX-License-Identifier: Apache-2.0
#include "archive/opening.h"

#include <cerrno>
#include <filesystem>
#include <system_error>
#include <unistd.h>

#include "archive/dialect.h"
#include "archive/disk.h"
#include "trust/canonical.h"

namespace model {
namespace {

namespace fs = std::filesystem;

constexpr char kDemonstration[] = "demonstration";
constexpr char kWorking[] = "working";

Result<void> checkIdentity(const Connection& connection) {
    const auto id = dialect::applicationId(connection);
    if (!id) return id.error();
    if (*id != dialect::kApplicationId)
        return inputError(connection.place(), "is not a Fettlemark archive");
    return {};
}

Result<ArchiveKind> kindFrom(const Connection& connection, const std::string& word) {
    if (word == kDemonstration) return ArchiveKind::Demonstration;
    if (word == kWorking) return ArchiveKind::Working;
    return connection.damaged("archive", "does not say what kind it is");
}

}  // namespace

Result<std::string> absolutePath(const std::string& path) {
    if (path.empty() || path.find('\0') != std::string::npos)
        return inputError(path, "is not a file name");
    std::error_code code;
    const fs::path absolute = fs::absolute(path, code);
    if (code) return refusal(path, "cannot be found: %1", {code.message()});
    return absolute.lexically_normal().string();
}

Result<void> checkThere(const std::string& path) {
    std::error_code code;
    const fs::file_status status = fs::status(path, code);
    if (status.type() == fs::file_type::not_found) return inputError(path, "does not exist");
    if (code) return refusal(path, "cannot be read: %1", {code.message()});
    if (fs::is_directory(status)) return inputError(path, "is a folder, not an archive");
    if (!fs::is_regular_file(status)) return inputError(path, "is not a file");
    if (::access(path.c_str(), R_OK) != 0)
        return refusal(path, "cannot be read: %1", {std::generic_category().message(errno)});
    return {};
}

Result<void> checkNothingThere(const std::string& path) {
    // A journal left behind by an older database of this name would be folded into the new one.
    for (const char* suffix : {"", "-wal", "-shm", "-journal", ".files", ".key"}) {
        std::error_code code;
        if (fs::symlink_status(path + suffix, code).type() != fs::file_type::not_found)
            return inputError(path + suffix, "exists already; a new archive needs a new name");
    }
    std::error_code code;
    if (!fs::is_directory(fs::path(path).parent_path(), code))
        return inputError(fs::path(path).parent_path().string(), "is not a folder");
    return {};
}

Result<void> checkWritable(const std::string& path) {
    if (::access(path.c_str(), W_OK) == 0 && ::access(parentOf(path).c_str(), W_OK) == 0) return {};
    return refusal(path,
                   "is read-only here, or its folder is: it can only be read; to write, copy it to "
                   "a folder that can be written");
}

Result<std::unique_ptr<Connection>> openToRead(const std::string& path) {
    auto connection = dialect::openDatabase(path);
    if (!connection) return connection;
    const auto checked = checkIdentity(**connection);
    if (checked) return connection;
    // Reading needs a log beside the file, which cannot be made beside one that is read-only. Only
    // then, as nobody else's writes are seen without it.
    if (checked.error().kind != ErrorKind::Refused || checkWritable(path)) return checked.error();
    if (dialect::hasLog(path))
        return refusal(path,
                       "cannot be read here: its latest entries are still in %1, and the folder is "
                       "read-only; copy both files to a folder that can be written, and open it "
                       "there",
                       {path + "-wal"});
    connection = dialect::openUnchanging(path);
    if (!connection) return connection;
    if (auto again = checkIdentity(**connection); !again) return again.error();
    return connection;
}

Result<ArchiveKind> kindIn(const Connection& connection) {
    SqlStatement statement(connection, "SELECT kind FROM archive");
    const auto row = statement.first();
    if (!row) return row.error();
    return kindFrom(connection, *row ? statement.text(0) : "");
}

Result<ArchiveKind> kindInAnyCase(const Connection& connection) {
    auto kind = kindIn(connection);
    if (kind) return kind;
    SqlStatement statement(connection, "SELECT bytes FROM history WHERE sequence = 1");
    const auto row = statement.first();
    if (!row || !*row) return kind;
    const auto first = parseCanonical(statement.blob(0));
    const Canonical* content = first ? first.value().member("content") : nullptr;
    const Canonical* word = content ? content->member("kind") : nullptr;
    if (!word || !word->text()) return kind;
    return kindFrom(connection, *word->text());
}

const char* wordOf(ArchiveKind kind) {
    return kind == ArchiveKind::Demonstration ? kDemonstration : kWorking;
}

}  // namespace model
