// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/working_steps.h"

#include <algorithm>
#include <numbers>
#include <tuple>
#include <utility>

#include "ultrasonic/beam.h"
#include "ultrasonic/beam_path.h"
#include "ultrasonic/distance_gain_size.h"
#include "ultrasonic/drop_sizing.h"
#include "ultrasonic/field.h"
#include "ultrasonic/gain.h"
#include "ultrasonic/number_text.h"
#include "ultrasonic/refraction.h"

namespace model::working {
namespace {

using Unit = WorkingUnit;

double in(const WorkingEntry& entry, std::string_view key) {
    return entry.numbers.find(key)->second;
}

std::optional<double> maybe(const WorkingEntry& entry, std::string_view key) {
    const auto found = entry.numbers.find(key);
    return found == entry.numbers.end() ? std::nullopt : std::optional(found->second);
}

bool says(const WorkingEntry& entry, std::string_view key, std::string_view word) {
    const auto found = entry.words.find(key);
    return found != entry.words.end() && found->second == word;
}

bool isRound(const WorkingEntry& entry) {
    return says(entry, "element", "round");
}

ScannedPart partOf(const WorkingEntry& entry) {
    ScannedPart part;
    part.thicknessMm = in(entry, "thickness_mm");
    if (says(entry, "surface", "flat")) return part;
    part.surface = says(entry, "surface", "outer") ? ScanSurface::Outer : ScanSurface::Inner;
    part.radiusMm = in(entry, "radius_mm");
    return part;
}

/// Where an edge is, or why the path ends nowhere.
Result<BeamPoint> edgeAt(const WorkingEntry& entry, std::string_view key) {
    const BeamTrace trace = traceBeam(partOf(entry), in(entry, "angle_deg"), in(entry, key));
    if (trace.end) return *trace.end;
    return inputError(std::string(key), trace.boreMissed
                                            ? "the beam misses the bore, and this path ends past "
                                              "the wall: check path, angle, wall and radius"
                                            : "the path ends past the third leg: check path, "
                                              "angle and wall");
}

/// None where the probe or a velocity was not given: then the far-field rule is all there is.
std::optional<double> nearFieldAt(const WorkingEntry& entry, std::string_view velocityKey) {
    const auto diameter = maybe(entry, "diameter_mm");
    const auto frequency = maybe(entry, "frequency_mhz");
    const auto velocity = maybe(entry, velocityKey);
    if (!diameter || !frequency || !velocity) return std::nullopt;
    return roundNearFieldMm(*diameter, wavelengthMm(*velocity, *frequency));
}

double wavelengthOf(const WorkingEntry& entry) {
    return wavelengthMm(in(entry, "velocity_m_s"), in(entry, "frequency_mhz"));
}

}  // namespace

Result<WorkedOut> heightOfEdges(const WorkingEntry& entry) {
    const ScannedPart part = partOf(entry);
    if (part.surface == ScanSurface::Outer && *part.radiusMm <= part.thicknessMm)
        return inputError("radius_mm", "the outer radius must be above the wall's thickness");
    const auto first = edgeAt(entry, "first_path_mm");
    if (!first) return first.error();
    const auto second = edgeAt(entry, "second_path_mm");
    if (!second) return second.error();
    WorkedOut out;
    out.results = {
        {"height_mm", "Height through the wall", Unit::Millimetre,
         heightBetweenEdgesMm(part, in(entry, "angle_deg"), in(entry, "first_path_mm"),
                              in(entry, "second_path_mm"))},
        {"first_depth_mm", "Depth of the first edge", Unit::Millimetre, first->depthMm},
        {"first_leg", "Leg of the first edge", Unit::None, first->leg},
        {"second_depth_mm", "Depth of the second edge", Unit::Millimetre, second->depthMm},
        {"second_leg", "Leg of the second edge", Unit::None, second->leg}};
    if (!out.results.front().value)
        out.notes.emplace_back(
            "both edges are equally deep: the height was not measurable, which is not 0");
    if (first->leg != second->leg)
        out.notes.emplace_back(
            "the edges were seen on different legs, so an error of the wall's thickness goes "
            "into the height: read both on one leg where that is possible");
    return out;
}

Result<WorkedOut> transferOfBackWalls(const WorkingEntry& entry) {
    const auto echo = [&](const std::string& on) {
        return BackWallEcho{
            .thicknessMm = in(entry, on + "_thickness_mm"),
            .echoDb = echoHeightDb(in(entry, on + "_gain_db"), in(entry, on + "_screen_percent")),
            .attenuationDbPerM = maybe(entry, on + "_attenuation_db_per_m").value_or(0),
            .nearFieldMm = nearFieldAt(entry, on + "_velocity_m_s")};
    };
    const BackWallEcho block = echo("block");
    const BackWallEcho casting = echo("casting");
    const Transfer transfer = transferOf(block, casting);
    WorkedOut out;
    out.results = {{"transfer_db", "Transfer correction", Unit::Decibel, transfer.lossDb}};
    const bool byCurve = transfer.spreading == SpreadingRule::DistanceGainSize;
    const bool equal = block.thicknessMm == casting.thicknessMm &&
                       (!byCurve || block.nearFieldMm == casting.nearFieldMm);
    for (const auto& [key, one] :
         {std::pair("block_thickness_mm", &block), std::pair("casting_thickness_mm", &casting)}) {
        if (byCurve && !equal && one->thicknessMm < kSmallestDistance * *one->nearFieldMm)
            return inputError(key,
                              "the back wall lies nearer than %1 near fields, where its height "
                              "says nothing about the transfer: take a thicker place, a smaller "
                              "probe, or a block as thick as the casting",
                              {plainText(kSmallestDistance)});
    }
    if (byCurve && !equal) {
        out.notes.emplace_back("the spreading was taken off by the model's back-wall curve");
    } else if (!byCurve && !equal) {
        out.notes.emplace_back(
            "the spreading was taken off by the far-field rule: it holds where both back walls "
            "lie above 3 near fields; give probe and velocities for the model's curve");
    }
    if (!maybe(entry, "block_attenuation_db_per_m") ||
        !maybe(entry, "casting_attenuation_db_per_m"))
        out.notes.emplace_back(
            "an attenuation is not known: what the material takes from the echo stays within the "
            "transfer, at these paths only; a setting that states the attenuation too would count "
            "it twice");
    if (transfer.lossDb < 0)
        out.notes.emplace_back(
            "the echo is higher on the casting than on the block: make sure that the block's "
            "surface and coupling were right");
    return out;
}

Result<WorkedOut> backWallLoss(const WorkingEntry& entry) {
    const double loss =
        backWallLossDb(echoHeightDb(in(entry, "sound_gain_db"), in(entry, "sound_screen_percent")),
                       echoHeightDb(in(entry, "here_gain_db"), in(entry, "here_screen_percent")));
    WorkedOut out;
    out.results = {{"back_wall_loss_db", "Back-wall loss", Unit::Decibel, loss}};
    if (loss < 0)
        out.notes.emplace_back(
            "the echo is higher here than on the sound area: that area is no measure for this "
            "place; choose another");
    return out;
}

Result<WorkedOut> angleInMaterial(const WorkingEntry& entry) {
    const auto angle = reAngledDeg(in(entry, "marked_deg"), in(entry, "marked_velocity_m_s"),
                                   in(entry, "velocity_m_s"));
    if (!angle) {
        Error error = angle.error();
        error.place = "velocity_m_s";
        return error;
    }
    return WorkedOut{{{"angle_deg", "Beam angle in this material", Unit::Degree, *angle}}, {}};
}

Result<WorkedOut> criticalAngles(const WorkingEntry& entry) {
    const double wedge = in(entry, "wedge_velocity_m_s");
    const double fast = in(entry, "longitudinal_velocity_m_s");
    const double slow = in(entry, "transverse_velocity_m_s");
    if (slow >= fast)
        return inputError("transverse_velocity_m_s",
                          "the transverse wave is always slower than the longitudinal one: check "
                          "both velocities");
    WorkedOut out;
    out.results = {
        {"first_critical_deg", "First critical angle", Unit::Degree, criticalAngleDeg(wedge, fast)},
        {"second_critical_deg", "Second critical angle", Unit::Degree,
         criticalAngleDeg(wedge, slow)}};
    if (!out.results[0].value)
        out.notes.emplace_back(
            "the longitudinal wave is not faster in the part than in the wedge: it enters the part "
            "at every angle, and there is no first critical angle");
    if (!out.results[1].value)
        out.notes.emplace_back(
            "the transverse wave is not faster in the part than the wave in the wedge: it enters "
            "the part at every angle, and there is no second critical angle");
    return out;
}

Result<WorkedOut> nearField(const WorkingEntry& entry) {
    const double wave = wavelengthOf(entry);
    const bool round = isRound(entry);
    const double side = in(entry, round ? "diameter_mm" : "width_mm");
    const double other = round ? side : in(entry, "length_mm");
    const double bare =
        round ? roundNearFieldMm(side, wave) : rectangularNearFieldMm(side, other, wave);
    WorkedOut out;
    if (says(entry, "probe", "angle")) {
        const double refracted = in(entry, "angle_deg");
        const double wedgeVelocity = in(entry, "wedge_velocity_m_s");
        const auto incident = refractedDeg(refracted, in(entry, "velocity_m_s"), wedgeVelocity);
        if (!incident)
            return inputError("wedge_velocity_m_s",
                              "no wave of this velocity in the wedge makes this angle in the part: "
                              "check angle and both velocities");
        const double area = side * other * (round ? std::numbers::pi / 4 : 1);
        const double rest =
            wedgeNearFieldMm({area, in(entry, "wedge_path_mm"), *incident, refracted}, wave);
        out.results = {{"near_field_in_part_mm", "Near field that remains in the part",
                        Unit::Millimetre, rest},
                       {"incident_deg", "Angle in the wedge", Unit::Degree, *incident}};
        if (rest == 0) out.notes.emplace_back("the near field ends within the wedge");
    }
    out.results.push_back(
        {"near_field_mm", "Near field of the bare element", Unit::Millimetre, bare});
    if (round)
        out.results.push_back({"last_maximum_mm", "Last maximum on the axis", Unit::Millimetre,
                               roundLastMaximumMm(side, wave)});
    out.results.push_back({"wavelength_mm", "Wavelength", Unit::Millimetre, wave});
    if (std::min(side, other) <= wave)
        out.notes.emplace_back(
            "the element is not larger than a wavelength: it has no near field to speak of, and "
            "these formulas do not hold");
    return out;
}

Result<WorkedOut> spread(const WorkingEntry& entry) {
    const double wave = wavelengthOf(entry);
    const bool round = isRound(entry);
    const auto shape = round ? ElementShape::Round : ElementShape::Rectangular;
    const double side = in(entry, round ? "diameter_mm" : "side_mm");
    const auto angle = [&](BeamField field, double dropDb) {
        return divergenceDeg(divergenceFactor(shape, field, dropDb), wave, side);
    };
    WorkedOut out;
    out.results = {
        {"echo_3_db_deg", "Echo 3 dB lower, half angle", Unit::Degree, angle(BeamField::Echo, 3)},
        {"echo_6_db_deg", "Echo 6 dB lower, half angle", Unit::Degree, angle(BeamField::Echo, 6)},
        {"echo_20_db_deg", "Echo 20 dB lower, half angle", Unit::Degree,
         angle(BeamField::Echo, 20)},
        {"free_3_db_deg", "Free field 3 dB lower, half angle", Unit::Degree,
         angle(BeamField::Free, 3)},
        {"free_6_db_deg", "Free field 6 dB lower, half angle", Unit::Degree,
         angle(BeamField::Free, 6)},
        {"free_20_db_deg", "Free field 20 dB lower, half angle", Unit::Degree,
         angle(BeamField::Free, 20)},
        {"null_deg", "Edge of the main beam, half angle", Unit::Degree,
         divergenceDeg(nullFactor(shape), wave, side)}};
    if (!out.results.back().value)
        out.notes.emplace_back(
            "the element is too small for its wavelength: a half angle that is missing lies "
            "nowhere below 90 degrees");
    if (const auto path = maybe(entry, "path_mm")) {
        const double near = round ? roundNearFieldMm(side, wave)
                                  : rectangularNearFieldMm(side, in(entry, "other_side_mm"), wave);
        for (const auto& [key, label, drop] :
             {std::tuple("echo_6_db_width_mm", "Beam width at the path, echo 6 dB lower", 6.0),
              std::tuple("echo_20_db_width_mm", "Beam width at the path, echo 20 dB lower",
                         20.0)}) {
            out.results.push_back({key, label, Unit::Millimetre,
                                   echoBeamWidthMm(shape, side, wave, near, *path, drop)});
        }
        if (*path < near)
            out.notes.push_back("the path ends within the near field of " + tenthsText(near) +
                                " mm, where the beam has no such width");
    }
    return out;
}

}  // namespace model::working
