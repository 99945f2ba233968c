// SPDX-License-Identifier: Apache-2.0
#include "looks/outlined_style.h"

#include <QLineEdit>
#include <QPainter>
#include <QStyleFactory>
#include <QStyleOption>

namespace app {

OutlinedStyle::OutlinedStyle() : QProxyStyle(QStyleFactory::create("Fusion")) {}

void OutlinedStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                                  QPainter* painter, const QWidget* widget) const {
    QProxyStyle::drawPrimitive(element, option, painter, widget);
    const bool outlined = element == PE_FrameLineEdit || element == PE_IndicatorCheckBox;
    const bool dark = option->palette.color(QPalette::Window).lightness() < 128;
    if (!outlined || !dark || option->state & State_HasFocus) return;
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool enabled = option->state & State_Enabled;
    painter->setPen(option->palette.color(
        enabled && element == PE_IndicatorCheckBox ? QPalette::PlaceholderText : QPalette::Mid));
    painter->setBrush(Qt::NoBrush);
    painter->drawRoundedRect(QRectF(option->rect).adjusted(.5, .5, -.5, -.5), 2, 2);
    painter->restore();
}

int OutlinedStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                             QStyleHintReturn* answer) const {
    if (hint == SH_Table_GridLineColor && option) {
        QColor line = option->palette.color(QPalette::Mid);
        const QColor paper = option->palette.color(QPalette::Base);
        return static_cast<int>(QColor((line.red() + paper.red()) / 2,
                                       (line.green() + paper.green()) / 2,
                                       (line.blue() + paper.blue()) / 2)
                                    .rgb());
    }
    return QProxyStyle::styleHint(hint, option, widget, answer);
}

}  // namespace app
