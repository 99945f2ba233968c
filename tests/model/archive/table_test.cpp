// SPDX-License-Identifier: Apache-2.0
#include "archive_fixture.h"
#include "base/digest.h"
#include "limits/shipped_tables.h"
#include "raw_database.h"

namespace model {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

class Tables : public ArchiveTest {
protected:
    /// A purchaser's own table: a shipped one under another name and revision.
    static std::string ownTable(int revision) {
        std::string text;
        for (const EmbeddedFile& table : shippedTables())
            if (table.name == "en_1369_2012.table") text = table.text;
        replace(text, "id         \"EN 1369:2012\"", "id         \"Works 7\"");
        replace(text, "revision   1", "revision   " + std::to_string(revision));
        return text;
    }
    static void replace(std::string& text, const std::string& what, const std::string& with) {
        const auto at = text.find(what);
        ASSERT_NE(at, std::string::npos) << what;
        text.replace(at, what.size(), with);
    }
};

TEST_F(Tables, OfTheProgramAreAlwaysThere) {
    const auto tables = archive_->tables();
    ASSERT_THAT(tables, Succeeds());
    EXPECT_NE(tables->find("EN 1369:2012"), nullptr);
    EXPECT_EQ(tables->find("Works 7"), nullptr);
}

TEST_F(Tables, AreKeptWithEveryRevisionAndByteForByte) {
    const std::string first = ownTable(1);
    const std::string second = ownTable(2);
    ASSERT_THAT(archive_->addTable(second, "works_7_2.table", actor_), Succeeds());
    ASSERT_THAT(archive_->addTable(first, "works_7.table", actor_), Succeeds());
    const auto tables = reopened().tables();
    ASSERT_THAT(tables, Succeeds());
    ASSERT_NE(tables->find("Works 7"), nullptr);
    EXPECT_EQ(tables->find("Works 7")->revision, 2);
    ASSERT_NE(tables->find("Works 7", 1), nullptr);
    EXPECT_EQ(tables->find("Works 7", 1)->digest, toHex(sha256(first)));
    EXPECT_FALSE(tables->isAttested(*tables->find("Works 7")));
    RawDatabase raw(path());
    EXPECT_EQ(raw.value("SELECT content FROM limit_table WHERE revision = 1"), first);
    EXPECT_EQ(raw.value("SELECT name FROM limit_table WHERE revision = 1"), "works_7.table");
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Tables, AreAddedOnceAndNeverReplaced) {
    std::string text = ownTable(1);
    ASSERT_THAT(archive_->addTable(text, "works_7.table", actor_), Succeeds());
    const Head head = *archive_->head();
    EXPECT_THAT(archive_->addTable(text, "elsewhere.table", actor_), Succeeds());
    EXPECT_EQ(*archive_->head(), head);
    const auto changed = archive_->addTable(text + "\n", "works_7.table", actor_);
    ASSERT_THAT(changed, FailsWith(ErrorKind::Input));
    EXPECT_THAT(changed.error().message(), HasSubstr("new revision"));
    EXPECT_EQ(*archive_->head(), head);
}

TEST_F(Tables, AreRefusedWhereTheyAreBroken) {
    const auto broken = archive_->addTable("fettlemark-table 1\nnonsense\n", "b.table", actor_);
    ASSERT_THAT(broken, FailsWith(ErrorKind::Input));
    EXPECT_THAT(broken.error().message(), HasSubstr("b.table:"));
    EXPECT_EQ(archive_->head()->sequence, 2);
}

TEST_F(Tables, ThatWereAlteredAreNotUsed) {
    ASSERT_THAT(archive_->addTable(ownTable(1), "works_7.table", actor_), Succeeds());
    RawDatabase raw(path());
    raw.dropTriggers();
    ASSERT_EQ(raw.run("UPDATE limit_table SET content = replace(content, ' 1.5 ', ' 9.5 ')"),
              SQLITE_OK);
    EXPECT_THAT(archive_->tables(), FailsWith(ErrorKind::Damaged));
    ASSERT_EQ(raw.run("DELETE FROM limit_table"), SQLITE_OK);
    EXPECT_THAT(findings(),
                testing::Contains(HasSubstr("limit table Works 7 revision 1: is gone")));
}

}  // namespace
}  // namespace model
