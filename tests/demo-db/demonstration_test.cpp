// SPDX-License-Identifier: Apache-2.0
// That the demonstration archive holds the scenario, whole and as typed.
#include "demo_db/demonstration.h"

#include <QCoreApplication>
#include <QTemporaryDir>
#include <algorithm>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <sys/resource.h>

#include "archive/archive.h"
#include "demo_db/scenario.h"
#include "exchange/json_text.h"
#include "exchange/sheet_json.h"
#include "scenario_castings.h"

namespace {

class Demonstration : public testing::Test {
protected:
    std::string path(const char* name) const { return folder_.filePath(name).toStdString(); }

private:
    int count_ = 0;
    QCoreApplication application_{count_, nullptr};
    QTemporaryDir folder_;
};

TEST_F(Demonstration, HoldsEveryCastingOfTheScenarioAsTyped) {
    const auto written = demo::writeDemonstration(path("quillmere.db"));
    ASSERT_TRUE(written) << written.error().message();
    const auto archive = model::Archive::open(path("quillmere.db"));
    ASSERT_TRUE(archive) << archive.error().message();
    EXPECT_EQ(archive->kind(), model::ArchiveKind::Demonstration);

    const auto expected = scenarioCastings();
    const auto stored = archive->castings();
    ASSERT_TRUE(stored);
    EXPECT_EQ(stored->size(), expected.size());
    for (const model::CastingFile& scenario : expected) {
        const auto file = archive->casting(scenario.casting.serial);
        ASSERT_TRUE(file) << file.error().message();
        EXPECT_EQ(file->order.customer, scenario.order.customer);
        EXPECT_EQ(file->order.certificateType, scenario.order.certificateType);
        EXPECT_EQ(file->order.decisionRule, scenario.order.decisionRule);
        EXPECT_EQ(file->part.materialGrade, scenario.part.materialGrade);
        EXPECT_EQ(file->plan.zones.size(), scenario.plan.zones.size());
        ASSERT_EQ(file->examinations.size(), scenario.examinations.size());
        for (const model::ExaminationDraft& draft : scenario.examinations) {
            const auto found = std::ranges::find_if(
                file->examinations, [&](const model::ExaminationDraft& candidate) {
                    return candidate.header.zone == draft.header.zone &&
                           candidate.header.repairCycle == draft.header.repairCycle;
                });
            ASSERT_NE(found, file->examinations.end());
            EXPECT_EQ(found->rows, draft.rows);
            EXPECT_EQ(found->settings, draft.settings);
            EXPECT_EQ(found->reflectors, draft.reflectors);
            EXPECT_EQ(found->examinedBy, draft.examinedBy);
            EXPECT_EQ(found->examinedOn, draft.examinedOn);
            EXPECT_EQ(found->procedure, draft.procedure);
            EXPECT_EQ(found->remarks, draft.remarks);
        }
    }
}

/// As JSON, the examinations in an order that does not depend on when they were entered.
std::string sheetText(const model::CastingFile& file) {
    auto sheet = model::sheetOf(file);
    if (!sheet) return sheet.error().message();
    std::ranges::sort(sheet->examinations, {}, [](const model::Examination& examination) {
        return std::pair(examination.zone, examination.repairCycle);
    });
    return model::writeJson(model::sheetToJson(*sheet));
}

TEST_F(Demonstration, GivesTheJudgeTheScenariosSheets) {
    const auto written = demo::writeDemonstration(path("quillmere.db"));
    ASSERT_TRUE(written) << written.error().message();
    const auto archive = model::Archive::open(path("quillmere.db"));
    ASSERT_TRUE(archive) << archive.error().message();
    for (const model::CastingFile& scenario : scenarioCastings()) {
        const auto file = archive->casting(scenario.casting.serial);
        ASSERT_TRUE(file) << file.error().message();
        EXPECT_EQ(sheetText(*file), sheetText(scenario));
    }
}

TEST_F(Demonstration, IsIntactAndItsHistoryRunsThroughTheAutumnOf2026InOrder) {
    const auto written = demo::writeDemonstration(path("quillmere.db"));
    ASSERT_TRUE(written) << written.error().message();
    const auto archive = model::Archive::open(path("quillmere.db"));
    ASSERT_TRUE(archive) << archive.error().message();
    const auto verification = archive->verify();
    ASSERT_TRUE(verification) << verification.error().message();
    for (const model::Error& finding : verification->findings) ADD_FAILURE() << finding.message();

    const auto history = archive->history();
    ASSERT_TRUE(history) << history.error().message();
    std::string before = "2026-09-01";
    bool foreignLetters = false;
    for (const model::HistoryEntry& entry : *history) {
        EXPECT_LE(before, entry.time);
        EXPECT_LT(entry.time, "2026-12-01");
        before = entry.time;
        foreignLetters = foreignLetters || entry.person == "Мирослава Ждановец";
    }
    EXPECT_TRUE(foreignLetters);
}

TEST_F(Demonstration, IsTheSameEveryTime) {
    ASSERT_TRUE(demo::writeDemonstration(path("first.db")));
    ASSERT_TRUE(demo::writeDemonstration(path("second.db")));
    const auto first = model::Archive::open(path("first.db"));
    const auto second = model::Archive::open(path("second.db"));
    ASSERT_TRUE(first && second);
    const auto one = first->history();
    const auto other = second->history();
    ASSERT_TRUE(one && other);
    ASSERT_EQ(one->size(), other->size());
    for (std::size_t i = 0; i < one->size(); ++i) {
        EXPECT_EQ((*one)[i].time, (*other)[i].time);
        EXPECT_EQ((*one)[i].action, (*other)[i].action);
        EXPECT_EQ((*one)[i].subject, (*other)[i].subject);
    }
}

TEST_F(Demonstration, RefusesAFileThatExistsAndLeavesItAlone) {
    std::ofstream(path("mine.db")) << "mine";
    const auto written = demo::writeDemonstration(path("mine.db"));
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().kind, model::ErrorKind::Input);
    std::string kept;
    std::ifstream(path("mine.db")) >> kept;
    EXPECT_EQ(kept, "mine");
}

