// SPDX-License-Identifier: Apache-2.0
#include "looks/appearance.h"

#include <QApplication>
#include <QFont>
#include <QSettings>
#include <QStyle>
#include <algorithm>

#include "looks/outlined_style.h"

namespace app {
namespace {

struct Colours {
    QColor window, base, alternate, text, faint, button, mid, highlight, onHighlight, tip, onTip,
        link;
};

QPalette paletteOf(const Colours& c) {
    QPalette palette;
    palette.setColor(QPalette::Window, c.window);
    palette.setColor(QPalette::WindowText, c.text);
    palette.setColor(QPalette::Base, c.base);
    palette.setColor(QPalette::AlternateBase, c.alternate);
    palette.setColor(QPalette::Text, c.text);
    palette.setColor(QPalette::PlaceholderText, c.faint);
    palette.setColor(QPalette::Button, c.button);
    palette.setColor(QPalette::ButtonText, c.text);
    palette.setColor(QPalette::BrightText, c.text);
    palette.setColor(QPalette::Light, c.base.lighter(115));
    palette.setColor(QPalette::Midlight, c.button.lighter(108));
    palette.setColor(QPalette::Mid, c.mid);
    palette.setColor(QPalette::Dark, c.mid.darker(125));
    palette.setColor(QPalette::Shadow, c.mid.darker(200));
    palette.setColor(QPalette::Highlight, c.highlight);
    palette.setColor(QPalette::HighlightedText, c.onHighlight);
    palette.setColor(QPalette::ToolTipBase, c.tip);
    palette.setColor(QPalette::ToolTipText, c.onTip);
    palette.setColor(QPalette::Link, c.link);
    palette.setColor(QPalette::LinkVisited, c.link);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, c.faint);
    }
    palette.setColor(QPalette::Disabled, QPalette::Highlight, c.mid);
    return palette;
}

bool desktopIsDark(const QApplication& application) {
    return application.style()->standardPalette().color(QPalette::Window).lightness() < 128;
}

}  // namespace

QPalette lightPalette() {
    return paletteOf({QColor(0xe9, 0xea, 0xe6), QColor(0xfc, 0xfc, 0xf9), QColor(0xf3, 0xf3, 0xee),
                      QColor(0x1c, 0x22, 0x26), QColor(0x5d, 0x66, 0x6b), QColor(0xdf, 0xe0, 0xdb),
                      QColor(0xb4, 0xb7, 0xb2), QColor(0x54, 0x45, 0x9c), QColor(0xff, 0xff, 0xff),
                      QColor(0xf4, 0xee, 0xd8), QColor(0x2c, 0x28, 0x1c),
                      QColor(0x54, 0x45, 0x9c)});
}

QPalette darkPalette() {
    return paletteOf({QColor(0x25, 0x29, 0x2c), QColor(0x1a, 0x1d, 0x1f), QColor(0x20, 0x24, 0x27),
                      QColor(0xe4, 0xe7, 0xe5), QColor(0x9b, 0xa4, 0xa8), QColor(0x33, 0x38, 0x3c),
                      QColor(0x4c, 0x53, 0x58), QColor(0xab, 0x9e, 0xf2), QColor(0x17, 0x13, 0x2c),
                      QColor(0x37, 0x33, 0x27), QColor(0xef, 0xe8, 0xd4),
                      QColor(0xab, 0x9e, 0xf2)});
}

void applyAppearance(QApplication& application, Appearance appearance, double typeFactor) {
    static const double desktopSize = QApplication::font().pointSizeF();
    const bool dark = appearance == Appearance::Dark ||
                      (appearance == Appearance::Desktop && desktopIsDark(application));
    QApplication::setStyle(new OutlinedStyle);
    QApplication::setPalette(dark ? darkPalette() : lightPalette());
    QFont font = QApplication::font();
    font.setPointSizeF(desktopSize * std::clamp(typeFactor, 0.8, 2.0));
    QApplication::setFont(font);
}

Appearance chosenAppearance() {
    const QString word = QSettings().value("appearance/colours").toString();
    if (word == "light") return Appearance::Light;
    if (word == "dark") return Appearance::Dark;
    return Appearance::Desktop;
}

double chosenTypeFactor() {
    bool read = false;
    const double factor = QSettings().value("appearance/type").toDouble(&read);
    return read && factor > 0 ? factor : 1.0;
}

void choose(QApplication& application, Appearance appearance, double typeFactor) {
    QSettings settings;
    settings.setValue("appearance/colours", appearance == Appearance::Light  ? "light"
                                            : appearance == Appearance::Dark ? "dark"
                                                                             : "desktop");
    settings.setValue("appearance/type", typeFactor);
    applyAppearance(application, appearance, typeFactor);
}

}  // namespace app
