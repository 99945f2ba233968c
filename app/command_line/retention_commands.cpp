// SPDX-License-Identifier: Apache-2.0
#include "retention_commands.h"

#include "archive/retention.h"
#include "qt_core.h"
#include "signing_in.h"
#include "whole_number.h"

namespace app {
namespace {

using model::Result;

constexpr Option kOrderOption{"--order", "N", "the order's number", true};

std::string textOf(const model::Retention& stated) {
    std::string text = "order " + stated.order + ": ";
    text += stated.keepUntil ? "to be kept until " + *stated.keepUntil : "kept for ever";
    if (stated.hold) text += "; on hold: " + *stated.hold;
    return text + "\n";
}

std::string lineOf(const model::Disposable& one) {
    return std::to_string(one.number) + "\t" + one.serial + "\t" + one.type + "\t" +
           (one.returned ? "returned" : "released") + "\t" + one.at.substr(0, 10) + "\t" +
           std::to_string(one.files.size()) + "\t" + std::to_string(one.records.size()) + "\t" +
           (one.stays ? one.stays->message() : "can go") + "\n";
}

std::string reasonFrom(const Arguments& arguments) {
    const std::string* reason = arguments.value("--reason");
    return reason ? *reason : "";
}

/// act(archive, person) with the person signed in, then what is stated for the order.
template <class Act>
Result<Outcome> stating(const Arguments& arguments, Act act) {
    const QtCore qt;
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto person = signedInFrom(*archive, arguments);
    if (!person) return person.error();
    const std::string& order = *arguments.value("--order");
    if (const Result<void> done = act(*archive, order, *person); !done) return done.error();
    const auto stated = model::retention(*archive, order);
    if (!stated) return stated.error();
    return Outcome{ExitCode::Done, textOf(*stated)};
}

Result<Outcome> keepOrder(const Arguments& arguments) {
    return stating(arguments, [&](model::Archive& archive, const std::string& order,
                                  const model::SignedIn& person) {
        return model::keepUntil(archive, order, *arguments.value("--until"), reasonFrom(arguments),
                                person);
    });
}

Result<Outcome> holdOrder(const Arguments& arguments) {
    return stating(arguments, [&](model::Archive& archive, const std::string& order,
                                  const model::SignedIn& person) {
        const std::string reason = reasonFrom(arguments);
        return arguments.has("--end") ? model::endHold(archive, order, reason, person)
                                      : model::hold(archive, order, reason, person);
    });
}

Result<Outcome> showRetention(const Arguments& arguments) {
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    const std::string& order = *arguments.value("--order");
    const auto stated = model::retention(*archive, order);
    if (!stated) return stated.error();
    if (!arguments.has("--certificates")) return Outcome{ExitCode::Done, textOf(*stated)};
    const auto certificates = model::disposables(*archive, order);
    if (!certificates) return certificates.error();
    std::string text = textOf(*stated);
    for (const model::Disposable& one : *certificates) text += lineOf(one);
    return Outcome{ExitCode::Done, std::move(text)};
}

Result<Outcome> disposeOfCertificate(const Arguments& arguments) {
    const auto number = wholeNumber(arguments, "--number");
    if (!number) return number.error();
    const QtCore qt;
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto person = signedInFrom(*archive, arguments);
    if (!person) return person.error();
    if (auto done = model::dispose(*archive, *number, reasonFrom(arguments), *person); !done)
        return done.error();
    return Outcome{ExitCode::Done, "disposed of certificate " + std::to_string(*number) + "\n"};
}

}  // namespace

Command keepCommand() {
    return {.name = "keep",
            .operand = "",
            .summary = "states until when an order's certificates are kept",
            .details =
                "Until a day is stated they are kept for ever. An earlier day than the one stated\n"
                "needs a reason. Signed by a QA manager or an administrator.\n",
            .options = {kDatabaseOption,
                        kOrderOption,
                        {"--until", "DATE", "the last day, like 2036-12-31", true},
                        {"--reason", "TEXT", "why"},
                        kPersonOption,
                        kPassphraseOption},
            .run = &keepOrder};
}

Command holdCommand() {
    return {.name = "hold",
            .operand = "",
            .summary = "puts an order on legal hold, or ends that",
            .details =
                "Nothing of an order is disposed of while it is on hold, whatever day it is.\n"
                "Signed by a QA manager or an administrator.\n",
            .options = {kDatabaseOption,
                        kOrderOption,
                        {"--reason", "TEXT", "why", true},
                        {"--end", "", "ends the hold"},
                        kPersonOption,
                        kPassphraseOption},
            .run = &holdOrder};
}

Command retentionCommand() {
    return {
        .name = "retention",
        .operand = "",
        .summary = "tells until when an order's certificates are kept",
        .details =
            "Prints the last day, and the reason of a legal hold. With --certificates a line\n"
            "for each, and for each casting that was returned, columns between tabs: number,\n"
            "casting, type, released or returned, on which day, how many PDF files and contents\n"
            "of records \"dispose\" would take out, and why it stays.\n",
        .options = {kDatabaseOption,
                    kOrderOption,
                    {"--certificates", "", "with what a disposal would take out"}},
        .run = &showRetention};
}

Command disposeCommand() {
    return {
        .name = "dispose",
        .operand = "",
        .summary = "takes a certificate out of the archive once its day is over",
        .details =
            "Takes out the certificate's entry, its files, what was presented for it, and the\n"
            "contents of the records that it alone was made from. It has to be past the day of\n"
            "its order (keep), and the order not on hold; a certificate that supersedes it has\n"
            "to go first. Signed by a QA manager or an administrator.\n"
            "\n"
            "The history keeps that it was there, with the SHA-256 of all that went. It also\n"
            "keeps what it said before, and what was recorded at the bench stays. Copies in\n"
            "backups are not touched.\n",
        .options = {kDatabaseOption,
                    {"--number", "N", "the certificate's number", true},
                    {"--reason", "TEXT", "why", true},
                    kPersonOption,
                    kPassphraseOption},
        .run = &disposeOfCertificate};
}

}  // namespace app
