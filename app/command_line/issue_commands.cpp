// SPDX-License-Identifier: Apache-2.0
#include <memory>

#include "issuing/http_time_stamps.h"
#include "issuing/issue.h"
#include "qt_core.h"
#include "release_commands.h"
#include "signing_in.h"
#include "whole_number.h"

namespace app {
namespace {

using model::Result;

constexpr Option kNumberOption{"--number", "N", "as queue lists it", true};
constexpr Option kTimeStampsOption{"--time-stamps", "URL",
                                   "a time-stamp service (RFC 3161) for the signature"};

/// The settings, and what they point to.
struct Settings {
    std::unique_ptr<model::TimeStampService> timeStamps;
    IssueSettings issue;
};

Result<Settings> settingsFrom(const Arguments& arguments) {
    Settings settings;
    settings.issue.programVersion = FETTLEMARK_VERSION;
    if (const std::string* name = arguments.value("--works")) settings.issue.worksName = *name;
    if (const std::string* address = arguments.value("--address"))
        settings.issue.worksAddress = *address;
    if (const std::string* place = arguments.value("--place")) settings.issue.place = *place;
    if (const std::string* url = arguments.value("--time-stamps")) {
        auto service = httpTimeStamps(*url);
        if (!service) return service.error();
        settings.timeStamps = std::move(*service);
        settings.issue.timeStamps = settings.timeStamps.get();
    }
    return settings;
}

/// Opens the archive, signs the person in and runs act(archive, person, settings).
template <class Act>
Result<Outcome> issue(const Arguments& arguments, Act act) {
    const QtCore qt;
    const auto settings = settingsFrom(arguments);
    if (!settings) return settings.error();
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto person = signedInFrom(*archive, arguments);
    if (!person) return person.error();
    const Result<std::string> done = act(*archive, *person, settings->issue);
    if (!done) return done.error();
    return Outcome{ExitCode::Done, *done + "\n"};
}

Result<Outcome> presentOne(const Arguments& arguments) {
    return issue(arguments,
                 [&](model::Archive& archive, const model::SignedIn& person,
                     const IssueSettings& settings) -> Result<std::string> {
                     const std::string& serial = *arguments.value("--serial");
                     const auto number = presentCasting(archive, serial, person, settings);
                     if (!number) return number.error();
                     return "presented " + serial + " as certificate " + std::to_string(*number);
                 });
}

Result<Outcome> endorseOne(const Arguments& arguments) {
    const auto number = wholeNumber(arguments, "--number");
    if (!number) return number.error();
    return issue(arguments,
                 [&](model::Archive& archive, const model::SignedIn& person,
                     const IssueSettings& settings) -> Result<std::string> {
                     const auto done = endorseCertificate(archive, *number, person, settings);
                     if (!done) return done.error();
                     return "signed certificate " + std::to_string(*number);
                 });
}

Result<Outcome> releaseOne(const Arguments& arguments) {
    const auto number = wholeNumber(arguments, "--number");
    if (!number) return number.error();
    return issue(arguments,
                 [&](model::Archive& archive, const model::SignedIn& person,
                     const IssueSettings& settings) -> Result<std::string> {
                     const auto done = releaseCertificate(archive, *number, person, settings);
                     if (!done) return done.error();
                     return "released certificate " + std::to_string(*number);
                 });
}

}  // namespace

Command presentCommand() {
    return {.name = "present",
            .operand = "",
            .summary = "signs a casting's certificate as inspector and puts it up for release",
            .details =
                "Every examination of the casting has been signed, at least one of them by this\n"
                "inspector. Prints the certificate's number. What cannot be released is refused.\n",
            .options = {kDatabaseOption,
                        {"--serial", "S", "the casting's serial number", true},
                        {"--works", "NAME", "the works' name on the certificate", true},
                        {"--address", "TEXT", "the works' address on it"},
                        {"--place", "TEXT", "where it is signed"},
                        kTimeStampsOption,
                        kPersonOption,
                        kPassphraseOption},
            .run = &presentOne};
}

Command endorseCommand() {
    return {.name = "endorse",
            .operand = "",
            .summary = "signs a certificate of type 3.2 as the third party",
            .details =
                "The purchaser's or the official inspector signs before the QA manager releases.\n",
            .options = {kDatabaseOption,
                        kNumberOption,
                        {"--place", "TEXT", "where it is signed"},
                        kTimeStampsOption,
                        kPersonOption,
                        kPassphraseOption},
            .run = &endorseOne};
}

Command releaseCommand() {
    return {.name = "release",
            .operand = "",
            .summary = "signs a certificate as QA manager and releases it",
            .details =
                "Whoever recorded any of its examinations cannot release it; queue --person\n"
                "lists what stands in the way. \"Not acceptable\" may be released, on a\n"
                "certificate that says so.\n",
            .options = {kDatabaseOption,
                        kNumberOption,
                        {"--place", "TEXT", "where it is signed"},
                        kTimeStampsOption,
                        kPersonOption,
                        kPassphraseOption},
            .run = &releaseOne};
}

}  // namespace app