/// Files of this process can grow no further than this while it lives.
class SmallestFiles {
public:
    explicit SmallestFiles(rlim_t bytes) {
        getrlimit(RLIMIT_FSIZE, &before_);
        const rlimit small{bytes, before_.rlim_max};
        handler_ = std::signal(SIGXFSZ, SIG_IGN);
        setrlimit(RLIMIT_FSIZE, &small);
    }
    SmallestFiles(const SmallestFiles&) = delete;
    SmallestFiles& operator=(const SmallestFiles&) = delete;
    ~SmallestFiles() {
        setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, handler_);
    }

private:
    rlimit before_{};
    void (*handler_)(int) = nullptr;
};

TEST_F(Demonstration, LeavesNothingBehindWhereTheDiskIsFullHalfWay) {
    const std::string file = path("full.db");
    model::Result<void> written;
    {
        const SmallestFiles full(700'000);
        // Room for an empty archive: what fails is one of the entries.
        ASSERT_TRUE(model::Archive::create(path("empty.db"), model::ArchiveKind::Demonstration,
                                           model::Actor{"Rhys Penhallow"}));
        written = demo::writeDemonstration(file);
    }
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().kind, model::ErrorKind::Refused) << written.error().message();
    for (const char* ending : {"", "-wal", "-shm", ".files", ".key"})
        EXPECT_FALSE(std::filesystem::exists(file + ending)) << file + ending;
}

TEST(Scenario, SaysOfEveryExaminationWhatItIsThereToShow) {
    const auto commissions = demo::readScenario();
    ASSERT_TRUE(commissions) << commissions.error().message();
    for (const demo::Commission& commission : *commissions)
        for (const demo::ScenarioCasting& casting : commission.castings)
            for (const demo::SituatedExamination& examination : casting.examinations) {
                const std::string& situation = examination.situation;
                EXPECT_TRUE(
                    situation.starts_with("accepted") || situation.starts_with("not accepted") ||
                    situation.starts_with("not judged") || situation.starts_with("a repair cycle"))
                    << situation;
                EXPECT_GE(examination.draft.examinedOn, casting.castOn);
                EXPECT_GE(casting.castOn, commission.enteredOn);
            }
}

TEST(Scenario, KeepsInchEntriesAsTyped) {
    for (const model::ExaminationDraft& draft : scenarioCasting("VB-14-01").examinations) {
        if (draft.header.zone != "Z1") continue;
        ASSERT_EQ(draft.rows.size(), 4U);
        EXPECT_EQ(draft.rows[0].unit, model::LengthUnit::Inch);
        EXPECT_EQ(draft.rows[0].x, "4 1/2");
        EXPECT_EQ(draft.rows[0].length, "3/16");
    }
}

}  // namespace
