// SPDX-License-Identifier: Apache-2.0
// That the archive of the demonstration shows what EXPECTED.md says of tests that were not valid,
// of repairs and of concessions.
#include <QCoreApplication>
#include <QTemporaryDir>
#include <algorithm>
#include <gtest/gtest.h>

#include "archive/archive.h"
#include "archive/registers.h"
#include "archive/test_validity.h"
#include "conditions/running_out.h"
#include "conditions/validity.h"
#include "demo_db/demonstration.h"
#include "demo_db/staff.h"
#include "judge/judge.h"
#include "repair/outcome.h"
#include "repair/repair_case.h"

namespace {

using model::ConditionFinding;

class WholeRecord : public testing::Test {
protected:
    static void SetUpTestSuite() {
        int count = 0;
        application_ = new QCoreApplication(count, nullptr);
        folder_ = new QTemporaryDir;
        const std::string path = folder_->filePath("quillmere.db").toStdString();
        const auto written = demo::writeDemonstration(path);
        ASSERT_TRUE(written) << written.error().message();
        auto archive = model::Archive::open(path);
        ASSERT_TRUE(archive) << archive.error().message();
        archive_ = new model::Archive(std::move(*archive));
    }
    static void TearDownTestSuite() {
        delete archive_;
        delete folder_;
        delete application_;
    }

    static model::CastingFile file(const std::string& serial) {
        auto file = archive_->casting(serial);
        EXPECT_TRUE(file) << file.error().message();
        return std::move(*file);
    }
    static model::Verdict verdict(const model::CastingFile& file) {
        const auto sheet = model::sheetOf(file);
        const auto tables = archive_->tables();
        EXPECT_TRUE(sheet && tables);
        auto verdict = model::judge(*sheet, *tables);
        EXPECT_TRUE(verdict) << verdict.error().message();
        return std::move(*verdict);
    }
    /// Ids of the findings that stand in the way of signing.
    static std::vector<std::string> standing(const std::string& serial, const std::string& zone) {
        const model::CastingFile casting = file(serial);
        std::vector<std::string> ids;
        for (const model::ExaminationDraft& draft : casting.examinations) {
            if (draft.header.zone != zone) continue;
            const auto people = demo::staff();
            const auto person = std::ranges::find(people, draft.examinedBy, &model::Person::name);
            const auto findings = model::validityOf(*archive_, draft, person->id);
            EXPECT_TRUE(findings) << findings.error().message();
            for (const ConditionFinding& finding : *findings)
                if (finding.stands()) ids.push_back(finding.id);
        }
        return ids;
    }

    static inline QCoreApplication* application_ = nullptr;
    static inline QTemporaryDir* folder_ = nullptr;
    static inline model::Archive* archive_ = nullptr;
};

TEST_F(WholeRecord, KeepsAnOverdueYokeFromBeingSigned) {
    EXPECT_EQ(standing("BS-22-03", "Z1"), std::vector<std::string>{"yoke pull Q-M2"});
}

TEST_F(WholeRecord, KeepsAnExpiredVisionTestFromBeingSigned) {
    EXPECT_EQ(standing("BS-22-03", "Z2"), std::vector<std::string>{"near vision Q-8"});
}

TEST_F(WholeRecord, SaysWhichScanADriftedSettingMadeVoid) {
    const model::CastingFile casting = file("BS-22-02");
    const auto draft =
        std::ranges::find_if(casting.examinations, [](const model::ExaminationDraft& d) {
            return d.header.method == model::Method::Ultrasonic;
        });
    ASSERT_NE(draft, casting.examinations.end());
    const auto findings = model::validityOf(*archive_, *draft, "Q-5");
    ASSERT_TRUE(findings) << findings.error().message();
    ASSERT_EQ(findings->size(), 1U);
    EXPECT_EQ((*findings)[0].id, "repeated A1");
    EXPECT_FALSE((*findings)[0].stands());
}

TEST_F(WholeRecord, FollowsARepairToItsEnd) {
    const model::CastingFile casting = file("BS-22-01");
    const model::Verdict judged = verdict(casting);
    const auto cases = model::repairCasesOf(casting, judged);
    ASSERT_EQ(cases.size(), 1U);
    for (const model::Error& open : cases[0].open) ADD_FAILURE() << open.message();
    EXPECT_EQ(cases[0].state, model::repair_state::kWelded);
    // 14 > 20 % of 60 (ASTM A216, P).
    ASSERT_EQ(cases[0].severities.size(), 1U);
    EXPECT_EQ(cases[0].severities[0].severity, model::Severity::Major);
    EXPECT_EQ(model::outcomeOf(casting, judged), model::Outcome::ConformsAfterRepair);
    EXPECT_EQ(model::outcomeOf(file("PS-31-07"), verdict(file("PS-31-07"))),
              model::Outcome::ConformsAfterRepair);
}

TEST_F(WholeRecord, LetsAConcessionNameButNotChangeTheWord) {
    const model::CastingFile casting = file("BS-22-02");
    const model::Verdict judged = verdict(casting);
    EXPECT_EQ(judged.word, model::Word::NotAcceptable);
    EXPECT_EQ(model::outcomeOf(casting, judged), model::Outcome::UnderConcession);
}

TEST_F(WholeRecord, ListsWhatRunsOut) {
    const auto holdings = model::holdings(*archive_);
    ASSERT_TRUE(holdings) << holdings.error().message();
    std::vector<std::string> found;
    for (const model::RunsOut& one : model::runningOut(*holdings, "2026-11-28", 60))
        found.push_back(one.key + " " + one.lastDay);
    // Read from works.json by hand: within 60 days of 28 November 2026 is up to 27 January 2027.
    for (const char* expected :
         {"Q-M2 / yoke pull / 2026-05-11T07:40:00Z 2026-11-11", "Q-R1 2026-12-11",
          "Q-FU3 2027-01-12", "Q-220 2027-01-19", "V-42 2027-01-10"})
        EXPECT_TRUE(std::ranges::any_of(
            found, [&](const std::string& text) { return text.find(expected) != text.npos; }))
            << expected << " in " << testing::PrintToString(found);
}

}  // namespace
