// SPDX-License-Identifier: Apache-2.0
#include "archive/signed_files.h"

#include <algorithm>
#include <filesystem>
#include <optional>
#include <system_error>

#include "archive/archive_access.h"
#include "archive/stored_file.h"
#include "archive/stored_words.h"

namespace model {
namespace {

namespace fs = std::filesystem;

/// The three acts that put a signature into a PDF, in their order: sequence, person's id, time,
/// name and fingerprint of each, from column 4 on.
constexpr char kSelect[] =
    "SELECT presentation.number, presentation.file_sha256, endorsement.file_sha256, "
    "certificate.file_sha256, "
    "presentation.history_sequence, presentation.person, presented_row.happened_at, "
    "presented_row.person, presented_by.fingerprint, "
    "endorsement.history_sequence, endorsement.person, endorsed_row.happened_at, "
    "endorsed_row.person, endorsed_by.fingerprint, "
    "certificate_release.history_sequence, certificate_release.person, released_row.happened_at, "
    "released_row.person, released_by.fingerprint "
    "FROM presentation "
    "LEFT JOIN history AS presented_row ON presented_row.sequence = presentation.history_sequence "
    "LEFT JOIN history_signature AS presented_proof "
    "ON presented_proof.sequence = presentation.history_sequence "
    "LEFT JOIN identity AS presented_by ON presented_by.number = presented_proof.identity "
    "LEFT JOIN endorsement ON endorsement.number = presentation.number "
    "LEFT JOIN history AS endorsed_row ON endorsed_row.sequence = endorsement.history_sequence "
    "LEFT JOIN history_signature AS endorsed_proof "
    "ON endorsed_proof.sequence = endorsement.history_sequence "
    "LEFT JOIN identity AS endorsed_by ON endorsed_by.number = endorsed_proof.identity "
    "LEFT JOIN certificate ON certificate.number = presentation.number "
    "LEFT JOIN certificate_release ON certificate_release.number = presentation.number "
    "LEFT JOIN history AS released_row "
    "ON released_row.sequence = certificate_release.history_sequence "
    "LEFT JOIN history_signature AS released_proof "
    "ON released_proof.sequence = certificate_release.history_sequence "
    "LEFT JOIN identity AS released_by ON released_by.number = released_proof.identity ";

Result<SignedFile> signedFileFrom(const Connection& connection, const SqlStatement& row) {
    SignedFile file;
    file.number = row.whole(0);
    for (const int column : {1, 2, 3})
        if (auto digest = row.textOrNone(column)) file.digest = std::move(*digest);
    file.released = !row.isNone(3);
    for (const int act : {4, 9, 14}) {
        if (row.isNone(act)) continue;
        const auto time = timeFrom(row.text(act + 2));
        if (!time || row.isNone(act + 4))
            return connection.damaged("certificate " + std::to_string(file.number),
                                      "has lost one of the rows that say who signed it");
        file.time = *time;
        file.signatures.push_back(
            {row.whole(act), row.text(act + 1), row.text(act + 3), row.text(act + 4)});
    }
    return file;
}

/// Tells of SHA-256s that are asked for in rising order whether a row names a file by them.
class NamedFiles {
public:
    explicit NamedFiles(const Connection& connection)
        : statement_(connection,
                     "SELECT file_sha256 FROM certificate "
                     "UNION SELECT file_sha256 FROM presentation "
                     "UNION SELECT file_sha256 FROM endorsement "
                     "UNION SELECT file_sha256 FROM register_entry "
                     "WHERE file_sha256 IS NOT NULL ORDER BY 1") {}

    Result<void> begin() {
        if (auto done = statement_.run(); !done) return done;
        return advance();
    }
    Result<bool> have(const std::string& digest) {
        while (next_ && *next_ < digest)
            if (auto done = advance(); !done) return done.error();
        return next_ == digest;
    }

private:
    Result<void> advance() {
        const auto row = statement_.next();
        if (!row) return row.error();
        next_ = *row ? std::optional(statement_.text(0)) : std::nullopt;
        return {};
    }

