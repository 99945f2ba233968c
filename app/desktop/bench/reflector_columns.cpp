// SPDX-License-Identifier: Apache-2.0
#include <QCoreApplication>
#include <array>

#include "bench/columns.h"
#include "limits/words.h"
#include "looks/text.h"

namespace app {
namespace {

using model::TypedReflector;

constexpr std::array<TypedColumn<TypedReflector>, 27> kColumns = {{
    {&TypedReflector::id, "id", CellOf::Text, 6},
    {&TypedReflector::x, "x_mm", CellOf::Length, 9},
    {&TypedReflector::y, "y_mm", CellOf::Length, 9},
    {&TypedReflector::heading, "heading_deg", CellOf::Number, 12},
    {&TypedReflector::soundPath, "echo.sound_path_mm", CellOf::Length, 16},
    {&TypedReflector::gain, "echo.gain_db", CellOf::Number, 10},
    {&TypedReflector::screen, "echo.screen_percent", CellOf::Number, 11},
    {&TypedReflector::along, "movement.along_mm", CellOf::Length, 12},
    {&TypedReflector::across, "movement.across_mm", CellOf::Length, 12},
    {&TypedReflector::depth, "depth_mm", CellOf::Length, 12},
    {&TypedReflector::fbh, "fbh_mm", CellOf::Length, 11},
    {&TypedReflector::length, "length_mm", CellOf::Length, 14},
    {&TypedReflector::width, "width_mm", CellOf::Length, 14},
    {&TypedReflector::throughWall, "through_wall_mm", CellOf::Length, 18},
    {&TypedReflector::kind, "kind", CellOf::Word, 12},
    {&TypedReflector::relevance, "relevance", CellOf::Word, 14},
    {&TypedReflector::reason, "reason", CellOf::Text, 18},
    {&TypedReflector::setting, "setting", CellOf::Text, 12},
    {&TypedReflector::drop, "movement.drop_db", CellOf::Number, 10},
    {&TypedReflector::angle, "angle_deg", CellOf::Number, 9},
    {&TypedReflector::area, "area_mm2", CellOf::Number, 11},
    {&TypedReflector::overReference, "over_reference_db", CellOf::Number, 19},
    {&TypedReflector::backWallLoss, "back_wall_loss_db", CellOf::Number, 19},
    {&TypedReflector::backWallLossExplained, "back_wall_loss_explained", CellOf::Text, 20},
    {&TypedReflector::wall, "wall_mm", CellOf::Length, 10},
    {&TypedReflector::notMeasurable, "not_measurable", CellOf::Text, 22},
    {&TypedReflector::afterCheck, "after_check", CellOf::Text, 14},
}};

QString tr(const char* text) {
    return QCoreApplication::translate("ReflectorColumns", text);
}

}  // namespace

std::span<const TypedColumn<TypedReflector>> Columns<TypedReflector>::all() {
    return kColumns;
}

QString Columns<TypedReflector>::name(int column) {
    switch (static_cast<ReflectorColumn>(column)) {
        case ReflectorColumn::Id:
            return tr("id");
        case ReflectorColumn::X:
            return tr("x");
        case ReflectorColumn::Y:
            return tr("y");
        case ReflectorColumn::Heading:
            return tr("heading");
        case ReflectorColumn::SoundPath:
            return tr("sound path");
        case ReflectorColumn::Gain:
            return tr("gain");
        case ReflectorColumn::Screen:
            return tr("screen");
        case ReflectorColumn::Along:
            return tr("along");
        case ReflectorColumn::Across:
            return tr("across");
        case ReflectorColumn::Depth:
            return tr("depth");
        case ReflectorColumn::Fbh:
            return tr("FBH");
        case ReflectorColumn::Length:
            return tr("length");
        case ReflectorColumn::Width:
            return tr("width");
        case ReflectorColumn::ThroughWall:
            return tr("through-wall");
        case ReflectorColumn::Kind:
            return tr("kind");
        case ReflectorColumn::Relevance:
            return tr("relevance");
        case ReflectorColumn::Reason:
            return tr("reason");
        case ReflectorColumn::Setting:
            return tr("setting");
        case ReflectorColumn::Drop:
            return tr("drop");
        case ReflectorColumn::Angle:
            return tr("angle");
        case ReflectorColumn::Area:
            return tr("area");
        case ReflectorColumn::OverReference:
            return tr("over reference");
        case ReflectorColumn::BackWallLoss:
            return tr("back-wall loss");
        case ReflectorColumn::LossExplained:
            return tr("loss explained by");
        case ReflectorColumn::Wall:
            return tr("wall here");
        case ReflectorColumn::NotMeasurable:
            return tr("not measurable");
        case ReflectorColumn::AfterCheck:
            break;
    }
    return tr("after check");
}

QString Columns<TypedReflector>::unit(int column) {
    switch (static_cast<ReflectorColumn>(column)) {
        case ReflectorColumn::Heading:
        case ReflectorColumn::Angle:
            return tr("°");
        case ReflectorColumn::Gain:
        case ReflectorColumn::Drop:
        case ReflectorColumn::OverReference:
        case ReflectorColumn::BackWallLoss:
            return tr("dB");
        case ReflectorColumn::Screen:
            return tr("%");
        case ReflectorColumn::Area:
            return tr("mm²");
        default:
            return {};
    }
}

QString Columns<TypedReflector>::help(int column) {
    switch (static_cast<ReflectorColumn>(column)) {
        case ReflectorColumn::X:
        case ReflectorColumn::Y:
            return tr(
                "Of the indication, from the zone's datum along its axes. With a heading: of "
                "the probe's front where the echo is highest.");
        case ReflectorColumn::Heading:
            return tr(
                "Direction in which an angle probe looks, counter-clockwise from the x axis. "
                "Empty: x and y are the indication's own.");
        case ReflectorColumn::SoundPath:
            return tr(
                "As the instrument shows it: one way, from the index point to the reflector.");
        case ReflectorColumn::Gain:
            return tr("The instrument's gain when the echo had the screen height beside it.");
        case ReflectorColumn::Screen:
            return tr("Height of the echo in percent of the screen's height.");
        case ReflectorColumn::Along:
            return tr(
                "How far the probe moved along the indication's length until the echo had "
                "dropped on both sides.");
        case ReflectorColumn::Across:
            return tr("The same across its length.");
        case ReflectorColumn::Drop:
            return tr(
                "6 or 20 dB: by how much the echo had dropped where the movement was stopped.");
        case ReflectorColumn::Depth:
            return tr("Below the scanned surface. Empty: from the reading.");
        case ReflectorColumn::Fbh:
            return tr("Diameter of the equivalent flat-bottomed hole. Empty: from the reading.");
        case ReflectorColumn::Length:
        case ReflectorColumn::Width:
            return tr("Empty: from the probe's movement; without that, not measured.");
        case ReflectorColumn::ThroughWall:
            return tr("Extent through the wall, from its two edges. Empty: not measured.");
        case ReflectorColumn::Kind:
            return tr("Volumetric, planar or dross.");
        case ReflectorColumn::Relevance:
            return tr("Empty: relevant. Non-relevant or false need a reason.");
        case ReflectorColumn::Setting:
            return tr("Name of the setting with which the reading was taken.");
        case ReflectorColumn::Angle:
            return tr("Of the length, counter-clockwise from the x axis; empty: 0.");
        case ReflectorColumn::Area:
            return tr("Measured area; empty: computed from length and width.");
        case ReflectorColumn::OverReference:
            return tr("Echo above the reference line, below it negative.");
        case ReflectorColumn::BackWallLoss:
            return tr(
                "How much lower the back-wall echo is here than at a sound place of the same "
                "wall.");
        case ReflectorColumn::LossExplained:
            return tr(
                "What else lowers the back-wall echo, such as the shape of the part. Empty: "
                "nothing does.");
        case ReflectorColumn::Wall:
            return tr("Wall thickness at this place. Empty: the zone's.");
        case ReflectorColumn::NotMeasurable:
            return tr(
                "Of length, width, through_wall those that moved the probe by no more than "
                "the beam's width; a space between them.");
        case ReflectorColumn::AfterCheck:
            return tr(
                "Number of the setting check before it: where that setting has drifted, the "
                "indication is evaluated again.");
        default:
            return {};
    }
}

Words Columns<TypedReflector>::words(int column) {
    Words words;
    if (column == at(ReflectorColumn::Kind)) {
        for (const auto kind : {model::Kind::Volumetric, model::Kind::Planar, model::Kind::Dross}) {
            words.emplace_back(std::string(model::word(kind)), kindText(kind));
        }
    } else if (column == at(ReflectorColumn::Relevance)) {
        return Columns<model::TypedIndication>::words(at(Column::Relevance));
    }
    return words;
}

}  // namespace app
