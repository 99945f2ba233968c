// SPDX-License-Identifier: Apache-2.0
// What a certificate says of an ultrasonic examination. That probe, reference, sensitivity,
// transfer and testability, and of each indication depth, equivalent reflector, extent, back-wall
// loss, class and kind have to be there: the record lists of ISO 4992-1 and ASTM A609 (M).
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "certificate/certificate.h"
#include "sample/sample_casting.h"

namespace {

using reports::asText;
using reports::certificateOf;
using testing::HasSubstr;

class UltrasonicSection : public testing::Test {
protected:
    void SetUp() override {
        const auto document = certificateOf(sample_.input());
        ASSERT_TRUE(document.ok()) << document.error().message();
        text_ = asText(*document);
        // No-break spaces hold lines together; a reader sees spaces.
        for (std::size_t at = 0; (at = text_.find("\u00a0", at)) != std::string::npos;)
            text_.replace(at, 2, " ");
    }

    sample::Sample sample_ = sample::ultrasonicCasting();
    std::string text_;
};

TEST_F(UltrasonicSection, StatesSensitivityAndTestability) {
    for (const char* fact :
         {"Examined area: 60000 mm²", "Dead zone: 7 mm",
          "Smallest flat-bottomed hole that shows: 4 mm", "Its signal to noise: 9 dB",
          "Scanned: from the upper face; from the lower face"})
        EXPECT_THAT(text_, HasSubstr(fact));
}

TEST_F(UltrasonicSection, StatesProbeReferenceAndTransferOfEachSetting) {
    for (const char* fact :
         {"Setting S1", "Probe: no. 4711", "Beam: straight, 4 MHz",
          "Element: round, diameter 10 mm",
          "Sound in the casting: 5920 m/s, attenuation 6 dB/m one way",
          "Wall and scanned surface: 120 mm, flat",
          "Reference: flat-bottomed hole of block B-12, diameter 3 mm, sound in the block 5930 m/s",
          "Sensitivity: 40 dB for 60 % of the screen at 80 mm of sound path",
          "Transfer correction: 2.5 dB"})
        EXPECT_THAT(text_, HasSubstr(fact));
}

// A bare number says nothing, nor does the key of every class.
TEST_F(UltrasonicSection, CallsALevelALevel) {
    EXPECT_THAT(text_, HasSubstr("level 3"));
    EXPECT_THAT(text_, Not(HasSubstr("all 3")));
}

// The sample's order forbids cracks and hot tears.
TEST_F(UltrasonicSection, SaysThatAnEchoDoesNotTellACrack) {
    EXPECT_THAT(text_,
                HasSubstr("Forbidden kinds: crack, hot tear; an echo does not tell them: any "
                          "planar indication"));
}

TEST_F(UltrasonicSection, StatesWhatIsNotRecorded) {
    sample_.file.examinations.back().header.ultrasonic = {};
    SetUp();
    for (const char* fact : {"Examined area: not recorded", "Dead zone: not recorded",
                             "Smallest flat-bottomed hole that shows: not recorded",
                             "Its signal to noise: not recorded", "Scanned: not recorded"})
        EXPECT_THAT(text_, HasSubstr(fact));
}

TEST_F(UltrasonicSection, ListsEachIndicationWithDepthSizeAndExtent) {
    // Typed: as typed. Of the first, the depth of a straight beam is its path, and a movement of 3
    // is within the beam, whose width at 90 mm is above 13 (2 z tan(asin(0.51 x 1.48 / 10))).
    EXPECT_THAT(text_,
                HasSubstr("2 | 140 | 60 | 17 | 3.4 | 22.5\nat 30° | 8 | 5 | – | 1.5 | – | planar"));
    EXPECT_THAT(text_, HasSubstr("1 | 40 | 50 | 90 | "));
    EXPECT_THAT(text_, HasSubstr(" | 31 | in beam | – | – | – | 4.5 | core, volumetric"));
    EXPECT_THAT(text_, HasSubstr("back-wall loss explained by a boss below"));
}

TEST_F(UltrasonicSection, ShowsWhatWasNotMeasuredAsADashNeverAsZero) {
    EXPECT_THAT(text_,
                HasSubstr("3 | 200 | 150 | – | – | – | – | – | – | – | – | not known, not stated"));
    EXPECT_THAT(text_, HasSubstr("wall here 95 mm"));
}

TEST_F(UltrasonicSection, ShowsTheReadingBehindASize) {
    EXPECT_THAT(text_, HasSubstr("1 | S1 | 90 mm | 38 | 80 | "));
    EXPECT_THAT(text_, HasSubstr("6 dB drop: 31 mm along, 3 mm across"));
    EXPECT_THAT(text_, HasSubstr("(distance-gain-size)"));
    EXPECT_THAT(text_, HasSubstr("(far field)"));
    EXPECT_THAT(text_, HasSubstr("Limits of the sizing"));
}

TEST_F(UltrasonicSection, DrawsTheIndicationsInPlan) {
    const auto document = certificateOf(sample_.input());
    ASSERT_TRUE(document.ok());
    std::size_t drawn = 0;
    for (const reports::Block& block : document->blocks)
        if (const auto* figure = std::get_if<reports::Figure>(&block))
            drawn += figure->capsules.size();
    EXPECT_EQ(drawn, 3U);
}

}  // namespace
