// SPDX-License-Identifier: Apache-2.0
#include "record/row_fields.h"
#include "record/typed_reflector.h"

namespace model {
namespace {

/// A contract word and what it stands for.
template <class Value>
struct Choice {
    std::string_view word;
    Value value;
};
constexpr Choice<ProbeKind> kProbes[] = {{"straight", ProbeKind::StraightBeam},
                                         {"angle", ProbeKind::AngleBeam},
                                         {"twin", ProbeKind::TwinCrystal}};
constexpr Choice<ElementShape> kElements[] = {{"round", ElementShape::Round},
                                              {"rectangular", ElementShape::Rectangular}};
constexpr Choice<ScanSurface> kSurfaces[] = {
    {"flat", ScanSurface::Flat}, {"outer", ScanSurface::Outer}, {"inner", ScanSurface::Inner}};
constexpr Choice<ReferenceKind> kReferences[] = {
    {"back wall", ReferenceKind::BackWall},
    {"flat-bottomed hole", ReferenceKind::FlatBottomedHole},
    {"side-drilled hole", ReferenceKind::SideDrilledHole}};
constexpr Choice<ReferencePlace> kPlaces[] = {{"casting", ReferencePlace::Casting},
                                              {"block", ReferencePlace::Block}};

class ReadingReader {
public:
    ReadingReader(const TypedReflector& row, const TypedSetting& setting)
        : row_(row), setting_(setting), rowFields_(row.unit), fields_(setting.unit) {}

    ReadReading read() {
        Reading reading;
        readProbe(reading.probe);
        readMedium(reading.medium);
        readPart(reading.part);
        readReference(reading);
        readTransfer(reading);
        reading.echo = {
            needed(rowFields_, "echo.sound_path_mm", row_.soundPath, Allowed::Positive, true),
            needed(rowFields_, "echo.gain_db", row_.gain, Allowed::Any),
            needed(rowFields_, "echo.screen_percent", row_.screen, Allowed::Positive)};
        reading.movement = movement();
        ReadReading result;
        if (rowFields_.sound() && fields_.sound()) result.value = reading;
        fields_.add(rowFields_.take());
        result.errors = fields_.take();
        return result;
    }

private:
    template <class Value, std::size_t count>
    Value choice(const char* field, const std::string& text, const Choice<Value> (&choices)[count],
                 const char* whereEmpty = "") {
        const std::string_view given = isEmpty(text) ? whereEmpty : trimmed(text);
        std::string all;
        for (const auto& [word, value] : choices) {
            if (word == given) return value;
            all += (all.empty() ? "" : ", ") + std::string(word);
        }
        if (given.empty())
            fields_.fail(field, "is missing; choose one of: %1", {all});
        else
            fields_.fail(field, "is %1, but must be one of: %2", {text, all});
        return choices[0].value;
    }

    static std::optional<double> value(RowFields& fields, const char* field,
                                       const std::string& text, Allowed allowed, bool isLength) {
        if (isLength) {
            const auto length = fields.length(field, text, allowed);
            return length ? std::optional(length->approximately()) : std::nullopt;
        }
        const auto millionths = fields.number(field, text, allowed);
        return millionths ? std::optional(static_cast<double>(*millionths) / 1e6) : std::nullopt;
    }
    static double needed(RowFields& fields, const char* field, const std::string& text,
                         Allowed allowed, bool isLength = false) {
        if (!fields.require(field, text)) return 0;
        return value(fields, field, text, allowed, isLength).value_or(0);
    }
    double needed(const char* field, const std::string& text, Allowed allowed = Allowed::Positive) {
        return needed(fields_, field, text, allowed);
    }
    double neededLength(const char* field, const std::string& text) {
        return needed(fields_, field, text, Allowed::Positive, true);
    }

