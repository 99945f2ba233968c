// SPDX-License-Identifier: Apache-2.0
// The call itself: commands, options, help, and the three streams.
#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "process.h"
#include "sheets.h"

namespace app {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

void expectOneLine(const std::string& text) {
    EXPECT_EQ(std::ranges::count(text, '\n'), 1) << text;
    EXPECT_THAT(text, testing::EndsWith("\n"));
}

void expectWrongCall(const std::vector<std::string>& arguments, const std::string& reason) {
    const Finished finished = runCli(arguments);
    EXPECT_EQ(finished.exitCode, 2);
    EXPECT_EQ(finished.output, "");
    expectOneLine(finished.error);
    EXPECT_THAT(finished.error, HasSubstr(reason));
}

TEST(Calls, AreRefusedInOneLineWhenWrong) {
    expectWrongCall({}, "a command is missing");
    expectWrongCall({"weigh"}, "there is no command \"weigh\"");
    expectWrongCall({""}, "there is no command");
    expectWrongCall({"--verbose"}, "there is no command \"--verbose\"");
    expectWrongCall({"judge"}, "SHEET.json is missing");
    expectWrongCall({"judge", ""}, "an argument is empty");
    expectWrongCall({"judge", "a.json", "b.json"}, "\"b.json\" is one argument too many");
    expectWrongCall({"judge", "a.json", "--strict"}, "there is no option \"--strict\"");
    expectWrongCall({"judge", "a.json", "-u"}, "there is no option \"-u\"");
    expectWrongCall({"judge", "a.json", "--tables"}, "--tables needs a value: DIR");
    expectWrongCall({"judge", "a.json", "--tables", "--unattested"}, "--tables needs a value");
    expectWrongCall({"judge", "a.json", "--unattested", "--unattested"}, "is given twice");
    expectWrongCall({"judge", "a\nb\xE2\x80\xA8.json"}, ".json: is not there");
}

TEST(Calls, ListEverythingWithHelp) {
    const Finished program = runCli({"--help"});
    EXPECT_EQ(program.exitCode, 0);
    EXPECT_EQ(program.error, "");
    EXPECT_THAT(program.output, HasSubstr("judge SHEET.json"));
    for (const char* code : {"\n  0  ", "\n  1  ", "\n  2  ", "\n  3  ", "\n  4  "})
        EXPECT_THAT(program.output, HasSubstr(code));

    const Finished judge = runCli({"judge", "--help"});
    EXPECT_EQ(judge.exitCode, 0);
    for (const char* text : {"SHEET.json", "--tables DIR", "--unattested", "Exit codes:"})
        EXPECT_THAT(judge.output, HasSubstr(text));
    EXPECT_EQ(runCli({"judge", "a.json", "--help"}).output, judge.output);
    EXPECT_THAT(runCli({"--version"}).output, StartsWith("fettlemark-cli "));
}

TEST(Calls, FailWithoutAVerdictWhenTheOutputIsFull) {
    Launch launch{.arguments = {"judge", "-", "--unattested"}, .outputFile = "/dev/full"};
    launch.input = [text = cleanSheet().dump()]() mutable { return std::exchange(text, ""); };
    const Finished finished = runCli(launch);
    EXPECT_EQ(finished.exitCode, 4);
    expectOneLine(finished.error);
    EXPECT_THAT(finished.error, StartsWith("standard output: cannot be written: "));
    EXPECT_EQ(runCli(Launch{.arguments = {"--help"}, .outputFile = "/dev/full"}).exitCode, 4);
}

TEST(Calls, FailWhenNobodyReadsTheOutput) {
    Launch launch{.arguments = {"judge", "-"}, .outputBroken = true};
    launch.input = [text = cleanSheet().dump()]() mutable { return std::exchange(text, ""); };
    const Finished finished = runCli(launch);
    EXPECT_EQ(finished.exitCode, 4);
    expectOneLine(finished.error);
}

TEST(Calls, FailWhenAStreamThatTheyNeedIsClosed) {
    EXPECT_EQ(runCli(Launch{.arguments = {"--help"}, .closed = {1}}).exitCode, 4);
    const Finished noInput = runCli(Launch{.arguments = {"judge", "-"}, .closed = {0}});
    EXPECT_EQ(noInput.exitCode, 4);
    expectOneLine(noInput.error);
    // Without anybody to tell, the code still says it.
    EXPECT_EQ(runCli(Launch{.arguments = {"judge"}, .closed = {2}}).exitCode, 2);
}

TEST(Calls, GiveTheSameBytesInEveryLocale) {
    const Folder folder;
    const std::string sheet = folder.write("s.json", spottedSheet(2).dump());
    const std::string expected = runCli({"judge", sheet}).output;
    EXPECT_THAT(expected, HasSubstr("\"measured\": 4,"));
    for (const char* locale : {"LC_ALL=C", "LC_ALL=POSIX", "LC_ALL=de_DE.UTF-8", "LC_ALL=tr_TR",
                               "LC_ALL=no_such_locale"}) {
        const Finished finished =
            runCli(Launch{.arguments = {"judge", sheet}, .environment = {locale}});
        EXPECT_EQ(finished.output, expected) << locale;
        EXPECT_EQ(finished.error, "") << locale;
    }
}

TEST(Calls, ReadAFileWithAnyName) {
    const Folder folder;
    for (const char* name : {"with blank.json", "\xC3\xBC\xE2\x89\xA4.json", "\xFF\xFE.json"}) {
        const std::string sheet = folder.write(name, cleanSheet().dump());
        EXPECT_EQ(runCli({"judge", sheet, "--unattested"}).exitCode, 0) << name;
    }
    // What is no UTF-8 in a name does not reach the error line.
    const Finished finished = runCli({"judge", folder.path() + "/\xFF.txt"});
    EXPECT_EQ(finished.exitCode, 2);
    EXPECT_EQ(finished.error, folder.path() + "/\xEF\xBF\xBD.txt: is not there\n");
}

}  // namespace
}  // namespace app
