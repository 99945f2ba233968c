// SPDX-License-Identifier: Apache-2.0
// How a page looks: measures in mm, type sizes in points.
#pragma once

#include "certificate/document.h"
#include "pdf/canvas.h"

namespace reports::style {

inline constexpr double kLeft = 24;
inline constexpr double kRight = 18;
inline constexpr double kWidth = kPageWidthMm - kLeft - kRight;
inline constexpr double kTop = 22;      // where the text begins
inline constexpr double kBottom = 277;  // where it ends
inline constexpr double kHeight = kBottom - kTop;

inline constexpr double kTitleSize = 19;
inline constexpr double kMeaningSize = 10;
inline constexpr double kTextSize = 9;
inline constexpr double kNoteSize = 8.4;
inline constexpr double kTableSize = 7.8;
inline constexpr double kSmallSize = 7;
inline constexpr double kLabelSize = 6.8;
inline constexpr double kCodeSize = 5.6;

/// Millimetres from one base line to the next.
inline constexpr double lineHeight(double sizePt) {
    return sizePt * 0.455;
}
/// Millimetres from the top of a line to its base line.
inline constexpr double ascent(double sizePt) {
    return sizePt * 0.35;
}

inline constexpr Colour kInk = {0.10F, 0.11F, 0.13F};
inline constexpr Colour kMuted = {0.38F, 0.40F, 0.43F};
inline constexpr Colour kFaint = {0.76F, 0.77F, 0.79F};
inline constexpr Colour kWatermark = {0.905F, 0.905F, 0.91F};
inline constexpr Colour kWhite = {1, 1, 1};
inline constexpr Colour kAccent = {0.16F, 0.27F, 0.40F};

/// Of a result's sign and word. Signs differ in shape, words in text: colour is a third help.
constexpr Colour colourOf(Mark mark) {
    switch (mark) {
        case Mark::Acceptable:
            return {0.05F, 0.38F, 0.33F};
        case Mark::NotJudged:
            return {0.52F, 0.36F, 0.02F};
        case Mark::NotAcceptable:
            return {0.62F, 0.10F, 0.12F};
        case Mark::Caution:
            return {0.52F, 0.36F, 0.02F};
        case Mark::None:
            break;
    }
    return kInk;
}

}  // namespace reports::style
