// SPDX-License-Identifier: Apache-2.0
#include "exchange/csv_reader.h"

#include <algorithm>

#include "exchange/json_document.h"

namespace model {
namespace {

/// How many bytes the character at the start of `text` has; 0: it is no UTF-8.
std::size_t characterSize(std::string_view text) {
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
    };
    const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
    const unsigned first = byte(0);
    if (first < 0x80) return 1;
    if (first >= 0xC2 && first <= 0xDF) return follows(1) ? 2 : 0;
    if (first >= 0xE0 && first <= 0xEF) {
        if ((first == 0xE0 && byte(1) < 0xA0) || (first == 0xED && byte(1) > 0x9F)) return 0;
        return follows(1) && follows(2) ? 3 : 0;
    }
    if (first >= 0xF0 && first <= 0xF4) {
        if ((first == 0xF0 && byte(1) < 0x90) || (first == 0xF4 && byte(1) > 0x8F)) return 0;
        return follows(1) && follows(2) && follows(3) ? 4 : 0;
    }
    return 0;
}

class Reader {
public:
    Reader(std::string_view text, std::string name) : text_(text), name_(std::move(name)) {}

    Result<CsvTable> read() {
        CsvTable table;
        if (auto sound = checkBytes(); !sound) return sound.error();
        table.separator = separator_ = separatorOfFirstLine();
        bool first = true;
        std::size_t fields = 0;
        while (at_ < text_.size()) {
            auto row = readRow();
            if (!row) return row.error();
            const bool nothing = row->fields.size() == 1 && row->fields[0].empty() && !quoted_;
            if (nothing) continue;
            if (first) {
                table.names = std::move(*row);
                first = false;
                continue;
            }
            fields += row->fields.size();
            if (table.rows.size() == kMostCsvRows || fields > kMostCsvFields)
                return inputError(name_, "has more than %1 rows or %2 fields; import it in parts",
                                  {std::to_string(kMostCsvRows), std::to_string(kMostCsvFields)});
            table.rows.push_back(std::move(*row));
        }
        if (first) return inputError(name_, "holds no line with the names of the columns");
        return table;
    }

private:
    Result<void> checkBytes() {
        if (text_.size() > kLargestCsv)
            return inputError(name_, "is larger than %1 bytes", {std::to_string(kLargestCsv)});
        if (text_.starts_with("\xFE\xFF") || text_.starts_with("\xFF\xFE"))
            return inputError(name_, "is UTF-16; save it as UTF-8");
        if (text_.starts_with("\xEF\xBB\xBF")) {
            at_ = 3;
            lineStart_ = 3;
        }
        const std::size_t zero = text_.find('\0');
        const std::size_t wrong = std::min(utf8End(text_), zero);
        if (wrong < text_.size())
            return failAt(wrong, wrong == zero ? "a byte is 0; must be text in UTF-8"
                                               : "is no UTF-8; save the file as UTF-8");
        return {};
    }

    /// ';' where the first line has one outside quotes and no comma.
    [[nodiscard]] char separatorOfFirstLine() const {
        bool inQuotes = false;
        bool semicolon = false;
        for (std::size_t i = text_.find_first_not_of("\r\n", at_); i < text_.size(); ++i) {
            const char c = text_[i];
            if (c == '"') inQuotes = !inQuotes;
            if (inQuotes) continue;
            if (c == ',') return ',';
            if (c == ';') semicolon = true;
            if (c == '\n') break;
        }
        return semicolon ? ';' : ',';
    }

    Result<CsvRow> readRow() {
        CsvRow row;
        row.line = line_;
        quoted_ = false;
        while (true) {
            std::string field;
            auto ended =
                at_ < text_.size() && text_[at_] == '"' ? readQuoted(field) : readPlain(field);
            if (!ended) return ended.error();
            row.fields.push_back(std::move(field));
            if (row.fields.size() > kMostCsvColumns)
                return failAt(at_, "has more than %1 columns", {std::to_string(kMostCsvColumns)});
            if (*ended == End::Row) return row;
        }
    }

    enum class End { Field, Row };

    Result<End> readPlain(std::string& field) {
        const std::size_t start = at_;
        while (at_ < text_.size()) {
            const char c = text_[at_];
            if (c == separator_ || c == '\n' || c == '\r') break;
            if (c == '"')
                return failAt(at_, "a quote stands within a field that does not begin with one");
            ++at_;
        }
        if (at_ - start > kLongestCsvField) return tooLong(placeAt(start));
        field = text_.substr(start, at_ - start);
        return endOfField();
    }

    Result<End> readQuoted(std::string& field) {
        quoted_ = true;
        const std::string opened = placeAt(at_);
        ++at_;
        while (true) {
            if (at_ == text_.size()) return inputError(opened, "a quote is never closed");
            const char c = text_[at_++];
            if (c == '"') {
                if (at_ == text_.size() || text_[at_] != '"') break;
                ++at_;
            }
            if (c == '\n') nextLine();
            field += c;
            if (field.size() > kLongestCsvField) return tooLong(opened);
        }
        if (at_ < text_.size() && text_[at_] != separator_ && text_[at_] != '\n' &&
            text_[at_] != '\r')
            return failAt(at_, "text stands behind a closing quote");
        return endOfField();
    }

    Result<End> endOfField() {
        if (at_ == text_.size()) return End::Row;
        if (text_[at_] == separator_) {
            ++at_;
            return End::Field;
        }
        if (text_[at_] == '\r') {
            if (at_ + 1 == text_.size() || text_[at_ + 1] != '\n')
                return failAt(at_, "a carriage return stands without a line feed behind it");
            ++at_;
        }
        ++at_;
        nextLine();
        return End::Row;
    }

    void nextLine() {
        ++line_;
        lineStart_ = at_;
    }

    [[nodiscard]] std::string placeAt(std::size_t position) const {
        return name_ + ": line " + std::to_string(line_) + ", column " +
               std::to_string(position - lineStart_ + 1);
    }
    /// `position` lies on the current line or, where nothing was read yet, anywhere.
    Error failAt(std::size_t position, std::string reason,
                 std::vector<std::string> arguments = {}) {
        const std::string_view before = text_.substr(lineStart_, position - lineStart_);
        line_ += static_cast<std::size_t>(std::ranges::count(before, '\n'));
        if (const auto end = before.rfind('\n'); end != std::string_view::npos)
            lineStart_ += end + 1;
        return inputError(placeAt(position), std::move(reason), std::move(arguments));
    }
    static Error tooLong(const std::string& place) {
        return inputError(place, "the field is longer than %1 bytes",
                          {std::to_string(kLongestCsvField)});
    }

    std::string_view text_;
    std::string name_;
    char separator_ = ',';
    bool quoted_ = false;  ///< whether a field of the row is
    std::size_t at_ = 0;
    std::size_t line_ = 1;
    std::size_t lineStart_ = 0;
};

}  // namespace

Result<CsvTable> readCsv(std::string_view text, const std::string& name) {
    return Reader(text, documentName(name)).read();
}

std::size_t utf8End(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t size = characterSize(text.substr(at));
        if (size == 0) return at;
        at += size;
    }
    return at;
}

std::string csvLine(const std::vector<std::string>& fields) {
    std::string text;
    for (const std::string& field : fields) {
        if (&field != fields.data()) text += ',';
        if (field.find_first_of(",\"\r\n") == std::string::npos) {
            text += field;
            continue;
        }
        text += '"';
        for (const char c : field) {
            if (c == '"') text += '"';
            text += c;
        }
        text += '"';
    }
    return text + "\r\n";
}

}  // namespace model
