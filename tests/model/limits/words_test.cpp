// SPDX-License-Identifier: Apache-2.0
#include "limits/words.h"

#include <gtest/gtest.h>
#include <set>
#include <string>

#include "limits/limit_table.h"

namespace model {
namespace {

/// Every value from `first` to `last` has a word of its own that leads back to it.
template <class T>
void expectRoundTrip(T first, T last, std::optional<T> (*from)(std::string_view)) {
    std::set<std::string> seen;
    for (int i = static_cast<int>(first); i <= static_cast<int>(last); ++i) {
        const auto value = static_cast<T>(i);
        const std::string text(word(value));
        EXPECT_FALSE(text.empty()) << i;
        EXPECT_TRUE(seen.insert(text).second) << text;
        EXPECT_EQ(from(text), value) << text;
        EXPECT_EQ(from(text + " "), std::nullopt);
    }
    EXPECT_EQ(from(""), std::nullopt);
    EXPECT_EQ(from("no such word"), std::nullopt);
}

TEST(Words, EveryValueHasAWordThatLeadsBackToIt) {
    expectRoundTrip(Method::Magnetic, Method::Ultrasonic, methodFrom);
    expectRoundTrip(Material::CastSteel, Material::GreyIron, materialFrom);
    expectRoundTrip(Grade::Read, Grade::Memory, gradeFrom);
    expectRoundTrip(Kind::Crack, Kind::Dross, kindFrom);
    expectRoundTrip(IndicationClass::NonLinear, IndicationClass::Dross, classFrom);
    expectRoundTrip(RuleKind::IndividualLength, RuleKind::Testability, ruleFrom);
    expectRoundTrip(ReflectorMeasure::Fbh, ReflectorMeasure::BackWallLoss, reflectorMeasureFrom);
    expectRoundTrip(TestabilityMeasure::SmallestFbh, TestabilityMeasure::SignalToNoise,
                    testabilityMeasureFrom);
    expectRoundTrip(Comparison::Less, Comparison::More, comparisonFrom);
}

// The words that other programs read and write; they are fixed with the file formats.
TEST(Words, AreThoseOfTheFileFormats) {
    EXPECT_EQ(word(Method::Penetrant), "PT");
    EXPECT_EQ(word(Material::SpheroidalGraphiteIron), "spheroidal graphite iron");
    EXPECT_EQ(word(Grade::ReadTwice), "R2");
    EXPECT_EQ(word(Kind::HotTear), "hot tear");
    EXPECT_EQ(word(Kind::ColdShut), "cold shut");
    EXPECT_EQ(word(IndicationClass::NonLinear), "non-linear");
    EXPECT_EQ(word(RuleKind::CountAtMaximum), "count at the maximum");
    EXPECT_EQ(word(RuleKind::LineOfIndications), "line of indications");
    EXPECT_EQ(word(RuleKind::ThroughWallExtent), "through-wall extent");
    EXPECT_EQ(word(RuleKind::BackWallLoss), "back-wall loss");
    EXPECT_EQ(word(Comparison::AtLeast), ">=");
}

TEST(Comparison, DecidesAtEqualityAsItSays) {
    EXPECT_FALSE(holds(3, Comparison::Less, 3));
    EXPECT_TRUE(holds(3, Comparison::AtMost, 3));
    EXPECT_TRUE(holds(3, Comparison::AtLeast, 3));
    EXPECT_FALSE(holds(3, Comparison::More, 3));
    EXPECT_TRUE(holds(Rational(1, 3), Comparison::Less, Rational(1, 2)));
    EXPECT_TRUE(holds(Rational(2, 6), Comparison::AtMost, Rational(1, 3)));
    EXPECT_TRUE(holds(Rational(1, 2), Comparison::More, Rational(1, 3)));
    EXPECT_TRUE(holds(Rational(-1, 3), Comparison::AtLeast, Rational(-1, 2)));
}

TEST(Band, TakesItsEndsAsTheyCompare) {
    const Band band{millimetres(13), Comparison::More, millimetres(25), Comparison::AtMost};
    EXPECT_FALSE(band.contains(millimetres(13)));
    EXPECT_TRUE(band.contains(nanometres(13'000'001)));
    EXPECT_TRUE(band.contains(millimetres(25)));
    EXPECT_FALSE(band.contains(nanometres(25'000'001)));
    const Band other{millimetres(13), Comparison::AtLeast, millimetres(25), Comparison::Less};
    EXPECT_TRUE(other.contains(millimetres(13)));
    EXPECT_FALSE(other.contains(millimetres(25)));
    EXPECT_TRUE(Band{}.contains(nanometres(1)));
    EXPECT_TRUE(Band{}.contains(millimetres(1'000'000)));
}

TEST(LevelNumber, IsTheLastWordOfTheLevel) {
    EXPECT_EQ(levelNumber("LM 4"), "4");
    EXPECT_EQ(levelNumber("AM 4"), "4");
    EXPECT_EQ(levelNumber("SM 01"), "01");
    EXPECT_EQ(levelNumber("SM 001"), "001");
    EXPECT_EQ(levelNumber("App. II"), "II");
    EXPECT_EQ(levelNumber("MT1"), "MT1");
    EXPECT_EQ(levelNumber(""), "");
}

TEST(LimitTable, FindsTheKeyThatOrdersAClass) {
    LimitTable table;
    table.keys = {{"linear", {"LM 1"}, {IndicationClass::Linear}},
                  {"aligned", {"AM 1"}, {IndicationClass::Aligned}}};
    ASSERT_NE(table.key("aligned"), nullptr);
    EXPECT_EQ(table.key("aligned")->levels.front(), "AM 1");
    EXPECT_EQ(table.key("rim"), nullptr);
    ASSERT_NE(table.keyOf(IndicationClass::Linear), nullptr);
    EXPECT_EQ(table.keyOf(IndicationClass::Linear)->name, "linear");
    EXPECT_EQ(table.keyOf(IndicationClass::NonLinear), nullptr);
}

}  // namespace
}  // namespace model
