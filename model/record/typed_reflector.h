// SPDX-License-Identifier: Apache-2.0
// An ultrasonic indication and the setting it was found with, as typed: text in every field, so
// that half-typed rows are kept. A reading is sized when it is read; what was typed goes before it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "judge/sheet.h"
#include "quantity/entry.h"
#include "record/typed_indication.h"
#include "ultrasonic/size.h"

namespace model {

/// A probe with its material and reference, used for any number of readings. Lengths in `unit`.
struct TypedSetting {
    std::string name;     ///< unique in the examination
    std::string probe;    ///< type and serial number as marked on it
    std::string kind;     ///< "straight", "angle" or "twin"
    std::string element;  ///< "round" or "rectangular"
    std::string diameter, elementWidth, elementLength, front;
    std::string frequency;    ///< MHz
    std::string probeAngle;   ///< degrees
    std::string velocity;     ///< m/s
    std::string attenuation;  ///< dB/m, one way; empty: not known, which is not 0
    std::string thickness;
    std::string surface;  ///< "flat", "outer" or "inner"
    std::string radius;
    std::string reference;    ///< "back wall", "flat-bottomed hole" or "side-drilled hole"
    std::string referenceOn;  ///< "casting" (also where empty) or "block"
    std::string block;        ///< its number
    std::string referenceVelocity, referenceAttenuation;  ///< empty: the material's
    std::string referencePath, referenceDiameter;
    std::string referenceGain, referenceScreen;  ///< dB, percent
    std::string transfer;  ///< dB; on a block not empty, on the casting empty or 0
    // Measured on the casting: a wall of known thickness, what the instrument showed for it at
    // `setVelocity`, and two of its back-wall echoes.
    std::string knownThickness, shownThickness, setVelocity;
    std::string firstEchoNumber, firstEchoGain, secondEchoNumber, secondEchoGain;
    LengthUnit unit = LengthUnit::Millimetre;

    friend bool operator==(const TypedSetting&, const TypedSetting&) = default;
};

struct TypedReflector {
    std::string id;
    std::string x, y;     ///< of the indication; with a heading: of the probe's front at the peak
    std::string heading;  ///< degrees, direction in which the probe looks; empty: none
    // The reading; all empty: none was taken.
    std::string setting;     ///< name of a setting
    std::string afterCheck;  ///< number of the setting check before it; does not make it a reading
    std::string soundPath, gain, screen;
    std::string drop, along, across;  ///< dB; probe movement
    // Typed sizes; empty: from the reading, else not measured.
    std::string depth, fbh, length, width, throughWall;
    std::string angle;         ///< degrees; empty: 0
    std::string area;          ///< mm2
    std::string backWallLoss;  ///< dB
    std::string backWallLossExplained;
    std::string overReference;  ///< dB
    std::string wall;
    std::string notMeasurable;  ///< of "length", "width", "through_wall", parted by spaces
    std::string kind;           ///< "volumetric", "planar", "dross" or empty
    std::string relevance;      ///< as in TypedIndication
    std::string reason;
    LengthUnit unit = LengthUnit::Millimetre;

    friend bool operator==(const TypedReflector&, const TypedReflector&) = default;
};

/// The reflector with what its reading gave, or everything that is wrong with the row.
struct ReadReflector {
    std::optional<Reflector> value;
    std::optional<Size> size;  ///< where there is a reading that could be sized
    std::vector<FieldError> errors;
};

/// `settings`: those of the examination. What was typed goes before what the reading gives, which
/// is depth, equivalent flat-bottomed hole, length, width, and which of the two movements is not
/// measurable; each is rounded half-up, once, to 0.001 mm. The level over the reference line is
/// only ever typed, as a table's reference line need not be the setting's reference.
ReadReflector read(const TypedReflector& row, const std::vector<TypedSetting>& settings);

/// The reading that a row and its setting make, without movement where none was typed. Fields that
/// its kinds do not need are left out. Fields are named as in the contract: "echo.gain_db",
/// "probe.frequency_mhz".
struct ReadReading {
    std::optional<Reading> value;
    std::vector<FieldError> errors;
};
/// Velocity and attenuation are the fields of that name; what was measured on the casting stands
/// beside them as evidence.
ReadReading readingOf(const TypedReflector& row, const TypedSetting& setting);

/// Whether any field of the reading holds text; a setting and a drop alone are none, as they stand
/// ready for the next reading.
bool hasReading(const TypedReflector& row);
/// A row with no text (spaces are none) in any field but the id, setting and drop: not an
/// indication yet.
bool isBlank(const TypedReflector& row);

}  // namespace model
