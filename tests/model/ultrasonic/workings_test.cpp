// SPDX-License-Identifier: Apache-2.0
// Each working from what is typed to its result. Published values are those of textbooks and
// question banks, named at each; the others are worked out by hand.
#include "ultrasonic/workings.h"

#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <numbers>
#include <set>

namespace model {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using Numbers = std::map<std::string, double, std::less<>>;
using Words = std::map<std::string, std::string, std::less<>>;

constexpr double kPi = std::numbers::pi;

struct Asked {
    const char* working;
    WorkingEntry entry;

    [[nodiscard]] Result<WorkedOut> answer() const { return workOut(*findWorking(working), entry); }
    [[nodiscard]] WorkedOut good() const {
        const auto out = answer();
        EXPECT_TRUE(out.ok()) << (out.ok() ? "" : out.error().message());
        return out.ok() ? *out : WorkedOut();
    }
    [[nodiscard]] std::optional<double> operator[](std::string_view key) const {
        for (const auto& result : good().results)
            if (result.key == key) return result.value;
        ADD_FAILURE() << "no result " << key;
        return std::nullopt;
    }
    [[nodiscard]] Asked with(const std::string& key, double value) const {
        Asked changed = *this;
        changed.entry.numbers[key] = value;
        return changed;
    }
    [[nodiscard]] Asked without(std::string_view key) const {
        Asked changed = *this;
        changed.entry.numbers.erase(changed.entry.numbers.find(key));
        return changed;
    }
    void expectRefused(const std::string& place, const char* reason) const {
        const auto out = answer();
        ASSERT_FALSE(out.ok()) << place;
        EXPECT_EQ(out.error().kind, ErrorKind::Input);
        EXPECT_EQ(out.error().place, place);
        EXPECT_THAT(out.error().reason, HasSubstr(reason));
    }
};

// Triangle 3-4-5, cos b = 0.6, wall 30 mm.
Asked edges(double first, double second) {
    return {"height",
            {Numbers{{"angle_deg", std::acos(0.6) * 180 / kPi},
                     {"first_path_mm", first},
                     {"second_path_mm", second},
                     {"thickness_mm", 30}},
             Words{{"surface", "flat"}}}};
}

TEST(WorkingsOracle, HeightFromTwoEdges) {
    EXPECT_NEAR(*edges(20, 35)["height_mm"], 9, 1e-9);
    EXPECT_NEAR(*edges(20, 35)["first_depth_mm"], 12, 1e-9);
    EXPECT_NEAR(*edges(20, 35)["second_depth_mm"], 21, 1e-9);
    EXPECT_THAT(edges(20, 35).good().notes, IsEmpty());
    EXPECT_NEAR(*edges(35, 60)["height_mm"], 3, 1e-9);  // 21 mm deep, and 24 on the second leg
    EXPECT_EQ(*edges(35, 60)["second_leg"], 2);
    EXPECT_THAT(edges(35, 60).good().notes, Contains(HasSubstr("different legs")));
}

// R 100, bore 50, sin b = 0.6: 39 and 40 mm deep.
TEST(WorkingsOracle, HeightInACylinder) {
    const Asked cylinder{"height",
                         {Numbers{{"angle_deg", std::asin(0.6) * 180 / kPi},
                                  {"first_path_mm", 69},
                                  {"second_path_mm", 80},
                                  {"thickness_mm", 50},
                                  {"radius_mm", 100}},
                          Words{{"surface", "outer"}}}};
    EXPECT_NEAR(*cylinder["height_mm"], 1, 1e-9);
    cylinder.with("radius_mm", 50).expectRefused("radius_mm", "above the wall");
    cylinder.without("radius_mm").expectRefused("radius_mm", "is missing");
}

TEST(Workings, AHeightThatWasNotSeenIsNotZero) {
    EXPECT_FALSE(edges(20, 20)["height_mm"]);
    EXPECT_THAT(edges(20, 20).good().notes, Contains(HasSubstr("not measurable")));
    edges(20, 151).expectRefused("second_path_mm", "third leg");
    edges(151, 20).expectRefused("first_path_mm", "third leg");
    edges(20, 35).with("radius_mm", 80).expectRefused("radius_mm", "no meaning");
}

Asked backWalls() {
    return {"transfer",
            {Numbers{{"block_thickness_mm", 100},
                     {"block_gain_db", 30},
                     {"block_screen_percent", 80},
                     {"casting_thickness_mm", 150},
                     {"casting_gain_db", 40},
                     {"casting_screen_percent", 80}},
             {}}};
}

// 10 dB more gain, of which 20 lg 1.5 = 3.52 are the distance, and 1.5 dB the casting at 5 dB/m.
TEST(WorkingsOracle, Transfer) {
    EXPECT_NEAR(*backWalls()["transfer_db"], 6.48, 0.005);
    EXPECT_THAT(backWalls().good().notes, Contains(HasSubstr("far-field rule")));
    EXPECT_THAT(backWalls().good().notes, Contains(HasSubstr("attenuation is not known")));
    const Asked known =
        backWalls().with("casting_attenuation_db_per_m", 5).with("block_attenuation_db_per_m", 0);
    EXPECT_NEAR(*known["transfer_db"], 4.98, 0.005);
    // At equal thickness the plain difference: 4 dB of gain and 20 lg 2 of height.
    const Asked equal = known.with("casting_thickness_mm", 100)
                            .with("casting_attenuation_db_per_m", 0)
                            .with("casting_gain_db", 34)
                            .with("casting_screen_percent", 40);
    EXPECT_NEAR(*equal["transfer_db"], 10.02, 0.005);
    EXPECT_THAT(equal.good().notes, IsEmpty());
}

/// Echo of a flat back wall in closed form (Lommel), with the Bessel functions of the C++ library.
double backWallDb(double a) {
    const double k = kPi / a;
    const double j0 = std::cyl_bessel_j(0, k);
    const double j1 = std::cyl_bessel_j(1, k);
    const double real = 1 - (std::cos(k) * j0 + std::sin(k) * j1);
    const double imaginary = std::cos(k) * j1 - std::sin(k) * j0;
    return 20 * std::log10(std::hypot(real, imaginary));
}

// 24 mm, 2 MHz, 6000 m/s: lambda 3 mm, N = 576 / 12 = 48 mm.
TEST(WorkingsOracle, TransferByTheBackWallCurve) {
    const Asked curve = backWalls()
                            .with("diameter_mm", 24)
                            .with("frequency_mhz", 2)
                            .with("block_velocity_m_s", 6000)
                            .with("casting_velocity_m_s", 6000);
    EXPECT_NEAR(*curve["transfer_db"], 10 - (backWallDb(100.0 / 48) - backWallDb(150.0 / 48)),
                1e-6);
    EXPECT_THAT(curve.good().notes, Contains(HasSubstr("back-wall curve")));
    curve.with("block_thickness_mm", 33).expectRefused("block_thickness_mm", "near fields");
    EXPECT_NEAR(
        *curve.with("block_thickness_mm", 20).with("casting_thickness_mm", 20)["transfer_db"], 10,
        1e-9);
}

// 75 % of the height gone is 20 lg 4.
TEST(WorkingsOracle, BackWallLoss) {
    const Asked lost{"back-wall-loss",
                     {Numbers{{"sound_gain_db", 20},
                              {"sound_screen_percent", 80},
                              {"here_gain_db", 20},
                              {"here_screen_percent", 20}},
                      {}}};
    EXPECT_NEAR(*lost["back_wall_loss_db"], 12.04, 0.005);
    EXPECT_NEAR(*lost.with("here_gain_db", 26)["back_wall_loss_db"], 18.04, 0.005);
    EXPECT_THAT(lost.good().notes, IsEmpty());
    EXPECT_THAT(lost.with("here_gain_db", 2).good().notes, Contains(HasSubstr("another")));
    lost.with("here_screen_percent", 0).expectRefused("here_screen_percent", "above");
    lost.with("here_gain_db", 121).expectRefused("here_gain_db", "from");
}

// Published question bank: a 60 degree probe for steel (3240 m/s) on copper, 2260 m/s: 37 degrees.
TEST(WorkingsOracle, BeamAngleInAnotherMaterial) {
    const Asked probe{
        "beam-angle",
        {Numbers{{"marked_deg", 60}, {"marked_velocity_m_s", 3240}, {"velocity_m_s", 2260}}, {}}};
    EXPECT_NEAR(*probe["angle_deg"], 37, 0.3);
    probe.with("velocity_m_s", 3800).expectRefused("velocity_m_s", "past critical");
    probe.with("marked_deg", 90).expectRefused("marked_deg", "below");
}

// By hand: acrylic 2730 m/s on steel of 5920 and 3255 m/s.
TEST(WorkingsOracle, CriticalAngles) {
    const Asked wedge{"critical-angles",
                      {Numbers{{"wedge_velocity_m_s", 2730},
                               {"longitudinal_velocity_m_s", 5920},
                               {"transverse_velocity_m_s", 3255}},
                       {}}};
    EXPECT_NEAR(*wedge["first_critical_deg"], 27.5, 0.05);
    EXPECT_NEAR(*wedge["second_critical_deg"], 57.0, 0.05);
    const Asked copper = wedge.with("transverse_velocity_m_s", 2260);
    EXPECT_FALSE(copper["second_critical_deg"]);
    EXPECT_THAT(copper.good().notes, Contains(HasSubstr("no second critical angle")));
    wedge.with("transverse_velocity_m_s", 5920)
        .expectRefused("transverse_velocity_m_s", "always slower");
}

Asked element(const char* working) {
    return {working,
            {Numbers{{"diameter_mm", 10}, {"frequency_mhz", 2.5}, {"velocity_m_s", 5900}},
             Words{{"element", "round"}}}};
}

// Question bank: N of 10 mm, 2.5 MHz, 5900 m/s is 10.6 mm. Square of 20 mm, lambda 2: 68.5 mm.
// Behind a wedge, 10 x 12 mm, tan b = 2, 12 mm of 2730 m/s, steel 3250 m/s: 19.91 - 6.83 mm.
TEST(WorkingsOracle, NearField) {
    Asked straight = element("near-field");
    straight.entry.words["probe"] = "straight";
    EXPECT_NEAR(*straight["near_field_mm"], 10.6, 0.05);
    EXPECT_NEAR(*straight["last_maximum_mm"], 10.593 - 2.36 / 4, 0.001);
    EXPECT_NEAR(*straight["wavelength_mm"], 2.36, 1e-9);
    Asked square = straight.without("diameter_mm")
                       .with("width_mm", 20)
                       .with("length_mm", 20)
                       .with("velocity_m_s", 5000);
    square.entry.words["element"] = "rectangular";
    EXPECT_NEAR(*square["near_field_mm"], 68.5, 0.005);

    Asked angle = square.with("width_mm", 10)
                      .with("length_mm", 12)
                      .with("velocity_m_s", 3250)
                      .with("angle_deg", std::atan(2) * 180 / kPi)
                      .with("wedge_velocity_m_s", 2730)
                      .with("wedge_path_mm", 12);
    angle.expectRefused("angle_deg", "no meaning");
    angle.entry.words["probe"] = "angle";
    EXPECT_NEAR(*angle["near_field_in_part_mm"], 13.08, 0.02);
    EXPECT_NEAR(*angle["incident_deg"], 48.70, 0.005);
    EXPECT_EQ(*angle.with("wedge_path_mm", 60)["near_field_in_part_mm"], 0);
    EXPECT_THAT(angle.with("wedge_path_mm", 60).good().notes,
                Contains(HasSubstr("within the wedge")));
    angle.with("wedge_velocity_m_s", 4000).expectRefused("wedge_velocity_m_s", "no wave");
}

// Krautkraemer, Ultrasonic Testing of Materials, 4th edition, Table 4.2: k = 0.37, 0.51, 0.87 of
// the echo at 3, 6, 20 dB; 0.51, 0.70, 1.09 of the free field at 3, 6, 20 dB; null 1.22.
TEST(WorkingsOracle, SpreadOfTheBeam) {
    const Asked beam = element("spread").with("diameter_mm", 20);
    const auto k = [&](const char* key) { return std::sin(*beam[key] * kPi / 180) * 20 / 2.36; };
    EXPECT_NEAR(k("echo_3_db_deg"), 0.37, 0.01);
    EXPECT_NEAR(k("echo_6_db_deg"), 0.51, 0.01);
    EXPECT_NEAR(k("echo_20_db_deg"), 0.87, 0.01);
    EXPECT_NEAR(k("free_3_db_deg"), 0.51, 0.01);
    EXPECT_NEAR(k("free_6_db_deg"), 0.70, 0.01);
    EXPECT_NEAR(k("free_20_db_deg"), 1.09, 0.01);
    EXPECT_NEAR(*beam["null_deg"], 8.3, 0.05);  // question bank
    // N = 42.4 mm; at 200 mm the echo is 6 dB lower at 200 tan(arcsin(0.51 x 0.118)).
    const Asked far = beam.with("path_mm", 200);
    EXPECT_NEAR(*far["echo_6_db_width_mm"], 2 * 200 * std::tan(std::asin(0.51 * 0.118)), 0.3);
    EXPECT_FALSE(beam.with("path_mm", 42)["echo_6_db_width_mm"]);
    EXPECT_THAT(beam.with("path_mm", 42).good().notes, Contains(HasSubstr("near field")));
    EXPECT_FALSE(beam.with("diameter_mm", 2.4)["null_deg"]);

    Asked side = beam.without("diameter_mm").with("side_mm", 20).with("other_side_mm", 10);
    side.entry.words["element"] = "rectangular";
    // 0.44 is published for the echo at 6 dB of a rectangle's side; the null is at 1.
    EXPECT_NEAR(std::sin(*side["echo_6_db_deg"] * kPi / 180) * 20 / 2.36, 0.44, 0.005);
    EXPECT_NEAR(std::sin(*side["null_deg"] * kPi / 180) * 20 / 2.36, 1, 1e-9);
}

TEST(Workings, RefuseWhatIsNotAskedFor) {
    backWalls().with("block_gian_db", 1).expectRefused("block_gian_db", "asked for");
    backWalls().with("block_gain_db", std::nan("")).expectRefused("block_gain_db", "from");
    Asked word = element("spread");
    word.entry.words["element"] = "oval";
    word.expectRefused("element", "not a word");
    word.entry.words.clear();
    word.expectRefused("element", "is missing");
    EXPECT_EQ(findWorking("shear-wave"), nullptr);
}

TEST(Workings, SayWhatTheyAreAndWhereTheyComeFrom) {
    std::set<std::string_view> keys;
    for (const Working& working : workings()) {
        EXPECT_TRUE(keys.insert(working.key).second) << working.key;
        for (const auto text : {working.title, working.formula, working.source})
            EXPECT_FALSE(text.empty()) << working.key;
        EXPECT_FALSE(working.limits.empty()) << working.key;
        std::set<std::string_view> fields;
        for (const WorkingField& field : working.fields) {
            EXPECT_TRUE(fields.insert(field.key).second) << field.key;
            EXPECT_FALSE(field.label.empty() || field.help.empty()) << field.key;
            EXPECT_EQ(field.range == WorkingRange::Word, !field.words.empty()) << field.key;
            EXPECT_TRUE(field.when.empty() || fields.contains(field.when)) << field.key;
        }
    }
    EXPECT_EQ(keys.size(), 7U);
}

}  // namespace
}  // namespace model