    SqlStatement statement_;
    std::optional<std::string> next_;
};

/// What is in a folder, sorted by name; empty for what is no folder.
Result<std::vector<fs::path>> entriesOf(const fs::path& folder) {
    std::vector<fs::path> paths;
    std::error_code code;
    if (!fs::is_directory(folder, code)) return paths;
    auto entry = fs::directory_iterator(folder, code);
    for (; !code && entry != fs::directory_iterator(); entry.increment(code))
        paths.push_back(entry->path());
    if (code) return refusal(folder.string(), "cannot be read: %1", {code.message()});
    std::ranges::sort(paths);
    return paths;
}

/// The SHA-256 by which a stored file of this path would be named; empty: none would.
std::string digestIn(const std::string& folder, const fs::path& path) {
    const std::string digest = path.parent_path().filename().string() + path.stem().string();
    const bool isDigest = digest.size() == 64 && std::ranges::all_of(digest, [](char c) {
                              return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
                          });
    return isDigest && storedFilePath(folder, digest) == path.string() ? digest : "";
}

}  // namespace

Result<void> eachSignedFile(const Archive& archive,
                            const std::function<bool(const SignedFile&)>& take) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    SqlStatement statement(connection, std::string(kSelect) + "ORDER BY presentation.number");
    if (auto done = statement.run(); !done) return done;
    while (true) {
        const auto row = statement.next();
        if (!row) return row.error();
        if (!*row) return {};
        const auto file = signedFileFrom(connection, statement);
        if (!file) return file.error();
        if (!take(*file)) return {};
    }
}

Result<std::optional<SignedFile>> signedFile(const Archive& archive, std::int64_t number) {
    const Connection& connection = ArchiveAccess::connection(archive);
    SqlStatement statement(connection, std::string(kSelect) + "WHERE presentation.number = ?");
    const auto row = statement.first(number);
    if (!row) return row.error();
    if (!*row) return std::optional<SignedFile>();
    auto file = signedFileFrom(connection, statement);
    if (!file) return file.error();
    return std::optional(std::move(*file));
}

Result<std::optional<std::int64_t>> certificateOfFile(const Archive& archive,
                                                      const std::string& digest) {
    for (const char* table : {"certificate", "endorsement", "presentation"}) {
        SqlStatement statement(
            ArchiveAccess::connection(archive),
            std::string("SELECT number FROM ") + table + " WHERE file_sha256 = ? ORDER BY number");
        const auto row = statement.first(digest);
        if (!row) return row.error();
        if (*row) return std::optional(statement.whole(0));
    }
    return std::optional<std::int64_t>();
}

Result<std::int64_t> signedFileCount(const Archive& archive) {
    SqlStatement statement(ArchiveAccess::connection(archive), "SELECT count(*) FROM presentation");
    const auto row = statement.first();
    if (!row) return row.error();
    return statement.whole(0);
}

FileReader fileReader(const Archive& archive) {
    return [folder = ArchiveAccess::folder(archive)](const std::string& digest) {
        return loadStoredFile(folder, digest);
    };
}

Result<std::vector<std::string>> unnamedFiles(const Archive& archive) {
    const std::string& folder = ArchiveAccess::folder(archive);
    NamedFiles named(ArchiveAccess::connection(archive));
    if (auto begun = named.begin(); !begun) return begun.error();
    const auto groups = entriesOf(folder);
    if (!groups) return groups.error();
    std::vector<std::string> unnamed;
    for (const fs::path& group : *groups) {
        const auto files = entriesOf(group);
        if (!files) return files.error();
        std::error_code code;
        if (!fs::is_directory(group, code)) unnamed.push_back(group.string());
        for (const fs::path& file : *files) {
            const std::string digest = digestIn(folder, file);
            const auto known = digest.empty() ? Result<bool>(false) : named.have(digest);
            if (!known) return known.error();
            if (!*known) unnamed.push_back(file.string());
        }
    }
    return unnamed;
}

}  // namespace model
