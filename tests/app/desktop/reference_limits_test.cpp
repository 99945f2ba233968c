// SPDX-License-Identifier: Apache-2.0
// What runs out, and the sets of test conditions with their attestation, at the reference
// workplace.
#include <QDate>
#include <QPlainTextEdit>
#include <QScrollBar>

#include "archive/attestation.h"
#include "looks/marked_lines.h"
#include "looks/task_dialog.h"
#include "reference/conditions_view.h"
#include "reference/runs_out_view.h"
#include "reference_fixture.h"
#include "registers/condition_attestation.h"
#include "release/attestation_view.h"

namespace app {
namespace {

using testing::HasSubstr;
using testing::SizeIs;

std::string inDays(int days) {
    return QDate::currentDate().addDays(days).toString(Qt::ISODate).toStdString();
}

class ReferenceLimitsTest : public ReferenceTest {
protected:
    void keepMeter(const std::string& id, int daysLeft, const std::string& state = "in use") {
        auto held = archive();
        model::Equipment meter;
        meter.id = id;
        meter.kind = "light meter";
        meter.calibrationDue = inDays(daysLeft);
        meter.state = state;
        const auto saved = model::saveEntry(held, meter, 0, model::Actor{"Office"});
        ASSERT_TRUE(saved) << saved.error().message();
    }
    RunsOutView& runsOut() {
        window_->goTo(MainWindow::Reference);
        auto& view = window_->reference().runsOut();
        window_->reference().goTo("runs out");
        view.reload();
        return view;
    }
    ConditionsView& conditions(const char* set) {
        window_->goTo(MainWindow::Reference);
        window_->reference().goTo("condition set");
        auto& view = window_->reference().conditions();
        QSignalSpy shown(&view, &ConditionsView::shown);
        view.reload();
        EXPECT_TRUE(eventually([&] { return !shown.isEmpty(); }));
        view.list().choose(QString(set));
        return view;
    }
};

TEST_F(ReferenceLimitsTest, OverdueThingsComeFirstWithWordAndMark) {
    keepMeter("E-1", 30);
    keepMeter("E-2", -3);
    keepMeter("E-3", 0);
    keepMeter("E-4", 61);               // after the 60 days
    keepMeter("E-5", -9, "withdrawn");  // not used any more
    auto& view = runsOut();
    ASSERT_TRUE(eventually([&] { return view.table().rowCount() == 3; }));
    EXPECT_EQ(view.overdue(), 1);
    EXPECT_THAT(view.table().item(0, 3)->text().toStdString(), HasSubstr("E-2"));
    EXPECT_THAT(view.table().item(0, 0)->text().toStdString(), HasSubstr("overdue"));
    EXPECT_THAT(view.table().item(1, 3)->text().toStdString(), HasSubstr("E-3"));
    EXPECT_THAT(view.table().item(1, 0)->text().toStdString(), HasSubstr("last day"));
    EXPECT_THAT(view.table().item(2, 0)->text().toStdString(), HasSubstr("30"));
    EXPECT_EQ(view.table().item(0, 1)->text().toStdString(), inDays(-3));
    for (int row = 0; row < 3; ++row) EXPECT_FALSE(view.table().item(row, 0)->icon().isNull());
    EXPECT_NE(view.table().item(0, 0)->foreground(), view.table().item(1, 0)->foreground());
    EXPECT_THAT(window_->reference().places().item(0)->text().toStdString(),
                HasSubstr("1 overdue"));
}

TEST_F(ReferenceLimitsTest, ALineOfWhatRunsOutLeadsToItsEntry) {
    keepMeter("E-1", 30);
    keepMeter("E-2", -3);
    auto& view = runsOut();
    ASSERT_TRUE(eventually([&] { return view.table().rowCount() == 2; }));
    view.table().setFocus();
    view.table().setCurrentCell(0, 0);
    QTest::keyClick(&view.table(), Qt::Key_Return);
    EXPECT_EQ(window_->reference().current(), "equipment");
    auto* page = window_->reference().page("equipment");
    ASSERT_NE(page, nullptr);
    EXPECT_TRUE(eventually([&] { return page->form().text(0) == "E-2"; }));
}

TEST_F(ReferenceLimitsTest, ASetIsAttestedOnceEveryRuleWasInView) {
    auto& view = conditions("ISO 3059:2012");
    EXPECT_GT(view.rules().rowCount(), 3);
    EXPECT_THAT(view.stateText().toStdString(), HasSubstr("Not attested"));
    EXPECT_FALSE(view.attestButton().isEnabled());
    signInAs(foundry::kInspector);
    EXPECT_FALSE(view.attestButton().isEnabled());
    signInAs(foundry::kQaManager);
    auto& bar = *view.rules().verticalScrollBar();
    ASSERT_TRUE(eventually([&] {
        bar.setValue(bar.value() + 20);  // line by line, to the end
        return view.attestButton().isEnabled();
    })) << view.stateText().toStdString();
    view.attest();
    auto* asked = dialog<TaskDialog>("attestConditions");
    ASSERT_NE(asked, nullptr);
    EXPECT_FALSE(asked->actButton().isEnabled());  // against which copy?
    asked->findChild<QLineEdit*>("companyCopy")->setText("copy 3");
    ASSERT_TRUE(doIt(asked));
    EXPECT_TRUE(eventually([&] { return view.stateText().contains("Attested"); }));

    auto held = archive();
    auto stored = model::entries<model::ConditionSetAttestation>(held);
    ASSERT_TRUE(stored);
    ASSERT_THAT(*stored, SizeIs(1));
    EXPECT_EQ(stored->front().value.set, "ISO 3059:2012");
    EXPECT_EQ(stored->front().value.companyCopy, "copy 3");
    EXPECT_EQ(stored->front().value.sha256, model::conditionSet("ISO 3059:2012")->digest);

    view.withdraw();
    auto* withdrawal = dialog<TaskDialog>("withdrawConditions");
    ASSERT_NE(withdrawal, nullptr);
    withdrawal->findChild<QPlainTextEdit*>("reason")->setPlainText("wrong edition");
    ASSERT_TRUE(doIt(withdrawal));
    EXPECT_TRUE(eventually([&] { return view.stateText().contains("wrong edition"); }));
    stored = model::entries<model::ConditionSetAttestation>(held);
    ASSERT_TRUE(stored);
    EXPECT_EQ(stored->front().value.state, "withdrawn");
    EXPECT_EQ(stored->front().version, 2);
}

TEST_F(ReferenceLimitsTest, EveryRuleIsShownWithPlaceAndGrade) {
    auto& view = conditions("ISO 3059:2012");
    for (const auto& set : model::builtInConditionSets()) {
        view.list().choose(QString::fromStdString(set.id));
        ASSERT_EQ(view.rules().rowCount(), static_cast<int>(set.rules.size())) << set.id;
        for (int row = 0; row < view.rules().rowCount(); ++row) {
            for (const int column : {0, 1, 4, 5, 6}) {
                EXPECT_FALSE(view.rules().item(row, column)->text().isEmpty())
                    << set.id << " rule " << row << " column " << column;
            }
        }
    }
    view.list().choose(QString("ISO 3059:2012"));
    EXPECT_EQ(view.rules().item(0, 2)->text(), "at least 10 W/m2");
}

TEST_F(ReferenceLimitsTest, LimitTablesAttestedAtOneWorkplaceAreSoAtTheOther) {
    window_->goTo(MainWindow::Reference);
    window_->reference().goTo("limit table");
    auto& here = window_->reference().limitTables();
    auto& there = window_->release().attestation();
    EXPECT_TRUE(here.isVisible());
    ASSERT_TRUE(eventually([&] { return here.list().count() > 0; }));
    EXPECT_EQ(here.list().count(), there.list().count());
}

}  // namespace
}  // namespace app
