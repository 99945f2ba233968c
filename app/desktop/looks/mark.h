// SPDX-License-Identifier: Apache-2.0
// What a verdict looks like: a word, a mark of its own outline, and a colour. The mark and the
// word say it alone; the colour only helps to find it.
#pragma once

#include <QColor>
#include <QIcon>
#include <QPalette>
#include <QRectF>
#include <QString>
#include <optional>

#include "judge/verdict.h"

class QPainter;

namespace app {

/// Round with a tick, square with a cross, diamond with a question mark, empty ring.
enum class Mark { Passes, Fails, Open, NotBegun };

Mark markOf(model::Word word);
/// Of one check: none is a check that could not be made.
Mark markOf(const std::optional<bool>& passes);

/// The colour of a mark, light or dark enough to read on `background` (contrast 4.5 : 1 or more).
QColor colourOf(Mark mark, const QColor& background);

/// `wish`, moved towards black or white until text in it can be read on `background`.
QColor readable(QColor wish, const QColor& background);

/// Contrast of two colours, 1 to 21.
double contrast(const QColor& one, const QColor& other);

/// Draws the mark, filled with its colour, into a square.
void paintMark(QPainter& painter, const QRectF& square, Mark mark, const QColor& background);

QIcon markIcon(Mark mark, const QPalette& palette, int pixels = 16);

}  // namespace app
