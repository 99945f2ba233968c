// SPDX-License-Identifier: Apache-2.0
// Who examined when, by which procedure, and what else is to be said.
#pragma once

#include <QWidget>

#include "editing/casting_editor.h"

class QGridLayout;
class QLineEdit;

namespace app {

class DetailsForm : public QWidget {
    Q_OBJECT

public:
    explicit DetailsForm(QWidget* parent = nullptr);
    void show(CastingEditor* editor, int examination);
    /// Takes over what is typed in a field that still has the focus.
    void finishEditing();
    void setReadOnly(bool readOnly);

private:
    void addField(const QString& label, std::string Details::*field, const QString& name, int row,
                  int column, int span);
    void refresh();
    void takeOver(QLineEdit* line, std::string Details::*field, const QString& label);

    struct Field {
        QLineEdit* line;
        std::string Details::*field;
        QString label;
    };
    QGridLayout* grid_;
    CastingEditor* editor_ = nullptr;
    int examination_ = -1;
    std::vector<Field> fields_;
};

}  // namespace app
