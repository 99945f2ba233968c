// SPDX-License-Identifier: Apache-2.0
#include "archived_certificate.h"

#include "archive/archive.h"
#include "new_file.h"
#include "qt_core.h"
#include "whole_number.h"

namespace app {
namespace {

using model::Result;

Result<Outcome> takeCertificate(const Arguments& arguments) {
    const auto number = wholeNumber(arguments, "--number");
    if (!number) return number.error();
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto pdf = archive->certificateFile(*number);
    if (!pdf) return pdf.error();
    const std::string& out = *arguments.value("--out");
    if (auto written = writeNewWholeFile(out, *pdf, "a certificate is not written over anything");
        !written)
        return written.error();
    return Outcome{ExitCode::Done, "wrote " + out + "\n"};
}

}  // namespace

Command certificateCommand() {
    return {.name = "certificate",
            .operand = "",
            .summary = "writes the archived PDF of a certificate, byte for byte",
            .details =
                "Writes the certificate as it was released, byte for byte. An existing file is\n"
                "not overwritten.\n",
            .options = {{"--db", "FILE", "the archive", true},
                        {"--number", "N", "the certificate's number", true},
                        {"--out", "FILE.pdf", "the file to write; must not exist yet", true}},
            .run = &takeCertificate};
}

}  // namespace app
