// SPDX-License-Identifier: Apache-2.0
// Under the verdict: whether the examination is a draft, signed or given back, and what can be
// done with it; under the zones: the same of the casting as a whole.
#pragma once

#include <QWidget>
#include <functional>
#include <optional>
#include <vector>

#include "looks/mark.h"

class QLabel;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace app {

class MarkLabel;

/// A few sentences with a mark, and buttons under them.
class RecordStrip : public QWidget {
    Q_OBJECT

public:
    explicit RecordStrip(QWidget* parent = nullptr);

    struct Act {
        QString name;  ///< of the button, for whoever looks for it
        QString text;
        QString whyNot;  ///< cannot be done now; empty: it can
        std::function<void()> act;
    };
    /// Replaces what is shown; an empty text with no acts hides the strip.
    void say(std::optional<Mark> mark, const QString& text, const std::vector<Act>& acts);
    [[nodiscard]] QString text() const;
    /// Null: there is none of that name.
    [[nodiscard]] QPushButton* button(const QString& name) const;

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void fitText();
    MarkLabel* mark_;
    QLabel* text_;
    QScrollArea* scroll_;
    QVBoxLayout* buttons_;
};

}  // namespace app
