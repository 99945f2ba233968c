// SPDX-License-Identifier: Apache-2.0
#include "reference/register.h"

#include <QStringList>

#include "fields/field_words.h"
#include "looks/text.h"

namespace app {

std::string keyOf(const Register& of, const Entry& entry) {
    std::string key;
    for (const auto& field : of.fields) {
        if (field.need != model::FieldInfo::Need::Key) continue;
        if (!key.empty()) key += " / ";
        key += textOf(entry.texts, std::string(field.key));
    }
    return key;
}

QString nameOf(const Register& of, const Entry& entry) {
    QStringList parts;
    for (const auto& field : of.fields) {
        if (field.need != model::FieldInfo::Need::Key) continue;
        const std::string& text = textOf(entry.texts, std::string(field.key));
        parts << (field.kind == model::FieldKind::Moment ? momentShown(text) : qt(text));
    }
    return parts.join(" / ");
}

std::vector<model::FieldError> wrongTexts(const std::vector<model::FieldInfo>& fields,
                                          const EntryTexts& texts, const std::string& place) {
    std::vector<model::FieldError> errors;
    for (const auto& field : fields) {
        if (auto error = model::wrongText(field, textOf(texts, std::string(field.key)))) {
            errors.push_back({place + std::string(field.key), std::move(*error)});
        }
    }
    return errors;
}

std::vector<model::FieldError> wrongEntry(const Register& of, const Entry& entry) {
    auto errors = wrongTexts(of.fields, entry.texts);
    for (const auto& table : of.rows) {
        const auto found = entry.rows.find(table.key);
        if (found == entry.rows.end()) continue;
        for (std::size_t i = 0; i < found->second.size(); ++i) {
            auto more = wrongTexts(table.fields, found->second[i],
                                   table.key + "." + std::to_string(i) + ".");
            errors.insert(errors.end(), std::make_move_iterator(more.begin()),
                          std::make_move_iterator(more.end()));
        }
    }
    return errors;
}

const std::string& textOf(const EntryTexts& texts, const std::string& key) {
    static const std::string kNone;
    const auto found = texts.find(key);
    return found == texts.end() ? kNone : found->second;
}

}  // namespace app
