// SPDX-License-Identifier: Apache-2.0
#include "limits/table_set.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <system_error>
#include <utility>

#include "limits/parser.h"
#include "limits/shipped_tables.h"
#include "limits/table_lines.h"

namespace model {
namespace {

namespace fs = std::filesystem;

/// The files of a folder that are named *.table, by name.
Result<std::vector<fs::path>> tableFiles(const std::string& folder) {
    std::error_code error;
    const fs::file_status status = fs::status(folder, error);
    if (status.type() == fs::file_type::not_found)
        return inputError(folder, "the folder of limit tables does not exist");
    if (error) return refusal(folder, "the folder cannot be read: %1", {error.message()});
    if (!fs::is_directory(status)) return inputError(folder, "is not a folder");

    std::vector<fs::path> files;
    fs::directory_iterator entry(folder, error);
    for (; !error && entry != fs::directory_iterator(); entry.increment(error))
        if (entry->path().extension() == ".table") files.push_back(entry->path());
    if (error) return refusal(folder, "the folder cannot be read: %1", {error.message()});
    std::ranges::sort(files);
    return files;
}

Result<std::string> readText(const fs::path& file) {
    std::error_code error;
    const fs::file_status status = fs::status(file, error);
    if (status.type() == fs::file_type::not_found)
        return inputError(file.string(), "the file does not exist");
    if (error) return refusal(file.string(), "the file cannot be read: %1", {error.message()});
    if (!fs::is_regular_file(status)) return inputError(file.string(), "is not a file");

    std::ifstream in(file, std::ios::binary);
    // One byte more than is allowed, so that the parser sees that the file is too large.
    std::string text(kLargestTableFile + 1, '\0');
    if (in) in.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (in.bad() || (in.fail() && !in.eof()))
        return refusal(file.string(), "the file cannot be read");
    text.resize(static_cast<std::size_t>(in.gcount()));
    return text;
}

}  // namespace

Result<TableSet> TableSet::shipped() {
    TableSet set;
    for (const EmbeddedFile& shipped : shippedTables()) {
        Result<LimitTable> table =
            parseTable(shipped.text, "shipped tables/" + std::string(shipped.name));
        if (!table) return table.error();
        if (Result<void> added = set.add(std::move(table).value()); !added) return added.error();
    }
    return set;
}

Result<void> TableSet::add(LimitTable table) {
    std::map<int, LimitTable>& revisions = tables_[table.id];
    const auto known = revisions.find(table.revision);
    if (known == revisions.end())
        revisions.emplace(table.revision, std::move(table));
    else if (known->second.digest != table.digest)
        return inputError(table.file,
                          "this is revision %1 of %2, and so is %3, but their bytes differ; a "
                          "changed table needs a new revision",
                          {std::to_string(table.revision), table.id, known->second.file});
    return {};
}

Result<void> TableSet::addFolder(const std::string& folder) {
    const Result<std::vector<fs::path>> files = tableFiles(folder);
    if (!files) return files.error();
    TableSet next = *this;
    for (const fs::path& file : *files) {
        const Result<std::string> text = readText(file);
        if (!text) return text.error();
        Result<LimitTable> table = parseTable(*text, file.string());
        if (!table) return table.error();
        if (Result<void> added = next.add(std::move(table).value()); !added) return added;
    }
    *this = std::move(next);
    return {};
}

const LimitTable* TableSet::find(std::string_view id) const {
    const auto revisions = tables_.find(id);
    if (revisions == tables_.end() || revisions->second.empty()) return nullptr;
    return &revisions->second.rbegin()->second;
}

const LimitTable* TableSet::find(std::string_view id, int revision) const {
    const auto revisions = tables_.find(id);
    if (revisions == tables_.end()) return nullptr;
    const auto found = revisions->second.find(revision);
    return found == revisions->second.end() ? nullptr : &found->second;
}

std::vector<const LimitTable*> TableSet::all() const {
    std::vector<const LimitTable*> highest;
    for (const auto& [id, revisions] : tables_)
        if (!revisions.empty()) highest.push_back(&revisions.rbegin()->second);
    return highest;
}

void TableSet::setAttested(std::string digest) {
    attested_.insert(std::move(digest));
}

bool TableSet::isAttested(const LimitTable& table) const {
    return attested_.contains(table.digest);
}

}  // namespace model
