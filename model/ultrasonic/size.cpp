// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/size.h"

#include "ultrasonic/beam_path.h"
#include "ultrasonic/echo_size.h"
#include "ultrasonic/element.h"
#include "ultrasonic/extent.h"
#include "ultrasonic/field.h"
#include "ultrasonic/gain.h"
#include "ultrasonic/reading_check.h"

namespace model {
namespace {

constexpr double kHalfValueDropDb = 6;

double heightDb(const EchoReading& echo) {
    return echoHeightDb(echo.gainDb, echo.screenPercent);
}

/// The fields that were given and that the reading's kinds have no use for.
std::string unusedFields(const Reading& reading) {
    const Probe& probe = reading.probe;
    const bool round = probe.element == ElementShape::Round;
    const bool straight = probe.kind == ProbeKind::StraightBeam;
    std::string fields;
    const auto add = [&](const char* field, const std::optional<double>& value, bool used) {
        if (value && *value != 0 && !used) fields.append(fields.empty() ? "" : ", ").append(field);
    };
    add("probe.diameter_mm", probe.diameterMm, round);
    add("probe.width_mm", probe.widthMm, !round);
    add("probe.length_mm", probe.lengthMm, !round);
    add("probe.angle_deg", probe.angleDeg, !straight);
    add("probe.front_mm", probe.frontMm, !straight);
    add("part.radius_mm", reading.part.radiusMm, reading.part.surface != ScanSurface::Flat);
    add("reference.diameter_mm", reading.reference.diameterMm,
        reading.reference.kind != ReferenceKind::BackWall);
    return fields;
}

void add(std::vector<std::string>& notes, std::vector<std::string> more) {
    for (std::string& note : more) notes.push_back(std::move(note));
}

/// Where the reflector lies; false where it cannot lie there, and a note says so.
bool place(const Reading& reading, const BeamTrace& trace, Size& size) {
    const bool straight = beamAngleDeg(reading.probe) == 0;
    if (trace.end) size.leg = trace.end->leg;
    if (straight && size.leg > 1) {
        size.notes.emplace_back(
            "beyond the back wall: the sound path is above the thickness, and a straight beam ends "
            "there: no place and no size");
        return false;
    }
    if (trace.boreMissed)
        size.notes.emplace_back(
            trace.end
                ? "bore missed: the beam passes the bore and crosses the wall as a chord: no "
                  "size"
                : "bore missed: the beam passes the bore and comes out at the scanned surface "
                  "before the end of the path: no place and no size");
    if (!trace.end) return false;
    size.depthMm = trace.end->depthMm;
    size.surfaceDistanceMm = trace.end->surfaceDistanceMm;
    if (straight) return !trace.boreMissed;
    if (reading.probe.frontMm)
        *size.surfaceDistanceMm -= *reading.probe.frontMm;
    else
        size.notes.emplace_back(
            "probe.front_mm not given: the surface distance counts from the index point");
    return !trace.boreMissed;
}

void noteSurroundings(const Reading& reading, Size& size) {
    std::vector<std::string>& notes = size.notes;
    if (const std::string unused = unusedFields(reading); !unused.empty())
        notes.push_back("given, but of no use for this probe, surface and reference: " + unused);
    const bool angle = beamAngleDeg(reading.probe) > 0;
    if (angle && reading.reference.medium.velocityMPerS != reading.medium.velocityMPerS)
        notes.emplace_back(
            "the probe's angle is taken as that in the casting; one that is marked for the "
            "block's velocity must be worked out for the casting's first");
    if (angle)
        notes.emplace_back(
            "the near field is that of the element without its wedge, counted from the index "
            "point: on the safe side");
    if (reading.part.surface != ScanSurface::Flat)
        notes.emplace_back(
            reading.part.surface == ScanSurface::Inner &&
                    reading.reference.kind == ReferenceKind::BackWall &&
                    reading.reference.on == ReferencePlace::Casting
                ? "curved surface: echoes are computed as on a flat one; the outer wall, seen "
                  "from the bore, gathers the beam, so that against it sizes come out too small"
                : "curved surface: echoes are computed as on a flat one, which neither spreads "
                  "nor gathers the beam");
}

}  // namespace

Result<Size> sizeOf(const Reading& reading) {
    if (const Result<void> checked = checkReading(reading); !checked) return checked.error();
    const BeamTrace trace =
        traceBeam(reading.part, beamAngleDeg(reading.probe), reading.echo.soundPathMm);
    if (trace.beyondThirdLeg)
        return inputError("echo.sound_path_mm",
                          "ends past the third leg: the beam is not followed further; check the "
                          "path and the thickness");
    Size size;
    size.wavelengthMm = wavelengthMm(reading.medium.velocityMPerS, reading.probe.frequencyMhz);
    size.nearFieldMm = elementNearFieldMm(reading.probe, size.wavelengthMm);
    size.beamWidthMm =
        echoBeamWidths(reading.probe, size.wavelengthMm, reading.echo.soundPathMm, kHalfValueDropDb)
            .widestMm;
    size.echoDb = heightDb(reading.echo) - heightDb(reading.reference.echo) + reading.transferDb;
    noteSurroundings(reading, size);
    if (place(reading, trace, size)) {
        EchoSize echo = sizeOfEcho(reading, *size.echoDb);
        size.fbhMm = echo.fbhMm;
        size.method = echo.method;
        size.farFieldFbhMm = echo.farFieldFbhMm;
        add(size.notes, std::move(echo.notes));
    }
    if (size.depthMm) {
        Extent extent = extentOf(reading, *size.depthMm);
        size.lengthMm = extent.lengthMm;
        size.widthMm = extent.widthMm;
        size.alongMeasurable = extent.alongMeasurable;
        size.acrossMeasurable = extent.acrossMeasurable;
        add(size.notes, std::move(extent.notes));
    }
    return size;
}

}  // namespace model
