// SPDX-License-Identifier: Apache-2.0
// Registers from files: dry runs, all or nothing, signatures, and out again.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "foundry/foundry.h"
#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    for (std::size_t start = 0; start < text.size();) {
        const std::size_t end = std::min(text.find('\n', start), text.size());
        lines.push_back(text.substr(start, end - start));
        start = end + 1;
    }
    return lines;
}

class Import : public testing::Test {
protected:
    void SetUp() override { foundry::copyTo(file_); }

    Finished run(std::vector<std::string> arguments, const char* person = nullptr) {
        arguments.insert(arguments.end(), {"--db", file_});
        if (person)
            arguments.insert(arguments.end(), {"--person", person, "--passphrase", secret_});
        return runCli(arguments);
    }
    Finished import(const char* registerName, const std::string& csv,
                    std::vector<std::string> more = {},
                    const char* person = foundry::kAdministrator) {
        const std::string path = folder_.write("t.csv", csv);
        more.insert(more.begin(), {"import", "--register", registerName, "--csv", path});
        return run(std::move(more), person);
    }
    std::string entries(const char* registerName, const char* as = "--csv") {
        const Finished finished = run({"entries", "--register", registerName, as});
        EXPECT_EQ(finished.exitCode, 0) << finished.error;
        return finished.output;
    }
    /// The newest row of the history: a hash over everything that was ever written.
    std::string head() {
        const Finished finished = run({"verify"});
        EXPECT_EQ(finished.exitCode, 0) << finished.output << finished.error;
        return finished.output;
    }
    void stored(const Finished& finished, const char* summary) {
        EXPECT_EQ(finished.exitCode, 0) << finished.output << finished.error;
        EXPECT_EQ(finished.output, summary);
    }
    /// Parts, a plan, an order and castings to refer to.
    void fill() {
        stored(import("part", kParts), "stored of 2 rows: 2 added, 0 changed, 0 unchanged\n");
        stored(import("zone plan", kPlan), "stored of 2 rows: 1 added, 0 changed, 0 unchanged\n");
        stored(import("order", kOrder), "stored of 2 rows: 1 added, 0 changed, 0 unchanged\n");
        stored(import("casting", kCastings), "stored of 2 rows: 2 added, 0 changed, 0 unchanged\n");
    }

    static constexpr const char* kParts =
        "number;drawing;material\r\nP-1;D-1;cast steel\r\nP-2;D-2;grey iron\r\n";
    static constexpr const char* kPlan =
        "part,revision,zone,width_mm,height_mm,thickness_mm,drawing_minimum_mm,method,stage,table,"
        "levels\n"
        "P-1,1,Z1,100,80,40,36,MT,as cast,EN 1369:2012,\"non-linear=SM 2, linear=LM 2\"\n"
        "P-1,1,Z1,,,,,PT,finish machined,EN 1371-1:2011,isolated=SP 2\n";
    static constexpr const char* kOrder =
        "number,customer,certificate_type,language,receiver,test_method,test_stage,test_table,"
        "test_levels\n"
        "O-1,First Buyer,3.1,en,Yard 2,MT,as cast,EN 1369:2012,linear=LM 1\n"
        "O-1,,,,,PT,as cast,EN 1371-1:2011,isolated=SP 1\n";
    static constexpr const char* kCastings =
        "serial,heat,order,part,zone_plan_revision,series\n"
        "C-1,H-1,O-1,P-1,1,\n"
        "C-2,H-1,O-1,P-1,1,\"C-2, C-3\"\n";

    Folder folder_;
    std::string file_ = folder_.path() + "/works.db";
    std::string secret_ = folder_.write("secret", std::string(foundry::kPassphrase) + "\n");
};

