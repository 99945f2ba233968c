// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli verify --db: exit codes and what it prints.
#include <algorithm>
#include <filesystem>
#include <fstream>

#include "busy_archive.h"
#include "changed_archive.h"
#include "process.h"

namespace app {
namespace {

using testing::AllOf;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

class VerifyCommand : public ChangedArchive {
protected:
    [[nodiscard]] Finished verify(std::vector<std::string> more = {}) const {
        std::vector<std::string> arguments{"verify", "--db", path()};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return runCli(std::move(arguments));
    }
    void change(const std::string& sql) {
        Forger forger(path(), random_);
        ASSERT_EQ(forger.raw().run(sql), SQLITE_OK) << forger.raw().message();
    }
    void expectAltered(const Finished& finished, const std::string& line) const {
        EXPECT_EQ(finished.exitCode, 1) << finished.error;
        EXPECT_EQ(finished.error, "");
        EXPECT_THAT(finished.output, AllOf(StartsWith(path() + ": ALTERED"),
                                           HasSubstr("altered: " + path() + line)));
    }
};

void expectWrongCall(const Finished& finished) {
    EXPECT_EQ(finished.exitCode, 2);
    EXPECT_EQ(finished.output, "");
    EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
}

TEST_F(VerifyCommand, SaysWhatIsIntactAndPrintsTheHead) {
    const std::string shown = model::toText(head());
    const Finished finished = verify({"--rejudge", "--head", shown});
    EXPECT_EQ(finished.exitCode, 0) << finished.output;
    EXPECT_EQ(finished.error, "");
    EXPECT_THAT(finished.output,
                AllOf(StartsWith(path() + ": intact\n"), EndsWith("\nhead: " + shown + "\n"),
                      HasSubstr("checked: 8 verdicts, judged again\n"),
                      HasSubstr("checked: 5 certificates and their files\n"),
                      HasSubstr("signatures in 8 PDFs\n"), Not(HasSubstr("note: "))));
}

TEST_F(VerifyCommand, NamesWhatWasAltered) {
    change("UPDATE certificate SET heat = 'H 0' WHERE number = 2");
    expectAltered(verify(), ": certificate 2: is not what the history says was written\n");
}

TEST_F(VerifyCommand, NamesAFileThatIsGone) {
    const auto certificate = must(must(model::Archive::openForReading(path())).certificate(2));
    std::filesystem::remove(files() + "/" + certificate.fileDigest.substr(0, 2) + "/" +
                            certificate.fileDigest.substr(2) + ".pdf");
    expectAltered(verify(), ": certificate 2: ");
}

TEST_F(VerifyCommand, TakesAFileThatBelongsToNothingForNoAlteration) {
    std::ofstream(files() + "/left over") << "x";
    const Finished finished = verify();
    EXPECT_EQ(finished.exitCode, 0) << finished.output;
    EXPECT_THAT(finished.output, HasSubstr("note: " + files() + "/left over: "));
}

TEST_F(VerifyCommand, NamesADisposedFileThatIsBackAsSuchAlone) {
    std::string said;
    {
        Forger forger(path(), random_);
        said =
            forger.raw().value("SELECT bytes FROM history WHERE action = 'certificate disposed'");
    }
    const std::string before = "\"files\":[\"";
    ASSERT_NE(said.find(before), std::string::npos);
    const std::string digest = said.substr(said.find(before) + before.size(), 64);
    const std::string folder = files() + "/" + digest.substr(0, 2);
    const std::string file = folder + "/" + digest.substr(2) + ".pdf";
    std::filesystem::create_directories(folder);
    std::ofstream(file) << "x";
    const Finished finished = verify();
    EXPECT_EQ(finished.exitCode, 1) << finished.output;
    EXPECT_THAT(finished.output, AllOf(HasSubstr("was disposed of, but its file " + file),
                                       Not(HasSubstr("note: " + file))));
}

TEST_F(VerifyCommand, SaysThatAHeadHeldElsewhereIsNotInTheHistory) {
    const model::Head now = head();
    model::Head other = now;
    other.hash[0] ^= 1;
    expectAltered(verify({"--head", model::toText(other)}), ": history: has another row");
    other = {now.sequence + 1, now.hash};
    expectAltered(verify({"--head", model::toText(other)}), ": history: ends before the row");
}

TEST_F(VerifyCommand, SaysWhatOfADamagedDatabaseIsLost) {
    const auto size = std::filesystem::file_size(path());
    {
        // Pages in the middle, as a broken disk leaves them.
        std::fstream file(path(), std::ios::in | std::ios::out | std::ios::binary);
        file.seekp(static_cast<std::streamoff>(size / 2 / 4096 * 4096));
        file << std::string(16 * 4096, '\xa5');
    }
    const Finished finished = verify();
    EXPECT_EQ(finished.exitCode, 1) << finished.error;
    EXPECT_THAT(finished.output, StartsWith(path() + ": ALTERED"));
}

TEST_F(VerifyCommand, RefusesAWrongCall) {
    for (const char* head : {"", "17", "17:abc", "x:0", "-1:00"})
        expectWrongCall(verify({"--head", head}));
    expectWrongCall(verify({"--trust", path()}));
    expectWrongCall(runCli({"verify"}));
    expectWrongCall(runCli({"verify", "--db", path() + ".none"}));
    expectWrongCall(runCli({"verify", "--db", files()}));
    std::ofstream(path() + ".text") << "no database\n";
    expectWrongCall(runCli({"verify", "--db", path() + ".text"}));
    expectWrongCall(runCli({"verify", path() + ".text", "--head", model::toText(head())}));
}

TEST(VerifyDemonstration, IsIntactAlthoughNobodySigned) {
    const QTemporaryDir folder;
    const std::string file = folder.filePath("d.db").toStdString();
    ASSERT_EQ(runCli({"demo", "--db", file}).exitCode, 0);
    const Finished finished = runCli({"verify", "--db", file, "--rejudge"});
    EXPECT_EQ(finished.exitCode, 0) << finished.output << finished.error;
    EXPECT_THAT(finished.output, StartsWith(file + ": intact\n"));
}

}  // namespace
}  // namespace app
