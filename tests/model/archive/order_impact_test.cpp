// SPDX-License-Identifier: Apache-2.0
// What a change of an order touches is shown before it is saved.
#include "archive/order_impact.h"

#include "lifecycle_fixture.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

class OrderChange : public LifecycleTest {
protected:
    [[nodiscard]] Order stored() const { return archive_->order("O-1")->value; }
    [[nodiscard]] OrderImpact impactOf(const Order& changed) const {
        const auto impact = whatOrderTouches(*archive_, changed);
        EXPECT_THAT(impact, Succeeds());
        return impact ? *impact : OrderImpact();
    }
};

TEST_F(OrderChange, ThatChangesNothingTouchesNothing) {
    signedCasting();
    const OrderImpact impact = impactOf(stored());
    EXPECT_THAT(impact.fields, IsEmpty());
    EXPECT_THAT(impact.castings, IsEmpty());
    Order other = stored();
    other.number = "O-9";
    EXPECT_THAT(whatOrderTouches(*archive_, other), FailsWith(ErrorKind::Input));
}

TEST_F(OrderChange, NamesTheFieldsAndTheCastings) {
    order();
    Casting second = sampleCasting();
    second.serial = "S-16";
    ASSERT_THAT(archive_->save(second, 0, actor_), Succeeds());
    sign(save(draft()));
    ExaminationDraft open = draft();
    open.header.stage = Stage::AsCast;
    save(open);
    Order changed = stored();
    changed.customer = "Second Buyer";
    changed.terms.item = "10";
    const OrderImpact impact = impactOf(changed);
    EXPECT_THAT(impact.fields, ElementsAre("Customer", "Item"));
    EXPECT_THAT(impact.errors, IsEmpty());
    ASSERT_THAT(impact.castings, SizeIs(2));
    EXPECT_EQ(impact.castings[0].serial, "S-16");
    EXPECT_THAT(impact.castings[0].drafts, IsEmpty());
    EXPECT_EQ(impact.castings[1].serial, "S-17");
    EXPECT_THAT(impact.castings[1].records, ElementsAre("Z1 MT finish machined"));
    EXPECT_THAT(impact.castings[1].drafts, ElementsAre("Z1 MT as cast"));
    // Nothing was saved.
    EXPECT_EQ(stored().customer, "First Buyer");
}

TEST_F(OrderChange, NamesWhatWaitsAndWhatIsReleased) {
    const std::int64_t number = presentedCasting();
    Order changed = stored();
    changed.remarks = "urgent";
    EXPECT_EQ(impactOf(changed).castings.at(0).waiting, number);
    ASSERT_THAT(release(number, qaManager_), Succeeds());
    EXPECT_EQ(impactOf(changed).castings.at(0).waiting, std::nullopt);
    EXPECT_EQ(impactOf(changed).castings.at(0).certificate, number);
}

TEST_F(OrderChange, NamesTestsThatItAsksForAndThatAreNotMade) {
    signedCasting();
    Order changed = stored();
    OrderedTest asked;
    asked.zone = "Z1";
    asked.method = "MT";
    asked.stage = "finish machined";
    asked.table = "EN 1369:2012";
    asked.levels = "non-linear=SM 1, linear=LM 1, aligned=AM 1";
    changed.terms.tests = {asked};
    const OrderImpact impact = impactOf(changed);
    EXPECT_THAT(impact.fields, ElementsAre("Ordered tests"));
    ASSERT_THAT(impact.castings.at(0).missing, SizeIs(1));
    EXPECT_EQ(impact.castings[0].missing[0].test, "Z1 MT finish machined by EN 1369:2012");
    EXPECT_FALSE(impact.castings[0].missing[0].already);
    changed.terms.tests[0].method = "XT";
    EXPECT_THAT(impactOf(changed).errors, SizeIs(1));
}

}  // namespace
}  // namespace model