TEST_F(Import, GoesInAndComesOutAgain) {
    fill();
    const Json orders = Json::parse(entries("order", "--json"));
    EXPECT_EQ(orders["format"], "fettlemark-entries/1");
    ASSERT_EQ(orders["entries"].size(), 1U);
    EXPECT_EQ(orders["entries"][0]["version"], 1);
    EXPECT_EQ(orders["entries"][0]["rows"][0]["receiver"], "Yard 2");
    EXPECT_EQ(orders["entries"][0]["rows"][1]["test_table"], "EN 1371-1:2011");

    // The same into another archive, from what came out.
    const std::vector<const char*> names{"part", "zone plan", "order", "casting"};
    std::vector<std::string> tables;
    tables.reserve(names.size());
    for (const char* name : names) tables.push_back(entries(name));
    file_ = folder_.path() + "/other.db";
    foundry::copyTo(file_);
    for (std::size_t i = 0; i < names.size(); ++i) {
        EXPECT_EQ(import(names[i], tables[i]).exitCode, 0) << names[i];
        EXPECT_EQ(entries(names[i]), tables[i]);
        // And once more: nothing is new.
        EXPECT_THAT(import(names[i], tables[i]).output, HasSubstr(": 0 added, 0 changed, "));
    }
}

TEST_F(Import, ADryRunWritesNothing) {
    const std::string before = head();
    const Finished dry = import("part", kParts, {"--dry-run"}, nullptr);
    EXPECT_EQ(dry.exitCode, 0) << dry.error;
    EXPECT_EQ(dry.output, "would store of 2 rows: 2 added, 0 changed, 0 unchanged\n");
    EXPECT_EQ(head(), before);
    EXPECT_EQ(entries("part", "--json"), entries("part", "--json"));
    EXPECT_THAT(Json::parse(entries("part", "--json"))["entries"], IsEmpty());
}

TEST_F(Import, ListsEveryProblemAndStoresNothing) {
    fill();
    const std::string before = head();
    const char* csv =
        "serial,heat,order,part,zone_plan_revision,colour\n"
        "C-1,H-2,O-1,P-1,1,red\n"
        "C-4,H-1,O-9,P-9,1,\n"
        "C-5,H-1,O-1,P-1,7,\n"
        "C-5,,O-1,P-1,1,\n"
        "C-6,H-1,O-1,P-1,1,\n";
    const Finished unknown = import("casting", csv);
    EXPECT_EQ(unknown.exitCode, 2);
    const std::string noPlan =
        "problem\t3\t4\tzone_plan_revision\tthe archive has no zone plan revision 7 of the part "
        "P-1";
    const std::string rows[] = {
        "problem\t1\t2\t-\t\"C-1\" is in the archive already, with other content",
        "problem\t2\t3\torder\tthe archive has no order O-9",
        "problem\t2\t3\tpart\tthe archive has no part P-9",
        noPlan,
        "problem\t4\t5\theat\tis missing",
        "problem\t4\t5\t-\t\"C-5\" stands in row 3 already"};
    EXPECT_THAT(linesOf(unknown.output),
                ElementsAre("problem\t-\t1\tcolour\tis no field of this register", rows[0], rows[1],
                            rows[2], rows[3], rows[4], rows[5]));
    EXPECT_THAT(unknown.error, HasSubstr("7 problems; nothing was written"));

    const char* sound =
        "serial,heat,order,part,zone_plan_revision\n"
        "C-1,H-2,O-1,P-1,1\n"
        "C-4,H-1,O-9,P-9,1\n"
        "C-5,H-1,O-1,P-1,7\n"
        "C-5,,O-1,P-1,1\n"
        "C-6,H-1,O-1,P-1,1\n";
    for (const bool dry : {true, false}) {
        const Finished finished =
            dry ? import("casting", sound, {"--dry-run"}, nullptr) : import("casting", sound);
        EXPECT_EQ(finished.exitCode, 2);
        EXPECT_THAT(linesOf(finished.output), testing::ElementsAreArray(rows));
        EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1);
    }
    EXPECT_EQ(head(), before);
}

