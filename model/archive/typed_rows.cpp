// SPDX-License-Identifier: Apache-2.0
#include "archive/typed_rows.h"

namespace model {

template <>
const TypedTable<TypedIndication>& typedTable() {
    using Row = TypedIndication;
    static const TypedTable<Row> table{"indication",
                                       {{&Row::id, "id"},
                                        {&Row::x, "x", "x_nm"},
                                        {&Row::y, "y", "y_nm"},
                                        {&Row::length, "length", "length_nm"},
                                        {&Row::width, "width", "width_nm"},
                                        {&Row::removed, "removed", "removed_nm"},
                                        {&Row::angle, "angle", "angle_millionth_deg"},
                                        {&Row::area, "area", "area_millionth_mm2"},
                                        {&Row::kind, "kind"},
                                        {&Row::stated, "stated", nullptr, "class"},
                                        {&Row::relevance, "relevance"},
                                        {&Row::reason, "reason"}}};
    return table;
}

template <>
const TypedTable<TypedSetting>& typedTable() {
    using Row = TypedSetting;
    static const TypedTable<Row> table{
        "ultrasonic_setting",
        {{&Row::name, "name"},
         {&Row::probe, "probe"},
         {&Row::kind, "kind"},
         {&Row::element, "element"},
         {&Row::diameter, "diameter", "diameter_nm"},
         {&Row::elementWidth, "element_width", "element_width_nm"},
         {&Row::elementLength, "element_length", "element_length_nm"},
         {&Row::front, "front", "front_nm"},
         {&Row::frequency, "frequency", "frequency_millionth_mhz"},
         {&Row::probeAngle, "probe_angle", "probe_angle_millionth_deg"},
         {&Row::velocity, "velocity", "velocity_millionth_m_s"},
         {&Row::attenuation, "attenuation", "attenuation_millionth_db_m"},
         {&Row::thickness, "thickness", "thickness_nm"},
         {&Row::surface, "surface"},
         {&Row::radius, "radius", "radius_nm"},
         {&Row::reference, "reference"},
         {&Row::referenceOn, "reference_on"},
         {&Row::block, "block"},
         {&Row::referenceVelocity, "reference_velocity", "reference_velocity_millionth_m_s"},
         {&Row::referenceAttenuation, "reference_attenuation",
          "reference_attenuation_millionth_db_m"},
         {&Row::referencePath, "reference_path", "reference_path_nm"},
         {&Row::referenceDiameter, "reference_diameter", "reference_diameter_nm"},
         {&Row::referenceGain, "reference_gain", "reference_gain_millionth_db"},
         {&Row::referenceScreen, "reference_screen", "reference_screen_millionth_percent"},
         {&Row::transfer, "transfer", "transfer_millionth_db"},
         {&Row::knownThickness, "known_thickness", "known_thickness_nm"},
         {&Row::shownThickness, "shown_thickness", "shown_thickness_nm"},
         {&Row::setVelocity, "set_velocity", "set_velocity_millionth_m_s"},
         {&Row::firstEchoNumber, "first_echo_number", "first_echo_number_millionth"},
         {&Row::firstEchoGain, "first_echo_gain", "first_echo_gain_millionth_db"},
         {&Row::secondEchoNumber, "second_echo_number", "second_echo_number_millionth"},
         {&Row::secondEchoGain, "second_echo_gain", "second_echo_gain_millionth_db"}}};
    return table;
}

template <>
const TypedTable<TypedReflector>& typedTable() {
    using Row = TypedReflector;
    static const TypedTable<Row> table{
        "reflector",
        {{&Row::id, "id"},
         {&Row::x, "x", "x_nm"},
         {&Row::y, "y", "y_nm"},
         {&Row::heading, "heading", "heading_millionth_deg"},
         {&Row::setting, "setting"},
         {&Row::afterCheck, "after_check"},
         {&Row::soundPath, "sound_path", "sound_path_nm"},
         {&Row::gain, "gain", "gain_millionth_db"},
         {&Row::screen, "screen", "screen_millionth_percent"},
         {&Row::drop, "echo_drop", "echo_drop_millionth_db"},
         {&Row::along, "moved_along", "moved_along_nm"},
         {&Row::across, "moved_across", "moved_across_nm"},
         {&Row::depth, "depth", "depth_nm"},
         {&Row::fbh, "fbh", "fbh_nm"},
         {&Row::length, "length", "length_nm"},
         {&Row::width, "width", "width_nm"},
         {&Row::throughWall, "through_wall", "through_wall_nm"},
         {&Row::angle, "angle", "angle_millionth_deg"},
         {&Row::area, "area", "area_millionth_mm2"},
         {&Row::backWallLoss, "back_wall_loss", "back_wall_loss_millionth_db"},
         {&Row::backWallLossExplained, "back_wall_loss_explained"},
         {&Row::overReference, "over_reference", "over_reference_millionth_db"},
         {&Row::wall, "wall", "wall_nm"},
         {&Row::notMeasurable, "not_measurable"},
         {&Row::kind, "kind"},
         {&Row::relevance, "relevance"},
         {&Row::reason, "reason"}}};
    return table;
}

}  // namespace model
