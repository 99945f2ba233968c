// SPDX-License-Identifier: Apache-2.0
// A form made from the fields of a register's entry.
#include <QLabel>
#include <QLineEdit>

#include "fields/field_form.h"
#include "fields/field_words.h"
#include "fields/suggestions.h"
#include "looks/text.h"

namespace app {
Choices choicesOf(const model::FieldInfo& info) {
    Choices choices;
    const QString words =
        info.kind == model::FieldKind::YesNo
            ? QStringLiteral("yes|no")
            : QString::fromUtf8(info.choices.data(), static_cast<qsizetype>(info.choices.size()));
    if (words.isEmpty()) return choices;
    choices.emplace_back("", QString());
    for (const QString& word : words.split('|')) {
        const std::string stored = word.trimmed().toStdString();
        choices.emplace_back(stored, choiceText(stored));
    }
    return choices;
}

FieldForm::FieldForm(std::span<const model::FieldInfo> fields, QWidget* parent)
    : FieldForm(parent) {
    for (const auto& field : fields) add(field);
}

int FieldForm::add(const model::FieldInfo& info) {
    const bool chosen =
        info.kind == model::FieldKind::Choice || info.kind == model::FieldKind::YesNo;
    return add(FieldFacts{std::string(info.key), fieldLabel(info), shownUnit(info.unit),
                          fieldHelp(info), chosen ? choicesOf(info) : Choices(), info.kind,
                          info.need != model::FieldInfo::Need::Optional});
}

void FieldForm::setMnemonics(const QString& taken) {
    QString used = taken.toLower();
    for (int i = 0; i < count(); ++i) {
        QString text = at(i).label->text().remove('&');
        // The first letter of a word is found more easily than another one.
        for (const bool begins : {true, false}) {
            qsizetype letter = 0;
            const auto fits = [&] {
                const bool first = letter == 0 || text[letter - 1] == ' ';
                return text[letter].isLetter() && first == begins &&
                       !used.contains(text[letter].toLower());
            };
            while (letter < text.size() && !fits()) ++letter;
            if (letter == text.size()) continue;
            used += text[letter].toLower();
            text.insert(letter, '&');
            break;
        }
        at(i).label->setText(text);
    }
}

void FieldForm::setTexts(const std::map<std::string, std::string>& texts) {
    open_ = -1;
    for (int i = 0; i < count(); ++i) {
        const auto found = texts.find(facts(i).field);
        setText(i, found == texts.end() ? std::string() : found->second);
    }
}

std::map<std::string, std::string> FieldForm::texts() const {
    std::map<std::string, std::string> texts;
    for (int i = 0; i < count(); ++i) {
        if (std::string text = this->text(i); !text.empty())
            texts[facts(i).field] = std::move(text);
    }
    return texts;
}

QStringList FieldForm::showErrors(const std::vector<model::FieldError>& errors) {
    clearErrors();
    QStringList others;
    for (const auto& error : errors) {
        const int field = find(error.field);
        if (field < 0) {
            others << tr("%1: %2").arg(qt(error.field), reasonText(error.error));
        } else {
            setError(field, reasonText(error.error));
        }
    }
    return others;
}

void FieldForm::setSuggestions(const std::string& key, const QStringList& texts) {
    Choices choices;
    for (const QString& text : texts) choices.emplace_back(text.toStdString(), text);
    setSuggestions(key, choices);
}

void FieldForm::setSuggestions(const std::string& key, const Choices& choices) {
    const int field = find(key);
    if (field < 0 || !at(field).line) return;
    suggest(*at(field).line, choices, at(field).facts.kind == model::FieldKind::List,
            [this, field] { typedIn(field); });
}

}  // namespace app
