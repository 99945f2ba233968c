// SPDX-License-Identifier: Apache-2.0
// Readings for the tests of sizes.
#pragma once

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <string>

#include "ultrasonic/size.h"

namespace model {

/// A straight round probe with a wavelength of 2 mm and a near field of 50 mm on a flat part,
/// against the back wall at 100 mm (A = 2) of the same material, without attenuation; the echo at
/// 250 mm (A = 5) with the same screen height at the same gain: echoDb = 0.
inline Reading straightReading() {
    Reading reading;
    reading.probe.diameterMm = 20;
    reading.probe.frequencyMhz = 3;
    reading.medium = {.velocityMPerS = 6000, .attenuationDbPerM = 0};
    reading.part.thicknessMm = 300;
    reading.reference.medium = reading.medium;
    reading.reference.echo = {.soundPathMm = 100, .gainDb = 30, .screenPercent = 80};
    reading.echo = {.soundPathMm = 250, .gainDb = 30, .screenPercent = 80};
    return reading;
}

/// An angle probe of 45 degrees with a square element of 10 mm, a wavelength of 1 mm and a near
/// field of 34 mm, on a flat part of 100 mm, against a flat-bottomed hole of 3 mm at 150 mm; the
/// echo at 120 mm.
inline Reading angleReading() {
    Reading reading = straightReading();
    reading.probe = {.kind = ProbeKind::AngleBeam,
                     .element = ElementShape::Rectangular,
                     .diameterMm = std::nullopt,
                     .widthMm = 10,
                     .lengthMm = 10,
                     .frequencyMhz = 3.2,
                     .angleDeg = 45,
                     .frontMm = 12};
    reading.medium.velocityMPerS = 3200;
    reading.part.thicknessMm = 100;
    reading.reference.kind = ReferenceKind::FlatBottomedHole;
    reading.reference.medium = reading.medium;
    reading.reference.diameterMm = 3;
    reading.reference.echo.soundPathMm = 150;
    reading.echo.soundPathMm = 120;
    return reading;
}

/// The same reading with an echo that differs from the reference's by `db`.
inline Reading differing(Reading reading, double db) {
    reading.echo.screenPercent = reading.reference.echo.screenPercent;
    reading.echo.gainDb = reading.reference.echo.gainDb - db;
    return reading;
}

/// The reading in other material: of the casting and of a reference on it.
inline Reading inMaterial(Reading reading, double velocityMPerS, double attenuationDbPerM) {
    reading.medium = {velocityMPerS, attenuationDbPerM};
    reading.reference.medium = reading.medium;
    return reading;
}

inline Size sized(const Reading& reading) {
    const Result<Size> size = sizeOf(reading);
    EXPECT_TRUE(size.ok()) << (size.ok() ? "" : size.error().message());
    return size.ok() ? *size : Size();
}

inline bool hasNote(const Size& size, const std::string& part) {
    return std::ranges::any_of(
        size.notes, [&](const std::string& note) { return note.find(part) != std::string::npos; });
}

inline void expectNote(const Size& size, const std::string& part) {
    EXPECT_TRUE(hasNote(size, part)) << part << "\n" << testing::PrintToString(size.notes);
}
inline void expectNoNote(const Size& size, const std::string& part) {
    EXPECT_FALSE(hasNote(size, part)) << part << "\n" << testing::PrintToString(size.notes);
}

/// Not sized, and a note that says why.
inline void expectUnsized(const Size& size, const std::string& why) {
    EXPECT_FALSE(size.fbhMm);
    EXPECT_FALSE(size.method);
    EXPECT_FALSE(size.farFieldFbhMm);
    expectNote(size, why);
}

}  // namespace model
