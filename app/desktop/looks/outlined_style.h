// SPDX-License-Identifier: Apache-2.0
// Qt's Fusion style, with outlines of fields, boxes and tables that can be seen on dark ground too:
// its own are darker than the window, whatever the window is.
#pragma once

#include <QProxyStyle>

namespace app {

class OutlinedStyle : public QProxyStyle {
    Q_OBJECT

public:
    OutlinedStyle();

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* answer) const override;
};

}  // namespace app
