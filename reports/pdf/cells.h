// SPDX-License-Identifier: Apache-2.0
// Texts side by side that wrap, each in its own width: rows of a table, names and values.
#pragma once

#include <memory>
#include <vector>

#include "pdf/strip.h"

namespace reports {

/// Room for a sign before a text, mm.
inline constexpr double kSignSpace = 3.8;

/// A text in a row.
struct Box {
    double x = 0;      ///< mm from the left edge of the text
    double width = 0;  ///< mm, > 0
    std::string text;
    Weight weight = Weight::Regular;
    double size = 9;  ///< points
    Colour colour;
    Align align = Align::Left;
    Mark mark = Mark::None;
    double top = 0;  ///< mm below the top of the row
};

struct RowLook {
    double padding = 0;  ///< mm above and below
    bool ruled = false;  ///< a thin line under the row
};

/// One strip; several where the row is higher than a page: then each goes on where the last ended.
Strips rowOf(std::vector<Box> boxes, const RowLook& look, Faces& faces);

}  // namespace reports
