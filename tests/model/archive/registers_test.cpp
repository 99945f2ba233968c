// SPDX-License-Identifier: Apache-2.0
// Entries of the registers come back as they were saved, in every version; what cannot be is
// refused.
#include <filesystem>
#include <fstream>

#include "archive/backup.h"
#include "archive/signed_files.h"
#include "archive/stored_file.h"
#include "register_fixture.h"
#include "registers/condition_attestation.h"

namespace model {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

class Registers : public RegisterTest {
protected:
    Equipment yoke(const std::string& state = "in use") const {
        Equipment one;
        one.id = "E-1";
        one.kind = "yoke";
        one.state = state;
        return one;
    }
    Nonconformance opened(const std::string& number = "N-1",
                          const std::string& casting = "S-17") const {
        auto one = foundry::filled<Nonconformance>();
        one.number = number;
        one.casting = casting;
        one.record.clear();
        return one;
    }
    Disposition decided() const {
        auto one = foundry::filled<Disposition>();
        one.nonconformance = "N-1";
        one.sequence = "1";
        one.casting = "S-17";
        return one;
    }
    Procedure procedure(const std::string& approvedBy = "") const {
        Procedure one;
        one.number = "MT-7";
        one.revision = "2";
        one.kind = "procedure";
        one.title = "Castings";
        one.method = "MT";
        one.state = "current";
        one.approvedBy = approvedBy;
        return one;
    }
    void addSecondCasting() {
        Casting second = sampleCasting();
        second.serial = "S-18";
        ASSERT_THAT(archive_->save(second, 0, actor_), Succeeds());
    }
};

TEST_F(Registers, GiveBackEveryFieldOfEveryRegister) {
    fillAll();
    const Archive archive = reopened();
    int registers = 0;
    forEachRegister([&]<class T>() {
        ++registers;
        const T expected = sample<T>();
        const auto all = entries<T>(archive);
        ASSERT_THAT(all, Succeeds()) << T::kRegister;
        ASSERT_THAT(*all, SizeIs(1)) << T::kRegister;
        EXPECT_EQ((*all)[0].value, expected) << T::kRegister;
        EXPECT_EQ((*all)[0].version, 1);
        // No field was left out of it.
        for (const Field<T>& field : T::fields()) {
            if (field.info.key == "record" || field.info.key == "parent_procedure") continue;
            EXPECT_NE((*all)[0].value.*field.text, "") << T::kRegister << field.info.key;
        }
        const auto one = entry<T>(archive, keyOf(expected));
        ASSERT_THAT(one, Succeeds()) << T::kRegister;
        EXPECT_EQ(one->value, expected);
    });
    EXPECT_EQ(registers, 16);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Registers, AreInTheCastingsFile) {
    fillAll();
    const auto file = reopened().casting("S-17");
    ASSERT_THAT(file, Succeeds());
    EXPECT_THAT(file->dossier.nonconformances, ElementsAre(sample<Nonconformance>()));
    EXPECT_THAT(file->dossier.dispositions, ElementsAre(sample<Disposition>()));
    EXPECT_THAT(file->dossier.excavations, ElementsAre(sample<Excavation>()));
    EXPECT_THAT(file->dossier.weldRepairs, ElementsAre(sample<WeldRepair>()));
    EXPECT_THAT(file->dossier.heatTreatments, ElementsAre(sample<HeatTreatment>()));
    EXPECT_THAT(file->dossier.concessions, ElementsAre(sample<Concession>()));
    EXPECT_THAT(file->dossier.otherResults, ElementsAre(sample<OtherResult>()));
    EXPECT_THAT(file->dossier.attachments, ElementsAre(sample<Attachment>()));
    // Nothing names any of it yet.
    EXPECT_EQ(file->used, Holdings());
    const auto all = holdings(*archive_);
    ASSERT_THAT(all, Succeeds());
    EXPECT_THAT(all->equipment, ElementsAre(sample<Equipment>()));
    EXPECT_THAT(all->checks, ElementsAre(sample<EquipmentCheck>()));
    EXPECT_THAT(all->consumables, ElementsAre(sample<Consumable>()));
    EXPECT_THAT(all->procedures, ElementsAre(sample<Procedure>()));
    EXPECT_THAT(all->qualifications, ElementsAre(sample<Qualification>()));
    EXPECT_THAT(all->eyeTests, ElementsAre(sample<EyeTest>()));
    EXPECT_THAT(all->authorisations, ElementsAre(sample<Authorisation>()));
}

TEST_F(Registers, KeepEveryVersion) {
    EXPECT_EQ(*saveEntry(*archive_, yoke(), 0, actor_), 1);
    EXPECT_EQ(*saveEntry(*archive_, yoke("withdrawn"), 1, Actor{"B. Second"}), 2);
    const auto now = entry<Equipment>(*archive_, "E-1");
    ASSERT_THAT(now, Succeeds());
    EXPECT_EQ(now->version, 2);
    EXPECT_EQ(now->value, yoke("withdrawn"));
    const auto all = versionsOf<Equipment>(*archive_, "E-1");
    ASSERT_THAT(all, Succeeds());
    ASSERT_THAT(*all, SizeIs(2));
    EXPECT_EQ((*all)[0].value, yoke());
    EXPECT_EQ((*all)[0].version, 1);
    EXPECT_EQ((*all)[1].value, yoke("withdrawn"));
    EXPECT_THAT(*entries<Equipment>(*archive_), SizeIs(1));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Registers, SaveNothingThatIsNotNew) {
    ASSERT_THAT(saveEntry(*archive_, yoke(), 0, actor_), Succeeds());
    const Head head = *archive_->head();
    EXPECT_EQ(*saveEntry(*archive_, yoke(), 1, actor_), 1);
    EXPECT_EQ(*archive_->head(), head);
    EXPECT_THAT(saveEntry(*archive_, yoke("withdrawn"), 0, actor_), FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(saveEntry(*archive_, yoke("withdrawn"), 2, actor_), FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(saveEntry(*archive_, opened("N-9"), 1, actor_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(entry<Equipment>(*archive_, "E-9"), FailsWith(ErrorKind::Input));
    EXPECT_THAT(*versionsOf<Equipment>(*archive_, "E-9"), IsEmpty());
}

TEST_F(Registers, ListTheEntriesOfACastingAsTheyWereMade) {
    addSecondCasting();
    for (const char* number : {"N-3", "N-1", "N-2"})
        ASSERT_THAT(saveEntry(*archive_, opened(number), 0, actor_), Succeeds());
    ASSERT_THAT(saveEntry(*archive_, opened("N-4", "S-18"), 0, actor_), Succeeds());
    Nonconformance changed = opened("N-3");
    changed.remarks = "seen again";
    ASSERT_THAT(saveEntry(*archive_, changed, 1, actor_), Succeeds());
    const auto of = entriesOf<Nonconformance>(*archive_, "S-17");
    ASSERT_THAT(of, Succeeds());
    ASSERT_THAT(*of, SizeIs(3));
    EXPECT_EQ((*of)[0].value, changed);
    EXPECT_EQ((*of)[1].value.number, "N-1");
    EXPECT_EQ((*of)[2].value.number, "N-2");
    const auto all = entries<Nonconformance>(*archive_);
    ASSERT_THAT(*all, SizeIs(4));
    EXPECT_EQ((*all)[0].value.number, "N-1");
    EXPECT_EQ((*all)[3].value.number, "N-4");
}

TEST_F(Registers, RefuseAWrongFieldByItsKey) {
    const auto refused = [&](const Equipment& one) {
        const auto saved = saveEntry(*archive_, one, 0, actor_);
        EXPECT_THAT(saved, FailsWith(ErrorKind::Input));
        return saved ? std::string() : saved.error().place;
    };
    Equipment one = yoke();
    one.id.clear();
    EXPECT_EQ(refused(one), "id");
    one = yoke();
    one.kind = "spade";
    EXPECT_EQ(refused(one), "kind");
    one = yoke();
    one.calibrationDue = "2026-02-30";
    EXPECT_EQ(refused(one), "calibration_due");
    one = yoke();
    one.id = " E-1";
    EXPECT_EQ(refused(one), "id");
    one = yoke();
    one.remarks = "\xff";
    EXPECT_THAT(saveEntry(*archive_, one, 0, actor_), FailsWith(ErrorKind::Input));
    // Of two keys neither can be taken for the other.
    auto test = foundry::filled<EyeTest>();
    test.person = std::string(foundry::kInspector) + " / near";
    const auto saved = saveEntry(*archive_, test, 0, qaManager_);
    ASSERT_THAT(saved, FailsWith(ErrorKind::Input));
    EXPECT_EQ(saved.error().place, "person");
    EXPECT_THAT(*entries<Equipment>(*archive_), IsEmpty());
}

TEST_F(Registers, RefuseWhatNamesSomethingThatIsNotThere) {
    const auto place = [](const Result<std::int64_t>& saved) {
        EXPECT_THAT(saved, FailsWith(ErrorKind::Input));
        return saved ? std::string() : saved.error().place;
    };
    EXPECT_EQ(place(save(opened("N-1", "S-99"))), "casting");
    EXPECT_EQ(place(save(decided())), "nonconformance");
    auto check = foundry::filled<EquipmentCheck>();
    EXPECT_EQ(place(save(check)), "equipment");
    auto sight = foundry::filled<EyeTest>();
    sight.person = "P-99";
    EXPECT_EQ(place(save(sight)), "person");
    Nonconformance ofRecord = opened();
    ofRecord.record = "7";
    EXPECT_EQ(place(save(ofRecord)), "record");
    Procedure sheet = procedure();
    sheet.kind = "technique sheet";
    sheet.parentProcedure = "MT-7 / 9";
    EXPECT_EQ(place(save(sheet)), "parent_procedure");
    auto photo = foundry::filled<Attachment>();
    photo.casting = "S-17";
    photo.record.clear();
    EXPECT_EQ(place(save(photo)), "file_sha256");
    photo.fileSha256 = *keepFile(*archive_, "a photo");
    photo.bytes = "8";
    EXPECT_EQ(place(save(photo)), "bytes");
    photo.bytes = "7";
    EXPECT_THAT(save(photo), Succeeds());
}

TEST_F(Registers, RefuseWhatNamesSomethingOfAnotherCasting) {
    addSecondCasting();
    ASSERT_THAT(save(opened()), Succeeds());
    Disposition decision = decided();
    decision.casting = "S-18";
    EXPECT_THAT(save(decision), FailsWith(ErrorKind::Input));
    decision.casting = "S-17";
    ASSERT_THAT(save(decision), Succeeds());
    // Nor does an entry go over to another casting.
    EXPECT_THAT(save(opened("N-1", "S-18"), 1), FailsWith(ErrorKind::Input));
    // A record of this casting is no other's.
    const std::int64_t record = sign(LifecycleTest::save(draft()));
    Nonconformance second = opened("N-2", "S-18");
    second.record = std::to_string(record);
    EXPECT_THAT(save(second), FailsWith(ErrorKind::Input));
    second.casting = "S-17";
    EXPECT_THAT(save(second), Succeeds());
}

TEST_F(Registers, TakeSignedEntriesOnlyFromWhomTheyNeed) {
    ASSERT_THAT(save(opened()), Succeeds());
    EXPECT_TRUE(signersOf(Nonconformance::kRegister).empty());
    EXPECT_THAT(signersOf(Disposition::kRegister), ElementsAre(Role::QaManager));
    EXPECT_THAT(saveEntry(*archive_, decided(), 0, actor_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(saveEntry(*archive_, decided(), 0, inspector_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(*entries<Disposition>(*archive_), IsEmpty());
    EXPECT_THAT(saveEntry(*archive_, decided(), 0, qaManager_), Succeeds());
    EXPECT_EQ(archive_->history(archive_->head()->sequence)->front().action, "disposition signed");
    // Whoever is signed in may save the others too, in their name.
    EXPECT_THAT(saveEntry(*archive_, yoke(), 0, inspector_), Succeeds());
    const HistoryEntry last = archive_->history(archive_->head()->sequence)->front();
    EXPECT_EQ(last.action, "register entry saved");
    EXPECT_EQ(last.person, inspector_.person().name);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Registers, LetLevel3AloneApproveAProcedure) {
    EXPECT_THAT(saveEntry(*archive_, procedure(), 0, inspector_), Succeeds());
    EXPECT_THAT(saveEntry(*archive_, procedure(foundry::kInspector), 1, inspector_),
                FailsWith(ErrorKind::Refused));
    EXPECT_THAT(saveEntry(*archive_, procedure(foundry::kLevel3), 1, inspector_),
                FailsWith(ErrorKind::Refused));
    // Nobody approves in another's name, nor in a method that is not theirs.
    EXPECT_THAT(saveEntry(*archive_, procedure(foundry::kInspector), 1, level3_),
                FailsWith(ErrorKind::Input));
    Procedure ultrasonic = procedure(foundry::kLevel3);
    ultrasonic.number = "UT-1";
    ultrasonic.method = "UT";
    EXPECT_THAT(saveEntry(*archive_, ultrasonic, 0, level3_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(saveEntry(*archive_, procedure(foundry::kLevel3), 1, level3_), Succeeds());
    // Once approved it changes by a Level 3 only, except that it becomes obsolete.
    Procedure changed = procedure(foundry::kLevel3);
    changed.standards = "ISO 9934-1:2016";
    EXPECT_THAT(saveEntry(*archive_, changed, 2, inspector_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(saveEntry(*archive_, procedure(), 2, inspector_), FailsWith(ErrorKind::Refused));
    Procedure obsolete = procedure(foundry::kLevel3);
    obsolete.state = "obsolete";
    obsolete.obsoleteFrom = "2026-12-01";
    EXPECT_THAT(saveEntry(*archive_, obsolete, 2, qaManager_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Registers, KeepAttestationsOfConditionSets) {
    auto attested = foundry::filled<ConditionSetAttestation>();
    attested.state = "attested";
    EXPECT_THAT(saveEntry(*archive_, attested, 0, inspector_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(saveEntry(*archive_, attested, 0, qaManager_), Succeeds());
    EXPECT_EQ(entry<ConditionSetAttestation>(*archive_, keyOf(attested))->value, attested);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Registers, KeepFilesThatEntriesName) {
    EXPECT_THAT(keepFile(*archive_, ""), FailsWith(ErrorKind::Input));
    EXPECT_THAT(keepFile(*archive_, std::string(kLargestEntryFile + 1, 'x')),
                FailsWith(ErrorKind::Input));
    const std::string bytes("a photo\0\xff", 9);
    const auto digest = keepFile(*archive_, bytes);
    ASSERT_THAT(digest, Succeeds());
    EXPECT_EQ(*entryFile(*archive_, *digest), bytes);
    EXPECT_THAT(*unnamedFiles(*archive_), SizeIs(1));
    auto photo = foundry::filled<Attachment>();
    photo.casting = "S-17";
    photo.record.clear();
    photo.fileSha256 = *digest;
    photo.bytes = "9";
    ASSERT_THAT(save(photo), Succeeds());
    EXPECT_THAT(*unnamedFiles(*archive_), IsEmpty());
    EXPECT_THAT(findings(), IsEmpty());
    // A copy has it too.
    ASSERT_THAT(backUp(path(), pathOf("copy")), Succeeds());
    const std::string copied = storedFilePath(pathOf("copy/files"), *digest);
    const std::string kept = storedFilePath(path() + ".files", *digest);
    EXPECT_TRUE(std::filesystem::exists(copied) || !std::filesystem::is_empty(pathOf("copy")));

    std::ofstream(kept, std::ios::app) << ' ';
    EXPECT_THAT(findings(), ElementsAre(AllOf(HasSubstr("attachment " + photo.number),
                                              HasSubstr("was altered"))));
    EXPECT_THAT(entryFile(*archive_, *digest), FailsWith(ErrorKind::Damaged));
    std::filesystem::remove(kept);
    EXPECT_THAT(findings(),
                ElementsAre(AllOf(HasSubstr("attachment " + photo.number), HasSubstr("is gone"))));
    EXPECT_THAT(entryFile(*archive_, "../../etc"), FailsWith(ErrorKind::Input));
}

TEST_F(Registers, RefuseEveryClientsChange) {
    fillAll();
    archive_.reset();
    RawDatabase raw(path());
    for (const char* sql :
         {"DELETE FROM register_entry", "UPDATE register_entry SET version = version",
          "UPDATE OR REPLACE register_entry SET version = version",
          "INSERT OR REPLACE INTO register_entry SELECT * FROM register_entry",
          // A version that skips one.
          "INSERT INTO register_entry SELECT 1, register, entry, version + 2, casting_serial, "
          "file_sha256, content FROM register_entry LIMIT 1"})
        EXPECT_EQ(raw.run(sql), SQLITE_CONSTRAINT_TRIGGER) << sql;
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Registers, AreWhatTheHistorySays) {
    fillAll();
    archive_.reset();
    const std::string original = pathOf("original");
    std::filesystem::copy_file(path(), original);
    const std::string named = " WHERE register = 'nonconformance'";
    const std::string name = "nonconformance " + keyOf(sample<Nonconformance>()) + " version 1";
    const struct {
        std::string sql;
        std::string finding;
    } alterations[] = {
        {"UPDATE register_entry SET content = replace(content, 'S-17', 'S-18')" + named,
         name + ": is not what"},
        {"UPDATE register_entry SET content = replace(content, 'the finding', 'none')" + named,
         name + ": is not what"},
        {"UPDATE register_entry SET content = '{}'" + named, name + ": is not what"},
        {"UPDATE register_entry SET content = ''" + named, "is not understood"},
        {"UPDATE register_entry SET casting_serial = NULL" + named, name + ": is not what"},
        {"UPDATE register_entry SET file_sha256 = '" + std::string(64, 'a') + "'" + named,
         name + ": is not what"},
        {"UPDATE register_entry SET entry = 'N-9'" + named, name + ": is not what"},
        {"UPDATE register_entry SET version = 2" + named, name + ": is not what"},
        {"UPDATE register_entry SET register = 'concession', entry = 'N-9'" + named,
         name + ": is not what"},
        {"UPDATE register_entry SET history_sequence = 1" + named, "is stored, but not in"},
        {"DELETE FROM register_entry" + named, name + ": is gone"},
        {"INSERT INTO register_entry SELECT 1, register, 'N-9', version, casting_serial, "
         "file_sha256, content FROM register_entry" +
             named,
         "nonconformance N-9 version 1: is stored, but not in the history"},
    };
    for (const auto& [sql, finding] : alterations) {
        std::filesystem::copy_file(original, path(),
                                   std::filesystem::copy_options::overwrite_existing);
        alter(sql);
        EXPECT_THAT(findings(), Contains(HasSubstr(finding))) << sql;
    }
}

// What entitles people to test, and what ends a nonconformance, is nobody's without a signature.
TEST_F(Registers, ShowASignedEntryThatNobodySigned) {
    ASSERT_THAT(save(opened()), Succeeds());
    ASSERT_THAT(save(decided()), Succeeds());
    const std::string row = std::to_string(archive_->head()->sequence);
    archive_.reset();
    alter("DELETE FROM history_signature WHERE sequence = " + row);
    EXPECT_THAT(findings(), Contains(HasSubstr("history row " + row + ": has lost the signature")));
}

}  // namespace
}  // namespace model
