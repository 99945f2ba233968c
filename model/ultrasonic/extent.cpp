// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/extent.h"

#include "ultrasonic/beam.h"
#include "ultrasonic/drop_sizing.h"
#include "ultrasonic/element.h"
#include "ultrasonic/field.h"
#include "ultrasonic/number_text.h"

namespace model {
namespace {

constexpr double kHalfValueDropDb = 6;

class ExtentSizing {
public:
    ExtentSizing(const Reading& reading, double depthMm)
        : reading_(reading),
          movement_(*reading.movement),
          depthMm_(depthMm),
          wavelengthMm_(wavelengthMm(reading.medium.velocityMPerS, reading.probe.frequencyMhz)),
          beam_(echoBeamWidths(reading.probe, wavelengthMm_, reading.echo.soundPathMm,
                               movement_.dropDb)) {}

    Extent extent() {
        noteMethod();
        if (movement_.alongMm) size(*movement_.alongMm, true);
        if (movement_.acrossMm) size(*movement_.acrossMm, false);
        return std::move(result_);
    }

private:
    void note(std::string text) { result_.notes.push_back(std::move(text)); }

    void noteMethod() {
        if (!movement_.alongMm && !movement_.acrossMm) return;
        if (!beam_.widestMm) {
            note(beforeEdge() ? "near field: the beam's width is not known before its end" +
                                    std::string(halfValue() ? "; a movement above the element's "
                                                              "size is above it in any case"
                                                            : "")
                              : "the element is too small for a beam with an edge: extents cannot "
                                "be measured by the drop of the echo");
        } else if (reading_.probe.element == ElementShape::Rectangular) {
            note(
                "rectangular element: a movement is measurable above the wider of its two beam "
                "widths" +
                std::string(halfValue() ? "" : ", and the narrower is taken off"));
        }
        if (movement_.alongMm && reading_.part.surface != ScanSurface::Flat)
            note(
                "curved surface: the movement along is taken as around the circumference and "
                "brought to the flaw's depth, the movement across as along the axis");
    }

    [[nodiscard]] bool halfValue() const { return movement_.dropDb == kHalfValueDropDb; }
    /// Whether it is the near field for which there is no width.
    [[nodiscard]] bool beforeEdge() const {
        return reading_.echo.soundPathMm < elementNearFieldMm(reading_.probe, wavelengthMm_);
    }

    void size(double movementMm, bool along) {
        std::optional<bool>& measurable =
            along ? result_.alongMeasurable : result_.acrossMeasurable;
        std::optional<double>& extent = along ? result_.lengthMm : result_.widthMm;
        const std::string name = along ? "along" : "across";
        // In the near field the beam is nowhere wider than the element.
        const bool bounded = !beam_.widestMm && beforeEdge() && halfValue();
        const std::optional<double> widest =
            bounded ? std::optional(longSideMm(reading_.probe)) : beam_.widestMm;
        const std::optional<double> taken = bounded ? widest : beam_.narrowestMm;
        if (widest && extentMm(movement_.dropDb, movementMm, *widest)) {
            measurable = true;
            extent = along ? circumferentialExtentMm(reading_.part, depthMm_, movement_.dropDb,
                                                     movementMm, *taken)
                           : extentMm(movement_.dropDb, movementMm, *taken);
        } else if (widest && !bounded) {
            measurable = false;
            note("movement " + name + " of " + plainText(movementMm) +
                 " mm is not above the beam's width of " + tenthsText(*widest) +
                 " mm: not measurable");
        } else {
            note("whether the movement " + name + " of " + plainText(movementMm) +
                 " mm is above the beam's width is not known: not measured");
        }
    }

    const Reading& reading_;
    const ProbeMovement& movement_;
    double depthMm_;
    double wavelengthMm_;
    BeamWidths beam_;
    Extent result_;
};

}  // namespace

BeamWidths echoBeamWidths(const Probe& probe, double wavelength, double soundPathMm,
                          double dropDb) {
    const double nearField = elementNearFieldMm(probe, wavelength);
    const auto widthFor = [&](double sideMm) {
        return echoBeamWidthMm(probe.element, sideMm, wavelength, nearField, soundPathMm, dropDb);
    };
    const std::optional<double> widest = widthFor(shortSideMm(probe));
    if (probe.element == ElementShape::Round) return {widest, widest};
    return {widest, widthFor(longSideMm(probe))};
}

Extent extentOf(const Reading& reading, double depthMm) {
    if (!reading.movement) return {};
    return ExtentSizing(reading, depthMm).extent();
}

}  // namespace model
