// SPDX-License-Identifier: Apache-2.0
// What is stated for an ultrasonic examination as a whole: area, testability, dead zone and from
// where it was scanned.
#pragma once

#include <QWidget>

#include "editing/casting_desk.h"

class QLabel;
class QPlainTextEdit;

namespace app {

class FieldForm;

class CoveragePage : public QWidget {
    Q_OBJECT

public:
    explicit CoveragePage(QWidget* parent = nullptr);
    void show(CastingDesk* desk, int examination);
    void finishEditing();
    void focusFirst();
    [[nodiscard]] FieldForm& form() { return *form_; }
    [[nodiscard]] QPlainTextEdit& directions() { return *directions_; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void refresh();
    /// What stands in the fields; errors are shown at them. None: something cannot be read.
    std::optional<model::UltrasonicTest> check();
    void commit(const QString& what);

    CastingDesk* desk_ = nullptr;
    int examination_ = -1;
    FieldForm* form_;
    QPlainTextEdit* directions_;
    QLabel* help_;
};

}  // namespace app
