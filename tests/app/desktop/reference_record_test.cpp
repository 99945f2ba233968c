// SPDX-License-Identifier: Apache-2.0
// Orders, parts with zone plans, and castings at the reference workplace.
#include <QLabel>
#include <QListView>

#include "bench/castings_panel.h"
#include "looks/task_dialog.h"
#include "reference/versions_dialog.h"
#include "reference_fixture.h"

namespace app {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

class ReferenceRecordTest : public ReferenceTest {
protected:
    /// P-1 in view, which has a drawing.
    RegisterPage& openPart() {
        auto held = archive();
        auto part = held.part("P-1")->value;
        part.drawing = "D-100";
        EXPECT_TRUE(held.save(part, 1, model::Actor{"Office"}));
        auto& page = open("part");
        show(page, "P-1");
        return page;
    }
};

TEST_F(ReferenceRecordTest, AnOrderIsShownWithItsTermsTestsAndWitnessPoints) {
    signInAs(foundry::kQaManager);
    auto& page = open("order");
    page.makeNew();
    type(page, "number", "O-2");
    type(page, "customer", "Second Buyer");
    type(page, "certificate_type", "3.2");
    type(page, "language", "en");
    type(page, "forbidden_kinds", "crack, hot tear");
    type(page, "repair_cycles", "2");
    type(page, "residual_field", "0,4");
    auto* tests = page.rows("tests");
    page.tabs().setCurrentIndex(1);
    typeCell(*tests, 0, "zone", "Z1");
    typeCell(*tests, 0, "method", "MT");
    typeCell(*tests, 0, "stage", "finish machined");
    typeCell(*tests, 0, "table", "EN 1369:2012");
    typeCell(*tests, 0, "levels", "non-linear=SM 1, linear=LM 2, aligned=AM 2");
    auto* points = page.rows("witness_points");
    page.tabs().setCurrentIndex(2);
    typeCell(*points, 0, "what", "MT of Z1");
    typeCell(*points, 0, "kind", "hold");
    typeCell(*points, 0, "who", "Buyer's inspector");
    ASSERT_TRUE(save(page));

    const auto stored = archive().order("O-2");
    ASSERT_TRUE(stored) << stored.error().message();
    const auto& order = stored->value;
    EXPECT_EQ(order.customer, "Second Buyer");
    EXPECT_EQ(order.certificateType, "3.2");
    EXPECT_THAT(order.forbiddenKinds, ElementsAre(model::Kind::Crack, model::Kind::HotTear));
    EXPECT_EQ(order.terms.repairCycles, "2");
    EXPECT_EQ(order.terms.residualField, "0,4");  // as typed
    ASSERT_THAT(order.terms.tests, SizeIs(1));
    EXPECT_EQ(order.terms.tests[0].levels, "non-linear=SM 1, linear=LM 2, aligned=AM 2");
    ASSERT_THAT(order.terms.witnessPoints, SizeIs(1));
    EXPECT_EQ(order.terms.witnessPoints[0].kind, "hold");

    // All of it comes back into the form.
    show(page, "O-1");
    show(page, "O-2");
    EXPECT_EQ(page.form().text(page.form().find("residual_field")), "0,4");
    EXPECT_THAT(tests->rows(), SizeIs(1));
    EXPECT_THAT(points->rows(), SizeIs(1));
    EXPECT_FALSE(page.isChanged());
}

TEST_F(ReferenceRecordTest, AChangedOrderSaysFirstWhatItTouches) {
    signInAs(foundry::kQaManager);
    auto& page = open("order");
    show(page, "O-1");
    type(page, "certificate_type", "3.2");
    page.save();
    auto* touches = dialog<TaskDialog>("touchesDialog");
    ASSERT_NE(touches, nullptr);
    QString said;
    for (auto* label : touches->findChildren<QLabel*>()) said += label->text() + '\n';
    EXPECT_THAT(said.toStdString(), HasSubstr("C-1"));
    EXPECT_EQ(archive().order("O-1")->value.certificateType, "3.1");  // not yet

    touches->reject();
    EXPECT_TRUE(page.isChanged());
    EXPECT_EQ(archive().order("O-1")->value.certificateType, "3.1");

    page.save();
    touches = dialog<TaskDialog>("touchesDialog");
    ASSERT_NE(touches, nullptr);
    QSignalSpy saved(&page, &RegisterPage::saved);
    ASSERT_TRUE(doIt(touches));
    ASSERT_TRUE(eventually([&] { return !saved.isEmpty(); }));
    EXPECT_EQ(archive().order("O-1")->value.certificateType, "3.2");
}

TEST_F(ReferenceRecordTest, AnOrderedTestNeedsALevelOfItsTable) {
    signInAs(foundry::kQaManager);
    auto& page = open("order");
    page.makeNew();
    type(page, "number", "O-3");
    type(page, "customer", "Buyer");
    type(page, "certificate_type", "3.1");
    type(page, "language", "en");
    auto* tests = page.rows("tests");
    page.tabs().setCurrentIndex(1);
    typeCell(*tests, 0, "method", "MT");
    typeCell(*tests, 0, "stage", "as cast");
    typeCell(*tests, 0, "table", "EN 1369:2012");
    typeCell(*tests, 0, "levels", "non-linear=SM 9");
    page.save();
    ASSERT_TRUE(eventually([&] { return !tests->errorText().isEmpty(); }));
    EXPECT_THAT(tests->errorText().toStdString(), HasSubstr("SM 9"));
    EXPECT_FALSE(archive().order("O-3"));
}

TEST_F(ReferenceRecordTest, AChangedZoneIsTheNextRevisionAndCastingsStayOnTheirs) {
    signInAs(foundry::kQaManager);
    auto& page = openPart();
    auto* zones = page.rows("zones");
    auto* tests = page.rows("tests");
    ASSERT_THAT(zones->rows(), SizeIs(1));
    ASSERT_THAT(tests->rows(), SizeIs(1));
    page.tabs().setCurrentIndex(1);
    typeCell(*zones, 0, "drawing_minimum_mm", "36.5");
    typeCell(*zones, 0, "other_tests", "radiographic");
    typeCell(*zones, 1, "zone", "Z2");
    typeCell(*zones, 1, "width_mm", "120");
    typeCell(*zones, 1, "height_mm", "80");
    typeCell(*zones, 1, "thickness_mm", "40");
    ASSERT_TRUE(save(page));

    auto held = archive();
    EXPECT_THAT(*held.zonePlanRevisions("P-1"), ElementsAre(1, 2));
    const auto first = held.zonePlan("P-1", 1);
    const auto second = held.zonePlan("P-1", 2);
    ASSERT_TRUE(first && second);
    EXPECT_FALSE(first->zones[0].drawingMinimum);
    ASSERT_THAT(second->zones, SizeIs(2));
    EXPECT_EQ(second->zones[0].drawingMinimum, model::nanometres(36'500'000));
    EXPECT_THAT(second->zones[0].otherTests, ElementsAre("radiographic"));
    // What was not touched is as it was: place on the surface, test and levels.
    ASSERT_TRUE(second->zones[0].surface);
    EXPECT_EQ(second->zones[0].surface->id, first->zones[0].surface->id);
    EXPECT_EQ(second->zones[0].surface->width, first->zones[0].surface->width);
    ASSERT_THAT(second->zones[0].tests, SizeIs(1));
    EXPECT_EQ(second->zones[0].tests[0].levels, first->zones[0].tests[0].levels);
    EXPECT_EQ(held.castingEntry("C-1")->value.zonePlanRevision, 1);
    // The part itself was not changed.
    EXPECT_EQ(held.part("P-1")->version, 2);
    EXPECT_THAT(page.stateText().toStdString(), HasSubstr("zone plan revision 2"));

    page.versionsButton().click();
    auto* versions = dialog<VersionsDialog>();
    ASSERT_NE(versions, nullptr);
    const auto& revisions = versions->table();
    ASSERT_EQ(revisions.rowCount(), 2);
    const QString changes = revisions.item(0, 3)->text();
    EXPECT_THAT(changes.toStdString(), HasSubstr("36.5"));
    EXPECT_THAT(changes.toStdString(), HasSubstr("Z2"));
}

TEST_F(ReferenceRecordTest, AZonePlanIsRefusedWhereACellIsWrong) {
    signInAs(foundry::kQaManager);
    auto& page = openPart();
    auto* zones = page.rows("zones");
    page.tabs().setCurrentIndex(1);
    typeCell(*zones, 0, "thickness_mm", "0");
    typeCell(*zones, 0, "other_tests", "x-ray");
    page.save();
    EXPECT_THAT(zones->errorText().toStdString(), HasSubstr("above 0"));
    EXPECT_THAT(zones->errorText().toStdString(), HasSubstr("x-ray"));
    EXPECT_TRUE(page.isChanged());
    EXPECT_THAT(*archive().zonePlanRevisions("P-1"), ElementsAre(1));
}

TEST_F(ReferenceRecordTest, ATestOfAZoneThatIsNotThereIsRefused) {
    signInAs(foundry::kQaManager);
    auto& page = openPart();
    auto* tests = page.rows("tests");
    page.tabs().setCurrentIndex(2);
    typeCell(*tests, 0, "zone", "Z7");
    page.save();
    EXPECT_THAT(tests->errorText().toStdString(), HasSubstr("Z7"));
    EXPECT_THAT(*archive().zonePlanRevisions("P-1"), ElementsAre(1));
}

TEST_F(ReferenceRecordTest, ACastingStandsForASeries) {
    signInAs(foundry::kInspector);
    auto& page = open("casting");
    page.makeNew();
    type(page, "serial", "C-2");
    type(page, "heat", "H-2");
    type(page, "order", "O-1");
    type(page, "part", "P-1");
    type(page, "zone_plan_revision", "1");
    type(page, "series", "C-3, C-4");
    ASSERT_TRUE(save(page));
    const auto stored = archive().castingEntry("C-2");
    ASSERT_TRUE(stored) << stored.error().message();
    EXPECT_EQ(stored->value.series, "C-3, C-4");
    // The bench lists it at once.
    EXPECT_TRUE(eventually([&] {
        const auto* list = window_->bench().castings().findChild<QListView*>();
        return list && list->model()->rowCount() == 2;
    }));
}

TEST_F(ReferenceRecordTest, ACastingOfAnUnknownPartIsRefused) {
    signInAs(foundry::kInspector);
    auto& page = open("casting");
    page.makeNew();
    type(page, "serial", "C-5");
    type(page, "heat", "H-2");
    type(page, "order", "O-1");
    type(page, "part", "P-77");
    type(page, "zone_plan_revision", "1");
    page.save();
    EXPECT_TRUE(eventually([&] { return page.notice().isVisible(); }));
    EXPECT_THAT(page.notice().text().toStdString(), HasSubstr("P-77"));
    EXPECT_FALSE(archive().castingEntry("C-5"));
}

}  // namespace
}  // namespace app
