// SPDX-License-Identifier: Apache-2.0
// Words to find certificates by, as one types, and what has to agree exactly.
#pragma once

#include <QTimer>
#include <QWidget>

#include "archive/search.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QToolButton;

namespace app {

class SearchPanel : public QWidget {
    Q_OBJECT

public:
    explicit SearchPanel(QWidget* parent = nullptr);

    /// What is asked for now; the first page.
    [[nodiscard]] model::CertificateSearch search() const;
    /// What is wrong with it, or how much was found.
    void setSaid(const QString& text, bool wrong);
    [[nodiscard]] QString said() const;
    void clear();

    [[nodiscard]] QLineEdit& words() { return *words_; }
    [[nodiscard]] QToolButton& filters() { return *filters_; }

signals:
    /// Something else is asked for; not for each of several keys typed quickly.
    void changed();

private:
    QLineEdit* addField(const QString& label, const QString& name, int row, int column);

    QLineEdit* words_;
    QToolButton* filters_;
    QWidget* exact_;
    QLineEdit* serial_;
    QLineEdit* heat_;
    QLineEdit* part_;
    QLineEdit* customer_;
    QLineEdit* from_;
    QLineEdit* to_;
    QComboBox* verdict_;
    QLabel* said_;
    QTimer gather_;
};

}  // namespace app
