// SPDX-License-Identifier: Apache-2.0
#include "exchange/json_document.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "base/decimal.h"
#include "exchange/json_source.h"

namespace model {
namespace {

/// What the parser library calls as it reads: builds the value, and stops at the first thing that
/// the program does not take. The library names the functions.
class Builder {
public:
    explicit Builder(const JsonSource& source) : source_(source) {}

    bool null() { return fail("must not be null: leave out what is not known"); }
    bool boolean(bool value) { return place(JsonValue::boolean(value)); }
    bool number_integer(std::int64_t value) { return number(std::to_string(value)); }
    bool number_unsigned(std::uint64_t value) { return number(std::to_string(value)); }
    bool number_float(double /*binary*/, std::string text) {
        // The library writes the decimal sign of the process's locale into the text.
        for (char& c : text)
            if (std::strchr("0123456789+-eE", c) == nullptr) c = '.';
        return number(text);
    }
    bool string(std::string& text) {
        if (text.find('\0') != std::string::npos) return fail("must not hold the character U+0000");
        return place(JsonValue::string(std::move(text)));
    }
    bool binary(std::vector<std::uint8_t>& /*bytes*/) { return fail("must not be binary"); }

    bool start_object(std::size_t /*unknown*/) { return open(true); }
    bool key(std::string& name) {
        Open& object = open_.back();
        if (std::ranges::find(object.members, name, &JsonMember::name) != object.members.end()) {
            object.name = std::move(name);
            return fail("is given twice");
        }
        if (object.members.size() == kMostJsonMembers) {
            object.name = std::move(name);
            return fail("is one member too many: an object holds at most %1",
                        {std::to_string(kMostJsonMembers)});
        }
        object.name = std::move(name);
        return true;
    }
    bool end_object() { return close(); }
    bool start_array(std::size_t /*unknown*/) { return open(false); }
    bool end_array() { return close(); }

    bool parse_error(std::size_t /*position*/, const std::string& lastRead,
                     const nlohmann::json::exception& cause) {
        constexpr int kNumberOverflow = 406;
        if (cause.id == kNumberOverflow) return fail("is larger than 1000000");
        return failAt(source_.place(), explanation(cause.what(), lastRead));
    }

    std::optional<Error> error;
    JsonValue root;

private:
    /// An object or array whose end has not been read yet.
    struct Open {
        bool isObject = false;
        JsonValue::Members members;
        JsonValue::Elements elements;
        std::string name;  ///< of the member whose value comes next
    };

    bool number(const std::string& text) {
        const Result<std::int64_t> value = parseMillionths(text);
        if (!value) return fail(value.error().reason);
        return place(JsonValue::number(*value));
    }

    bool open(bool isObject) {
        if (open_.size() == kDeepestJsonNesting)
            return failAt(source_.place(), "is nested deeper than " +
                                               std::to_string(kDeepestJsonNesting) + " levels");
        open_.push_back({isObject, {}, {}, {}});
        return true;
    }

    bool close() {
        Open done = std::move(open_.back());
        open_.pop_back();
        return place(done.isObject ? JsonValue::object(std::move(done.members))
                                   : JsonValue::array(std::move(done.elements)));
    }

    bool place(JsonValue value) {
        if (++values_ > kMostJsonValues)
            return failAt(source_.place(), "is one value too many: a document holds at most " +
                                               std::to_string(kMostJsonValues));
        if (open_.empty())
            root = std::move(value);
        else if (open_.back().isObject)
            open_.back().members.push_back({std::move(open_.back().name), std::move(value)});
        else
            open_.back().elements.push_back(std::move(value));
        return true;
    }

    /// The path of the value that is being read.
    [[nodiscard]] std::string path() const {
        std::string path;
        for (const Open& open : open_)
            path = open.isObject ? memberPath(path, open.name)
                                 : elementPath(path, open.elements.size());
        return path;
    }

    bool fail(std::string reason, std::vector<std::string> arguments = {}) {
        error = inputError(path(), std::move(reason), std::move(arguments));
        if (error->place.empty()) error->place = source_.place();
        return false;
    }
    bool failAt(std::string where, std::string reason) {
        error = inputError(std::move(where), "%1", {std::move(reason)});
        return false;
    }

    /// The library's reason without its own numbering and position.
    static std::string explanation(std::string text, const std::string& lastRead) {
        if (text.find("ill-formed UTF-8") != std::string::npos) return "is not UTF-8";
        const std::string quoted = "; last read: '" + lastRead + "'";
        if (const auto at = text.find(quoted); at != std::string::npos)
            text.erase(at, quoted.size());
        if (const auto at = text.find(" - "); at != std::string::npos) text.erase(0, at + 3);
        return "is not JSON: " + text;
    }

    const JsonSource& source_;
    std::vector<Open> open_;
    std::size_t values_ = 0;
};

Result<JsonValue> parse(JsonSource& source, const std::string& name) {
    Builder builder(source);
    nlohmann::json::sax_parse(JsonSourceIterator(source), JsonSourceIterator(), &builder);
    std::optional<Error> error = source.failure() ? source.failure() : builder.error;
    if (!error) return std::move(builder.root);
    error->place = error->place.empty() ? name : name + ": " + error->place;
    return *error;
}

std::string systemText(int cause) {
    return std::strerror(cause);
}

}  // namespace

std::string documentName(const std::string& file) {
    return file == kStandardInput ? "standard input" : file;
}

Result<JsonValue> parseJson(std::string_view text, const std::string& name) {
    JsonSource source(text);
    return parse(source, name);
}

Result<JsonValue> readJson(const std::string& file) {
    if (file == kStandardInput) {
        JsonSource source(stdin);
        return parse(source, documentName(file));
    }
    std::error_code failure;
    const auto status = std::filesystem::status(file, failure);
    if (status.type() == std::filesystem::file_type::not_found)
        return inputError(file, "is not there");
    if (std::filesystem::is_directory(status)) return inputError(file, "is a folder, not a file");
    if (failure == std::errc::filename_too_long) return inputError(file, "is too long a file name");
    if (failure) return refusal(file, "cannot be read: %1", {systemText(failure.value())});
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> opened(std::fopen(file.c_str(), "rb"),
                                                                 &std::fclose);
    if (!opened) return refusal(file, "cannot be read: %1", {systemText(errno)});
    JsonSource source(opened.get());
    return parse(source, file);
}

}  // namespace model
