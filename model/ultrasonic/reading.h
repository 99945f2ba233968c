// SPDX-License-Identifier: Apache-2.0
// What an ultrasonic instrument showed and what the probe, the material and the reference were: the
// contract's fettlemark-reading/1. Lengths mm, frequencies MHz, velocities m/s, gains and echo
// heights dB, attenuation dB/m of path one way (an echo loses it twice), angles degrees.
#pragma once

#include <optional>

namespace model {

enum class ProbeKind { StraightBeam, AngleBeam, TwinCrystal };
enum class ElementShape { Round, Rectangular };

struct Probe {
    ProbeKind kind = ProbeKind::StraightBeam;
    ElementShape element = ElementShape::Round;
    std::optional<double> diameterMm;  ///< round: > 0
    std::optional<double> widthMm;     ///< rectangular: > 0, across the beam's plane of incidence
    std::optional<double> lengthMm;    ///< rectangular: > 0, along it
    double frequencyMhz = 0;           ///< > 0
    std::optional<double> angleDeg;    ///< angle probe: in the part, from the normal, > 0 and < 90
    std::optional<double> frontMm;     ///< from the index point to the probe's front, >= 0
};

/// Of the wave that the probe uses.
struct WaveMedium {
    double velocityMPerS = 0;                 ///< > 0
    std::optional<double> attenuationDbPerM;  ///< >= 0; none: not known, which is not 0
};

enum class ScanSurface { Flat, Outer, Inner };

struct ScannedPart {
    double thicknessMm = 0;  ///< > 0
    ScanSurface surface = ScanSurface::Flat;
    std::optional<double> radiusMm;  ///< of the scanned surface; outer: > thickness
};

/// An echo as read: the instrument's gain and the screen height that it gave.
struct EchoReading {
    double soundPathMm = 0;    ///< > 0, one way
    double gainDb = 0;         ///< -20 to 120
    double screenPercent = 0;  ///< > 0, <= 100
};

enum class ReferenceKind { BackWall, FlatBottomedHole, SideDrilledHole };
enum class ReferencePlace { Casting, Block };

struct ReferenceEcho {
    ReferenceKind kind = ReferenceKind::BackWall;
    ReferencePlace on = ReferencePlace::Casting;
    WaveMedium medium;
    std::optional<double> diameterMm;  ///< of the hole, > 0; none for a back wall
    EchoReading echo;
};

/// How far the probe moved between the points where the echo had dropped by `dropDb`.
struct ProbeMovement {
    double dropDb = 6;               ///< 6 or 20
    std::optional<double> alongMm;   ///< >= 0; none: not measured
    std::optional<double> acrossMm;  ///< >= 0; none: not measured
};

struct Reading {
    Probe probe;
    WaveMedium medium;
    ScannedPart part;
    ReferenceEcho reference;
    double transferDb = 0;  ///< coupling loss of the casting against the block; 0 on the casting
    EchoReading echo;
    std::optional<ProbeMovement> movement;
};

}  // namespace model
