// SPDX-License-Identifier: Apache-2.0
#include "certificate/zone_figure.h"

#include <algorithm>
#include <gtest/gtest.h>

#include "certificate/printed_scale.h"
#include "sample/sample_casting.h"

namespace {

using reports::Figure;
using reports::FigureCapsule;

reports::ZoneFigures figuresOfFirst(const sample::Sample& sample) {
    const auto all = reports::examinedOf(sample.input());
    EXPECT_TRUE(all.ok());
    return all.ok() ? reports::figuresOf((*all)[0], *all) : reports::ZoneFigures();
}

const FigureCapsule* find(const Figure& figure, const std::string& label) {
    const auto found = std::ranges::find(figure.capsules, label, &FigureCapsule::label);
    return found == figure.capsules.end() ? nullptr : &*found;
}

TEST(ZoneFigure, ShowsEveryIndicationWithItsRole) {
    const auto drawn = figuresOfFirst(sample::mixedCasting());
    ASSERT_FALSE(drawn.figures.empty());
    const Figure& figure = drawn.figures.front();
    ASSERT_NE(find(figure, "1"), nullptr);
    EXPECT_EQ(find(figure, "1")->role, FigureCapsule::Role::Failing);  // by way of group A1
    EXPECT_EQ(find(figure, "2")->role, FigureCapsule::Role::Failing);
    EXPECT_EQ(find(figure, "3")->role, FigureCapsule::Role::Counted);
    EXPECT_EQ(find(figure, "(4)")->role, FigureCapsule::Role::NotCounted);
    EXPECT_EQ(find(figure, "(5)")->role, FigureCapsule::Role::NotCounted);
    EXPECT_EQ(find(figure, "6")->width, 0);
    EXPECT_DOUBLE_EQ(find(figure, "2")->x, 539.75);  // 21.25 in
    EXPECT_DOUBLE_EQ(find(figure, "1")->angleDegrees, 30);
}

TEST(ZoneFigure, DrawsAFramesNeighbourInItsOwnCoordinates) {
    const auto drawn = figuresOfFirst(sample::mixedCasting());
    const FigureCapsule* neighbour = find(drawn.figures.front(), "Z2/7");
    ASSERT_NE(neighbour, nullptr);
    // Z2's datum lies at x = 600 of the surface, Z1's at 0: 600 + 15.
    EXPECT_NEAR(neighbour->x, 615, 1e-9);
    EXPECT_NEAR(neighbour->y, 118, 1e-9);
    EXPECT_EQ(neighbour->role, FigureCapsule::Role::Neighbour);
}

TEST(ZoneFigure, TurnsANeighbourOfATurnedZone) {
    sample::Sample sample = sample::mixedCasting();
    // Z2 turned by 90 degrees: its x runs along the surface's y.
    auto& place = sample.file.examinations[1].header.surface;
    place->placement = {model::millimetres(650), model::millimetres(100), model::degrees(90)};
    const auto drawn = figuresOfFirst(sample);
    const FigureCapsule* neighbour = find(drawn.figures.front(), "Z2/7");
    ASSERT_NE(neighbour, nullptr);
    EXPECT_NEAR(neighbour->x, 650 - 118, 1e-9);
    EXPECT_NEAR(neighbour->y, 100 + 15, 1e-9);
    EXPECT_NEAR(neighbour->angleDegrees, 90, 1e-9);
}

TEST(ZoneFigure, DrawsWhatAFrameCountsAcrossTheSeamOfARoundSurfaceBesideTheFrame) {
    sample::Sample sample = sample::soundCasting();
    auto& draft = sample.file.examinations[0];
    draft.header.noIndications = false;
    draft.header.surface = model::SurfacePlace{
        "S9", {}, model::millimetres(900), model::millimetres(200), model::millimetres(900)};
    draft.rows = {sample::typed("1", "5", "50", "8", "1"),
                  sample::typed("2", "890", "50", "8", "1")};
    auto& verdict = sample.verdict.examinations[0];
    verdict.indications = {{"1", model::IndicationClass::Linear, true, ""},
                           {"2", model::IndicationClass::Linear, true, ""}};
    model::Check check;
    check.rule = model::RuleKind::CumulativeLength;
    check.measured = 16'000'000;
    check.limit = model::Rational(18'000'000);
    check.passes = true;
    check.members = {"1", "2"};
    check.frame =
        model::CheckFrame{{model::millimetres(105), model::millimetres(148), false}, 0, 60, 0};
    verdict.checks = {check};

    const auto drawn = figuresOfFirst(sample);
    ASSERT_FALSE(drawn.figures.empty());
    const auto again = std::ranges::find(drawn.figures.front().capsules,
                                         FigureCapsule::Role::Neighbour, &FigureCapsule::role);
    ASSERT_NE(again, drawn.figures.front().capsules.end());
    EXPECT_EQ(again->label, "2");
    EXPECT_NEAR(again->x, -10, 1e-9);  // 890 - 900
}

TEST(ZoneFigure, DrawsTheFailingFrameAndNamesItInTheCheck) {
    const auto drawn = figuresOfFirst(sample::mixedCasting());
    ASSERT_EQ(drawn.figures.front().frames.size(), 1U);
    const auto& frame = drawn.figures.front().frames[0];
    EXPECT_EQ(frame.x, 560.25);
    EXPECT_EQ(frame.y, 110.4);
    EXPECT_EQ(frame.angleDegrees, 12);
    EXPECT_EQ(frame.width, 105);
    EXPECT_EQ(frame.height, 148);
    EXPECT_TRUE(frame.failing);
    EXPECT_EQ(drawn.frameOfCheck, (std::map<std::size_t, std::string>{{1, "F1"}}));
}

TEST(ZoneFigure, HoldsEverythingInItsWindowWhichFitsOnPaper) {
    for (const Figure& figure : figuresOfFirst(sample::mixedCasting()).figures) {
        EXPECT_LE((figure.right - figure.left) * figure.scale, reports::kFigureWidthMm);
        EXPECT_LE((figure.top - figure.bottom) * figure.scale, reports::kFigureHeightMm);
    }
    const Figure zone = figuresOfFirst(sample::mixedCasting()).figures.front();
    EXPECT_LT(zone.left, 0);
    EXPECT_GT(zone.right, 615 + 4);  // the neighbour's end
    EXPECT_EQ(zone.zoneWidth, 600);
    EXPECT_EQ(zone.zoneHeight, 400);
}

TEST(ZoneFigure, GroupsPointAtTheirMembers) {
    const Figure figure = figuresOfFirst(sample::mixedCasting()).figures.front();
    ASSERT_EQ(figure.groups.size(), 1U);
    ASSERT_EQ(figure.groups[0].members.size(), 2U);
    EXPECT_EQ(figure.capsules[figure.groups[0].members[0]].label, "1");
    EXPECT_EQ(figure.capsules[figure.groups[0].members[1]].label, "6");
}

TEST(ZoneFigure, IsNotDrawnWhereNothingIsListed) {
    EXPECT_TRUE(figuresOfFirst(sample::soundCasting()).figures.empty());
}

TEST(PrintedScale, IsTheGreatestUsualOneThatFits) {
    const auto factor = [](double width, double height) {
        return reports::printedScale(width, height).factor;
    };
    EXPECT_EQ(factor(10, 10), 2);
    EXPECT_EQ(factor(reports::kFigureWidthMm, 10), 1);
    EXPECT_EQ(factor(reports::kFigureWidthMm * 2, 10), 0.5);
    EXPECT_EQ(factor(reports::kFigureWidthMm * 2.01, 10), 0.4);
    EXPECT_EQ(factor(10, reports::kFigureHeightMm * 4), 0.2);
    EXPECT_EQ(factor(reports::kFigureWidthMm * 9, 10), 0.1);
    EXPECT_EQ(factor(1'000'000, 10), 1.0 / 10'000);
    EXPECT_EQ(reports::printedScale(10, reports::kFigureHeightMm * 2.2).text,
              "Scale 1 : 2.5, printed at 100 %");
}

}  // namespace
