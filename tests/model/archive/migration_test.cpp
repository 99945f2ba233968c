// SPDX-License-Identifier: Apache-2.0
// Older archives are brought up to date whole or left as they were.
#include "archive/migration.h"

#include <filesystem>
#include <fstream>
#include <sstream>
#include <thread>

#include "archive/dialect.h"
#include "archive/rejudge.h"
#include "archive/search.h"
#include "archive/signed_record.h"
#include "archive/stored_file.h"
#include "archive/test_validity.h"
#include "archive_fixture.h"
#include "foundry/old_certificates.h"
#include "raw_database.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::ElementsAreArray;
using testing::IsEmpty;

/// Steps that no released program has, on top of the released ones.
class MigrationTest : public ArchiveTest {
protected:
    void SetUp() override {
        fill();
        ASSERT_THAT(foundry::addCertificate(*archive_, sampleFacts(), "%PDF first", actor_),
                    Succeeds());
        head_ = *archive_->head();
        archive_.reset();
        steps_ = migrations();
        last_ = steps_.back().version;
    }
    void addStep(std::string_view script) {
        steps_.push_back({steps_.back().version + 1, "an invented step", script});
    }
    Result<void> run() {
        auto connection = dialect::openDatabase(path());
        if (!connection) return connection.error();
        if (auto done = dialect::settle(**connection); !done) return done;
        ArchiveKey key(path());
        return migrate(**connection, steps_, key, clock_);
    }
    [[nodiscard]] std::string backup(const std::string& suffix = "") const {
        return path() + ".schema-" + std::to_string(last_) + ".backup" + suffix;
    }
    void expectUnchanged() {
        EXPECT_EQ(*reopened().head(), head_);
        EXPECT_THAT(findings(), IsEmpty());
    }

    Head head_;
    std::vector<Migration> steps_;
    int last_ = 0;
};

TEST_F(MigrationTest, StepsAreNumberedFromOneWithoutAGap) {
    int number = 0;
    for (const Migration& step : migrations()) {
        EXPECT_EQ(step.version, ++number);
        EXPECT_FALSE(step.description.empty());
    }
    EXPECT_GE(number, 1);
}

TEST_F(MigrationTest, DoesNothingToAnArchiveThatIsUpToDate) {
    EXPECT_THAT(run(), Succeeds());
    EXPECT_FALSE(std::filesystem::exists(backup()));
    expectUnchanged();
}

TEST_F(MigrationTest, RunsAllStepsInOneTransactionAndTellsTheHistory) {
    addStep("ALTER TABLE casting ADD COLUMN mass_g INTEGER;");
    addStep(
        "-- a comment; with a semicolon\n"
        "CREATE TABLE pattern (number TEXT PRIMARY KEY) STRICT;\n"
        "CREATE TRIGGER pattern_stays BEFORE DELETE ON pattern "
        "BEGIN SELECT RAISE(ABORT, 'it; stays'); END;\n");
    ASSERT_THAT(run(), Succeeds());
    RawDatabase raw(path());
    EXPECT_EQ(raw.value("PRAGMA user_version"), std::to_string(last_ + 2));
    EXPECT_EQ(raw.value("SELECT count(*) FROM casting WHERE mass_g IS NULL"), "1");
    EXPECT_EQ(raw.value("SELECT count(*) FROM pattern"), "0");
    EXPECT_THAT(raw.column("SELECT person || ': ' || action || ' ' || subject FROM history "
                           "WHERE sequence > " +
                           std::to_string(head_.sequence)),
                ElementsAre("Fettlemark: archive migrated schema " + std::to_string(last_ + 1),
                            "Fettlemark: archive migrated schema " + std::to_string(last_ + 2)));
    // The steps behind are not run again.
    EXPECT_THAT(run(), Succeeds());
    // This program does not open what it does not know.
    EXPECT_THAT(Archive::open(path(), clock_), FailsWith(ErrorKind::Input));
}

TEST_F(MigrationTest, LeavesACheckedBackupOfTheOldSchema) {
    addStep("ALTER TABLE casting ADD COLUMN mass_g INTEGER;");
    std::ofstream(backup()) << "an earlier backup";
    ASSERT_THAT(run(), Succeeds());
    std::ifstream earlier(backup());
    std::stringstream text;
    text << earlier.rdbuf();
    EXPECT_EQ(text.str(), "an earlier backup");
    const auto archive = Archive::open(backup("-2"), clock_);
    ASSERT_THAT(archive, Succeeds());
    EXPECT_EQ(*archive->head(), head_);
    EXPECT_EQ(described(*archive->draft(1)), described(sampleDraft()));
}

