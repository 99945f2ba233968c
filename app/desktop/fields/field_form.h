// SPDX-License-Identifier: Apache-2.0
// Labelled fields under headings, typed by keyboard alone: Enter goes to the next field, the unit
// stands behind each, what is wrong stands under it. Made field by field, or from the fields of a
// register's entry.
#pragma once

#include <QStringList>
#include <QWidget>
#include <map>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "registers/field.h"

class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QPlainTextEdit;

namespace app {

/// The contract's word and the word shown.
using Choices = std::vector<std::pair<std::string, QString>>;

struct FieldFacts {
    std::string field;  ///< the contract's name, as the place of an error: "echo.gain_db"
    QString label;
    QString unit;
    QString help;     ///< what is meant, and where it comes from
    Choices choices;  ///< empty: typed text
    model::FieldKind kind = model::FieldKind::Line;
    bool required = false;
};

/// Of a Choice or YesNo, with an empty one before them: nothing is chosen for anybody. None of
/// another field.
Choices choicesOf(const model::FieldInfo& info);

class FieldForm : public QWidget {
    Q_OBJECT

public:
    explicit FieldForm(QWidget* parent = nullptr);
    /// With a field for each of a register's, in their order; its keys name them.
    explicit FieldForm(std::span<const model::FieldInfo> fields, QWidget* parent = nullptr);

    void addHeading(const QString& text);
    /// A widget over the whole width.
    void addWide(QWidget* widget);
    int add(const FieldFacts& facts);
    int add(const model::FieldInfo& info);

    [[nodiscard]] int count() const { return static_cast<int>(fields_.size()); }
    /// The field of a contract name, or -1.
    [[nodiscard]] int find(const std::string& field) const;
    [[nodiscard]] const FieldFacts& facts(int field) const { return at(field).facts; }
    [[nodiscard]] std::string text(int field) const;
    /// Does not disturb what somebody is typing in the field.
    void setText(int field, const std::string& text);
    void setChoices(int field, const Choices& choices);
    void setUnit(int field, const QString& unit);
    /// What holds where nothing was typed; shown faintly.
    void setHint(int field, const QString& hint);
    void setShown(int field, bool shown);
    [[nodiscard]] bool shown(int field) const;
    /// What is wrong with a field; empty: nothing.
    void setError(int field, const QString& error);
    [[nodiscard]] QString error(int field) const;
    void clearErrors();
    void setReadOnly(bool readOnly);
    /// Alt and a letter goes to a field, as far as there are letters that are not `taken` by what
    /// stands around the form.
    void setMnemonics(const QString& taken);
    /// The same of one field, whatever the form says: as a key that names an entry for good.
    void setFixed(int field, bool fixed);
    [[nodiscard]] QWidget* editor(int field) const;
    /// A field whose text was typed but not entered yet, or -1.
    [[nodiscard]] int open() const { return open_; }
    /// Enters what is open.
    void finishEditing();

    // By key, the whole form at once.
    /// A key that is not in `texts` is emptied; a key without a field is left out.
    void setTexts(const std::map<std::string, std::string>& texts);
    /// Of every field; empty ones are left out.
    [[nodiscard]] std::map<std::string, std::string> texts() const;
    /// Shows each under its field, and returns in words those without one.
    QStringList showErrors(const std::vector<model::FieldError>& errors);
    /// What can be chosen beside typing: in a List each item, else the whole text. The down key
    /// shows them.
    void setSuggestions(const std::string& key, const QStringList& texts);
    /// The same with a text shown for each; what is typed is looked for in it.
    void setSuggestions(const std::string& key, const Choices& choices);

signals:
    void typed(int field);    ///< a key was pressed in it
    void entered(int field);  ///< it was left, ended by Enter, or chosen
    void changed();           ///< somebody has typed or chosen
    void helpChanged(const QString& help);
    void ended();  ///< Enter in the last field

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Field {
        FieldFacts facts;
        QLabel* label = nullptr;
        QLineEdit* line = nullptr;  ///< of the three editors one is there
        QComboBox* combo = nullptr;
        QPlainTextEdit* paragraph = nullptr;
        QWidget* behind = nullptr;  ///< the unit, or the key for the time now
        QLabel* unit = nullptr;     ///< null where `behind` is no unit
        QLabel* error = nullptr;
        std::string raw;  ///< of a moment: its text in UTC while nobody has typed
        bool fixed = false;
    };
    [[nodiscard]] const Field& at(int field) const {
        return fields_[static_cast<std::size_t>(field)];
    }
    [[nodiscard]] Field& at(int field) { return fields_[static_cast<std::size_t>(field)]; }
    QWidget* makeEditor(Field& made, int field);
    QWidget* makeBehind(Field& made, int field);
    void typedIn(int field);
    void putNow(int field);
    void enter(int field);
    void goOnFrom(const QWidget* editor);
    [[nodiscard]] int fieldOf(const QObject* editor) const;
    bool isShortcut(int field, int key) const;
    void showErrorColour(QLabel* label) const;

    QGridLayout* grid_;
    std::vector<Field> fields_;
    int open_ = -1;
    bool readOnly_ = false;
};

}  // namespace app
