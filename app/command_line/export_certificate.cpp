// SPDX-License-Identifier: Apache-2.0
#include "export_certificate.h"

#include "exporting/export_certificate.h"
#include "qt_core.h"
#include "whole_number.h"

namespace app {
namespace {

using model::Result;

Result<Outcome> exportOne(const Arguments& arguments) {
    const auto number = wholeNumber(arguments, "--number");
    if (!number) return number.error();
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    const std::string& out = *arguments.value("--out");
    if (auto done = exportCertificate(*archive, *number, out); !done) return done.error();
    return Outcome{ExitCode::Done, "wrote " + out + "\n"};
}

}  // namespace

Command exportCommand() {
    return {
        .name = "export",
        .operand = "",
        .summary = "writes a certificate with its record, for another program or an auditor",
        .details =
            "Makes a folder with the certificate's PDF, byte for byte; certificate-N.json, what "
            "it\n"
            "states; sheet.json (fettlemark-sheet/1) and verdict.json (fettlemark-verdict/1),\n"
            "what was judged and how; indications.csv and checks.csv, the same for a\n"
            "spreadsheet; and SHA256SUMS, by which \"sha256sum -c SHA256SUMS\" checks the files.\n"
            "The folder is there whole or not at all. Certificates that were made before\n"
            "records were signed in the archive have no record to export.\n",
        .options = {{"--db", "FILE", "the archive", true},
                    {"--number", "N", "the certificate's number", true},
                    {"--out", "DIR", "the folder to make; must not exist yet", true}},
        .run = &exportOne};
}

}  // namespace app
