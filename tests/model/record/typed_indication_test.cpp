// SPDX-License-Identifier: Apache-2.0
#include "record/typed_indication.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace model {
namespace {

using testing::ElementsAre;

TypedIndication goodRow() {
    TypedIndication row;
    row.id = "1";
    row.x = "10";
    row.y = "22.5";
    row.length = "3";
    row.width = "0.5";
    return row;
}

std::vector<std::string> wrongFields(const TypedIndication& row) {
    const ReadIndication result = read(row);
    EXPECT_EQ(result.value.has_value(), result.errors.empty());
    std::vector<std::string> fields;
    for (const FieldError& wrong : result.errors) {
        EXPECT_EQ(wrong.error.kind, ErrorKind::Input);
        EXPECT_FALSE(wrong.error.reason.empty());
        fields.push_back(wrong.field);
    }
    return fields;
}

TEST(TypedIndication, IsReadExactly) {
    TypedIndication row = goodRow();
    row.x = "-10,25";
    row.angle = "30.5";
    row.area = "1,2";
    row.kind = "hot tear";
    row.stated = "linear";
    row.removed = "6";
    row.relevance = "false";
    row.reason = "tool mark";
    const auto result = read(row);
    ASSERT_TRUE(result.value);
    EXPECT_EQ(result.value->id, "1");
    EXPECT_EQ(result.value->x, nanometres(-10'250'000));
    EXPECT_EQ(result.value->y, nanometres(22'500'000));
    EXPECT_EQ(result.value->length, millimetres(3));
    EXPECT_EQ(result.value->width, nanometres(500'000));
    EXPECT_EQ(result.value->angle, Angle::fromMillionths(30'500'000));
    EXPECT_EQ(result.value->area, Area::fromMillionths(1'200'000));
    EXPECT_EQ(result.value->kind, Kind::HotTear);
    EXPECT_EQ(result.value->stated, StatedClass::Linear);
    EXPECT_EQ(result.value->removed, millimetres(6));
    EXPECT_EQ(result.value->relevance, Relevance::False);
    EXPECT_EQ(result.value->reason, "tool mark");
}

TEST(TypedIndication, TakesEmptyAsNotMeasuredExceptAngleAndRelevance) {
    const auto result = read(goodRow());
    ASSERT_TRUE(result.value);
    EXPECT_EQ(result.value->angle, Angle());
    EXPECT_EQ(result.value->relevance, Relevance::Relevant);
    EXPECT_FALSE(result.value->area);
    EXPECT_FALSE(result.value->kind);
    EXPECT_FALSE(result.value->stated);
    EXPECT_FALSE(result.value->removed);
}

// Source: 1 in = 25.4 mm exactly (international yard and pound agreement, 1959): 1 3/8 in =
// 34.925 mm, 1/64 in = 0.396875 mm, 0.0625 in = 1.5875 mm.
TEST(TypedIndicationOracle, ConvertsInchEntriesExactly) {
    TypedIndication row = goodRow();
    row.unit = LengthUnit::Inch;
    row.x = "1 3/8";
    row.y = "0.0625";
    row.length = "5/64";
    row.width = "1/64";
    row.removed = ".0625";
    row.area = "2.5";  // an area is mm2 in either unit
    const auto result = read(row);
    ASSERT_TRUE(result.value);
    EXPECT_EQ(result.value->x, nanometres(34'925'000));
    EXPECT_EQ(result.value->y, nanometres(1'587'500));
    EXPECT_EQ(result.value->length, nanometres(1'984'375));
    EXPECT_EQ(result.value->width, nanometres(396'875));
    EXPECT_EQ(result.value->removed, nanometres(1'587'500));
    EXPECT_EQ(result.value->area, Area::fromMillionths(2'500'000));
}

TEST(TypedIndication, NamesEveryWrongFieldAtOnce) {
    TypedIndication row;
    row.angle = "east";
    row.area = "0";
    row.kind = "dent";
    row.stated = "round";
    row.relevance = "maybe";
    row.removed = "-1";
    EXPECT_THAT(wrongFields(row),
                ElementsAre("id", "x_mm", "y_mm", "angle_deg", "length_mm", "width_mm",
                            "removed_mm", "area_mm2", "kind", "class", "relevance"));
}

TEST(TypedIndication, RefusesSizesThatAreNone) {
    for (const char* text : {"0", "0.0", "-3", "1/2", "1e3", "three", "1.2.3", "0.0000001"}) {
        TypedIndication row = goodRow();
        row.length = text;
        EXPECT_THAT(wrongFields(row), ElementsAre("length_mm")) << text;
        row = goodRow();
        row.width = text;
        EXPECT_THAT(wrongFields(row), ElementsAre("width_mm")) << text;
        row = goodRow();
        row.removed = text;
        EXPECT_THAT(wrongFields(row), ElementsAre("removed_mm")) << text;
        row = goodRow();
        row.area = text;
        EXPECT_THAT(wrongFields(row), ElementsAre("area_mm2")) << text;
    }
}

TEST(TypedIndication, RefusesTheKindsOfUltrasonicIndications) {
    for (const char* kind : {"volumetric", "planar", "dross"}) {
        TypedIndication row = goodRow();
        row.kind = kind;
        EXPECT_THAT(wrongFields(row), ElementsAre("kind")) << kind;
    }
}

TEST(TypedIndication, RefusesAWidthAboveTheLength) {
    TypedIndication row = goodRow();
    row.width = "3.000001";
    EXPECT_THAT(wrongFields(row), ElementsAre("width_mm"));
    row.width = "3.0";
    EXPECT_TRUE(wrongFields(row).empty());
}

TEST(TypedIndication, TakesAHairlineWithoutWidthOnlyWhereItIsStatedLinear) {
    TypedIndication row = goodRow();
    row.width = " ";
    EXPECT_THAT(wrongFields(row), ElementsAre("width_mm"));
    row.stated = "non-linear";
    EXPECT_THAT(wrongFields(row), ElementsAre("width_mm"));
    row.stated = "linear";
    const auto result = read(row);
    ASSERT_TRUE(result.value);
    EXPECT_FALSE(result.value->width);
}

TEST(TypedIndication, NeedsAReasonForWhatIsNotRelevant) {
    TypedIndication row = goodRow();
    for (const char* relevance : {"non-relevant", "false"}) {
        row.relevance = relevance;
        row.reason = " ";
        EXPECT_THAT(wrongFields(row), ElementsAre("reason")) << relevance;
        row.reason = "wipe mark";
        EXPECT_TRUE(wrongFields(row).empty()) << relevance;
    }
    row.relevance = "relevant";
    row.reason = "";
    EXPECT_TRUE(wrongFields(row).empty());
}

TEST(TypedIndication, IsBlankOnlyWithoutAnyTextBesideTheId) {
    TypedIndication row;
    EXPECT_TRUE(isBlank(row));
    row.id = "7";
    row.x = " \t";
    row.unit = LengthUnit::Inch;
    EXPECT_TRUE(isBlank(row));
    for (auto field : {&TypedIndication::x, &TypedIndication::y, &TypedIndication::length,
                       &TypedIndication::width, &TypedIndication::removed, &TypedIndication::angle,
                       &TypedIndication::area, &TypedIndication::kind, &TypedIndication::stated,
                       &TypedIndication::relevance, &TypedIndication::reason}) {
        TypedIndication started;
        started.*field = "?";
        EXPECT_FALSE(isBlank(started));
        EXPECT_FALSE(read(started).value);
    }
}

TEST(ExactFields, StandEachForItself) {
    TypedIndication row;
    row.unit = LengthUnit::Inch;
    row.x = "1/64";
    row.y = "x";
    row.length = "0";
    row.angle = "45";
    row.area = "2,5";
    const ExactFields fields = exactFields(row);
    EXPECT_EQ(fields.x, nanometres(396'875));
    EXPECT_FALSE(fields.y);
    EXPECT_EQ(fields.length, Length());
    EXPECT_FALSE(fields.width);
    EXPECT_FALSE(fields.removed);
    EXPECT_EQ(fields.angle, degrees(45));
    EXPECT_EQ(fields.area, Area::fromMillionths(2'500'000));
}

}  // namespace
}  // namespace model
