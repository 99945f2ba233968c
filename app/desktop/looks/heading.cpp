// SPDX-License-Identifier: Apache-2.0
#include "looks/heading.h"

#include <QApplication>
#include <QEvent>

namespace app {

Heading::Heading(double factor, QWidget* parent, const QString& text)
    : QLabel(text, parent), factor_(factor) {
    setTextFormat(Qt::PlainText);
    setWordWrap(true);
    if (parent) parent->installEventFilter(this);
    apply();
}

void Heading::apply() {
    QFont type = QApplication::font();
    type.setPointSizeF(type.pointSizeF() * factor_);
    type.setBold(true);
    setFont(type);
}

bool Heading::event(QEvent* event) {
    if (event->type() == QEvent::ParentChange && parentWidget()) {
        parentWidget()->installEventFilter(this);
    }
    return QLabel::event(event);
}

/// A label with a size of its own is not told when the program's size changes; its parent is.
bool Heading::eventFilter(QObject* watched, QEvent* event) {
    if (watched == parentWidget() && event->type() == QEvent::FontChange) apply();
    return QLabel::eventFilter(watched, event);
}

}  // namespace app
