// SPDX-License-Identifier: Apache-2.0
#include "conditions/parameters.h"

#include <algorithm>

#include "limits/words.h"

namespace model {
namespace {

using Is = ParameterKind;

constexpr std::string_view kSurface = "MT|PT";
constexpr std::string_view kEvery = "MT|PT|UT";

constexpr Parameter kParameters[] = {
    // Viewing.
    {"viewing", "Viewing", kSurface, Is::Choice, Dimension::None, "", "fluorescent|colour contrast",
     "", true, "Taken from the type of penetrant, ink or powder; state it where that says nothing"},
    {"uv_a", "UV-A at the part", kSurface, Is::Number, Dimension::Irradiance, "W/m2", "",
     "UV-A meter", false, "Fluorescent: read at the surface under test"},
    {"ambient_light", "Ambient light at the part", kSurface, Is::Number, Dimension::Illuminance,
     "lx", "", "light meter", false, "Fluorescent: with the UV-A lamp on and its light shaded"},
    {"white_light", "White light at the part", kSurface, Is::Number, Dimension::Illuminance, "lx",
     "", "light meter", false, "Colour contrast: read at the surface under test"},
    {"colour_temperature", "Colour temperature of the light", kSurface, Is::Number,
     Dimension::Temperature, "K", "", "", false, "Artificial light: as marked on the lamp"},
    {"lamp", "UV-A lamp", kSurface, Is::Choice, Dimension::None, "", "LED|mercury|other", "", false,
     "A mercury lamp has to warm up before it is read"},
    {"lamp_warm_up", "Warm-up of the lamp", kSurface, Is::Number, Dimension::Time, "min", "", "",
     false, "From switching on to the reading"},
    {"dark_adaptation", "Dark adaptation", kSurface, Is::Number, Dimension::Time, "min", "", "",
     false, "Time in the darkened place before viewing"},
    {"eyewear", "Eyewear", kSurface, Is::Choice, Dimension::None, "",
     "none|clear|photochromic or tinted", "", false, "What the examiner wore while viewing"},
    {"magnification", "Magnification", kSurface, Is::Number, Dimension::None, "", "", "", false,
     "1 is the naked eye"},
    // The part.
    {"part_temperature", "Part temperature", kEvery, Is::Number, Dimension::Temperature, "deg C",
     "", "thermometer", false, "At the surface under test"},
    {"special_procedure", "Procedure for this temperature", "PT", Is::Text, Dimension::None, "", "",
     "", false, "Its number: qualified to ISO 3452-5 (above) or ISO 3452-6 (below)"},
    {"coating", "Coating", kEvery, Is::Number, Dimension::Extent, "um", "", "other", true,
     "Non-magnetic layer on the surface under test"},
    {"coating_proof", "Sensitivity proven on the coating", "MT", Is::YesNo, Dimension::None, "", "",
     "", false, "On a piece with the same layer"},
    {"surface_finish", "Surface finish", kEvery, Is::Text, Dimension::None, "", "", "", true,
     "Comparator with its class, or Ra"},
    {"surface_preparation", "Surface preparation", kEvery, Is::Text, Dimension::None, "", "", "",
     true, ""},
    {"surface_clean", "Surface clean", kSurface, Is::YesNo, Dimension::None, "", "", "", false,
     "Free of scale, sand, loose rust, grease and remains of coating"},
    {"delivery_state", "Heat-treatment state", kEvery, Is::Text, Dimension::None, "", "", "", true,
     ""},
    {"stage", "Stage", kEvery, Is::Choice, Dimension::None, "",
     "as cast|heat treated|rough machined|finish machined", "", true, ""},
    {"material", "Material", kEvery, Is::Choice, Dimension::None, "",
     "cast steel|spheroidal graphite iron|grey iron", "", true, ""},
    {"alloy", "Structure of the alloy", kEvery, Is::Choice, Dimension::None, "",
     "ferritic|austenitic|duplex|nickel", "", false,
     "Ferritic: also pearlitic and martensitic; duplex: austenitic and ferritic"},
    {"agreement", "Agreed with the purchaser", kEvery, Is::Text, Dimension::None, "", "", "", false,
     "Number of the agreement on a test outside the standard's scope"},
    // Magnetic testing.
    {"ferromagnetic", "Ferromagnetic", "MT", Is::Choice, Dimension::None, "", "yes|duplex|no", "",
     false, "Above 1 T at 2.4 kA/m (ISO 4986:2020 1); a duplex steel may only attract"},
    {"technique", "Technique", "MT", Is::Choice, Dimension::None, "",
     "AC yoke|DC yoke|permanent magnet|prods|current flow|coil|threading conductor|"
     "multidirectional",
     "", false, ""},
    {"waveform", "Waveform", "MT", Is::Choice, Dimension::None, "",
     "alternating|half wave|full wave|three phase|direct|permanent magnet", "", false, ""},
    {"current", "Current", "MT", Is::Number, Dimension::Current, "A", "", "magnetising unit|other",
     false, ""},
    {"field_strength", "Tangential field", "MT", Is::Number, Dimension::MagneticField, "kA/m", "",
     "field meter", false, "At the surface under test"},
    {"field_reading", "Field read as", "MT", Is::Choice, Dimension::None, "", "RMS|peak|mean", "",
     false, "State the waveform too"},
    {"field_proof", "Proof of the field", "MT", Is::Choice, Dimension::None, "",
     "piece with known flaws|tangential field meter|calculation, verified|shim or pie gauge", "",
     false, "Shims and pie gauges are guides only"},
    {"directions", "Magnetising directions", "MT", Is::Number, Dimension::None, "", "", "", false,
     "Number of directions, about 90 degrees apart"},
    {"multidirectional_proof", "Multidirectional field proven", "MT", Is::YesNo, Dimension::None,
     "", "", "", false, "On sample parts or shims"},
    {"pole_spacing", "Spacing of poles or contacts", "MT", Is::Number, Dimension::Extent, "mm", "",
     "", false, ""},
    {"overlap", "Overlap of fields", "MT", Is::Number, Dimension::Extent, "mm", "", "", false,
     "Between effective areas; the poles are none"},
    {"on_time", "Magnetising time", "MT", Is::Number, Dimension::Time, "s", "", "", false, ""},
    {"media", "Media", "MT", Is::Choice, Dimension::None, "", "wet|dry", "", true,
     "Taken from the consumables: ink is wet, powder is dry"},
    {"bath_carrier", "Carrier", "MT", Is::Choice, Dimension::None, "", "oil|water|aerosol", "",
     false, "Aerosol: sealed can, without a bath to settle"},
    {"bath_concentration", "Bath concentration", "MT", Is::Number, Dimension::VolumeShare,
     "mL/100mL", "", "", false, "Settled volume less contaminant"},
    {"bath_settling", "Settling time", "MT", Is::Number, Dimension::Time, "min", "", "", false, ""},
    {"residual_field", "Residual field", "MT", Is::Number, Dimension::MagneticField, "kA/m", "",
     "residual field meter|field meter", false, "Largest reading after demagnetising"},
    {"viewed_after_demagnetising", "Viewed after demagnetising", "MT", Is::YesNo, Dimension::None,
     "", "", "", false, ""},
    {"indications_fixed", "Indications fixed", "MT", Is::YesNo, Dimension::None, "", "", "", false,
     "Before demagnetising: fixed or preserved"},
    // Penetrant testing.
    {"precleaning", "Precleaning and drying", "PT", Is::Text, Dimension::None, "", "", "", false,
     ""},
    {"closing_treatment", "Treated so that flaws may be closed", "PT", Is::YesNo, Dimension::None,
     "", "", "", false, "Peening, blasting since the last etching"},
    {"penetration_time", "Penetration time", "PT", Is::Number, Dimension::Time, "min", "", "",
     false, ""},
    {"penetration_least", "Penetration time by the procedure, at least", "PT", Is::Number,
     Dimension::Time, "min", "", "", false, "From the type test or the procedure"},
    {"penetrant_dried", "Penetrant dried on the part", "PT", Is::YesNo, Dimension::None, "", "", "",
     false, "Also where it was wetted again"},
    {"removal", "Removal of excess", "PT", Is::Choice, Dimension::None, "",
     "water|lipophilic emulsifier|solvent|hydrophilic emulsifier|water and solvent", "", false, ""},
    {"removal_uv_a", "UV-A while removing", "PT", Is::Number, Dimension::Irradiance, "W/m2", "",
     "UV-A meter", false, "Fluorescent"},
    {"removal_light", "Light while removing", "PT", Is::Number, Dimension::Illuminance, "lx", "",
     "light meter", false, "Fluorescent"},
    {"rinse_temperature", "Rinse temperature", "PT", Is::Number, Dimension::Temperature, "deg C",
     "", "thermometer", false, ""},
    {"rinse_pressure", "Rinse pressure", "PT", Is::Number, Dimension::Pressure, "kPa", "", "",
     false, ""},
    {"solvent_sprayed", "Solvent sprayed on the part", "PT", Is::YesNo, Dimension::None, "", "", "",
     false, ""},
    {"drying_temperature", "Part temperature while drying", "PT", Is::Number,
     Dimension::Temperature, "deg C", "", "thermometer", false, ""},
    {"developer_dry_at", "Developer dry or applied", "PT", Is::Moment, Dimension::None, "", "", "",
     false, "Wet developer: when dry; dry developer: when applied"},
    {"first_look_at", "First look", "PT", Is::Moment, Dimension::None, "", "", "", false, ""},
    {"final_look_at", "Final look", "PT", Is::Moment, Dimension::None, "", "", "", false, ""},
    {"development_time", "Development time", "PT", Is::Number, Dimension::Time, "min", "", "",
     false, "From when the developer was dry or applied to the final look"},
    // Ultrasonic testing.
    {"couplant", "Couplant in the test", "UT", Is::Text, Dimension::None, "", "", "", false,
     "Number of the consumable, or the fluid"},
    {"couplant_of_setting", "Couplant when set", "UT", Is::Text, Dimension::None, "", "", "", false,
     "The same words as in the test"},
    {"surface_condition", "Surface as tested", "UT", Is::Choice, Dimension::None, "",
     "as cast|ground|machined", "", false, ""},
    {"surface_ra", "Roughness Ra", "UT", Is::Number, Dimension::Extent, "um", "", "", false, ""},
    {"surface_comparator", "Comparator class", "UT", Is::Choice, Dimension::None, "",
     "1 S1|1 S2|2 S1|2 S2|3 S1|3 S2|4 S1|4 S2|5 S1|5 S2", "", false, "ISO 11971"},
    {"wall_thickness", "Wall thickness", "UT", Is::Number, Dimension::Extent, "mm", "", "other",
     true, "Smallest of the zone; state others beside it"},
    {"signal_to_noise", "Signal to noise", "UT", Is::Number, Dimension::Decibels, "dB", "", "",
     true, "Smallest reflector to be found, at the end of the range"},
    {"probe_frequency", "Probe frequency", "UT", Is::Number, Dimension::Frequency, "MHz", "", "",
     true, ""},
    {"element_size", "Probe element", "UT", Is::Number, Dimension::Extent, "mm", "", "", true,
     "Diameter or longest side"},
    {"twin_only", "Twin-crystal probes only", "UT", Is::YesNo, Dimension::None, "", "", "", true,
     ""},
    {"reference_block", "Reference block", "UT", Is::Text, Dimension::None, "", "", "", true, ""},
    {"reference_on_block", "Reference echo on a block", "UT", Is::YesNo, Dimension::None, "", "",
     "", true, ""},
    {"transfer_correction", "Transfer correction", "UT", Is::Number, Dimension::Decibels, "dB", "",
     "", true, "With the place where it was measured"},
    {"scan_directions", "Scan directions", "UT", Is::Number, Dimension::None, "", "", "", true, ""},
    {"scan_speed", "Scan speed", "UT", Is::Number, Dimension::Speed, "mm/s", "", "", true, ""},
    {"scan_overlap", "Scan overlap", "UT", Is::Number, Dimension::Share, "%", "", "", true,
     "Of the transducer"},
    {"instrument_settings", "Pulse, reject, PRF, filter, cable", "UT", Is::Text, Dimension::None,
     "", "", "", false, "As in the check and the test"},
};

}  // namespace

std::span<const Parameter> parameters() {
    return kParameters;
}

const Parameter* parameter(std::string_view key) {
    const auto* const found = std::ranges::find(kParameters, key, &Parameter::key);
    return found == std::end(kParameters) ? nullptr : found;
}

std::vector<const Parameter*> parametersOf(Method method) {
    std::vector<const Parameter*> found;
    for (const Parameter& known : kParameters)
        if (std::ranges::count(partsOf(known.methods), word(method)) > 0) found.push_back(&known);
    return found;
}

std::vector<std::string_view> partsOf(std::string_view words) {
    std::vector<std::string_view> parts;
    while (!words.empty()) {
        const std::size_t end = std::min(words.find('|'), words.size());
        parts.push_back(words.substr(0, end));
        words.remove_prefix(std::min(end + 1, words.size()));
    }
    return parts;
}

}  // namespace model
