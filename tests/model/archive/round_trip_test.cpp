// SPDX-License-Identifier: Apache-2.0
// Everything comes back as it was given.
#include "archive_fixture.h"
#include "foundry/ultrasonic_rows.h"
#include "raw_database.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

using RoundTrip = ArchiveTest;

TEST_F(RoundTrip, GivesBackOrderPartPlanAndCasting) {
    fill();
    const Archive archive = reopened();
    const auto order = archive.order("O-1");
    ASSERT_THAT(order, Succeeds());
    EXPECT_EQ(order->version, 1);
    EXPECT_EQ(described(order->value), described(sampleOrder()));
    const auto part = archive.part("P-9");
    ASSERT_THAT(part, Succeeds());
    EXPECT_EQ(described(part->value), described(samplePart()));
    const auto plan = archive.zonePlan("P-9", 1);
    ASSERT_THAT(plan, Succeeds());
    EXPECT_EQ(described(*plan), described(samplePlan()));
    const auto casting = archive.castingEntry("S-17");
    ASSERT_THAT(casting, Succeeds());
    EXPECT_EQ(described(casting->value), described(sampleCasting()));
}

TEST_F(RoundTrip, GivesBackADraftByteForByte) {
    fill();
    const auto draft = reopened().draft(1);
    ASSERT_THAT(draft, Succeeds());
    EXPECT_EQ(draft->id, 1);
    EXPECT_EQ(draft->version, 1);
    EXPECT_EQ(described(*draft), described(sampleDraft()));
    EXPECT_EQ(draft->rows, sampleDraft().rows);
}

TEST_F(RoundTrip, GivesBackAnUltrasonicDraftByteForByte) {
    fill();
    const auto saved = archive_->save(sampleUltrasonicDraft(), actor_);
    ASSERT_THAT(saved, Succeeds());
    const auto draft = reopened().draft(saved->id);
    ASSERT_THAT(draft, Succeeds());
    EXPECT_EQ(described(*draft), described(sampleUltrasonicDraft()));
    EXPECT_EQ(draft->settings, sampleUltrasonicDraft().settings);
    EXPECT_EQ(draft->reflectors, sampleUltrasonicDraft().reflectors);
    EXPECT_THAT(findings(), IsEmpty());
}

// That something was said of testability differs from nothing, even without a figure.
TEST_F(RoundTrip, KeepsWhatIsStatedForAnUltrasonicExaminationAsItIs) {
    fill();
    ExaminationDraft draft = sampleUltrasonicDraft();
    for (const UltrasonicTest& test :
         {UltrasonicTest(), UltrasonicTest{{}, Testability(), {}, {}},
          UltrasonicTest{{}, Testability{millimetres(3), {}}, Length(), {"a"}},
          UltrasonicTest{Area(), Testability{{}, decibels(-1)}, {}, {"a", "a"}}}) {
        draft.header.ultrasonic = test;
        const auto saved = archive_->save(draft, actor_);
        ASSERT_THAT(saved, Succeeds());
        draft.id = saved->id;
        draft.version = saved->version;
        EXPECT_EQ(described(*reopened().draft(draft.id)), described(draft));
        EXPECT_THAT(findings(), IsEmpty());
    }
    EXPECT_EQ(draft.version, 4);
}

