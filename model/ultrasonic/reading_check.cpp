// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/reading_check.h"

#include <cmath>

#include "ultrasonic/element.h"
#include "ultrasonic/number_text.h"
#include "ultrasonic/refraction.h"

namespace model {
namespace {

constexpr double kLowestGainDb = -20;
constexpr double kHighestGainDb = 120;

/// Keeps the first thing that is wrong.
class ReadingCheck {
public:
    Result<void> check(const Reading& reading) {
        checkProbe(reading.probe);
        checkMedium("material", reading.medium);
        checkPart(reading.part);
        checkReference(reading.reference);
        checkTransfer(reading);
        checkEcho("echo", reading.echo);
        if (reading.movement) checkMovement(*reading.movement);
        checkRefraction(reading);
        if (first_) return *first_;
        return {};
    }

private:
    void fail(const std::string& field, std::string reason,
              std::vector<std::string> arguments = {}) {
        if (!first_) first_ = inputError(field, std::move(reason), std::move(arguments));
    }
    void finite(const std::string& field, double value) {
        if (!std::isfinite(value)) fail(field, "is not a number");
    }
    void positive(const std::string& field, double value) {
        finite(field, value);
        if (value <= 0) fail(field, "must be greater than 0, not %1", {plainText(value)});
    }
    void notNegative(const std::string& field, double value) {
        finite(field, value);
        if (value < 0) fail(field, "must not be negative, as %1 is", {plainText(value)});
    }
    void positiveIfGiven(const std::string& field, const std::optional<double>& value) {
        if (value) positive(field, *value);
    }
    void notNegativeIfGiven(const std::string& field, const std::optional<double>& value) {
        if (value) notNegative(field, *value);
    }
    void needed(const std::string& field, const std::optional<double>& value, const char* reason) {
        if (!value) fail(field, reason);
    }

    void checkProbe(const Probe& probe) {
        if (probe.element == ElementShape::Round) {
            needed("probe.diameter_mm", probe.diameterMm, "is missing; a round element needs it");
        } else {
            needed("probe.width_mm", probe.widthMm, "is missing; a rectangular element needs it");
            needed("probe.length_mm", probe.lengthMm, "is missing; a rectangular element needs it");
        }
        positiveIfGiven("probe.diameter_mm", probe.diameterMm);
        positiveIfGiven("probe.width_mm", probe.widthMm);
        positiveIfGiven("probe.length_mm", probe.lengthMm);
        positive("probe.frequency_mhz", probe.frequencyMhz);
        const bool angle = probe.kind == ProbeKind::AngleBeam;
        if (angle) needed("probe.angle_deg", probe.angleDeg, "is missing; an angle probe needs it");
        if (probe.angleDeg) {
            if (angle) positive("probe.angle_deg", *probe.angleDeg);
            notNegative("probe.angle_deg", *probe.angleDeg);
            if (*probe.angleDeg >= 90)
                fail("probe.angle_deg",
                     "is %1, past critical: no beam enters the part at 90 degrees or more",
                     {plainText(*probe.angleDeg)});
        }
        notNegativeIfGiven("probe.front_mm", probe.frontMm);
    }

    void checkMedium(const std::string& object, const WaveMedium& medium) {
        positive(object + ".velocity_m_s", medium.velocityMPerS);
        notNegativeIfGiven(object + ".attenuation_db_per_m", medium.attenuationDbPerM);
    }

    void checkPart(const ScannedPart& part) {
        positive("part.thickness_mm", part.thicknessMm);
        if (part.surface != ScanSurface::Flat)
            needed("part.radius_mm", part.radiusMm, "is missing; a curved surface needs it");
        positiveIfGiven("part.radius_mm", part.radiusMm);
        if (part.surface == ScanSurface::Outer && part.radiusMm &&
            *part.radiusMm <= part.thicknessMm)
            fail("part.radius_mm",
                 "is %1, but an outer radius must be above the thickness, which is %2",
                 {plainText(*part.radiusMm), plainText(part.thicknessMm)});
    }

    void checkReference(const ReferenceEcho& reference) {
        checkMedium("reference", reference.medium);
        if (reference.kind != ReferenceKind::BackWall)
            needed("reference.diameter_mm", reference.diameterMm, "is missing; a hole needs it");
        positiveIfGiven("reference.diameter_mm", reference.diameterMm);
        checkEcho("reference", reference.echo);
    }

    void checkTransfer(const Reading& reading) {
        finite("transfer_db", reading.transferDb);
        if (reading.reference.on == ReferencePlace::Casting && reading.transferDb != 0)
            fail("transfer_db", "is %1, but must be 0 where the reference is on the casting itself",
                 {plainText(reading.transferDb)});
    }

    void checkEcho(const std::string& object, const EchoReading& echo) {
        positive(object + ".sound_path_mm", echo.soundPathMm);
        if (!(echo.gainDb >= kLowestGainDb && echo.gainDb <= kHighestGainDb))
            fail(object + ".gain_db", "is %1, but must be from %2 to %3 dB",
                 {plainText(echo.gainDb), plainText(kLowestGainDb), plainText(kHighestGainDb)});
        if (!(echo.screenPercent > 0 && echo.screenPercent <= 100))
            fail(object + ".screen_percent",
                 "is %1, but must be above 0 and at most 100: change the gain and read it again",
                 {plainText(echo.screenPercent)});
    }

    void checkMovement(const ProbeMovement& movement) {
        if (movement.dropDb != 6 && movement.dropDb != 20)
            fail("movement.drop_db", "is %1, but must be 6 or 20", {plainText(movement.dropDb)});
        notNegativeIfGiven("movement.along_mm", movement.alongMm);
        notNegativeIfGiven("movement.across_mm", movement.acrossMm);
    }

    /// A probe whose beam is at its angle in the casting may not get a beam into the block at all.
    void checkRefraction(const Reading& reading) {
        if (first_ || reading.reference.on != ReferencePlace::Block) return;
        if (!refractedDeg(beamAngleDeg(reading.probe), reading.medium.velocityMPerS,
                          reading.reference.medium.velocityMPerS))
            fail("probe.angle_deg",
                 "is %1, past critical for the reference block: at %2 m/s no beam of this probe "
                 "enters it; state the angle in the casting",
                 {plainText(*reading.probe.angleDeg),
                  plainText(reading.reference.medium.velocityMPerS)});
    }

    std::optional<Error> first_;
};

}  // namespace

Result<void> checkReading(const Reading& reading) {
    return ReadingCheck().check(reading);
}

}  // namespace model
