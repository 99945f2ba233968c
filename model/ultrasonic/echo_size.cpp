// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/echo_size.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "ultrasonic/distance_gain_size.h"
#include "ultrasonic/element.h"
#include "ultrasonic/far_field.h"
#include "ultrasonic/field.h"
#include "ultrasonic/number_text.h"

namespace model {
namespace {

/// In near fields: from here on the far-field formulas hold.
constexpr double kFarField = 3;
/// In near fields: up to here a size by the model is indicative.
constexpr double kIndicative = 1;
/// Of the flaw's path: how far off the reference of a twin-crystal probe may lie.
constexpr double kTwinReach = 0.1;
/// Decimals that meet a limit exactly may miss it by a rounding once they are multiplied.
constexpr double kRounding = 1e-9;
/// Of a size: a difference between model and far-field formulas that is worth a sentence.
constexpr double kWorthSaying = 0.05;
/// A smaller size would print as zero, which is no size.
constexpr double kSmallestSizeMm = 0.001;

bool below(double value, double limit) {
    return value < limit * (1 - kRounding);
}

class EchoSizing {
public:
    EchoSizing(const Reading& reading, double echoDb)
        : reading_(reading),
          reference_(reading.reference),
          echoDb_(echoDb),
          flaw_{reading.echo.soundPathMm,
                wavelengthMm(reading.medium.velocityMPerS, reading.probe.frequencyMhz),
                reading.medium.attenuationDbPerM.value_or(0)},
          referencePath_{reference_.echo.soundPathMm,
                         wavelengthMm(reference_.medium.velocityMPerS, reading.probe.frequencyMhz),
                         reference_.medium.attenuationDbPerM.value_or(0)},
          flawA_(flaw_.lengthMm / elementNearFieldMm(reading.probe, flaw_.wavelengthMm)),
          referenceNearFieldMm_(elementNearFieldMm(reading.probe, referencePath_.wavelengthMm)),
          referenceA_(referencePath_.lengthMm / referenceNearFieldMm_) {}

    EchoSize size() {
        if (!attenuationKnown() || !referenceHoleHolds()) return std::move(result_);
        if (reading_.probe.kind == ProbeKind::TwinCrystal)
            sizeByTwin();
        else if (reading_.probe.kind == ProbeKind::StraightBeam &&
                 reading_.probe.element == ElementShape::Round)
            sizeByModel();
        else
            sizeInFarField();
        if (result_.fbhMm && *result_.fbhMm < kSmallestSizeMm) {
            note("the echo is too low for a size: the hole would be below 0.001 mm");
            result_.fbhMm.reset();
            result_.method.reset();
            result_.farFieldFbhMm.reset();
        }
        return std::move(result_);
    }

private:
    void note(std::string text) { result_.notes.push_back(std::move(text)); }

    /// Without an attenuation a size is given only where leaving it out cannot make it too small.
    bool attenuationKnown() {
        const bool ofMaterial = reading_.medium.attenuationDbPerM.has_value();
        const bool ofReference = reference_.medium.attenuationDbPerM.has_value();
        if (ofMaterial && ofReference) return true;
        const bool sameMaterial =
            !ofMaterial && !ofReference && reference_.on == ReferencePlace::Casting;
        if (sameMaterial && flaw_.lengthMm <= referencePath_.lengthMm) {
            if (flaw_.lengthMm < referencePath_.lengthMm)
                note(
                    "attenuation not given: not corrected for; as the echo's path is shorter than "
                    "the reference's, the size is at most too large");
            return true;
        }
        note(
            "attenuation not given: no size, as it would come out too small; measure the "
            "attenuation, or state 0 where it is known to be none");
        return false;
    }

    bool referenceHoleHolds() {
        if (reference_.kind != ReferenceKind::SideDrilledHole) return true;
        if (!sideDrilledHoleFarEnough(referencePath_, referenceNearFieldMm_)) {
            note(
                "the side-drilled hole lies nearer than 0.7 near fields, where its echo says "
                "nothing about size: no size");
            return false;
        }
        if (!sideDrilledHoleWideEnough(referencePath_, *reference_.diameterMm))
            note("the side-drilled hole is narrower than 1.5 wavelengths (" +
                 tenthsText(1.5 * referencePath_.wavelengthMm) +
                 " mm): its equal flat-bottomed hole, and with it the size, is indicative");
        return true;
    }

    /// The flat-bottomed hole that the reference hole is, or is equal to.
    [[nodiscard]] double referenceFbhMm() const {
        return reference_.kind == ReferenceKind::SideDrilledHole
                   ? fbhEqualToSdhMm(referencePath_, *reference_.diameterMm)
                   : *reference_.diameterMm;
    }

    [[nodiscard]] double farFieldFbhMm() const {
        return reference_.kind == ReferenceKind::BackWall
                   ? fbhFromBackWallMm(echoDb_, flaw_, referencePath_)
                   : fbhFromFbhMm(echoDb_, flaw_, referencePath_, referenceFbhMm());
    }

