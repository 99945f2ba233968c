// SPDX-License-Identifier: Apache-2.0
#include "release_commands.h"

#include "archive/lifecycle.h"
#include "qt_core.h"
#include "signing_in.h"
#include "whole_number.h"

namespace app {
namespace {

using model::Result;

constexpr Option kNumberOption{"--number", "N", "the certificate's", true};

Option reasonOption(std::string_view meaning) {
    return {"--reason", "TEXT", meaning, true};
}

/// Opens the archive, signs the person in and runs act(archive, person).
template <class Act>
Result<Outcome> signedAct(const Arguments& arguments, const std::string& done, Act act) {
    const QtCore qt;
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto person = signedInFrom(*archive, arguments);
    if (!person) return person.error();
    if (const auto acted = act(*archive, *person); !acted) return acted.error();
    return Outcome{ExitCode::Done, done + "\n"};
}

Result<Outcome> returnPresented(const Arguments& arguments) {
    const auto number = wholeNumber(arguments, "--number");
    if (!number) return number.error();
    return signedAct(arguments, "returned " + std::to_string(*number),
                     [&](model::Archive& archive, const model::SignedIn& person) {
                         return model::returnCasting(archive, *number, *arguments.value("--reason"),
                                                     person);
                     });
}

Result<Outcome> withdrawCertificate(const Arguments& arguments) {
    const auto number = wholeNumber(arguments, "--number");
    if (!number) return number.error();
    return signedAct(arguments, "withdrew " + std::to_string(*number),
                     [&](model::Archive& archive, const model::SignedIn& person) {
                         return model::withdraw(archive, *number, *arguments.value("--reason"),
                                                person);
                     });
}

Result<Outcome> reopenCasting(const Arguments& arguments) {
    const std::string& serial = *arguments.value("--serial");
    return signedAct(arguments, "reopened " + serial,
                     [&](model::Archive& archive, const model::SignedIn& person) {
                         return model::reopen(archive, serial, *arguments.value("--reason"),
                                              person);
                     });
}

}  // namespace

Command returnCommand() {
    return {.name = "return",
            .operand = "",
            .summary = "gives a casting that waits for release back to its inspectors",
            .details =
                "Signed by a QA manager. The casting's examinations become drafts of their next\n"
                "revision; the number stays used up, with the reason.\n",
            .options = {kDatabaseOption, kNumberOption, reasonOption("what is to be put right"),
                        kPersonOption, kPassphraseOption},
            .run = &returnPresented};
}

Command withdrawCommand() {
    return {.name = "withdraw",
            .operand = "",
            .summary = "declares a released certificate void",
            .details =
                "Signed by a QA manager. The certificate stays in the archive, with the reason.\n",
            .options = {kDatabaseOption, kNumberOption, reasonOption("why it is void"),
                        kPersonOption, kPassphraseOption},
            .run = &withdrawCertificate};
}

Command reopenCommand() {
    return {.name = "reopen",
            .operand = "",
            .summary = "gives a casting back to its inspectors for a correction",
            .details =
                "Signed by a QA manager. The casting's examinations become drafts of their next\n"
                "revision. A released certificate stands until it is withdrawn or the next\n"
                "release supersedes it.\n",
            .options = {kDatabaseOption,
                        {"--serial", "S", "the casting's serial number", true},
                        reasonOption("what is to be corrected"),
                        kPersonOption,
                        kPassphraseOption},
            .run = &reopenCasting};
}

}  // namespace app
