// SPDX-License-Identifier: Apache-2.0
// Units of test conditions. Every unit is an exact fraction of its dimension's own unit, so that a
// reading in one unit and a limit in another are compared without rounding.
//
// One family is not: the oersted is 1000/(4 pi) A/m, which no fraction is. Among themselves Oe, G
// and mT (flux density in air, read as a field) are compared exactly. Against A/m and kA/m an
// oersted is only known to lie between 79.5774 and 79.5775 A/m: this holds 1000/(4 pi)
// = 79.57747... and what the magnetisation of air (4 parts in ten million) takes off a gauss. A
// comparison holds only where it holds for the whole of that span: within 2 parts in a million of a
// limit it fails.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/rational.h"
#include "base/result.h"
#include "limits/limit_table.h"

namespace model {

/// What a condition is a measure of. The unit in brackets is the dimension's own.
enum class Dimension {
    None,           ///< a plain number: a count, a magnification
    Irradiance,     ///< (W/m2) W/m2, uW/cm2, mW/cm2
    Illuminance,    ///< (lx) lx, fc, lm/ft2
    MagneticField,  ///< (A/m) A/m, kA/m; Oe, G, mT in air
    Extent,         ///< (mm) um, mm, cm, m, in
    Temperature,    ///< (deg C) deg C, deg F, K
    /// (kgf) N, kgf, lbf; kg and lb lifted, which pull with their weight at the standard
    /// acceleration of free fall, 9.80665 m/s2
    Force,
    Time,         ///< (s) s, min, h
    VolumeShare,  ///< (mL/100mL) mL/100mL, %
    MassShare,    ///< (mg/kg) mg/kg, ppm, %
    Share,        ///< (%)
    Decibels,     ///< (dB)
    Frequency,    ///< (MHz) MHz, kHz
    Speed,        ///< (mm/s) mm/s, m/min, in/s, in/min
    Current,      ///< (A) A, kA
    Pressure      ///< (kPa) kPa, bar, MPa
};

/// Symbols of the units of a dimension, its own or the most usual one first; none for None.
std::vector<std::string_view> unitsOf(Dimension dimension);

/// A number with its unit, exact.
class ConditionValue {
public:
    /// Reads a decimal number (point or comma; at most 6 decimals, magnitude up to 1 000 000).
    /// `unit` is one of unitsOf(); empty, and only then, for a plain number. Input: the reason,
    /// place left empty.
    static Result<ConditionValue> read(std::string_view number, std::string_view unit,
                                       Dimension dimension);

    /// As typed: "8 W/m2".
    [[nodiscard]] const std::string& text() const { return text_; }
    [[nodiscard]] Dimension dimension() const { return dimension_; }
    [[nodiscard]] bool isNegative() const { return numerator_ < 0; }
    /// Nearest double in the dimension's own unit; for showing, never for comparing.
    [[nodiscard]] double approximately() const;

    /// Whether `value` `comparison` `bound` is certain, see above. Both of one dimension.
    friend bool surelyHolds(const ConditionValue& value, Comparison comparison,
                            const ConditionValue& bound);

private:
    /// numerator / denominator in the dimension's own unit, or in Oe.
    Int128 numerator_ = 0;
    Int128 denominator_ = 1;
    bool inOersted_ = false;
    Dimension dimension_ = Dimension::None;
    std::string text_;
};

bool surelyHolds(const ConditionValue& value, Comparison comparison, const ConditionValue& bound);

}  // namespace model
