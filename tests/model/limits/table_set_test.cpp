// SPDX-License-Identifier: Apache-2.0
#include "limits/table_set.h"

#include <cstdlib>
#include <gmock/gmock.h>
#include <map>
#include <optional>
#include <set>
#include <unistd.h>

#include "base/digest.h"
#include "limits/cell_lines.h"
#include "limits/parser.h"
#include "limits/shipped_tables.h"
#include "read_data.h"

namespace model {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

/// A folder of its own for a test, removed with what is in it.
class TableFolder : public testing::Test {
protected:
    void SetUp() override {
        std::string name = (fs::temp_directory_path() / "fettlemark-tables-XXXXXX").string();
        ASSERT_NE(mkdtemp(name.data()), nullptr);
        folder_ = name;
        fs::permissions(folder_, static_cast<fs::perms>(0755));  // mkdtemp lets the owner in only
    }
    void TearDown() override { fs::remove_all(folder_); }

    void write(const std::string& name, const std::string& text) const {
        std::ofstream(folder_ / name, std::ios::binary) << text;
    }
    [[nodiscard]] std::string path(const std::string& name) const {
        return (folder_ / name).string();
    }

    fs::path folder_;
};

std::string changed(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}

/// As somebody whom the file system's permissions hold back, also where the tests run as root.
template <class Do>
auto withoutPrivilege(Do work) {
    const uid_t before = geteuid();
    if (before == 0) {
        EXPECT_EQ(seteuid(65534), 0);
    }
    auto result = work();
    if (before == 0) {
        EXPECT_EQ(seteuid(0), 0);
    }
    return result;
}

TEST(ShippedTables, AreThoseOfTheRegister) {
    const auto set = TableSet::shipped();
    ASSERT_TRUE(set.ok()) << set.error().message();
    std::set<std::string> surface;
    std::set<std::string> ultrasonic;
    for (const LimitTable* table : set->all())
        (table->method == Method::Ultrasonic ? ultrasonic : surface).insert(table->id);
    EXPECT_EQ(ultrasonic, (std::set<std::string>{
                              "EN 12680-3:2003", "ISO 4992-1:2020", "ASTM A609-91(2007) A SI",
                              "ASTM A609-91(2007) A inch", "ASTM A609-91(2007) B SI",
                              "ASTM A609-91(2007) B inch", "ASME B31.3-2024 UT"}));
    EXPECT_EQ(surface,
              (std::set<std::string>{
                  "EN 1369:2012", "EN 1369:1996", "ISO 4986:2020", "EN 1371-1:2011",
                  "ISO 4987:2020", "ASME B16.34-2020 App. II", "ASME B16.34-2020 App. III",
                  "ASME VIII-1:2017 App. 6", "ASME VIII-1:2017 App. 8",
                  "ASME VIII-1:2017 App. 7 PT", "ASTM A903/A903M-99 MT", "ASTM A903/A903M-99 PT",
                  "ISO 23278:2015", "ISO 23277:2015", "IACS Rec. 69 MT", "IACS Rec. 69 PT"}));
}

TEST(ShippedTables, AreTheFilesByteForByteWithTheirDigest) {
    const fs::path folder = "../../../model/limits/tables";
    std::size_t files = 0;
    for (const auto& entry : fs::directory_iterator(folder))
        files += entry.path().extension() == ".table" ? 1 : 0;
    EXPECT_EQ(files, shippedTables().size());
    const auto set = TableSet::shipped();
    ASSERT_TRUE(set.ok());
    std::set<std::string> digests;
    for (const LimitTable* table : set->all()) digests.insert(table->digest);
    for (const EmbeddedFile& shipped : shippedTables()) {
        const std::string bytes = readFile(folder / shipped.name);
        EXPECT_EQ(bytes, shipped.text) << shipped.name;
        EXPECT_TRUE(digests.contains(toHex(sha256(bytes)))) << shipped.name;
    }
}

TEST(ShippedTables, StateASourceForEveryCellAndDefinition) {
    const auto set = TableSet::shipped();
    ASSERT_TRUE(set.ok());
    for (const LimitTable* table : set->all()) {
        SCOPED_TRACE(table->id);
        EXPECT_FALSE(table->standard.empty() || table->edition.empty());
        std::vector<const Source*> sources = {&table->joins.source, &table->frame.source,
                                              &table->forbiddenSource};
        if (table->method == Method::Ultrasonic) {
            sources.insert(sources.end(), {&table->rim.source, &table->notMeasurable.source,
                                           &table->clusters.source});
            if (table->recording.empty()) sources.push_back(&table->recordingSource);
        } else {
            sources.insert(sources.end(), {&table->ratio.source, &table->threshold.source,
                                           &table->rows.source, &table->summedSource});
        }
        for (const RecordingLimit& limit : table->recording)
            for (const RecordingLimit::Row& row : limit.rows) sources.push_back(&row.cell.source);
        for (const Rule& rule : table->rules)
            for (const Condition& condition : rule.conditions) sources.push_back(&condition.source);
        for (const Source* source : sources) EXPECT_FALSE(source->locator.empty());
        for (const Rule& rule : table->rules)
            for (const RuleRow& row : rule.rows)
                EXPECT_FALSE(row.limit.source.locator.empty()) << row.line;
    }
}

// What SOURCES.md says of the tables is what a person attests line by line.
TEST(ShippedTables, HaveAsManyCellsOfEachGradeAsTheirSourcesSay) {
    const std::string sources = readFile("../../../model/limits/SOURCES.md");
    const auto set = TableSet::shipped();
    ASSERT_TRUE(set.ok());
    for (const LimitTable* table : set->all()) {
        std::map<std::optional<Grade>, int> counts;
        for (const CellLine& line : cellsOf(*table))
            if (line.what != "materials") ++counts[line.grade];
        std::string row = "| " + table->id;
        for (const std::optional<Grade> grade :
             {std::optional(Grade::Read), std::optional(Grade::ReadTwice),
              std::optional(Grade::Partly), std::optional(Grade::Memory), std::optional<Grade>()})
            row += " | " + std::to_string(counts[grade]);
        EXPECT_THAT(sources, HasSubstr("\n" + row + " |\n"));
    }
}

TEST(ShippedTables, AreAttestedByNobody) {
    auto set = TableSet::shipped();
    ASSERT_TRUE(set.ok());
    const LimitTable* table = set->find("EN 1369:2012");
    ASSERT_NE(table, nullptr);
    EXPECT_FALSE(set->isAttested(*table));
    set->setAttested(table->digest);
    EXPECT_TRUE(set->isAttested(*table));
    EXPECT_FALSE(set->isAttested(*set->find("EN 1369:1996")));
}

TEST(TableSet, KnowsNothingOfWhatWasNotAdded) {
    const TableSet set;
    EXPECT_EQ(set.find("EN 1369:2012"), nullptr);
    EXPECT_EQ(set.find("EN 1369:2012", 1), nullptr);
    EXPECT_TRUE(set.all().empty());
}

TEST_F(TableFolder, AddsEveryTableOfAFolderAndNothingElse) {
    const std::string good = readData("good.table");
    write("b.table", changed(good, "Example 1:2000", "Example 2:2000"));
    write("a.table", good);
    write("a.table.bak", "no table");
    write("notes.txt", "no table");
    auto set = TableSet::shipped();
    ASSERT_TRUE(set.ok());
    const std::size_t before = set->all().size();
    const auto added = set->addFolder(folder_.string());
    ASSERT_TRUE(added.ok()) << added.error().message();
    EXPECT_EQ(set->all().size(), before + 2);
    ASSERT_NE(set->find("Example 1:2000"), nullptr);
    EXPECT_EQ(set->find("Example 1:2000")->file, path("a.table"));
    EXPECT_EQ(set->find("Example 1:2000")->digest, toHex(sha256(good)));
    EXPECT_NE(set->find("Example 2:2000"), nullptr);
}

TEST_F(TableFolder, TheHighestRevisionWinsWhateverTheOrder) {
    const std::string good = readData("good.table");
    write("a.table", changed(good, "revision 1", "revision 10"));
    write("b.table", changed(good, "revision 1", "revision 2"));
    write("c.table", good);
    TableSet set;
    ASSERT_TRUE(set.addFolder(folder_.string()).ok());
    ASSERT_NE(set.find("Example 1:2000"), nullptr);
    EXPECT_EQ(set.find("Example 1:2000")->revision, 10);
    ASSERT_NE(set.find("Example 1:2000", 2), nullptr);
    EXPECT_EQ(set.find("Example 1:2000", 2)->file, path("b.table"));
    EXPECT_EQ(set.find("Example 1:2000", 3), nullptr);
    EXPECT_EQ(set.all().size(), 1U);
}

TEST_F(TableFolder, TheSameTableTwiceIsNoConflict) {
    write("a.table", readData("good.table"));
    write("b.table", readData("good.table"));
    TableSet set;
    EXPECT_TRUE(set.addFolder(folder_.string()).ok());
    EXPECT_TRUE(set.addFolder(folder_.string()).ok());
    EXPECT_EQ(set.all().size(), 1U);
}

TEST_F(TableFolder, TheSameRevisionWithOtherBytesNamesBothPlaces) {
    write("a.table", readData("good.table"));
    write("b.table", changed(readData("good.table"), "3 \"table 2, b\"", "3.5 \"table 2, b\""));
    TableSet set;
    const auto added = set.addFolder(folder_.string());
    ASSERT_FALSE(added.ok());
    EXPECT_EQ(added.error().kind, ErrorKind::Input);
    EXPECT_EQ(added.error().place, path("b.table"));
    EXPECT_THAT(added.error().message(), HasSubstr(path("a.table")));
    EXPECT_TRUE(set.all().empty());
}

TEST_F(TableFolder, AShippedRevisionCannotBeReplaced) {
    std::string text;
    for (const EmbeddedFile& shipped : shippedTables())
        if (shipped.name == "en_1369_2012.table") text = shipped.text;
    write("mine.table", text + "\n# changed\n");
    auto set = TableSet::shipped();
    ASSERT_TRUE(set.ok());
    const auto added = set->addFolder(folder_.string());
    ASSERT_FALSE(added.ok());
    EXPECT_EQ(added.error().kind, ErrorKind::Input);
    EXPECT_THAT(added.error().message(), HasSubstr("en_1369_2012.table"));
}

TEST_F(TableFolder, OneBrokenTableAddsNothingAndNamesItsLine) {
    write("a.table", readData("good.table"));
    write("b.table", readData("broken_band_gap.table"));
    TableSet set;
    const auto added = set.addFolder(folder_.string());
    ASSERT_FALSE(added.ok());
    EXPECT_EQ(added.error().place, path("b.table") + ":30");
    EXPECT_TRUE(set.all().empty());
}

TEST_F(TableFolder, AFolderThatIsNotThereIsWrongInput) {
    TableSet set;
    const auto added = set.addFolder(path("missing"));
    ASSERT_FALSE(added.ok());
    EXPECT_EQ(added.error().kind, ErrorKind::Input);
    EXPECT_EQ(added.error().place, path("missing"));
    write("file", "");
    EXPECT_EQ(set.addFolder(path("file")).error().kind, ErrorKind::Input);
    EXPECT_EQ(set.addFolder(path("file/below")).error().kind, ErrorKind::Input);
}

TEST_F(TableFolder, AFolderThatCannotBeReadIsRefused) {
    fs::permissions(folder_, fs::perms::none);
    TableSet set;
    const auto added = withoutPrivilege([&] { return set.addFolder(folder_.string()); });
    fs::permissions(folder_, fs::perms::owner_all);
    ASSERT_FALSE(added.ok());
    EXPECT_EQ(added.error().kind, ErrorKind::Refused);
    EXPECT_EQ(added.error().place, folder_.string());
}

TEST_F(TableFolder, AFileThatCannotBeReadIsRefused) {
    write("a.table", readData("good.table"));
    fs::permissions(path("a.table"), fs::perms::none);
    TableSet set;
    const auto added = withoutPrivilege([&] { return set.addFolder(folder_.string()); });
    ASSERT_FALSE(added.ok());
    EXPECT_EQ(added.error().kind, ErrorKind::Refused);
    EXPECT_EQ(added.error().place, path("a.table"));
}

TEST_F(TableFolder, WhatIsNoFileIsNotReadAsOne) {
    fs::create_directory(path("a.table"));
    TableSet set;
    EXPECT_EQ(set.addFolder(folder_.string()).error().kind, ErrorKind::Input);
    fs::remove(path("a.table"));
    fs::create_symlink("nowhere", path("b.table"));
    EXPECT_EQ(set.addFolder(folder_.string()).error().kind, ErrorKind::Input);
}

TEST_F(TableFolder, AHugeFileIsRefusedWithoutReadingAllOfIt) {
    write("a.table", "");
    fs::resize_file(path("a.table"), std::uintmax_t{1} << 36);  // sparse: 64 GiB of zeros
    TableSet set;
    const auto added = set.addFolder(folder_.string());
    ASSERT_FALSE(added.ok());
    EXPECT_THAT(added.error().message(), HasSubstr("larger than 1000000 bytes"));
}

}  // namespace
}  // namespace model
