// SPDX-License-Identifier: Apache-2.0
// The strip at the top of the window: which workplace one is at, with its key, and who is signed
// in.
#pragma once

#include <QAbstractButton>
#include <QList>
#include <QWidget>

class QLabel;
class QPushButton;

namespace app {

/// One workplace: its name, its key, and how many things wait there.
class WorkplaceButton : public QAbstractButton {
    Q_OBJECT

public:
    WorkplaceButton(const QString& name, const QString& key, QWidget* parent);
    void setWaiting(int count);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    bool event(QEvent* event) override;

private:
    [[nodiscard]] QFont strong() const;
    [[nodiscard]] QString countText() const;
    QString key_;
    int waiting_ = 0;
};

class WorkplaceBar : public QWidget {
    Q_OBJECT

public:
    explicit WorkplaceBar(QWidget* parent = nullptr);

    /// In the order of the keys Alt+1, Alt+2 ...; returns its index.
    int add(const QString& name);
    void setCurrent(int index);
    [[nodiscard]] int current() const;
    void setWaiting(int index, int count);
    /// Who works here; `button` is what can be done about it, none where empty.
    void setPerson(const QString& text, const QString& button);
    [[nodiscard]] QString personText() const;
    [[nodiscard]] QPushButton& personButton() { return *personButton_; }
    [[nodiscard]] WorkplaceButton& button(int index) { return *buttons_[index]; }

signals:
    void chosen(int index);
    void personButtonPressed();

private:
    QList<WorkplaceButton*> buttons_;
    QLabel* person_;
    QPushButton* personButton_;
};

}  // namespace app