    void readProbe(Probe& probe) {
        probe.kind = choice("probe.kind", setting_.kind, kProbes);
        probe.element = choice("probe.element", setting_.element, kElements);
        if (probe.element == ElementShape::Round) {
            probe.diameterMm = neededLength("probe.diameter_mm", setting_.diameter);
        } else {
            probe.widthMm = neededLength("probe.width_mm", setting_.elementWidth);
            probe.lengthMm = neededLength("probe.length_mm", setting_.elementLength);
        }
        probe.frequencyMhz = needed("probe.frequency_mhz", setting_.frequency);
        if (probe.kind == ProbeKind::StraightBeam) return;
        if (probe.kind == ProbeKind::AngleBeam)
            fields_.require("probe.angle_deg", setting_.probeAngle);
        probe.angleDeg =
            value(fields_, "probe.angle_deg", setting_.probeAngle, Allowed::NotNegative, false);
        probe.frontMm =
            value(fields_, "probe.front_mm", setting_.front, Allowed::NotNegative, true);
    }

    void readMedium(WaveMedium& medium) {
        medium.velocityMPerS = needed("material.velocity_m_s", setting_.velocity);
        medium.attenuationDbPerM = value(fields_, "material.attenuation_db_per_m",
                                         setting_.attenuation, Allowed::NotNegative, false);
    }

    void readPart(ScannedPart& part) {
        part.thicknessMm = neededLength("part.thickness_mm", setting_.thickness);
        part.surface = choice("part.surface", setting_.surface, kSurfaces);
        if (part.surface != ScanSurface::Flat)
            part.radiusMm = neededLength("part.radius_mm", setting_.radius);
    }

    void readReference(Reading& reading) {
        ReferenceEcho& reference = reading.reference;
        reference.kind = choice("reference.kind", setting_.reference, kReferences);
        reference.on = choice("reference.on", setting_.referenceOn, kPlaces, "casting");
        reference.medium = reading.medium;
        if (const auto velocity = value(fields_, "reference.velocity_m_s",
                                        setting_.referenceVelocity, Allowed::Positive, false))
            reference.medium.velocityMPerS = *velocity;
        if (const auto attenuation =
                value(fields_, "reference.attenuation_db_per_m", setting_.referenceAttenuation,
                      Allowed::NotNegative, false))
            reference.medium.attenuationDbPerM = attenuation;
        if (reference.kind != ReferenceKind::BackWall)
            reference.diameterMm =
                neededLength("reference.diameter_mm", setting_.referenceDiameter);
        reference.echo = {
            neededLength("reference.sound_path_mm", setting_.referencePath),
            needed("reference.gain_db", setting_.referenceGain, Allowed::Any),
            needed("reference.screen_percent", setting_.referenceScreen, Allowed::Positive)};
    }

    void readTransfer(Reading& reading) {
        const auto transfer = value(fields_, "transfer_db", setting_.transfer, Allowed::Any, false);
        if (reading.reference.on == ReferencePlace::Casting) {
            if (transfer.value_or(0) != 0)
                fields_.fail("transfer_db", "must be 0 where the reference is on the casting");
        } else if (fields_.require("transfer_db", setting_.transfer)) {
            reading.transferDb = transfer.value_or(0);
        }
    }

    std::optional<ProbeMovement> movement() {
        if (areEmpty({&row_.along, &row_.across})) return std::nullopt;
        ProbeMovement movement;
        movement.dropDb = needed(rowFields_, "movement.drop_db", row_.drop, Allowed::Positive);
        movement.alongMm =
            value(rowFields_, "movement.along_mm", row_.along, Allowed::NotNegative, true);
        movement.acrossMm =
            value(rowFields_, "movement.across_mm", row_.across, Allowed::NotNegative, true);
        return movement;
    }

    const TypedReflector& row_;
    const TypedSetting& setting_;
    RowFields rowFields_;  ///< each with the unit of its lengths
    RowFields fields_;
};

}  // namespace

ReadReading readingOf(const TypedReflector& row, const TypedSetting& setting) {
    return ReadingReader(row, setting).read();
}

bool hasReading(const TypedReflector& row) {
    return !areEmpty({&row.soundPath, &row.gain, &row.screen, &row.along, &row.across});
}

bool isBlank(const TypedReflector& row) {
    return !hasReading(row) &&
           areEmpty({&row.x, &row.y, &row.heading, &row.depth, &row.fbh, &row.length, &row.width,
                     &row.throughWall, &row.angle, &row.area, &row.backWallLoss,
                     &row.backWallLossExplained, &row.overReference, &row.wall, &row.notMeasurable,
                     &row.kind, &row.relevance, &row.reason});
}

}  // namespace model