TEST_F(Import, TellsCriteriaThatAreNotThere) {
    fill();
    const Finished finished =
        import("zone plan",
               "part,revision,zone,width_mm,height_mm,thickness_mm,method,stage,table,levels\n"
               "P-2,1,Z1,1,1,1,MT,as cast,EN 1369:2099,linear=LM 1\n"
               "P-2,1,Z2,1,1,1,MT,as cast,EN 1371-1:2011,\"isolated=SP 1, linear=LM 1, round=1\"\n"
               "P-9,1,Z1,1,1,1,,,,\n"
               "P-1,1,Z1,1,1,1,,,,\n"
               "P-2,3,Z1,1,1,1,,,,\n");
    EXPECT_EQ(finished.exitCode, 2);
    const auto lines = linesOf(finished.output);
    ASSERT_EQ(lines.size(), 7U) << finished.output;
    EXPECT_EQ(lines[0], "problem\t1\t2\ttable\tthere is no limit table \"EN 1369:2099\"");
    EXPECT_EQ(lines[1], "problem\t2\t3\tmethod\tEN 1371-1:2011 is a table for PT, not for MT");
    EXPECT_EQ(lines[2], "problem\t2\t3\tlevels\tEN 1371-1:2011 has no level \"LM 1\"");
    EXPECT_EQ(lines[3], "problem\t2\t3\tlevels\tEN 1371-1:2011 has no level key \"round\"");
    EXPECT_THAT(lines[4], AllOf(HasSubstr("problem\t3\t4\t-\t"), HasSubstr("P-9")));
    EXPECT_THAT(lines[5], HasSubstr("problem\t4\t5\t-\trevision 1 of the zone plan of \"P-1\""));
    EXPECT_THAT(lines[6], HasSubstr("problem\t5\t6\t-\t"));
}

TEST_F(Import, ChangesOnlyWhereItIsAskedToAndOnlyWhatColumnsSay) {
    const char* first =
        "id,kind,state,serial,calibration_due,remarks\n"
        "Y-1,yoke,in use,17,2026-01-31,old\nY-2,yoke,in use,18,2026-01-31,\n";
    stored(import("equipment", first), "stored of 2 rows: 2 added, 0 changed, 0 unchanged\n");
    const char* next =
        "id,kind,state,calibration_due\nY-1,yoke,in use,2027-01-31\n"
        "Y-2,yoke,in use,2026-01-31\nY-3,yoke,in use,2027-01-31\n";
    EXPECT_THAT(import("equipment", next).output, HasSubstr("\"Y-1\" is in the archive already"));
    stored(import("equipment", next, {"--change"}),
           "stored of 3 rows: 1 added, 1 changed, 1 unchanged\n");
    const Json all = Json::parse(entries("equipment", "--json"));
    EXPECT_EQ(all["entries"][0]["version"], 2);
    EXPECT_EQ(all["entries"][0]["rows"][0]["calibration_due"], "2027-01-31");
    EXPECT_EQ(all["entries"][0]["rows"][0]["serial"], "17");
    EXPECT_EQ(all["entries"][0]["rows"][0]["remarks"], "old");
    EXPECT_EQ(all["entries"][1]["version"], 1);
}

TEST_F(Import, AsksForTheSignatureThatARegisterNeeds) {
    const char* csv =
        "person,method,certificate,scheme,level,issued_on,expires_on,state\n"
        "P-2,MT,Q-77,ISO 9712:2021,2,2024-01-01,2028-12-31,valid\n";
    const auto refused = [&](const Finished& finished, int exitCode, const char* reason) {
        EXPECT_EQ(finished.exitCode, exitCode) << finished.output;
        EXPECT_EQ(finished.output, "");
        EXPECT_THAT(finished.error, HasSubstr(reason));
    };
    refused(import("qualification", csv, {}, nullptr), 2, "takes signed entries");
    refused(import("qualification", csv, {"--dry-run"}, nullptr), 2, "takes signed entries");
    refused(import("part", kParts, {}, nullptr), 2, "needs --person and --passphrase");
    refused(import("qualification", csv, {}, foundry::kInspector), 4, "QA manager");
    EXPECT_THAT(Json::parse(entries("qualification", "--json"))["entries"], IsEmpty());
    stored(import("qualification", csv, {}, foundry::kQaManager),
           "stored of 1 rows: 1 added, 0 changed, 0 unchanged\n");
    const std::string unknown =
        std::string(csv) + "P-99,PT,Q-78,ISO 9712:2021,2,2024-01-01,2028-12-31,valid\n";
    const Finished finished = import("qualification", unknown, {"--dry-run"}, foundry::kQaManager);
    EXPECT_EQ(finished.exitCode, 2);
    EXPECT_THAT(finished.output, HasSubstr("problem\t2\t3\tperson\t"));
    // Only an administrator adds people.
    const char* people = "id,name,roles,levels\nP-20,Nea Neu,\"auditor, inspector\",MT 2\n";
    EXPECT_EQ(import("person", people, {}, foundry::kQaManager).exitCode, 4);
    stored(import("person", people), "stored of 1 rows: 1 added, 0 changed, 0 unchanged\n");
    stored(import("person", people), "stored of 1 rows: 0 added, 0 changed, 1 unchanged\n");
    EXPECT_THAT(run({"people"}).output, HasSubstr("P-20\tNea Neu\tinspector, auditor\tMT 2\t"));
    EXPECT_THAT(import("person", "id,name,roles,levels\nP-21,Ida,king,XT 2\n").output,
                AllOf(HasSubstr("problem\t1\t2\troles\tthere is no role \"king\""),
                      HasSubstr("problem\t1\t2\tlevels\t\"XT 2\" is no level")));
}

