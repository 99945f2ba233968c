// SPDX-License-Identifier: Apache-2.0
// What each working is called, asks for and holds for.
#include <array>
#include <utility>

#include "ultrasonic/working_steps.h"

namespace model {
namespace {

using Range = WorkingRange;

WorkingField number(std::string_view key, std::string_view label, Range range,
                    std::string_view help) {
    return {.key = key, .label = label, .help = help, .range = range};
}

WorkingField choice(std::string_view key, std::string_view label, std::string_view help,
                    std::vector<std::string_view> words) {
    return {
        .key = key, .label = label, .help = help, .range = Range::Word, .words = std::move(words)};
}

WorkingField optional(WorkingField field) {
    field.needed = false;
    return field;
}

WorkingField only(std::string_view when, std::vector<std::string_view> is, WorkingField field) {
    field.when = when;
    field.is = std::move(is);
    return field;
}

WorkingField element() {
    return choice("element", "Element", "Shape of the vibrating element.",
                  {"round", "rectangular"});
}

WorkingField diameter() {
    return only(
        "element", {"round"},
        number("diameter_mm", "Diameter", Range::Length, "Effective diameter D of the element."));
}

WorkingField frequency() {
    return number("frequency_mhz", "Frequency", Range::Frequency,
                  "Nominal frequency; wavelength = velocity / frequency.");
}

WorkingField velocity() {
    return number("velocity_m_s", "Velocity in the part", Range::Velocity,
                  "Of the wave that the probe uses, in this material.");
}

Working height() {
    return {
        "height",
        "Height from two edges",
        "Difference of the edges' depths, each where the beam's axis is at that path; on one leg "
        "of a flat part |s1 − s2| cos β",
        "Geometry of the beam's axis, leg by leg",
        {"An angle probe showed the upper and the lower edge of one indication at two sound "
         "paths, both read in the same way.",
         "Edges nearer to each other than the beam can tell apart show as one.",
         "Up to the third leg; curved parts scanned around the circumference."},
        {number("angle_deg", "Beam angle", Range::Angle,
                "In this material, from the normal. One marked for another material: see \"Beam "
                "angle in another material\"."),
         number("first_path_mm", "Sound path, first edge", Range::Length,
                "As the instrument shows it: one way, from the index point."),
         number("second_path_mm", "Sound path, second edge", Range::Length,
                "Of the other edge; which comes first does not matter."),
         number("thickness_mm", "Wall", Range::Length,
                "Thickness of the part where it is scanned."),
         choice("surface", "Scanned surface",
                "Outer or inner: around a curved part, from outside or from its bore.",
                {"flat", "outer", "inner"}),
         only("surface", {"outer", "inner"},
              number("radius_mm", "Radius", Range::Length, "Of the scanned surface."))},
        &working::heightOfEdges};
}

Working transfer() {
    return {
        "transfer",
        "Transfer correction from two back walls",
        "Echo height on the block less that on the casting, less the spreading and the attenuation "
        "of their thicknesses; echo height = 20 lg (screen / 80 %) − gain",
        "Spreading: 20 lg of the thicknesses' ratio, or the back-wall curve of a round piston in "
        "closed form where probe and velocities are given",
        {"First back-wall echoes of a straight-beam probe on flat, parallel faces, with the same "
         "probe, couplant and instrument.",
         "The model's curve is that of a round element, from 0.7 near fields on."},
        {number("block_thickness_mm", "Block: thickness", Range::Length, "Of the block."),
         number("block_gain_db", "Block: gain", Range::Gain,
                "The instrument's gain at the screen height below."),
         number("block_screen_percent", "Block: screen height", Range::Screen,
                "Of the first back-wall echo."),
         optional(number("block_attenuation_db_per_m", "Block: attenuation", Range::Attenuation,
                         "One way, per metre of path. Empty: not known, which is not zero.")),
         number("casting_thickness_mm", "Casting: thickness", Range::Length,
                "At a sound place with parallel faces."),
         number("casting_gain_db", "Casting: gain", Range::Gain,
                "The instrument's gain at the screen height below."),
         number("casting_screen_percent", "Casting: screen height", Range::Screen,
                "Of the first back-wall echo."),
         optional(number("casting_attenuation_db_per_m", "Casting: attenuation", Range::Attenuation,
                         "One way, per metre of path. Empty: not known, which is not zero.")),
         optional(number("diameter_mm", "Probe: diameter", Range::Length,
                         "Of a round element. With frequency and both velocities the near field is "
                         "known and the model's curve is used.")),
         optional(
             number("frequency_mhz", "Probe: frequency", Range::Frequency, "Nominal frequency.")),
         optional(number("block_velocity_m_s", "Block: velocity", Range::Velocity,
                         "Of the longitudinal wave in the block.")),
         optional(number("casting_velocity_m_s", "Casting: velocity", Range::Velocity,
                         "Of the longitudinal wave in the casting."))},
        &working::transferOfBackWalls};
}

Working loss() {
    return {"back-wall-loss",
            "Back-wall loss",
            "Echo height on the sound area less that at this place; echo height = 20 lg (screen / "
            "80 %) − gain",
            "Definition of the decibel of amplitudes",
            {"The same wall thickness, surface and coupling at both places, and parallel faces.",
             "A loss has causes other than a discontinuity: a boss, an edge, a curve, poor "
             "coupling. Which it is, the number does not tell."},
            {number("sound_gain_db", "Sound area: gain", Range::Gain,
                    "The instrument's gain at the screen height below."),
             number("sound_screen_percent", "Sound area: screen height", Range::Screen,
                    "Of the back-wall echo where nothing lies above it."),
             number("here_gain_db", "This place: gain", Range::Gain,
                    "The instrument's gain at the screen height below."),
             number("here_screen_percent", "This place: screen height", Range::Screen,
                    "Of the back-wall echo here. Gone altogether: the noise's height, and the loss "
                    "is at least the result.")},
            &working::backWallLoss};
}

Working reAngled() {
    return {"beam-angle",
            "Beam angle in another material",
            "Snell's law: sin β = sin β₀ · c / c₀",
            "All textbooks; checked against published examination questions",
            {"The same wave in both materials, as a rule the transverse one.",
             "A large angle answers strongly to the velocity: at 70°, 1 % more velocity adds 1.6°. "
             "Where there is a block of the material, measure the angle there."},
            {number("marked_deg", "Marked angle", Range::Angle, "As marked on the probe."),
             number("marked_velocity_m_s", "Velocity it is marked for", Range::Velocity,
                    "Of the probe maker's material; of transverse waves in steel about 3230 to "
                    "3250 m/s."),
             number("velocity_m_s", "Velocity in the part", Range::Velocity,
                    "Of the same wave in this material, measured.")},
            &working::angleInMaterial};
}

Working critical() {
    return {"critical-angles",
            "Critical angles of a wedge",
            "sin α = velocity in the wedge / velocity in the part; first: longitudinal wave, "
            "second: transverse wave",
            "Snell's law, all textbooks",
            {"Plane waves at a flat face; the angles are those in the wedge, or in the water."},
            {number("wedge_velocity_m_s", "Velocity in the wedge", Range::Velocity,
                    "Of the longitudinal wave; acrylic about 2730 m/s, water about 1480 m/s."),
             number("longitudinal_velocity_m_s", "Longitudinal velocity in the part",
                    Range::Velocity, "Steel about 5920 m/s."),
             number("transverse_velocity_m_s", "Transverse velocity in the part", Range::Velocity,
                    "Steel about 3250 m/s.")},
            &working::criticalAngles};
}

Working near() {
    return {
        "near-field",
        "Near field",
        "Round: N = D² / 4λ, last maximum (D² − λ²) / 4λ. Rectangular: k L² / 4λ, k from 1.37 "
        "(square) to 0.99 (slender). Behind a wedge: F cos β / (π λ cos α) − w tan α / tan β, "
        "F the element's area, w the path in the wedge",
        "Round: all textbooks. Rectangular: computed for this program, last maximum on the axis "
        "in the Fresnel approximation. Behind a wedge: common practice, from memory (grade M)",
        {"Of one element, driven at its nominal frequency; a short pulse blurs it.",
         "Rectangular and wedge values are approximate."},
        {choice("probe", "Probe", "Angle: with a wedge.", {"straight", "angle"}), element(),
         diameter(),
         only("element", {"rectangular"},
              number("width_mm", "Width", Range::Length,
                     "Of the element, across the plane of the beam.")),
         only("element", {"rectangular"},
              number("length_mm", "Length", Range::Length,
                     "Of the element, in the plane of the beam.")),
         frequency(), velocity(),
         only("probe", {"angle"},
              number("angle_deg", "Beam angle", Range::Angle, "In the part, from the normal.")),
         only("probe", {"angle"},
              number("wedge_velocity_m_s", "Velocity in the wedge", Range::Velocity,
                     "Of the longitudinal wave; acrylic about 2730 m/s.")),
         only("probe", {"angle"},
              number("wedge_path_mm", "Path in the wedge", Range::Length,
                     "From the element to the index point."))},
        &working::nearField};
}

Working divergence() {
    return {"spread",
            "Spread of the beam",
            "sin γ = k λ / D, k from the field of a piston: 2 J1(x) / x round, sin(x) / x per side "
            "of a rectangle. Width at a path: 2 s tan γ",
            "Agrees with Krautkraemer, Ultrasonic Testing of Materials, 4th edition, Table 4.2",
            {"The far field of a straight-beam probe. A wedge makes the spread uneven.",
             "Echo: of a small reflector, which the beam weakens going and coming. Free field: as "
             "another probe receives it, weakened once. The same decibels are two angles."},
            {element(), diameter(),
             only("element", {"rectangular"},
                  number("side_mm", "Side", Range::Length,
                         "In the plane in which the spread is wanted.")),
             only("element", {"rectangular"},
                  number("other_side_mm", "Other side", Range::Length,
                         "Across that plane; the near field needs it.")),
             frequency(), velocity(),
             optional(number("path_mm", "Sound path", Range::Length,
                             "For the beam's width there. Empty: no width."))},
            &working::spread};
}

}  // namespace

std::span<const Working> workings() {
    static const std::array kAll{height(),   transfer(), loss(),      reAngled(),
                                 critical(), near(),     divergence()};
    return kAll;
}

}  // namespace model