TEST_F(MigrationTest, LeavesTheArchiveAsItWasWhereAStepFails) {
    addStep("ALTER TABLE casting ADD COLUMN mass_g INTEGER;");
    addStep("CREATE TABLE pattern (number TEXT); INSERT INTO nowhere VALUES (1);");
    EXPECT_FALSE(run().ok());
    expectUnchanged();
    EXPECT_TRUE(std::filesystem::exists(backup()));
}

TEST_F(MigrationTest, RefusesAStepThatLosesOrChangesWhatMustBeKept) {
    for (const char* script :
         {"DROP TRIGGER certificate_stays; DELETE FROM certificate;",
          "DROP TRIGGER history_never_shrinks; DELETE FROM history WHERE sequence = 2;",
          "DROP TRIGGER history_never_changes; UPDATE history SET hash = zeroblob(32) "
          "WHERE sequence = (SELECT max(sequence) FROM history);",
          "DELETE FROM indication; DELETE FROM examination_level; DELETE FROM not_examined; "
          "DELETE FROM examination_forbidden_kind; DELETE FROM examination; DELETE FROM "
          "casting;"}) {
        steps_ = migrations();
        addStep(script);
        EXPECT_THAT(run(), FailsWith(ErrorKind::Damaged)) << script;
        expectUnchanged();
    }
}

TEST_F(MigrationTest, RefusesANewerArchive) {
    RawDatabase raw(path());
    raw.run("PRAGMA user_version = " + std::to_string(last_ + 1));
    EXPECT_THAT(run(), FailsWith(ErrorKind::Input));
    EXPECT_EQ(raw.value("PRAGMA user_version"), std::to_string(last_ + 1));
}

TEST_F(MigrationTest, WaitsForAProgramThatIsDoingTheSame) {
    addStep("ALTER TABLE casting ADD COLUMN mass_g INTEGER;");
    Result<void> first;
    Result<void> second;
    std::thread one([&] { first = run(); });
    std::thread two([&] { second = run(); });
    one.join();
    two.join();
    EXPECT_THAT(first, Succeeds());
    EXPECT_THAT(second, Succeeds());
    RawDatabase raw(path());
    EXPECT_EQ(raw.value("SELECT count(*) FROM history WHERE action = 'archive migrated'"), "1");
}

/// Databases of released schemas, see data/README.md.
class OldArchive : public ArchiveTest {
protected:
    /// Makes data/NAME.sql a database again, with its key file where it had one.
    void load(const std::string& name) {
        std::ifstream dump("data/" + name + ".sql");
        ASSERT_TRUE(dump.is_open());
        std::stringstream script;
        script << dump.rdbuf();
        RawDatabase raw(old());
        ASSERT_EQ(raw.run(script.str()), SQLITE_OK) << raw.message();
        if (std::filesystem::exists("data/" + name + ".key"))
            std::filesystem::copy_file("data/" + name + ".key", old() + ".key");
    }
    [[nodiscard]] std::string old() const { return pathOf("old"); }
};

class ReleasedSchema : public OldArchive, public testing::WithParamInterface<int> {};

TEST_P(ReleasedSchema, IsBroughtUpToDateWithEverythingInIt) {
    load("schema_" + std::to_string(GetParam()));
    const std::string name = old();
    ASSERT_THAT(storeFile(name + ".files", "%PDF of an old archive"), Succeeds());
    const auto archive = Archive::open(name, clock_);
    ASSERT_THAT(archive, Succeeds());
    const auto verification = archive->verify();
    ASSERT_THAT(verification, Succeeds());
    EXPECT_TRUE(verification->findings.empty()) << verification->findings.front().message();
    EXPECT_EQ(described(archive->order("O-1")->value), described(sampleOrder()));
    EXPECT_EQ(described(archive->part("P-9")->value), described(samplePart()));
    EXPECT_EQ(described(*archive->zonePlan("P-9", 1)), described(samplePlan()));
    EXPECT_EQ(described(archive->castingEntry("S-17")->value), described(sampleCasting()));
    EXPECT_EQ(described(*archive->draft(1)), described(sampleDraft()));
    EXPECT_EQ(*archive->certificateFile(1), "%PDF of an old archive");
    EXPECT_EQ(archive->kind(), ArchiveKind::Demonstration);
    const auto found = findCertificates(*archive, {.words = "s-17"});
    ASSERT_THAT(found, Succeeds());
    EXPECT_EQ(found->certificates.size(), 1U);
}