TEST_F(Import, StoresOneFormOfEachCharacter) {
    // e and a combining acute become one character.
    stored(import("part", "number,drawing,material\nP-e\xCC\x81,D,cast steel\n"),
           "stored of 1 rows: 1 added, 0 changed, 0 unchanged\n");
    EXPECT_EQ(Json::parse(entries("part", "--json"))["entries"][0]["key"], "P-\xC3\xA9");
}

TEST_F(Import, RefusesWhatCannotBeRead) {
    const auto refused = [&](const Finished& finished, const char* reason) {
        EXPECT_EQ(finished.exitCode, 2);
        EXPECT_EQ(finished.output, "");
        EXPECT_THAT(finished.error, HasSubstr(reason));
    };
    refused(import("part", "number\n\"P-1\n"), "t.csv: line 2, column 1: a quote is never closed");
    refused(import("part", "number\nP-\xE9\n"), "t.csv: line 2, column 3: is no UTF-8");
    refused(import("boats", kParts), "--register: there is no register \"boats\"");
    refused(run({"import", "--register", "part", "--csv", "/none/here"}), "/none/here");
}

TEST_F(Import, OneEntryComesFromJson) {
    const auto enter = [&](const Json& entry, const char* person = foundry::kAdministrator) {
        const std::string path = folder_.write("e.json", entry.dump());
        return run({"enter", "--register", "part", "--json", path}, person);
    };
    Json entry{
        {"format", "fettlemark-entry/1"},
        {"register", "part"},
        {"rows",
         Json::array({Json{{"number", "P-1"}, {"drawing", "D"}, {"material", "cast steel"}}})}};
    const Finished finished = enter(entry);
    EXPECT_EQ(finished.exitCode, 0) << finished.error;
    const Json report = Json::parse(finished.output);
    EXPECT_EQ(report["format"], "fettlemark-import/1");
    EXPECT_TRUE(report["stored"].get<bool>());
    EXPECT_EQ(report["added"], 1);
    entry["rows"][0]["material"] = "brass";
    entry["rows"][0]["number"] = "P-2";
    const Finished wrong = enter(entry);
    EXPECT_EQ(wrong.exitCode, 2);
    const Json problems = Json::parse(wrong.output)["problems"];
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0]["row"], 1);
    EXPECT_EQ(problems[0]["line"], nullptr);
    EXPECT_EQ(problems[0]["column"], "material");
    entry["rows"][0]["material"] = "cast steel";
    entry["rows"].push_back(entry["rows"][0]);
    entry["rows"][1]["number"] = "P-3";
    EXPECT_THAT(enter(entry).output, HasSubstr("more than 1 entry"));
    EXPECT_THAT(enter(Json{{"format", "x"}}).error, HasSubstr("e.json: format: must be"));
    EXPECT_EQ(Json::parse(entries("part", "--json"))["entries"].size(), 1U);
}

