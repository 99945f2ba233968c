// SPDX-License-Identifier: Apache-2.0
// A line across the window that says what must not be missed and what can be done about it. It
// stays until it is answered or taken back; it takes no focus.
#pragma once

#include <QFrame>
#include <functional>
#include <vector>

#include "looks/mark.h"

class QHBoxLayout;
class QLabel;

namespace app {

class MarkLabel;

class NoticeBar : public QFrame {
    Q_OBJECT

public:
    explicit NoticeBar(QWidget* parent = nullptr);

    struct Answer {
        QString text;
        std::function<void()> act;  ///< the notice is taken back first
    };
    /// Replaces what is shown. `loud` has a thick edge and strong type.
    void say(Mark mark, const QString& text, std::vector<Answer> answers, bool loud = false);
    void takeBack();
    [[nodiscard]] QString text() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    MarkLabel* mark_;
    QLabel* text_;
    QHBoxLayout* buttons_;
    bool loud_ = false;
};

}  // namespace app
