// SPDX-License-Identifier: Apache-2.0
#include "find_certificates.h"

#include "archive/search.h"
#include "columns.h"
#include "exchange/json_text.h"
#include "exporting/certificate_json.h"
#include "judge/sheet_words.h"
#include "qt_core.h"

namespace app {
namespace {

using model::JsonValue;
using model::Result;

constexpr int kPageSize = 1000;

std::string textOf(const model::FoundCertificate& certificate) {
    return lineOf({std::to_string(certificate.number), certificate.issuedAt.substr(0, 10),
                   std::string(model::word(certificate.verdict)),
                   std::string(model::word(certificate.state)), certificate.serial,
                   certificate.heat, certificate.part, certificate.order, certificate.customer,
                   certificate.customerOrder, certificate.type});
}

Result<model::CertificateSearch> searchFrom(const Arguments& arguments) {
    model::CertificateSearch search;
    search.pageSize = kPageSize;
    if (const std::string* words = arguments.value("--text")) search.words = *words;
    const auto take = [&](const char* option, std::optional<std::string>& field) {
        if (const std::string* value = arguments.value(option)) field = *value;
    };
    take("--serial", search.serial);
    take("--heat", search.heat);
    take("--part", search.part);
    take("--order", search.order);
    take("--customer", search.customer);
    take("--from", search.from);
    take("--to", search.to);
    if (const std::string* word = arguments.value("--verdict")) {
        search.verdict = model::verdictFrom(*word);
        if (!search.verdict)
            return model::inputError(
                "--verdict",
                "there is no verdict \"%1\"; give acceptable, \"not acceptable\" or \"not judged\"",
                {*word});
    }
    return search;
}

Result<Outcome> findAll(const Arguments& arguments) {
    auto search = searchFrom(arguments);
    if (!search) return search.error();
    // What is wrong with the call is said before anything is opened.
    if (const auto checked = model::searchStatement(*search); !checked) {
        model::Error error = checked.error();
        if (error.place.empty()) error.place = "fettlemark-cli find";
        return error;
    }
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    const bool json = arguments.has("--json");
    Outcome outcome;
    JsonValue::Elements elements;
    do {
        const auto page = model::findCertificates(*archive, *search);
        if (!page) return page.error();
        for (const model::FoundCertificate& certificate : page->certificates) {
            if (json)
                elements.push_back(JsonValue::object(certificateMembers(certificate)));
            else
                outcome.text += textOf(certificate);
        }
        search->before = page->next;
    } while (search->before);
    if (json)
        outcome.text = model::writeJson(
            JsonValue::object({{"format", JsonValue::string("fettlemark-find/1")},
                               {"certificates", JsonValue::array(std::move(elements))}}));
    else if (outcome.text.empty())
        outcome.text = "no certificate was found\n";
    return outcome;
}

}  // namespace

Command findCommand() {
    return {
        .name = "find",
        .operand = "",
        .summary = "lists certificates, the newest first",
        .details =
            "Lists the certificates that agree with everything given, or all of them. The\n"
            "words of --text all stand somewhere in serial number, heat, part, order,\n"
            "customer, customer's order or type of the certificate; case and accents do not\n"
            "matter, and the last word may be only begun, unless a space follows it. The\n"
            "other options are compared exactly.\n"
            "\n"
            "Prints a line for every certificate, with columns separated by tabs: number, date\n"
            "of issue, verdict, state, serial number, heat, part, order, customer, customer's\n"
            "order, type. A column without content holds \"-\". State is \"superseded\" where a\n"
            "later certificate replaces it, else \"released\".\n",
        .options = {{"--db", "FILE", "the archive", true},
                    {"--text", "WORDS", "words that the certificate has"},
                    {"--serial", "S", "of this casting"},
                    {"--heat", "H", "of this heat"},
                    {"--part", "P", "of this part"},
                    {"--order", "O", "of this order"},
                    {"--customer", "C", "for this customer"},
                    {"--from", "DATE", "issued on this day (2026-11-25, UTC) or later"},
                    {"--to", "DATE", "issued on this day or earlier"},
                    {"--verdict", "V", "acceptable, \"not acceptable\" or \"not judged\""},
                    {"--json", "", "prints fettlemark-find/1"}},
        .run = &findAll};
}

}  // namespace app
