// SPDX-License-Identifier: Apache-2.0
// What a reading gives, in words: the equivalent size with the method that gave it, place, extent
// and every limit of the method that was met.
#pragma once

#include <QWidget>

#include "ultrasonic/size.h"

class QLabel;

namespace app {

class ReadingResult : public QWidget {
    Q_OBJECT

public:
    explicit ReadingResult(QWidget* parent = nullptr);

    void showSize(const model::Size& size, const model::Reading& reading);
    /// There is no size: why, as what is wrong or only still missing.
    void showTrouble(const QString& text, bool wrong);

    [[nodiscard]] QString headline() const;
    [[nodiscard]] QString facts() const;
    [[nodiscard]] QString notes() const;

private:
    QLabel* headline_;
    QLabel* method_;
    QLabel* facts_;
    QLabel* notes_;
};

}  // namespace app
