// SPDX-License-Identifier: Apache-2.0
#include "archive/backup_manifest.h"

#include <algorithm>
#include <charconv>
#include <optional>

namespace model {
namespace {

constexpr std::string_view kFormat = "# fettlemark-backup/1";
constexpr std::string_view kMade = "# made ";
constexpr std::string_view kSchema = "# schema ";
constexpr std::string_view kHead = "# head ";

bool isHexadecimal(std::string_view text) {
    return std::ranges::all_of(
        text, [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); });
}

/// archive, archive.key, or archive.files/ab/cdef....pdf
bool isNameInBackup(std::string_view name) {
    if (name == kBackupDatabase || name == kBackupKey) return true;
    const std::string folder = std::string(kBackupFiles) + "/";
    if (!name.starts_with(folder) || !name.ends_with(".pdf")) return false;
    name.remove_prefix(folder.size());
    name.remove_suffix(4);
    return name.size() == 65 && name[2] == '/' && isHexadecimal(name.substr(0, 2)) &&
           isHexadecimal(name.substr(3));
}

std::string_view takeLine(std::string_view& text) {
    const auto end = text.find('\n');
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    return line;
}

/// What stands behind `key` in the next line; none where that is another line.
std::optional<std::string_view> takeValue(std::string_view& text, std::string_view key) {
    std::string_view line = takeLine(text);
    if (!line.starts_with(key)) return std::nullopt;
    line.remove_prefix(key.size());
    return line;
}

Error malformed(const std::string& place) {
    return {ErrorKind::Damaged, place, "is no longer what was written: the backup is damaged", {}};
}

}  // namespace

std::string toText(const BackupManifest& manifest) {
    std::string text(kFormat);
    text.append("\n").append(kMade).append(manifest.made);
    text.append("\n").append(kSchema).append(std::to_string(manifest.schema));
    text.append("\n").append(kHead).append(toText(manifest.head)).append("\n");
    for (const auto& [name, digest] : manifest.files)
        text.append(digest).append("  ").append(name).append("\n");
    return text;
}

Result<BackupManifest> parseBackupManifest(std::string_view text, const std::string& place) {
    if (!text.starts_with("# fettlemark-backup/"))
        return inputError(place, "is no list of a Fettlemark backup");
    if (takeLine(text) != kFormat)
        return inputError(place, "was written by a newer Fettlemark; restore it with that one");
    BackupManifest manifest;
    const auto made = takeValue(text, kMade);
    const auto schema = takeValue(text, kSchema);
    const auto head = takeValue(text, kHead);
    if (!made || !schema || !head) return malformed(place);
    manifest.made = *made;
    const auto [stop, code] =
        std::from_chars(schema->data(), schema->data() + schema->size(), manifest.schema);
    const auto parsedHead = parseHead(*head);
    if (code != std::errc{} || stop != schema->data() + schema->size() || !parsedHead)
        return malformed(place);
    manifest.head = *parsedHead;
    while (!text.empty()) {
        const std::string_view line = takeLine(text);
        if (line.size() < 67 || line.substr(64, 2) != "  " || !isHexadecimal(line.substr(0, 64)) ||
            !isNameInBackup(line.substr(66)))
            return malformed(place);
        if (!manifest.files.emplace(line.substr(66), line.substr(0, 64)).second)
            return malformed(place);
    }
    if (!manifest.files.contains(kBackupDatabase)) return malformed(place);
    return manifest;
}

}  // namespace model
