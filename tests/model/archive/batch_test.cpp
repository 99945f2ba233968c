// SPDX-License-Identifier: Apache-2.0
// Writes that are stored together or not at all.
#include "archive/batch.h"

#include "archive/archive_access.h"
#include "archive_fixture.h"

namespace model {
namespace {

using testing::IsEmpty;
using testing::SizeIs;

class BatchTest : public ArchiveTest {
protected:
    static Part part(const std::string& number) {
        Part part = samplePart();
        part.number = number;
        return part;
    }
    [[nodiscard]] std::size_t partsSeenByOthers() const { return reopened().parts()->size(); }
};

TEST_F(BatchTest, IsStoredWhole) {
    {
        auto batch = Batch::begin(*archive_);
        ASSERT_THAT(batch, Succeeds());
        EXPECT_THAT(archive_->save(part("P-1"), 0, actor_), Succeeds());
        EXPECT_THAT(archive_->save(part("P-2"), 0, actor_), Succeeds());
        EXPECT_THAT(*archive_->parts(), SizeIs(2));
        EXPECT_EQ(partsSeenByOthers(), 0U);
        EXPECT_THAT((*batch)->keep(), Succeeds());
        EXPECT_EQ(partsSeenByOthers(), 2U);
    }
    EXPECT_EQ(partsSeenByOthers(), 2U);
    EXPECT_THAT(archive_->save(part("P-3"), 0, actor_), Succeeds());
    EXPECT_EQ(partsSeenByOthers(), 3U);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(BatchTest, IsTakenBackWhole) {
    const auto before = archive_->head();
    {
        auto batch = Batch::begin(*archive_);
        ASSERT_THAT(batch, Succeeds());
        EXPECT_THAT(archive_->save(part("P-1"), 0, actor_), Succeeds());
        EXPECT_THAT(archive_->save(part("P-2"), 0, actor_), Succeeds());
    }
    EXPECT_THAT(*archive_->parts(), IsEmpty());
    EXPECT_EQ(archive_->head()->sequence, before->sequence);
    EXPECT_EQ(archive_->head()->hash, before->hash);
    EXPECT_THAT(archive_->save(part("P-1"), 0, actor_), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(BatchTest, LosesOnlyTheSaveThatFails) {
    auto batch = Batch::begin(*archive_);
    ASSERT_THAT(batch, Succeeds());
    EXPECT_THAT(archive_->save(part("P-1"), 0, actor_), Succeeds());
    EXPECT_THAT(archive_->save(part("P-1"), 0, actor_), FailsWith(ErrorKind::Conflict));
    Casting lost = sampleCasting();
    lost.part = "P-9";
    EXPECT_FALSE(archive_->save(lost, 0, actor_).ok());
    EXPECT_THAT(archive_->save(part("P-2"), 0, actor_), Succeeds());
    EXPECT_THAT((*batch)->keep(), Succeeds());
    batch->reset();
    EXPECT_EQ(partsSeenByOthers(), 2U);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(BatchTest, IsOnlyOneAtATime) {
    auto batch = Batch::begin(*archive_);
    ASSERT_THAT(batch, Succeeds());
    EXPECT_THAT(Batch::begin(*archive_), FailsWith(ErrorKind::Refused));
    // Refusing it did not end the first.
    EXPECT_THAT(archive_->save(part("P-1"), 0, actor_), Succeeds());
    EXPECT_THAT((*batch)->keep(), Succeeds());
    batch->reset();
    EXPECT_EQ(partsSeenByOthers(), 1U);
    auto reading = Archive::openForReading(path(), clock_);
    ASSERT_THAT(reading, Succeeds());
    EXPECT_THAT(Batch::begin(*reading), FailsWith(ErrorKind::Refused));
}

TEST_F(BatchTest, StoresNothingMoreOnceTheDatabaseTookItBack) {
    auto batch = Batch::begin(*archive_);
    ASSERT_THAT(batch, Succeeds());
    EXPECT_THAT(archive_->save(part("P-1"), 0, actor_), Succeeds());
    // As where the disk is full: the whole transaction is gone, and a later save must not stand
    // alone.
    const Connection& connection = ArchiveAccess::connection(*archive_);
    ASSERT_THAT(connection.execute("ROLLBACK"), Succeeds());
    EXPECT_THAT(archive_->save(part("P-2"), 0, actor_), FailsWith(ErrorKind::Refused));
    EXPECT_THAT((*batch)->keep(), FailsWith(ErrorKind::Refused));
    batch->reset();
    EXPECT_EQ(partsSeenByOthers(), 0U);
}

}  // namespace
}  // namespace model