INSTANTIATE_TEST_SUITE_P(All, ReleasedSchema, testing::Values(1, 5, 6));

// Identities, seals, signatures, a signed record and a certificate that two more people signed.
class SignedSchema : public OldArchive, public testing::WithParamInterface<int> {};

TEST_P(SignedSchema, KeepsWhatPeopleSigned) {
    load("schema_" + std::to_string(GetParam()) + "_signed");
    std::string pdf = "%PDF-1.7 signed by the inspector\n";
    for (const char* more : {"and by the third party\n", "and by the QA manager\n", ""}) {
        ASSERT_THAT(storeFile(old() + ".files", pdf), Succeeds());
        pdf += more;
    }
    const std::string before = [&] {
        RawDatabase raw(old());
        return raw.value("SELECT max(sequence) FROM history");
    }();
    const std::string content = RawDatabase(old()).value("SELECT content FROM record");
    ASSERT_THAT(Archive::open(old(), clock_), Succeeds());
    std::vector<std::string> migrated;
    for (int schema = GetParam() + 1; schema <= migrations().back().version; ++schema)
        migrated.push_back("archive migrated schema " + std::to_string(schema));
    RawDatabase raw(old());
    EXPECT_THAT(
        raw.column("SELECT action || ' ' || subject FROM history WHERE sequence > " + before),
        ElementsAreArray(migrated));
    auto archive = Archive::open(old(), clock_);
    ASSERT_THAT(archive, Succeeds());
    const auto verification = archive->verify();
    ASSERT_THAT(verification, Succeeds());
    for (const Error& finding : verification->findings) ADD_FAILURE() << finding.message();
    EXPECT_EQ(verification->certificates, 1);
    EXPECT_EQ(verification->records, 1);
    EXPECT_EQ(std::to_string(verification->seals), raw.value("SELECT count(*) FROM history"));
    EXPECT_EQ(std::to_string(verification->signatures),
              raw.value("SELECT count(*) FROM history_signature"));
    EXPECT_EQ(*archive->certificateFile(1), pdf);
    // What was signed is the same, byte for byte; of conditions it says nothing.
    const auto record = examinationStates(*archive, "S-17")->front().records.front().id;
    EXPECT_EQ(*signedRecordContent(*archive, record), content);
    const auto test = signedTest(*archive, record);
    ASSERT_THAT(test, Succeeds());
    EXPECT_EQ(test->conditions, TestConditions());
    EXPECT_EQ(test->used, Holdings());
    EXPECT_THAT(test->findings, IsEmpty());
    EXPECT_THAT(test->testers.examiner, IsEmpty());
    const auto judgedAgain = rejudge(*archive);
    ASSERT_THAT(judgedAgain, Succeeds());
    EXPECT_EQ(judgedAgain->count, 1);
    for (const auto& other : judgedAgain->otherwise) ADD_FAILURE() << other.difference;
    // It lives on.
    ExaminationDraft draft = sampleUltrasonicDraft();
    draft.header.zone = "Z1";
    ASSERT_THAT(archive->save(draft, actor_), Succeeds());
    EXPECT_THAT(archive->verify()->findings, IsEmpty());
}

INSTANTIATE_TEST_SUITE_P(All, SignedSchema, testing::Values(5, 6));

// The ultrasonic rows of schema 6 have no number of a setting check.
TEST_F(OldArchive, KeepsUltrasonicRows) {
    load("schema_6");
    ASSERT_THAT(storeFile(old() + ".files", "%PDF of an old archive"), Succeeds());
    const auto archive = Archive::open(old(), clock_);
    ASSERT_THAT(archive, Succeeds());
    ExaminationDraft expected = sampleUltrasonicDraft();
    for (TypedReflector& row : expected.reflectors) row.afterCheck.clear();
    EXPECT_EQ(described(*archive->draft(2)), described(expected));
    EXPECT_EQ(archive->draft(2)->conditions, TestConditions());
    EXPECT_THAT(archive->verify()->findings, IsEmpty());
}

}  // namespace
}  // namespace model
