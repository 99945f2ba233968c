// SPDX-License-Identifier: Apache-2.0
#include "limits/table_lines.h"

#include <cstdint>

namespace model {
namespace {

bool isBlank(char c) {
    return c == ' ' || c == '\t';
}
bool continuesCharacter(char c) {
    return (static_cast<unsigned char>(c) & 0xC0) == 0x80;
}

/// The number of bytes of the character that `text` begins with; 0 where it is not well-formed
/// (Unicode 15, table 3-7).
std::size_t characterSize(std::string_view text) {
    const auto lead = static_cast<unsigned char>(text[0]);
    if (lead < 0x80) return 1;
    const std::size_t size = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4 || text.size() < size) return 0;
    for (std::size_t i = 1; i < size; ++i)
        if (!continuesCharacter(text[i])) return 0;
    const auto second = static_cast<unsigned char>(text[1]);
    if ((lead == 0xE0 && second < 0xA0) || (lead == 0xED && second > 0x9F) ||
        (lead == 0xF0 && second < 0x90) || (lead == 0xF4 && second > 0x8F))
        return 0;
    return size;
}

/// Why the line's characters are not taken; empty where they are.
std::string_view wrongCharacters(std::string_view line) {
    for (std::size_t at = 0; at < line.size();) {
        const auto byte = static_cast<unsigned char>(line[at]);
        if ((byte < 0x20 && byte != '\t') || byte == 0x7F) return "holds a control character";
        const std::size_t size = characterSize(line.substr(at));
        if (size == 0) return "is not UTF-8";
        if (line.substr(at, size) == "\xEF\xBB\xBF") return "holds a byte-order mark";
        at += size;
    }
    return {};
}

/// Why the line does not split into words; empty where it does.
std::string_view split(std::string_view line, std::vector<TableWord>& words) {
    std::size_t at = 0;
    while (at < line.size()) {
        if (isBlank(line[at])) {
            ++at;
            continue;
        }
        if (line[at] == '#') break;
        const bool quoted = line[at] == '"';
        const std::size_t start = quoted ? at + 1 : at;
        std::size_t end = start;
        while (end < line.size() && line[end] != '"' && (quoted || !isBlank(line[end]))) ++end;
        const bool atMark = end < line.size() && line[end] == '"';
        if (quoted != atMark)
            return quoted ? "has a quotation mark that is not closed"
                          : "has a quotation mark inside a word";
        words.push_back({line.substr(start, end - start), quoted});
        at = quoted ? end + 1 : end;
        if (quoted && at < line.size() && !isBlank(line[at]))
            return "has no space after a quotation mark";
    }
    return {};
}

}  // namespace

Result<std::vector<TableLine>> readTableLines(std::string_view text, const std::string& file) {
    if (text.size() > kLargestTableFile)
        return inputError(placeInTable(file, 1), "the file is larger than %1 bytes",
                          {std::to_string(kLargestTableFile)});
    std::vector<TableLine> lines;
    int number = 0;
    for (std::size_t at = 0; at < text.size();) {
        ++number;
        const std::size_t end = std::min(text.find('\n', at), text.size());
        std::string_view line = text.substr(at, end - at);
        at = end + 1;
        if (line.ends_with('\r')) line.remove_suffix(1);
        if (line.size() > kLongestTableLine)
            return inputError(placeInTable(file, number), "the line is longer than %1 bytes",
                              {std::to_string(kLongestTableLine)});
        TableLine read{number, {}};
        std::string_view wrong = wrongCharacters(line);
        if (wrong.empty()) wrong = split(line, read.words);
        if (!wrong.empty())
            return inputError(placeInTable(file, number), "the line " + std::string(wrong));
        if (!read.words.empty()) lines.push_back(std::move(read));
    }
    return lines;
}

std::string placeInTable(const std::string& file, int line) {
    return file + ":" + std::to_string(line);
}

std::string shownInError(std::string_view text) {
    constexpr std::size_t kShown = 60;
    if (text.size() <= kShown) return std::string(text);
    std::size_t end = kShown;
    while (end > 0 && continuesCharacter(text[end])) --end;
    return std::string(text.substr(0, end)) + "...";
}

}  // namespace model
