// SPDX-License-Identifier: Apache-2.0
// Light or dark, and how large the type is: larger for standing at the bench.
#pragma once

#include <QPalette>

class QApplication;

namespace app {

enum class Appearance { Desktop, Light, Dark };

QPalette lightPalette();
QPalette darkPalette();

/// Sets style, palette and type size of the whole program. `Desktop` is light or dark as the
/// desktop is. `typeFactor` is relative to the desktop's own size.
void applyAppearance(QApplication& application, Appearance appearance, double typeFactor);

/// As chosen last; kept in the settings.
Appearance chosenAppearance();
double chosenTypeFactor();
void choose(QApplication& application, Appearance appearance, double typeFactor);

}  // namespace app
