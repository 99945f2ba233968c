// SPDX-License-Identifier: Apache-2.0
#include "conditions/running_out.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "valid_test.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::vector<std::string> linesOf(const std::vector<RunsOut>& all) {
    std::vector<std::string> lines;
    lines.reserve(all.size());
    for (const RunsOut& each : all)
        lines.push_back(each.lastDay + " " + each.what + " " + each.who +
                        (each.isOver ? " over" : ""));
    return lines;
}

std::vector<std::string> lines(const Holdings& holdings, int days = 60) {
    return linesOf(runningOut(holdings, "2026-11-25", days));
}

TEST(RunningOut, ListsWhatEndsWithinTheDaysTheEarliestFirst) {
    Holdings holdings;
    const auto item = [](const char* id, const char* due) {
        Equipment each;
        each.id = id;
        each.kind = "light meter";
        each.state = "in use";
        each.calibrationDue = due;
        return each;
    };
    // 60 days after 2026-11-25 is 2027-01-24.
    holdings.equipment = {item("E-1", "2027-01-25"), item("E-2", "2027-01-24"),
                          item("E-3", "2026-11-25"), item("E-4", "2026-11-24"), item("E-5", "")};
    EXPECT_THAT(lines(holdings),
                ElementsAre("2026-11-24 calibration E-4 over", "2026-11-25 calibration E-3",
                            "2027-01-24 calibration E-2"));
    EXPECT_THAT(lines(holdings, 0),
                ElementsAre("2026-11-24 calibration E-4 over", "2026-11-25 calibration E-3"));
    holdings.equipment[3].state = "withdrawn";
    EXPECT_THAT(lines(holdings, 0), ElementsAre("2026-11-25 calibration E-3"));
    const auto found = runningOut(holdings, "2026-11-25", 0);
    EXPECT_EQ(found.at(0).registers, Equipment::kRegister);
    EXPECT_EQ(found.at(0).key, "E-3");
}

TEST(RunningOut, NeedsADate) {
    Holdings holdings = magneticTest().file.used;
    EXPECT_THAT(runningOut(holdings, "today", 9999), IsEmpty());
    EXPECT_THAT(runningOut(holdings, "2026-11-25", 9999), testing::Not(IsEmpty()));
}

TEST(RunningOut, TakesTheLastCheckOfAThing) {
    Holdings holdings;
    const auto check = [](const char* at, const char* due) {
        return EquipmentCheck{"Y-1", "yoke pull", at, "", "", "", "", "", "passed", due, ""};
    };
    holdings.checks = {check("2026-11-01T06:00:00Z", "2027-05-01"),
                       check("2026-05-01T06:00:00Z", "2026-11-01")};
    EXPECT_THAT(lines(holdings), IsEmpty());
    holdings.checks[0].nextDue = "2026-12-01";
    EXPECT_THAT(lines(holdings), ElementsAre("2026-12-01 yoke pull Y-1"));
    Equipment yoke;
    yoke.id = "Y-1";
    yoke.state = "withdrawn";
    holdings.equipment = {yoke};
    EXPECT_THAT(lines(holdings), IsEmpty());
}

TEST(RunningOut, ListsBatchesInUse) {
    Holdings holdings;
    Consumable batch;
    batch.id = "PE-1";
    batch.kind = "penetrant";
    batch.expiresOn = "2026-12-31";
    batch.state = "in use";
    holdings.consumables = {batch};
    EXPECT_THAT(lines(holdings), ElementsAre("2026-12-31 penetrant PE-1"));
    holdings.consumables[0].state = "used up";
    EXPECT_THAT(lines(holdings), IsEmpty());
}

TEST(RunningOut, TakesAPersonsLastCertificateOfAMethod) {
    Holdings holdings;
    const auto held = [](const char* certificate, const char* method, const char* until) {
        Qualification each;
        each.person = "Q-2";
        each.method = method;
        each.certificate = certificate;
        each.scheme = "ISO 9712:2021";
        each.expiresOn = until;
        each.state = "valid";
        return each;
    };
    holdings.qualifications = {held("C-1", "MT", "2026-12-01"), held("C-2", "MT", "2031-12-01"),
                               held("C-3", "UT", "2026-12-02")};
    EXPECT_THAT(lines(holdings), ElementsAre("2026-12-02 certificate UT Q-2"));
    holdings.qualifications[1].state = "withdrawn";
    EXPECT_THAT(lines(holdings),
                ElementsAre("2026-12-01 certificate MT Q-2", "2026-12-02 certificate UT Q-2"));
}

// ISO 9712:2012 7.4 and the form of 2021: near vision 12 months, colour 60 months.
TEST(RunningOut, CountsEyeTestsFromTheLastOne) {
    Holdings holdings;
    holdings.eyeTests = {{"Q-2", "near vision", "2025-12-01", "", "", "passed", ""},
                         {"Q-2", "colour perception", "2021-12-02", "", "", "passed", ""},
                         {"Q-3", "near vision", "2024-12-01", "", "", "passed", ""},
                         {"Q-3", "near vision", "2026-10-01", "", "", "passed", ""}};
    EXPECT_THAT(lines(holdings),
                ElementsAre("2026-12-01 near vision Q-2", "2026-12-02 colour perception Q-2"));
    holdings.eyeTests[3].result = "failed";
    EXPECT_THAT(lines(holdings),
                ElementsAre("2026-09-30 near vision (not passed) Q-3 over",
                            "2026-12-01 near vision Q-2", "2026-12-02 colour perception Q-2"));
}

TEST(RunningOut, ListsPermissionsAndProceduresWithAnEnd) {
    Holdings holdings;
    Authorisation given;
    given.person = "Q-2";
    given.method = "MT";
    given.grantedOn = "2024-01-01";
    given.until = "2026-12-31";
    given.state = "valid";
    holdings.authorisations = {given};
    Procedure procedure;
    procedure.number = "MT-1";
    procedure.revision = "A";
    procedure.kind = "procedure";
    procedure.state = "current";
    procedure.obsoleteFrom = "2027-01-01";
    holdings.procedures = {procedure};
    EXPECT_THAT(lines(holdings),
                ElementsAre("2026-12-31 authorisation MT Q-2", "2026-12-31 procedure MT-1 / A"));
    given.grantedOn = "2025-01-01";
    given.until.clear();
    holdings.authorisations.push_back(given);
    holdings.procedures[0].state = "obsolete";
    EXPECT_THAT(lines(holdings), IsEmpty());
}

}  // namespace
}  // namespace model