// Each list is written and told to the history by what changed in it alone.
TEST_F(RoundTrip, ChangesSettingsAndReflectorsEachForItself) {
    fill();
    ExaminationDraft draft = sampleUltrasonicDraft();
    const auto save = [&] {
        const auto saved = archive_->save(draft, actor_);
        ASSERT_THAT(saved, Succeeds());
        draft.id = saved->id;
        draft.version = saved->version;
        EXPECT_EQ(described(*reopened().draft(draft.id)), described(draft));
    };
    RawDatabase raw(path());
    const auto last = [&](const std::string& list) {
        return raw.value(
            "SELECT coalesce(json_extract(CAST(bytes AS TEXT), '$.content." + list +
            "'), 'none') FROM history WHERE sequence = (SELECT max(sequence) FROM history)");
    };
    save();
    draft.settings.front().block = "B 13";
    save();
    EXPECT_EQ(last("settings.from") + last("settings.removed") + last("reflectors"), "11none");
    EXPECT_EQ(last("settings.added[0].block"), "B 13");
    draft.reflectors.erase(draft.reflectors.begin() + 1);
    save();
    EXPECT_EQ(last("reflectors.from") + last("reflectors.removed") + last("settings"), "21none");
    EXPECT_EQ(last("reflectors.added"), "[]");
    draft.reflectors.insert(draft.reflectors.begin(), foundry::filledReflector());
    save();
    EXPECT_EQ(last("reflectors.added[0].echo_drop"), "6");
    const auto version = draft.version;
    save();
    EXPECT_EQ(draft.version, version);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(RoundTrip, GivesBackACastingsFile) {
    fill();
    ExaminationDraft second = sampleDraft();
    second.header.zone = "Z2";
    second.header.surface.reset();
    second.header.noIndications = true;
    second.header.notExamined.clear();
    second.rows.clear();
    ASSERT_THAT(archive_->save(second, actor_), Succeeds());
    const auto file = reopened().casting("S-17");
    ASSERT_THAT(file, Succeeds());
    EXPECT_EQ(described(file->casting), described(sampleCasting()));
    EXPECT_EQ(described(file->part), described(samplePart()));
    EXPECT_EQ(described(file->order), described(sampleOrder()));
    EXPECT_EQ(described(file->plan), described(samplePlan()));
    ASSERT_EQ(file->examinations.size(), 2u);
    EXPECT_EQ(described(file->examinations[0]), described(sampleDraft()));
    EXPECT_EQ(described(file->examinations[1]), described(second));
}

// Source: 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
TEST_F(RoundTrip, StoresTheExactValueBesideTheTypedText) {
    fill();
    RawDatabase raw(path());
    EXPECT_EQ(raw.value("SELECT x || '/' || x_nm || '/' || length_nm || '/' || removed_nm || '/' "
                        "|| angle_millionth_deg || '/' || area_millionth_mm2 FROM indication "
                        "WHERE position = 2"),
              " 1 3/8 /34925000/1984375/396875/-30500000/1200000");
    EXPECT_EQ(raw.value("SELECT coalesce(x_nm, 'none') || length || length_nm || width || "
                        "coalesce(width_nm, 'none') FROM indication WHERE position = 3"),
              "none3.3000000?none");
}

// Source: 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
TEST_F(RoundTrip, StoresTheExactValuesOfReadingsBesideTheirTexts) {
    fill();
    ASSERT_THAT(archive_->save(sampleUltrasonicDraft(), actor_), Succeeds());
    RawDatabase raw(path());
    EXPECT_EQ(raw.value("SELECT x || '/' || x_nm || '/' || moved_across_nm || '/' || "
                        "through_wall_nm || '/' || heading_millionth_deg || '/' || "
                        "gain_millionth_db || '/' || back_wall_loss_millionth_db || '/' || "
                        "area_millionth_mm2 FROM reflector WHERE position = 1"),
              " 1 3/8 /34925000/396875/1984375/-90000000/40500000/6500000/155000000");
    EXPECT_EQ(raw.value("SELECT diameter_nm || '/' || front_nm || '/' || frequency_millionth_mhz "
                        "|| '/' || velocity_millionth_m_s || '/' || reference_diameter_nm || '/' "
                        "|| second_echo_number_millionth FROM ultrasonic_setting "
                        "WHERE position = 1"),
              "12700000/34925000/2250000/3080000000/3175000/2000000");
    EXPECT_EQ(raw.value("SELECT sound_path_nm || gain || coalesce(gain_millionth_db, 'none') "
                        "FROM reflector WHERE position = 2"),
              "3000000?none");
}

TEST_F(RoundTrip, ListsByNumber) {
    fill();
    Order order = sampleOrder();
    order.number = "O-0";
    ASSERT_THAT(archive_->save(order, 0, actor_), Succeeds());
    Part part = samplePart();
    part.number = "A-1";
    ASSERT_THAT(archive_->save(part, 0, actor_), Succeeds());
    Casting casting = sampleCasting();
    casting.serial = "R-1";
    ASSERT_THAT(archive_->save(casting, 0, actor_), Succeeds());
    const auto orders = archive_->orders();
    ASSERT_THAT(orders, Succeeds());
    ASSERT_EQ(orders->size(), 2u);
    EXPECT_EQ((*orders)[0].number, "O-0");
    EXPECT_THAT((*orders)[1].forbiddenKinds, ElementsAre(Kind::HotTear, Kind::Crack));
    const auto parts = archive_->parts();
    ASSERT_THAT(parts, Succeeds());
    ASSERT_EQ(parts->size(), 2u);
    EXPECT_EQ((*parts)[0].number, "A-1");
    const auto castings = archive_->castings();
    ASSERT_THAT(castings, Succeeds());
    ASSERT_EQ(castings->size(), 2u);
    EXPECT_EQ((*castings)[0].serial, "R-1");
    EXPECT_EQ((*castings)[1].heat, "H 204");
}

TEST_F(RoundTrip, SaysWhatIsNotThere) {
    fill();
    EXPECT_THAT(archive_->order("O-2"), FailsWith(ErrorKind::Input));
    EXPECT_THAT(archive_->part("P-1"), FailsWith(ErrorKind::Input));
    EXPECT_THAT(archive_->castingEntry("S-1"), FailsWith(ErrorKind::Input));
    EXPECT_THAT(archive_->casting("S-1"), FailsWith(ErrorKind::Input));
    EXPECT_THAT(archive_->zonePlan("P-9", 2), FailsWith(ErrorKind::Input));
    EXPECT_THAT(archive_->zonePlan("P-1", 1), FailsWith(ErrorKind::Input));
    EXPECT_THAT(archive_->draft(2), FailsWith(ErrorKind::Input));
    EXPECT_THAT(archive_->certificate(1), FailsWith(ErrorKind::Input));
    EXPECT_THAT(archive_->certificateFile(1), FailsWith(ErrorKind::Input));
    EXPECT_THAT(*archive_->zonePlanRevisions("P-1"), IsEmpty());
}

TEST_F(RoundTrip, KeepsEveryRevisionOfAZonePlan) {
    fill();
    ZonePlan second = samplePlan();
    second.revision = 2;
    second.zones.pop_back();
    second.zones[0].thickness = millimetres(38);
    ASSERT_THAT(archive_->add(second, actor_), Succeeds());
    EXPECT_THAT(archive_->add(second, actor_), FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(archive_->add(samplePlan(), actor_), FailsWith(ErrorKind::Conflict));
    second.revision = 4;
    EXPECT_THAT(archive_->add(second, actor_), FailsWith(ErrorKind::Input));
    second.revision = 0;
    EXPECT_THAT(archive_->add(second, actor_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(*archive_->zonePlanRevisions("P-9"), ElementsAre(1, 2));
    EXPECT_EQ(described(*archive_->zonePlan("P-9", 1)), described(samplePlan()));
    EXPECT_EQ(archive_->zonePlan("P-9", 2)->zones.size(), 1u);
    EXPECT_EQ(archive_->casting("S-17")->plan.revision, 1);
}

TEST_F(RoundTrip, RefusesValuesThatCannotBeRight) {
    fill();
    const auto head = *archive_->head();
    Order order = sampleOrder();
    order.number = " ";
    EXPECT_THAT(archive_->save(order, 0, actor_), FailsWith(ErrorKind::Input));
    order = sampleOrder();
    order.number = "O-2";
    order.certificateType = "3.1.B";
    EXPECT_THAT(archive_->save(order, 0, actor_), FailsWith(ErrorKind::Input));
    order = sampleOrder();
    order.number = "O-2";
    order.forbiddenKinds = {Kind::Crack, Kind::Crack};
    EXPECT_THAT(archive_->save(order, 0, actor_), FailsWith(ErrorKind::Input));
    Casting casting = sampleCasting();
    casting.serial = "S-18";
    casting.order = "O-9";
    EXPECT_THAT(archive_->save(casting, 0, actor_), FailsWith(ErrorKind::Input));
    casting = sampleCasting();
    casting.serial = "S-18";
    casting.zonePlanRevision = 7;
    EXPECT_THAT(archive_->save(casting, 0, actor_), FailsWith(ErrorKind::Input));
    ExaminationDraft draft = sampleDraft();
    draft.header.zone = "Z2";
    draft.casting = "S-18";
    EXPECT_THAT(archive_->save(draft, actor_), FailsWith(ErrorKind::Input));
    draft.casting = "S-17";
    draft.header.indications.emplace_back();
    EXPECT_THAT(archive_->save(draft, actor_), FailsWith(ErrorKind::Input));
    draft.header.indications.clear();
    draft.header.reflectors.emplace_back();
    EXPECT_THAT(archive_->save(draft, actor_), FailsWith(ErrorKind::Input));
    draft = sampleUltrasonicDraft();
    for (const UltrasonicTest& test : {UltrasonicTest{squareMillimetres(-1), {}, {}, {}},
                                       UltrasonicTest{{}, Testability{millimetres(-1), {}}, {}, {}},
                                       UltrasonicTest{{}, {}, millimetres(-1), {}}}) {
        draft.header.ultrasonic = test;
        EXPECT_THAT(archive_->save(draft, actor_), FailsWith(ErrorKind::Input));
    }
    EXPECT_THAT(archive_->save(sampleOrder(), 1, Actor{" "}), FailsWith(ErrorKind::Input));
    EXPECT_EQ(*archive_->head(), head);
}

TEST_F(RoundTrip, RefusesZonesThatCannotBeRight) {
    fill();
    const auto refused = [&](auto change) {
        ZonePlan plan = samplePlan();
        plan.revision = 2;
        change(plan);
        EXPECT_THAT(archive_->add(plan, actor_), FailsWith(ErrorKind::Input));
    };
    refused([](ZonePlan& plan) { plan.zones[1].name = "Z1"; });
    refused([](ZonePlan& plan) { plan.zones[1].name = ""; });
    refused([](ZonePlan& plan) { plan.zones[1].width = Length(); });
    refused([](ZonePlan& plan) { plan.zones[1].height = millimetres(-1); });
    refused([](ZonePlan& plan) { plan.zones[1].thickness = Length(); });
    refused([](ZonePlan& plan) { plan.zones[0].surface->id = ""; });
    refused([](ZonePlan& plan) { plan.zones[0].surface->width = Length(); });
    refused([](ZonePlan& plan) { plan.zones[0].surface->period = Length(); });
    refused([](ZonePlan& plan) {
        plan.part = "P-1";
        plan.revision = 1;
    });
    EXPECT_THAT(*archive_->zonePlanRevisions("P-9"), ElementsAre(1));
}

// A text that would not come back byte for byte is refused, never silently changed.
TEST_F(RoundTrip, RefusesTextThatWouldNotComeBack) {
    fill();
    ExaminationDraft draft = *archive_->draft(1);
    for (const std::string& text :
         {std::string("a\0b", 3), std::string("\xef\xbb\xbf") + "a", std::string("a\xef\xbf\xbe"),
          std::string("a\xef\xbf\xbf"), std::string("\xff"), std::string("\xed\xa0\x80")}) {
        draft.rows[0].reason = text;
        EXPECT_THAT(archive_->save(draft, actor_), FailsWith(ErrorKind::Input));
    }
    draft.rows[0].reason = "a\xef\xbb\xbf\xef\xbf\xbd\xf0\x9f\xbf\xbe\xc3\xa9 e\xcc\x81 \r\n";
    ASSERT_THAT(archive_->save(draft, actor_), Succeeds());
    EXPECT_EQ(reopened().draft(1)->rows[0].reason, draft.rows[0].reason);
}

TEST_F(RoundTrip, TakesQuotesAndSemicolonsAsText) {
    Order order = sampleOrder();
    order.number = "O'); DROP TABLE history; --";
    order.customer = "\"?\" :name $1 %1";
    ASSERT_THAT(archive_->save(order, 0, actor_), Succeeds());
    EXPECT_EQ(described(archive_->order(order.number)->value), described(order));
    EXPECT_THAT(findings(), IsEmpty());
}

// A field that is added to a record must be added to the archive, or it would be lost silently.
// These lists have to name every member, or they do not compile.
TEST(Fields, AreAllKnownToTheArchive) {
    const auto& [number, customer, customerOrder, type, language, forbidden, decision, rounding,
                 orderRemarks, terms] = Order();
    const auto& [partNumber, description, drawing, revision, material, grade, pattern, mass] =
        Part();
    const auto& [zone, zoneDescription, width, height, thickness, surface, tests, drawingMinimum,
                 otherTests] = PlannedZone();
    const auto& [method, stage, table, levels] = RequiredTest();
    const auto& [serial, heat, order, part, planRevision, series, marking, onReceipt] = Casting();
    const auto& [id, version, casting, header, rows, settings, reflectors, examinedBy, examinedOn,
                 procedure, remarks, conditions] = ExaminationDraft();
    const auto& [surfaceId, placement, surfaceWidth, surfaceHeight, period] = SurfacePlace();
    const auto& [area, reason, agreed] = NotExamined();
    const auto& [hZone, hMethod, hStage, cycle, repeat, hThickness, hSurface, hTable, hLevels,
                 hForbidden, none, notExamined, rejected, invalid, indications, ultrasonic, found] =
        Examination();
    const auto& [rowId, x, y, length, rowWidth, removed, angle, rowArea, kind, stated, relevance,
                 rowReason, unit] = TypedIndication();
    const auto& [fileCasting, filePart, fileOrder, filePlan, examinations, dossier, used] =
        CastingFile();
    // Those of settings, reflectors and ultrasonic tests are named by described().
    const auto& [smallestFbh, signalToNoise] = Testability();
    EXPECT_TRUE(number.empty() && partNumber.empty() && zone.empty() && table.empty() &&
                serial.empty() && casting.empty() && surfaceId.empty() && reason.empty() &&
                hZone.empty() && rowId.empty() && !smallestFbh && examinations.empty());
}

}  // namespace
}  // namespace model
