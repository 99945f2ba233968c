// SPDX-License-Identifier: Apache-2.0
#include "signing/signature_values.h"

#include <array>
#include <charconv>
#include <cstdio>

#include "signing/pdf_file.h"

namespace reports::signing {
namespace {

constexpr std::string_view kByteRange = "/ByteRange";

void collect(QPDFObjectHandle field, const std::string& parent, bool signature, int depth,
             std::vector<FieldValue>& all) {
    constexpr int kDeepest = 16;
    constexpr std::size_t kMost = 1000;
    if (!field.isDictionary() || depth > kDeepest || all.size() > kMost) return;
    std::string name = parent;
    if (field.hasKey("/T")) name += (name.empty() ? "" : ".") + textAt(field, "/T");
    if (field.hasKey("/FT")) signature = isName(field.getKey("/FT"), "/Sig");
    if (signature && (field.hasKey("/V") || !field.hasKey("/Kids"))) {
        FieldValue found;
        found.field = name;
        if (field.hasKey("/V")) found.value = field.getKey("/V");
        all.push_back(std::move(found));
    }
    QPDFObjectHandle kids = field.getKey("/Kids");
    if (kids.isArray())
        for (QPDFObjectHandle& kid : kids.getArrayAsVector())
            if (kid.isDictionary() && kid.hasKey("/T"))
                collect(kid, name, signature, depth + 1, all);
}

int digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

// Nothing where it is no hexadecimal text of one case: a letter in the other case would be a
// change that nobody notices.
std::optional<std::string> fromHex(std::string_view text) {
    if (text.size() % 2 != 0) return std::nullopt;
    if (text.find_first_of("abcdef") != std::string_view::npos &&
        text.find_first_of("ABCDEF") != std::string_view::npos)
        return std::nullopt;
    std::string bytes;
    bytes.reserve(text.size() / 2);
    for (std::size_t i = 0; i < text.size(); i += 2) {
        const int high = digit(text[i]);
        const int low = digit(text[i + 1]);
        if (high < 0 || low < 0) return std::nullopt;
        bytes += static_cast<char>(high << 4 | low);
    }
    return bytes;
}

// The DER at the start of `bytes`, if nothing but zeros follows.
std::optional<std::string> withoutFilling(const std::string& bytes) {
    std::size_t length = 0;
    std::size_t header = 2;
    if (bytes.size() < 2 || bytes[0] != '\x30') return std::nullopt;
    const auto first = static_cast<unsigned char>(bytes[1]);
    if (first < 0x80) {
        length = first;
    } else {
        const std::size_t count = first & 0x7FU;
        if (count == 0 || count > 4 || bytes.size() < 2 + count) return std::nullopt;
        for (std::size_t i = 0; i < count; ++i)
            length = length << 8U | static_cast<unsigned char>(bytes[2 + i]);
        header += count;
    }
    if (length > bytes.size() - header) return std::nullopt;
    if (bytes.find_first_not_of('\0', header + length) != std::string::npos) return std::nullopt;
    return bytes.substr(0, header + length);
}

}  // namespace

std::vector<FieldValue> signatureFields(QPDF& file) {
    std::vector<FieldValue> all;
    QPDFObjectHandle form = file.getRoot().getKey("/AcroForm");
    if (form.isDictionary() && form.getKey("/Fields").isArray())
        for (QPDFObjectHandle& field : form.getKey("/Fields").getArrayAsVector())
            collect(field, "", false, 0, all);
    return all;
}

CoverageResult coverageOf(QPDFObjectHandle signature, std::string_view pdf) {
    if (!signature.isDictionary()) return {{}, "the field's value is no signature"};
    QPDFObjectHandle range = signature.getKey("/ByteRange");
    std::array<std::size_t, 4> numbers{};
    if (!range.isArray() || range.getArrayNItems() != 4)
        return {{}, "it does not say which bytes it covers"};
    for (int i = 0; i < 4; ++i) {
        QPDFObjectHandle item = range.getArrayItem(i);
        if (!item.isInteger() || item.getIntValue() < 0)
            return {{}, "it does not say which bytes it covers"};
        numbers[static_cast<std::size_t>(i)] = static_cast<std::size_t>(item.getIntValue());
    }
    const auto [begin, gapBegin, gapEnd, rest] = numbers;
    if (begin != 0 || gapBegin == 0 || gapEnd > pdf.size() || gapBegin + 2 > gapEnd ||
        rest > pdf.size() - gapEnd)
        return {{}, "the bytes that it says it covers are not in the file"};
    const std::string_view gap = pdf.substr(gapBegin, gapEnd - gapBegin);
    const auto contents = gap.front() == '<' && gap.back() == '>'
                              ? fromHex(gap.substr(1, gap.size() - 2))
                              : std::nullopt;
    QPDFObjectHandle stated = signature.getKey("/Contents");
    if (!contents || !stated.isString() || stated.getStringValue() != *contents)
        return {{}, "the bytes that it leaves out are not exactly the signature itself"};
    auto bytes = withoutFilling(*contents);
    if (!bytes) return {{}, "the place of the signature holds something else beside it"};
    return {Coverage{gapBegin, gapEnd, gapEnd + rest, std::move(*bytes)}, ""};
}

std::optional<model::UtcTime> readDate(const std::string& text) {
    int year = 0;
    unsigned month = 0;
    unsigned day = 0;
    int hour = 0;
    int minute = 0;
    int second = 0;
    if (std::sscanf(text.c_str(), "D:%4d%2u%2u%2d%2d%2d", &year, &month, &day, &hour, &minute,
                    &second) != 6)
        return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(year), std::chrono::month(month),
                                           std::chrono::day(day)};
    if (!date.ok() || hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 ||
        second > 59)
        return std::nullopt;
    const model::UtcTime local = std::chrono::sys_days(date) + std::chrono::hours(hour) +
                                 std::chrono::minutes(minute) + std::chrono::seconds(second);
    constexpr std::size_t kZone = 16;
    if (text.size() == kZone || text[kZone] == 'Z') return local;
    int zoneHours = 0;
    int zoneMinutes = 0;
    char sign = 0;
    const int read =
        std::sscanf(text.c_str() + kZone, "%c%2d'%2d", &sign, &zoneHours, &zoneMinutes);
    if (read < 2 || (sign != '+' && sign != '-') || zoneHours < 0 || zoneHours > 23 ||
        zoneMinutes < 0 || zoneMinutes > 59)
        return std::nullopt;
    const auto shift = std::chrono::hours(zoneHours) + std::chrono::minutes(zoneMinutes);
    return sign == '+' ? local - shift : local + shift;
}

std::vector<std::size_t> statedEnds(std::string_view pdf) {
    constexpr std::size_t kMost = 100;
    std::vector<std::size_t> ends;
    for (std::size_t at = pdf.find(kByteRange); at != std::string_view::npos && ends.size() < kMost;
         at = pdf.find(kByteRange, at + 1)) {
        std::array<std::size_t, 4> numbers{};
        const char* next = pdf.data() + at + kByteRange.size();
        const char* end = pdf.data() + pdf.size();
        bool read = true;
        for (std::size_t& number : numbers) {
            while (next != end && (*next == ' ' || *next == '[')) ++next;
            const auto result = std::from_chars(next, end, number);
            read = read && result.ec == std::errc();
            next = result.ptr;
        }
        if (read && numbers[2] <= pdf.size() && numbers[3] <= pdf.size() - numbers[2])
            ends.push_back(numbers[2] + numbers[3]);
    }
    return ends;
}

std::size_t byteRangesIn(std::string_view pdf) {
    std::size_t count = 0;
    for (std::size_t at = pdf.find(kByteRange); at != std::string_view::npos;
         at = pdf.find(kByteRange, at + 1))
        ++count;
    return count;
}

}  // namespace reports::signing
