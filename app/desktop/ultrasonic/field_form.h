// SPDX-License-Identifier: Apache-2.0
// Labelled fields under headings, typed by keyboard alone: Enter goes to the next field, the unit
// stands behind each, what is wrong stands under it.
#pragma once

#include <QWidget>
#include <string>
#include <utility>
#include <vector>

class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;

namespace app {

/// The contract's word and the word shown.
using Choices = std::vector<std::pair<std::string, QString>>;

struct FieldFacts {
    std::string field;  ///< the contract's name, as the place of an error: "echo.gain_db"
    QString label;
    QString unit;
    QString help;     ///< what is meant, and where it comes from
    Choices choices;  ///< empty: typed text
};

class FieldForm : public QWidget {
    Q_OBJECT

public:
    explicit FieldForm(QWidget* parent = nullptr);

    void addHeading(const QString& text);
    /// A widget over the whole width.
    void addWide(QWidget* widget);
    int add(const FieldFacts& facts);

    [[nodiscard]] int count() const { return static_cast<int>(fields_.size()); }
    /// The field of a contract name, or -1.
    [[nodiscard]] int find(const std::string& field) const;
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
    [[nodiscard]] QWidget* editor(int field) const;
    /// A field whose text was typed but not entered yet, or -1.
    [[nodiscard]] int open() const { return open_; }
    /// Enters what is open.
    void finishEditing();

signals:
    void typed(int field);    ///< a key was pressed in it
    void entered(int field);  ///< it was left, ended by Enter, or chosen
    void helpChanged(const QString& help);
    void ended();  ///< Enter in the last field

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Field {
        FieldFacts facts;
        QLabel* label;
        QLineEdit* line;   ///< null for a choice
        QComboBox* combo;  ///< null for text
        QLabel* unit;
        QLabel* error;
    };
    void enter(int field);
    void goOnFrom(const QWidget* editor);
    void showErrorColour(QLabel* label) const;

    QGridLayout* grid_;
    std::vector<Field> fields_;
    int open_ = -1;
};

}  // namespace app