TEST_F(Import, EntriesOfACastingAreListed) {
    fill();
    stored(import("nonconformance",
                  "number,casting,zone,method,finding,rule_broken,opened_by,opened_on\n"
                  "N-1,C-1,Z1,MT,crack,forbidden kind,Ilse,2026-11-20\n"
                  "N-2,C-2,Z1,MT,crack,forbidden kind,Ilse,2026-11-20\n"),
           "stored of 2 rows: 2 added, 0 changed, 0 unchanged\n");
    const Finished listed = run({"entries", "--register", "nonconformance", "--casting", "C-2"});
    EXPECT_EQ(listed.output,
              "1\tN-2\tC-2\tZ1\tMT\t-\t-\t-\tcrack\tforbidden kind\tIlse\t2026-11-20\t-\n");
    EXPECT_EQ(run({"entries", "--register", "casting", "--casting", "C-1"}).output,
              "1\tC-1\tH-1\tO-1\tP-1\t1\t-\t-\t-\n");
    EXPECT_EQ(run({"entries", "--register", "equipment"}).output, "no entries\n");
    const Finished none = run({"entries", "--register", "equipment", "--casting", "C-1"});
    EXPECT_EQ(none.exitCode, 2);
    EXPECT_THAT(none.error, HasSubstr("belongs to no casting"));
}

TEST_F(Import, WhatAChangeOfAnOrderTouchesIsShown) {
    fill();
    const std::string before = head();
    const Json any = Json::parse(run({"order-touches", "--order", "O-1"}).output);
    EXPECT_EQ(any["format"], "fettlemark-order-touches/1");
    EXPECT_THAT(any["fields"], IsEmpty());
    ASSERT_EQ(any["castings"].size(), 2U);
    EXPECT_EQ(any["castings"][0]["serial"], "C-1");
    Json entry = Json::parse(entries("order", "--json"))["entries"][0];
    entry.erase("key");
    entry.erase("version");
    entry["format"] = "fettlemark-entry/1";
    entry["register"] = "order";
    const auto touches = [&] {
        return run({"order-touches", "--order", "O-1", "--json",
                    folder_.write("order.json", entry.dump())});
    };
    const Json same = Json::parse(touches().output);
    EXPECT_THAT(same["fields"], IsEmpty());
    EXPECT_THAT(same["castings"], IsEmpty());
    entry["rows"][0]["customer"] = "Second Buyer";
    const Finished changed = touches();
    EXPECT_EQ(changed.exitCode, 0) << changed.error;
    EXPECT_THAT(Json::parse(changed.output)["fields"], ElementsAre("Customer"));
    EXPECT_EQ(Json::parse(changed.output)["castings"].size(), 2U);
    EXPECT_EQ(head(), before);
    entry["rows"][0]["number"] = "O-2";
    entry["rows"].erase(1);
    EXPECT_THAT(touches().error, HasSubstr("must hold the order O-1 and no other"));
    EXPECT_EQ(run({"order-touches", "--order", "O-9"}).exitCode, 2);
}

TEST_F(Import, WhatRunsOutIsListed) {
    stored(import("equipment",
                  "id,kind,state,calibration_due\nY-1,yoke,in use,2026-12-31\n"
                  "L-1,light meter,in use,2027-06-30\nL-2,light meter,in use,2026-11-01\n"),
           "stored of 3 rows: 3 added, 0 changed, 0 unchanged\n");
    const Finished listed = run({"runs-out", "--on", "2026-11-25", "--days", "60"});
    EXPECT_EQ(listed.exitCode, 0) << listed.error;
    const auto lines = linesOf(listed.output);
    ASSERT_EQ(lines.size(), 2U) << listed.output;
    EXPECT_THAT(lines[0], AllOf(HasSubstr("2026-11-01\tover\tequipment\t"), HasSubstr("L-2")));
    EXPECT_THAT(lines[1], AllOf(HasSubstr("2026-12-31\t-\tequipment\t"), HasSubstr("Y-1")));
    const Json document =
        Json::parse(run({"runs-out", "--on", "2026-11-25", "--days", "300", "--json"}).output);
    EXPECT_EQ(document["format"], "fettlemark-runs-out/1");
    EXPECT_EQ(document["runs_out"].size(), 3U);
    EXPECT_EQ(document["runs_out"][2]["last_day"], "2027-06-30");
    EXPECT_EQ(run({"runs-out", "--on", "2026-13-01"}).exitCode, 2);
}

}  // namespace
}  // namespace app
