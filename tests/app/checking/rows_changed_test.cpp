// SPDX-License-Identifier: Apache-2.0
// Every column of every table, and rows that are taken out, put in or exchanged. Tables and columns
// come from the database itself, so that a table of a later schema is changed here, too.
#include "changed_archive.h"

namespace app {
namespace {

/// Every table that holds evidence; each has to have rows, or nothing in it could be changed.
class RowsChanged : public ChangedArchive {
protected:
    void SetUp() override {
        ChangedArchive::SetUp();
        Forger forger(path(), random_);
        tables_ = forger.tables(kNoEvidence);
        ASSERT_GE(tables_.size(), 40U);
        for (const Table& table : tables_)
            EXPECT_GT(forger.rowCount(table), 0U)
                << table.name << ": let the busy archive have one";
    }

    /// Changes every column of each third table, from `first` on.
    void changeFields(std::size_t first) {
        for (std::size_t i = first; i < tables_.size(); i += 3)
            for (const Column& column : tables_[i].columns)
                for (int time = 0; time < 3; ++time)
                    EXPECT_TRUE(isFound([&](Forger& forger) {
                        return forger.changeField(tables_[i], column);
                    })) << "cannot be changed: "
                        << tables_[i].name << "." << column.name;
        EXPECT_GE(changes_, 150);
    }

    std::vector<Table> tables_;
};

TEST_F(RowsChanged, FieldsOfAFirstThirdOfTables) {
    changeFields(0);
}

TEST_F(RowsChanged, FieldsOfASecondThirdOfTables) {
    changeFields(1);
}

TEST_F(RowsChanged, FieldsOfTheOtherTables) {
    changeFields(2);
}

TEST_F(RowsChanged, RowsTakenOut) {
    for (const Table& table : tables_)
        for (int time = 0; time < 2; ++time)
            EXPECT_TRUE(isFound([&](Forger& forger) { return forger.deleteRow(table); }))
                << "cannot be changed: " << table.name;
    EXPECT_GE(changes_, 80);
}

TEST_F(RowsChanged, RowsPutIn) {
    for (const Table& table : tables_)
        for (int time = 0; time < 2; ++time)
            EXPECT_TRUE(isFound([&](Forger& forger) { return forger.insertCopy(table); }))
                << "cannot be changed: " << table.name;
    EXPECT_GE(changes_, 80);
}

// Where a table has one row, or nothing beside its key, there is nothing to exchange.
TEST_F(RowsChanged, RowsExchanged) {
    for (const Table& table : tables_)
        for (int time = 0; time < 2; ++time)
            isFound([&](Forger& forger) { return forger.swapRows(table); });
    EXPECT_GE(changes_, 50);
}

}  // namespace
}  // namespace app
