// SPDX-License-Identifier: Apache-2.0
// A label in larger, strong type that stays so when the type of the program is changed.
#pragma once

#include <QLabel>

namespace app {

class Heading : public QLabel {
    Q_OBJECT

public:
    /// `factor` times the program's own type.
    Heading(double factor, QWidget* parent, const QString& text = {});

protected:
    bool event(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void apply();
    double factor_;
};

}  // namespace app
