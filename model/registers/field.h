// SPDX-License-Identifier: Apache-2.0
// The fields of what a foundry keeps registers of: equipment, consumables, procedures, people's
// certificates, repairs. Every field is text as typed; its kind says what the text has to be. One
// list of fields serves storing, reading files, printing and forms.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/field_error.h"
#include "base/result.h"
#include "trust/canonical.h"

namespace model {

enum class FieldKind {
    Line,       ///< any text on one line
    Paragraph,  ///< any text
    Date,       ///< 2026-11-25
    Moment,     ///< UTC, 2026-11-25T09:30:00Z
    Number,     ///< a decimal number, point or comma, at most 6 decimals
    Whole,      ///< a whole number, 0 or above
    Choice,     ///< one of `choices`
    YesNo,      ///< "yes" or "no"
    List,       ///< texts parted by commas
    Sha256,     ///< SHA-256, 64 hexadecimal digits
};

struct FieldInfo {
    std::string_view key;    ///< in files and in the history: "calibration_due"
    std::string_view label;  ///< on screen and on paper: "Calibration due"
    FieldKind kind = FieldKind::Line;
    /// Required: never empty. Key: never empty, and with the other keys names the entry for good.
    enum class Need { Optional, Required, Key } need = Need::Optional;
    std::string_view unit;     ///< of a number: "mm"; empty: none
    std::string_view choices;  ///< parted by "|": "in use|withdrawn"
    std::string_view help;     ///< one sentence for whoever fills it in; source where there is one
};

template <class T>
struct Field {
    FieldInfo info;
    std::string T::*text;
};

/// Texts parted by commas, without blanks at their ends; empty ones are left out.
std::vector<std::string> itemsOf(std::string_view list);
std::string listOf(const std::vector<std::string>& items);

/// What is wrong with a text by its field's kind and need, place left empty; none: nothing.
std::optional<Error> wrongText(const FieldInfo& field, std::string_view text);
/// The exact value of a Number's text in millionths; none where it is empty or no number.
std::optional<std::int64_t> numberOf(std::string_view text);
/// Whether a text is a date of the calendar, 2026-11-25.
bool isDate(std::string_view text);
/// The day that lies `months` after a date; the month's last where it has no such day.
std::string monthsAfter(std::string_view date, int months);
/// The day that lies `days` after a date (before it, where negative).
std::string daysAfter(std::string_view date, int days);

/// Everything that is wrong with an entry.
template <class T>
std::vector<FieldError> wrongFields(const T& entry) {
    std::vector<FieldError> errors;
    for (const Field<T>& field : T::fields())
        if (auto error = wrongText(field.info, entry.*field.text))
            errors.push_back({std::string(field.info.key), std::move(*error)});
    return errors;
}

/// Texts by key; those that are empty are left out.
template <class T>
Canonical::Object canonicalFields(const T& entry) {
    Canonical::Object object;
    for (const Field<T>& field : T::fields())
        if (const std::string& text = entry.*field.text; !text.empty())
            object[std::string(field.info.key)] = text;
    return object;
}

/// Takes what canonicalFields() wrote; none where a key is unknown or a value is no text.
template <class T>
std::optional<T> fromCanonicalFields(const Canonical::Object& object) {
    T entry;
    std::size_t taken = 0;
    for (const Field<T>& field : T::fields()) {
        const auto found = object.find(field.info.key);
        if (found == object.end()) continue;
        const std::string* text = found->second.text();
        if (!text || text->empty()) return std::nullopt;
        entry.*field.text = *text;
        ++taken;
    }
    if (taken != object.size()) return std::nullopt;
    return entry;
}

/// Lists of such entries as an array of objects.
template <class T>
Canonical::Array canonicalList(const std::vector<T>& entries) {
    Canonical::Array array;
    for (const T& entry : entries) array.emplace_back(canonicalFields(entry));
    return array;
}
template <class T>
std::optional<std::vector<T>> listFromCanonical(const Canonical& value) {
    if (!value.array()) return std::nullopt;
    std::vector<T> entries;
    for (const Canonical& element : *value.array()) {
        if (!element.object()) return std::nullopt;
        auto entry = fromCanonicalFields<T>(*element.object());
        if (!entry) return std::nullopt;
        entries.push_back(std::move(*entry));
    }
    return entries;
}

/// Adds such a list under `key`, where it holds anything.
template <class T>
void addList(Canonical::Object& object, const char* key, const std::vector<T>& entries) {
    if (!entries.empty()) object[key] = canonicalList(entries);
}
/// Takes the list out of the object again; empty where it has none, none where it is no such list.
template <class T>
std::optional<std::vector<T>> takeList(Canonical::Object& object, const char* key) {
    const auto found = object.find(key);
    if (found == object.end()) return std::vector<T>();
    auto entries = listFromCanonical<T>(found->second);
    object.erase(found);
    return entries;
}

/// What names an entry in its register: the texts of its key fields, parted by " / ".
template <class T>
std::string keyOf(const T& entry) {
    std::string key;
    for (const Field<T>& field : T::fields()) {
        if (field.info.need != FieldInfo::Need::Key) continue;
        if (!key.empty()) key += " / ";
        key += entry.*field.text;
    }
    return key;
}

/// The text of a field by its key; null where there is no such field.
template <class T>
const std::string* textOf(const T& entry, std::string_view key) {
    for (const Field<T>& field : T::fields())
        if (field.info.key == key) return &(entry.*field.text);
    return nullptr;
}

}  // namespace model
