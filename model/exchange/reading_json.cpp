// SPDX-License-Identifier: Apache-2.0
#include "exchange/reading_json.h"

#include <utility>

#include "base/word_table.h"
#include "exchange/json_fields.h"

namespace model {
namespace {

constexpr WordEntry<ProbeKind> kProbeKinds[] = {{ProbeKind::StraightBeam, "straight"},
                                                {ProbeKind::AngleBeam, "angle"},
                                                {ProbeKind::TwinCrystal, "twin"}};
constexpr WordEntry<ElementShape> kElements[] = {{ElementShape::Round, "round"},
                                                 {ElementShape::Rectangular, "rectangular"}};
constexpr WordEntry<ScanSurface> kSurfaces[] = {
    {ScanSurface::Flat, "flat"}, {ScanSurface::Outer, "outer"}, {ScanSurface::Inner, "inner"}};
constexpr WordEntry<ReferenceKind> kReferenceKinds[] = {
    {ReferenceKind::BackWall, "back wall"},
    {ReferenceKind::FlatBottomedHole, "flat-bottomed hole"},
    {ReferenceKind::SideDrilledHole, "side-drilled hole"}};
constexpr WordEntry<ReferencePlace> kReferencePlaces[] = {{ReferencePlace::Casting, "casting"},
                                                          {ReferencePlace::Block, "block"}};

std::optional<ProbeKind> probeKindFrom(std::string_view text) {
    return valueIn(kProbeKinds, text);
}
std::optional<ElementShape> elementFrom(std::string_view text) {
    return valueIn(kElements, text);
}
std::optional<ScanSurface> surfaceFrom(std::string_view text) {
    return valueIn(kSurfaces, text);
}
std::optional<ReferenceKind> referenceKindFrom(std::string_view text) {
    return valueIn(kReferenceKinds, text);
}
std::optional<ReferencePlace> referencePlaceFrom(std::string_view text) {
    return valueIn(kReferencePlaces, text);
}

/// The number that is nearest to the decimal, for calculation.
double number(const JsonFields& in, std::string_view name) {
    return static_cast<double>(in.number(name, Sign::Any)) / 1e6;
}

std::optional<double> optionalNumber(const JsonFields& in, std::string_view name) {
    if (!in.has(name)) return std::nullopt;
    return number(in, name);
}

Probe readProbe(const JsonFields& in) {
    Probe probe;
    probe.kind = in.word("kind", probeKindFrom);
    probe.element = in.word("element", elementFrom);
    probe.diameterMm = optionalNumber(in, "diameter_mm");
    probe.widthMm = optionalNumber(in, "width_mm");
    probe.lengthMm = optionalNumber(in, "length_mm");
    probe.frequencyMhz = number(in, "frequency_mhz");
    probe.angleDeg = optionalNumber(in, "angle_deg");
    probe.frontMm = optionalNumber(in, "front_mm");
    return probe;
}

ScannedPart readPart(const JsonFields& in) {
    ScannedPart part;
    part.thicknessMm = number(in, "thickness_mm");
    part.radiusMm = optionalNumber(in, "radius_mm");
    if (in.has("surface") || part.radiusMm) part.surface = in.word("surface", surfaceFrom);
    return part;
}

EchoReading readEcho(const JsonFields& in) {
    return {.soundPathMm = number(in, "sound_path_mm"),
            .gainDb = number(in, "gain_db"),
            .screenPercent = number(in, "screen_percent")};
}

ReferenceEcho readReference(const JsonFields& in, const WaveMedium& material) {
    ReferenceEcho reference;
    reference.kind = in.word("kind", referenceKindFrom);
    if (in.has("on")) reference.on = in.word("on", referencePlaceFrom);
    reference.medium = material;
    if (in.has("velocity_m_s")) reference.medium.velocityMPerS = number(in, "velocity_m_s");
    if (in.has("attenuation_db_per_m"))
        reference.medium.attenuationDbPerM = number(in, "attenuation_db_per_m");
    reference.diameterMm = optionalNumber(in, "diameter_mm");
    reference.echo = readEcho(in);
    return reference;
}

ProbeMovement readMovement(const JsonFields& in) {
    return {.dropDb = number(in, "drop_db"),
            .alongMm = optionalNumber(in, "along_mm"),
            .acrossMm = optionalNumber(in, "across_mm")};
}

/// Reads the object `name` of the document with `read`; a default where it is missing.
template <class Read>
auto readObject(const JsonFields& in, std::string_view name,
                const std::vector<std::string_view>& allowed, Read read)
    -> decltype(read(std::declval<const JsonFields&>())) {
    const JsonValue* value = in.required(name);
    if (value == nullptr) return {};
    return read(JsonFields(*value, in.pathOf(name), in.problem(), allowed));
}

}  // namespace

Result<Reading> readingFromJson(const JsonValue& document, const std::string& file) {
    JsonProblem problem(file);
    const JsonFields in(
        document, "", problem,
        {"format", "probe", "material", "part", "reference", "transfer_db", "echo", "movement"});
    if (const std::string format = in.text("format"); format != kReadingFormat)
        in.report("format", "must be \"%1\", not \"%2\"", {std::string(kReadingFormat), format});

    Reading reading;
    reading.probe = readObject(in, "probe",
                               {"kind", "element", "diameter_mm", "width_mm", "length_mm",
                                "frequency_mhz", "angle_deg", "front_mm"},
                               readProbe);
    reading.medium = readObject(
        in, "material", {"velocity_m_s", "attenuation_db_per_m"}, [](const JsonFields& material) {
            return WaveMedium{
                .velocityMPerS = number(material, "velocity_m_s"),
                .attenuationDbPerM = optionalNumber(material, "attenuation_db_per_m")};
        });
    reading.part = readObject(in, "part", {"thickness_mm", "surface", "radius_mm"}, readPart);
    reading.reference =
        readObject(in, "reference",
                   {"kind", "on", "velocity_m_s", "attenuation_db_per_m", "sound_path_mm",
                    "diameter_mm", "gain_db", "screen_percent"},
                   [&](const JsonFields& value) { return readReference(value, reading.medium); });
    // Between casting and block nobody may take the coupling as equal without saying so.
    if (in.has("transfer_db") || reading.reference.on == ReferencePlace::Block)
        reading.transferDb = number(in, "transfer_db");
    reading.echo = readObject(in, "echo", {"sound_path_mm", "gain_db", "screen_percent"}, readEcho);
    if (in.has("movement"))
        reading.movement =
            readObject(in, "movement", {"drop_db", "along_mm", "across_mm"}, readMovement);
    if (problem.first()) return *problem.first();
    return reading;
}

}  // namespace model
