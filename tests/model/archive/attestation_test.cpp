// SPDX-License-Identifier: Apache-2.0
#include "archive/attestation.h"

#include <nlohmann/json.hpp>

#include "lifecycle_fixture.h"
#include "limits/cell_lines.h"

namespace model {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

class AttestedTables : public LifecycleTest {
protected:
    [[nodiscard]] LimitTable table(const std::string& id) const {
        const auto tables = archive_->tables();
        EXPECT_THAT(tables, Succeeds());
        const LimitTable* found = tables->find(id);
        return found ? *found : LimitTable();
    }
    [[nodiscard]] bool isAttested(const std::string& id) const {
        return archive_->tables()->isAttested(table(id));
    }
};

TEST_F(AttestedTables, AreThoseThatAQaManagerSignedFor) {
    const LimitTable before = table("EN 1369:2012");
    EXPECT_FALSE(isAttested("EN 1369:2012"));
    ASSERT_THAT(attest(*archive_, before.digest, " library copy 3 ", qaManager_), Succeeds());
    EXPECT_TRUE(isAttested("EN 1369:2012"));
    EXPECT_FALSE(isAttested("EN 1369:1996"));
    const auto all = attestations(reopened());
    ASSERT_THAT(all, Succeeds());
    ASSERT_THAT(*all, SizeIs(1));
    EXPECT_EQ(all->front().tableDigest, before.digest);
    EXPECT_EQ(all->front().companyCopy, "library copy 3");
    EXPECT_EQ(all->front().act.person, foundry::kQaManager);
    EXPECT_EQ(all->front().act.name, "Quentin Marsh");
    EXPECT_THAT(findings(), IsEmpty());
}

// The signed row, read by another JSON reader, says what was in view.
TEST_F(AttestedTables, SayHowManyCellsOfEachGradeWereInView) {
    const LimitTable attested = table("ASTM A903/A903M-99 MT");
    ASSERT_THAT(attest(*archive_, attested.digest, "copy 1", qaManager_), Succeeds());
    const auto history = archive_->history(archive_->head()->sequence);
    const auto content = nlohmann::json::parse(history->front().bytes)["content"];
    EXPECT_EQ(content["revision"], 1);
    EXPECT_EQ(content["sha256"], attested.digest);
    EXPECT_EQ(content["company_copy"], "copy 1");
    EXPECT_EQ(content["signer"], foundry::kQaManager);
    std::size_t cells = 0;
    for (const auto& [grade, count] : content["cells"].items()) cells += count.get<std::size_t>();
    EXPECT_EQ(cells, cellsOf(attested).size());
    // Nothing of an unknown cell becomes known by attesting.
    EXPECT_GT(content["cells"]["unknown"].get<int>(), 0);
    EXPECT_EQ(table("ASTM A903/A903M-99 MT").rows.known, Known::Unknown);
}

TEST_F(AttestedTables, AreNotAttestedByOthersOrWithoutACopyOrTwice) {
    const std::string digest = table("EN 1369:2012").digest;
    for (const SignedIn* other : {&inspector_, &level3_, &thirdParty_})
        EXPECT_THAT(attest(*archive_, digest, "copy", *other), FailsWith(ErrorKind::Refused));
    EXPECT_THAT(attest(*archive_, digest, " ", qaManager_), FailsWith(ErrorKind::Input));
    EXPECT_THAT(attest(*archive_, std::string(64, '0'), "copy", qaManager_),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(attest(*archive_, "EN 1369:2012", "copy", qaManager_), FailsWith(ErrorKind::Input));
    EXPECT_FALSE(isAttested("EN 1369:2012"));
    ASSERT_THAT(attest(*archive_, digest, "copy", qaManager_), Succeeds());
    Archive other = reopened();
    const auto twice = attest(other, digest, "copy", signedIn(foundry::kWorksManager));
    ASSERT_THAT(twice, FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(twice.error().message(), HasSubstr("by Quentin Marsh"));
}

}  // namespace
}  // namespace model
