// SPDX-License-Identifier: Apache-2.0
// The commands that find certificates and hand them out: find, certificate, export.
#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sqlite3.h>
#include <sys/wait.h>
#include <unistd.h>

#include "archive/archive.h"
#include "archive/stored_file.h"
#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

void expectRefused(const Finished& finished, int exitCode, const std::string& reason) {
    EXPECT_EQ(finished.exitCode, exitCode) << finished.error;
    EXPECT_EQ(finished.output, "");
    EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
    EXPECT_THAT(finished.error, HasSubstr(reason));
}

/// Bytes that nothing which reads text leaves alone.
const std::string kPdf("%PDF-1.7\r\n\0\xff\xfe\x1a\n%%EOF", 20);

/// An archive with three certificates, put in past the program: who may release one does not
/// matter here.
class Certificates : public testing::Test {
protected:
    void SetUp() override {
        int count = 1;
        std::array<char, 5> name{"test"};
        std::array<char*, 2> arguments{name.data(), nullptr};
        const QCoreApplication qt(count, arguments.data());
        const auto archive =
            model::Archive::create(file_, model::ArchiveKind::Working, model::Actor{"Ada Quill"});
        ASSERT_TRUE(archive.ok()) << archive.error().message();
        const auto stored = model::storeFile(file_ + ".files", kPdf);
        ASSERT_TRUE(stored.ok()) << stored.error().message();
        const std::string rest = "', '3.1', 'en', 'B. Release', '" + stored->digest + "', " +
                                 std::to_string(kPdf.size());
        const std::string into =
            "INSERT INTO certificate (number, casting_serial, heat, part_number, order_number, "
            "customer, customer_reference, certificate_type, language, issued_by, file_sha256, "
            "file_bytes, verdict, issued_at, supersedes) VALUES ";
        run("INSERT INTO certificate_number VALUES (1); INSERT INTO certificate_number VALUES (2);"
            "INSERT INTO certificate_number VALUES (3)");
        run(into + "(1, 'Q-1', 'H 1', 'P-1', 'O-1', 'Harrow Pumps', 'PO 1" + rest +
            ", 'not acceptable', '2026-11-24T23:59:59Z', NULL)");
        run(into + "(2, 'Q-2', 'H 1', 'P-1', 'O-1', '', 'PO 1" + rest +
            ", 'acceptable', '2026-11-25T00:00:00Z', NULL)");
        run(into + "(3, 'Q-1', 'H 1', 'P-1', 'O-1', 'Harrow Pumps', 'PO 1" + rest +
            ", 'acceptable', '2026-11-26T09:30:00Z', 1)");
    }
    void run(const std::string& sql) {
        sqlite3* raw = nullptr;
        ASSERT_EQ(sqlite3_open(file_.c_str(), &raw), SQLITE_OK);
        EXPECT_EQ(sqlite3_exec(raw, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
            << sqlite3_errmsg(raw);
        sqlite3_close(raw);
    }
    [[nodiscard]] Finished find(std::vector<std::string> options) const {
        options.insert(options.begin(), {"find", "--db", file_});
        return runCli(std::move(options));
    }
    /// The numbers that find prints as JSON.
    [[nodiscard]] std::vector<int> found(std::vector<std::string> options) const {
        options.emplace_back("--json");
        const Finished finished = find(std::move(options));
        EXPECT_EQ(finished.exitCode, 0) << finished.error;
        const Json document = Json::parse(finished.output);
        EXPECT_EQ(document["format"], "fettlemark-find/1");
        std::vector<int> numbers;
        for (const Json& certificate : document["certificates"])
            numbers.push_back(certificate["number"]);
        return numbers;
    }

    Folder folder_;
    std::string file_ = folder_.path() + "/works.db";
};

TEST_F(Certificates, AreListedTheNewestFirst) {
    const Finished finished = find({});
    EXPECT_EQ(finished.exitCode, 0) << finished.error;
    EXPECT_EQ(finished.error, "");
    EXPECT_EQ(finished.output,
              "3\t2026-11-26\tacceptable\treleased\tQ-1\tH 1\tP-1\tO-1\tHarrow Pumps\tPO 1\t3.1\n"
              "2\t2026-11-25\tacceptable\treleased\tQ-2\tH 1\tP-1\tO-1\t-\tPO 1\t3.1\n"
              "1\t2026-11-24\tnot acceptable\tsuperseded\tQ-1\tH 1\tP-1\tO-1\tHarrow Pumps\tPO 1\t"
              "3.1\n");
}

TEST_F(Certificates, AreFoundByEveryOption) {
    EXPECT_THAT(found({"--text", "pumps q-1"}), ElementsAre(3, 1));
    EXPECT_THAT(found({"--text", "har"}), ElementsAre(3, 1));
    EXPECT_THAT(found({"--serial", "Q-2"}), ElementsAre(2));
    EXPECT_THAT(found({"--heat", "H 1", "--part", "P-1", "--order", "O-1"}), ElementsAre(3, 2, 1));
    EXPECT_THAT(found({"--customer", "Harrow Pumps"}), ElementsAre(3, 1));
    EXPECT_THAT(found({"--from", "2026-11-25"}), ElementsAre(3, 2));
    EXPECT_THAT(found({"--to", "2026-11-25"}), ElementsAre(2, 1));
    EXPECT_THAT(found({"--verdict", "not acceptable"}), ElementsAre(1));
    EXPECT_THAT(found({"--verdict", "acceptable", "--text", "pumps"}), ElementsAre(3));
}

TEST_F(Certificates, StateWhatIsKnownOfThemAsJson) {
    const Finished finished = find({"--json", "--serial", "Q-1"});
    const Json first = Json::parse(finished.output)["certificates"][0];
    EXPECT_EQ(first, (Json{{"number", 3},
                           {"state", "released"},
                           {"verdict", "acceptable"},
                           {"serial", "Q-1"},
                           {"heat", "H 1"},
                           {"part", "P-1"},
                           {"order", "O-1"},
                           {"customer", "Harrow Pumps"},
                           {"customer_order", "PO 1"},
                           {"type", "3.1"},
                           {"issued_at", "2026-11-26T09:30:00Z"},
                           {"issued_by", "B. Release"},
                           {"supersedes", 1},
                           {"superseded_by", nullptr}}));
}

TEST_F(Certificates, AreShownAsWithdrawnWhateverSupersedesThem) {
    run("INSERT INTO certificate_withdrawal (number, history_sequence, person, reason) "
        "VALUES (1, 1, 'B', 'the wrong heat'), (2, 2, 'B', 'the wrong part')");
    const Json listed = Json::parse(find({"--json"}).output)["certificates"];
    ASSERT_EQ(listed.size(), 3U);
    EXPECT_EQ(listed[0]["state"], "released");
    EXPECT_EQ(listed[1]["state"], "withdrawn");
    EXPECT_EQ(listed[2]["state"], "withdrawn");
    EXPECT_EQ(listed[2]["superseded_by"], 3);
}

TEST_F(Certificates, AreFoundOrNotWithoutComplaint) {
    const Finished text = find({"--text", "nowhere"});
    EXPECT_EQ(text.exitCode, 0);
    EXPECT_EQ(text.output, "no certificate was found\n");
    EXPECT_EQ(text.error, "");
    EXPECT_THAT(found({"--verdict", "not judged"}), testing::IsEmpty());
}

TEST_F(Certificates, AreNotFoundByACallThatIsWrong) {
    expectRefused(find({"--from", "25.11.2026"}), 2,
                  "fettlemark-cli find: is not a date such as 2026-11-25: 25.11.2026");
    expectRefused(find({"--to", "2026-02-29"}), 2, "2026-02-29");
    expectRefused(find({"--from", "2026-11-26", "--to", "2026-11-25"}), 2, "earlier date first");
    expectRefused(find({"--verdict", "fine"}), 2, "there is no verdict \"fine\"");
    expectRefused(find({"--text", std::string(10'000, 'a')}), 2, "at most 1000");
    expectRefused(find({"--text", "\xff"}), 2, "UTF-8");
    expectRefused(runCli({"find"}), 2, "--db FILE is missing");
    expectRefused(runCli({"find", "--db", folder_.path() + "/none.db"}), 2, "none.db: ");
}

TEST_F(Certificates, AreAllListedHoweverManyTheyAre) {
    run("INSERT INTO certificate_number VALUES (4);"
        "DROP TRIGGER certificate_number_only_grows;"
        "WITH RECURSIVE n (i) AS (SELECT 4 UNION ALL SELECT i + 1 FROM n WHERE i < 2503) "
        "INSERT INTO certificate (number, casting_serial, heat, part_number, order_number, "
        "customer, customer_reference, certificate_type, language, issued_by, file_sha256, "
        "file_bytes, verdict, issued_at) SELECT i, 'X', '', '', '', '', '', '3.1', 'en', 'B', "
        "file_sha256, 1, 'acceptable', '2026-11-26T10:00:00Z' FROM n, certificate "
        "WHERE number = 1");
    EXPECT_EQ(found({"--text", "x"}).size(), 2500U);
    EXPECT_EQ(found({}).size(), 2503U);
}

TEST_F(Certificates, AreHandedOutByteForByte) {
    const std::string out = folder_.path() + "/one.pdf";
    const Finished finished = runCli({"certificate", "--db", file_, "--number", "2", "--out", out});
    EXPECT_EQ(finished.exitCode, 0) << finished.error;
    EXPECT_EQ(finished.output, "wrote " + out + "\n");
    EXPECT_EQ(bytesOf(out), kPdf);
}

TEST_F(Certificates, AreHandedOutOverNothing) {
    const auto call = [&](const std::string& number, const std::string& out) {
        return runCli({"certificate", "--db", file_, "--number", number, "--out", out});
    };
    const std::string there = folder_.write("there.pdf", "mine");
    const std::vector<std::string> before = folder_.names();
    expectRefused(call("1", there), 2, "there.pdf: exists already");
    EXPECT_EQ(bytesOf(there), "mine");
    expectRefused(call("1", folder_.path()), 2, "exists already");
    expectRefused(call("1", folder_.path() + "/none/one.pdf"), 2, "folder is not there");
    expectRefused(call("4", folder_.path() + "/four.pdf"), 2, "has no certificate 4");
    for (const char* number :
         {"0", "-1", "one", "1.5", "1 ", "9223372036854775807", "99999999999999999999"})
        expectRefused(call(number, folder_.path() + "/one.pdf"), 2, "is not a number such as 17");
    EXPECT_EQ(folder_.names(), before);
}

/// As somebody whom the file system's permissions hold back, also where the tests run as root.
Finished runHeldBack(const std::vector<std::string>& call) {
    const bool isRoot = ::geteuid() == 0;
    if (isRoot) {
        EXPECT_EQ(::setresuid(65534, 65534, 0), 0);
    }
    Finished finished = runCli(call);
    if (isRoot) {
        EXPECT_EQ(::setresuid(0, 0, 0), 0);
    }
    return finished;
}

TEST_F(Certificates, AreNotWrittenWhereNothingMayBeWritten) {
    std::filesystem::permissions(folder_.path(), std::filesystem::perms(0755));
    const std::filesystem::path closed = folder_.path() + "/closed";
    std::filesystem::create_directory(closed);
    std::filesystem::permissions(closed, std::filesystem::perms(0555));
    for (const char* command : {"certificate", "export"})
        expectRefused(
            runHeldBack({command, "--db", file_, "--number", "1", "--out", closed / "one"}), 4,
            "closed/one");
    EXPECT_TRUE(std::filesystem::is_empty(closed));
    std::filesystem::permissions(closed, std::filesystem::perms::owner_all);
}

TEST_F(Certificates, AreNotReadWhereNobodyMayRead) {
    std::filesystem::permissions(folder_.path(), std::filesystem::perms(0755));
    std::filesystem::permissions(file_, std::filesystem::perms::none);
    for (const std::vector<std::string>& call : std::vector<std::vector<std::string>>{
             {"find"},
             {"verify"},
             {"certificate", "--number", "1", "--out", folder_.path() + "/one.pdf"},
             {"export", "--number", "1", "--out", folder_.path() + "/one"},
             {"backup", "--out", folder_.path() + "/backup"}}) {
        std::vector<std::string> whole = call;
        whole.insert(whole.end(), {"--db", file_});
        expectRefused(runHeldBack(whole), 4, "cannot be read");
    }
    std::filesystem::permissions(file_, std::filesystem::perms::owner_all);
}

TEST_F(Certificates, AreNotHandedOutWhereTheirFileWasAltered) {
    for (const auto& entry : std::filesystem::recursive_directory_iterator(file_ + ".files"))
        if (entry.is_regular_file()) std::filesystem::resize_file(entry.path(), 5);
    const std::vector<std::string> before = folder_.names();
    expectRefused(
        runCli({"certificate", "--db", file_, "--number", "1", "--out", folder_.path() + "/o.pdf"}),
        4, "was altered");
    expectRefused(
        runCli({"export", "--db", file_, "--number", "1", "--out", folder_.path() + "/o"}), 4,
        "was altered");
    EXPECT_EQ(folder_.names(), before);
}

/// What a program of the machine prints, and that it succeeded.
std::string printedBy(const std::string& command) {
    std::string printed;
    FILE* pipe = ::popen(command.c_str(), "r");
    if (!pipe) return "cannot be run";
    std::array<char, 4096> part{};
    while (const std::size_t size = std::fread(part.data(), 1, part.size(), pipe))
        printed.append(part.data(), size);
    EXPECT_EQ(::pclose(pipe), 0) << printed;
    return printed;
}

// sha256sum (GNU coreutils) reads the manifest.
TEST_F(Certificates, OracleExportIsWhatItsManifestSays) {
    const std::string out = folder_.path() + "/of an auditor";
    const Finished finished =
        runCli({"export", "--db", file_, "--number", "1", "--out", out + "/"});
    EXPECT_EQ(finished.exitCode, 0) << finished.error;
    EXPECT_EQ(bytesOf(out + "/certificate-1.pdf"), kPdf);
    const Json facts = Json::parse(bytesOf(out + "/certificate-1.json"));
    EXPECT_EQ(facts["format"], "fettlemark-certificate/1");
    EXPECT_EQ(facts["number"], 1);
    EXPECT_EQ(facts["state"], "superseded");
    EXPECT_EQ(facts["superseded_by"], 3);
    EXPECT_EQ(facts["serial"], "Q-1");
    EXPECT_EQ(facts["file_bytes"], kPdf.size());
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(out))
        names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    EXPECT_EQ(names.front(), "SHA256SUMS");
    const std::string checked =
        printedBy("cd '" + out + "' && LC_ALL=C sha256sum --strict -c SHA256SUMS 2>&1");
    for (std::size_t i = 1; i < names.size(); ++i)
        EXPECT_THAT(checked, HasSubstr(names[i] + ": OK\n"));
    EXPECT_EQ(std::ranges::count(checked, '\n'), static_cast<std::ptrdiff_t>(names.size() - 1));
}

TEST_F(Certificates, AreExportedOverNothing) {
    const auto call = [&](const std::string& number, const std::string& out) {
        return runCli({"export", "--db", file_, "--number", number, "--out", out});
    };
    const std::string there = folder_.write("there", "mine");
    const std::vector<std::string> before = folder_.names();
    expectRefused(call("1", there), 2, "exists already");
    expectRefused(call("1", folder_.path()), 2, "exists already");
    expectRefused(call("1", folder_.path() + "/none/one"), 2, "is not a folder");
    expectRefused(call("4", folder_.path() + "/four"), 2, "has no certificate 4");
    expectRefused(call("x", folder_.path() + "/four"), 2, "is not a number such as 17");
    EXPECT_EQ(folder_.names(), before);
}

}  // namespace
}  // namespace app
