// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli: judging and recording without a display.
#include <algorithm>
#include <cstdlib>
#include <exception>
#include <string>
#include <vector>

#include "archived_certificate.h"
#include "backup_commands.h"
#include "command.h"
#include "examination_commands.h"
#include "export_certificate.h"
#include "find_certificates.h"
#include "help.h"
#include "identity_commands.h"
#include "judge_again.h"
#include "judge_castings.h"
#include "judge_sheet.h"
#include "measure_machine.h"
#include "order_touches.h"
#include "people_commands.h"
#include "rebuild_search.h"
#include "register_commands.h"
#include "release_commands.h"
#include "repair_sheets.h"
#include "retention_commands.h"
#include "runs_out.h"
#include "schema_command.h"
#include "set_up_archive.h"
#include "size_reading.h"
#include "streams.h"
#include "table_commands.h"
#include "verify.h"
#include "work_out.h"
#include "write_demo.h"

namespace {

using app::Command;
using app::Outcome;
using model::Result;

std::vector<Command> allCommands() {
    return {app::judgeCommand(),
            app::judgeAgainCommand(),
            app::sizeCommand(),
            app::workingsCommand(),
            app::castingsCommand(),
            app::demoCommand(),
            app::findCommand(),
            app::certificateCommand(),
            app::exportCommand(),
            app::verifyCommand(),
            app::rebuildSearchCommand(),
            app::setUpCommand(),
            app::peopleCommand(),
            app::addPersonCommand(),
            app::issueIdentityCommand(),
            app::importIdentityCommand(),
            app::trustAuthorityCommand(),
            app::takeRevocationListCommand(),
            app::passphraseCommand(),
            app::authorityPassphraseCommand(),
            app::withdrawIdentityCommand(),
            app::replaceArchiveKeyCommand(),
            app::tablesCommand(),
            app::attestCommand(),
            app::examinationsCommand(),
            app::signCommand(),
            app::invalidateCommand(),
            app::presentCommand(),
            app::queueCommand(),
            app::endorseCommand(),
            app::releaseCommand(),
            app::returnCommand(),
            app::withdrawCommand(),
            app::reopenCommand(),
            app::keepCommand(),
            app::holdCommand(),
            app::retentionCommand(),
            app::disposeCommand(),
            app::backupCommand(),
            app::restoreCommand(),
            app::importCommand(),
            app::enterCommand(),
            app::entriesCommand(),
            app::runsOutCommand(),
            app::orderTouchesCommand(),
            app::markingOutCommand(),
            app::weldMapCommand(),
            app::schemaCommand(),
            app::measureCommand()};
}

Result<Outcome> run(const std::vector<std::string>& words) {
    const std::vector<Command> commands = allCommands();
    if (words.empty())
        return model::inputError("fettlemark-cli", "a command is missing; see --help");
    if (words[0] == "--help") return Outcome{app::ExitCode::Done, app::programHelp(commands)};
    if (words[0] == "--version")
        return Outcome{app::ExitCode::Done, "fettlemark-cli " FETTLEMARK_VERSION "\n"};
    const auto command = std::ranges::find(commands, words[0], &Command::name);
    if (command == commands.end())
        return model::inputError("fettlemark-cli", "there is no command \"%1\"; see --help",
                                 {words[0]});
    const std::vector<std::string> given(words.begin() + 1, words.end());
    if (std::ranges::find(given, "--help") != given.end())
        return Outcome{app::ExitCode::Done, app::commandHelp(*command)};
    const Result<app::Arguments> arguments = app::Arguments::parse(*command, given);
    if (!arguments) return arguments.error();
    return command->run(*arguments);
}

int fail(app::ExitCode code, const std::string& message) {
    app::writeErrorLine(message);
    return static_cast<int>(code);
}

}  // namespace

int main(int argc, char** argv) {
    app::prepareStreams();
    // The same numbers and file names whatever the caller's locale.
    ::setenv("LC_ALL", "C.UTF-8", 1);
    try {
        const Result<Outcome> outcome =
            run(std::vector<std::string>(argv + std::min(argc, 1), argv + argc));
        if (!outcome) return fail(app::exitCodeFor(outcome.error()), outcome.error().message());
        if (const Result<void> written = app::writeOutput(outcome.value().text); !written)
            return fail(app::ExitCode::Refused, written.error().message());
        return static_cast<int>(outcome.value().code);
    } catch (const std::exception& cause) {
        return fail(app::ExitCode::Refused, std::string("fettlemark-cli: ") + cause.what());
    }
}