    /// "0.6 near fields", never rounded up to the limit that it is below.
    static std::string nearFields(double a) {
        return plainText(std::floor(a * 100) / 100) + " near fields";
    }

    void sizeByModel() {
        note(
            "size by the computed distance-gain-size model of a circular piston; a probe maker's "
            "chart differs by a decibel or so");
        if (!nearEnoughForModel(flawA_, "the echo") ||
            !nearEnoughForModel(referenceA_, "the reference"))
            return;
        const double diameter = *reading_.probe.diameterMm;
        double referenceDb = backWallEchoDb(referenceA_);
        if (reference_.kind != ReferenceKind::BackWall) {
            const double g = referenceFbhMm() / diameter;
            if (g > 1) {
                note("the reference's flat-bottomed hole of " + tenthsText(referenceFbhMm()) +
                     " mm is wider than the element: no size");
                return;
            }
            referenceDb = discEchoDb(referenceA_, g);
        }
        const DiscSize disc =
            discOfEcho(std::max(flawA_, kSmallestDistance),
                       referenceDb + lossFreeDifferenceDb(echoDb_, flaw_, referencePath_));
        result_.fbhMm = disc.g * diameter;
        result_.method = SizingMethod::DistanceGainSize;
        result_.farFieldFbhMm = farFieldFbhMm();
        if (disc.clipped) noteClipped();
        noteFarFieldBeside();
    }

    bool nearEnoughForModel(double a, const std::string& what) {
        if (below(a, kSmallestDistance)) {
            note("near field: " + what + " lies at " + nearFields(a) +
                 "; nothing is sized nearer than 0.7");
            return false;
        }
        if (!below(kIndicative, a))
            note("near field, indicative: " + what + " lies at " + nearFields(a) +
                 "; before the end of the near field the pulse's shape has a say");
        return true;
    }

    void noteFarFieldBeside() {
        const double fbh = *result_.fbhMm;
        const double far = *result_.farFieldFbhMm;
        if (std::abs(far - fbh) > kWorthSaying * fbh)
            note("the far-field formulas give " + tenthsText(far) + " mm, the model " +
                 tenthsText(fbh) + " mm: the model rules" +
                 (below(flawA_, kFarField) || below(referenceA_, kFarField)
                      ? ", as the formulas hold from 3 near fields on"
                      : ""));
    }

    void sizeInFarField() {
        note("size by the far-field formulas, the only ones for " +
             std::string(reading_.probe.kind == ProbeKind::AngleBeam ? "an angle probe"
                                                                     : "a rectangular element"));
        if (!farEnough(flawA_, "the echo") || !farEnough(referenceA_, "the reference")) return;
        if (reading_.probe.kind == ProbeKind::AngleBeam &&
            reference_.kind == ReferenceKind::BackWall)
            note(
                "the reference is taken as a flat wall square to the beam; the curved wall of a "
                "calibration block needs the correction that comes with the block");
        setFarField();
        // Where a disc by the formula reaches the echo of a back wall at the same path.
        const double widest = std::sqrt(2 * flaw_.wavelengthMm * flaw_.lengthMm / std::numbers::pi);
        if (*result_.fbhMm < widest) return;
        result_.fbhMm = widest;
        result_.farFieldFbhMm = widest;
        noteClipped();
    }

    bool farEnough(double a, const std::string& what) {
        if (!below(a, kFarField)) return true;
        note("near field: " + what + " lies at " + nearFields(a) +
             "; this probe is sized from 3 near fields on");
        return false;
    }

    void sizeByTwin() {
        if (reference_.kind != ReferenceKind::FlatBottomedHole ||
            std::abs(referencePath_.lengthMm - flaw_.lengthMm) >
                kTwinReach * flaw_.lengthMm * (1 + kRounding)) {
            note(
                "a twin-crystal probe is sized only against a flat-bottomed hole whose path is "
                "within 10 % of the echo's: no size");
            return;
        }
        note(
            "a twin-crystal probe: the echo is compared with that of the flat-bottomed hole by the "
            "far-field formula; the probe's own change of echo between the two paths is not "
            "known");
        setFarField();
    }

    void setFarField() {
        result_.fbhMm = farFieldFbhMm();
        result_.farFieldFbhMm = result_.fbhMm;
        result_.method = SizingMethod::FarField;
    }

    void noteClipped() {
        note(
            "clipped at the back-wall curve: the echo is as high as that of a back wall at its "
            "path, or higher; the reflector is at least " +
            tenthsText(*result_.fbhMm) + " mm, and its size is for its extent to say");
    }

    const Reading& reading_;
    const ReferenceEcho& reference_;
    double echoDb_;
    EchoPath flaw_;
    EchoPath referencePath_;
    double flawA_;
    double referenceNearFieldMm_;
    double referenceA_;
    EchoSize result_;
};

}  // namespace

EchoSize sizeOfEcho(const Reading& reading, double echoDb) {
    return EchoSizing(reading, echoDb).size();
}

}  // namespace model
