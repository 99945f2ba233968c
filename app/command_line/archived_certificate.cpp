// SPDX-License-Identifier: Apache-2.0
#include "archived_certificate.h"

#include <filesystem>
#include <unistd.h>

#include "archive/archive.h"
#include "archive/disk.h"
#include "qt_core.h"
#include "whole_number.h"

namespace app {
namespace {

using model::Result;

/// Whole or not at all, and never over anything.
Result<void> writeCertificate(const std::string& out, const std::string& pdf) {
    const std::string path = std::filesystem::absolute(out).lexically_normal().string();
    if (auto nothing = model::expectNothing(path, "a certificate is not written over anything");
        !nothing)
        return nothing;
    std::error_code ignored;
    if (!std::filesystem::is_directory(model::parentOf(path), ignored))
        return model::inputError(out, "cannot be written: the folder is not there");
    const std::string temporary = path + ".new-" + std::to_string(::getpid());
    auto written = model::writeNewFile(temporary, pdf);
    if (written) written = model::syncFile(temporary);
    if (written) written = model::moveToNew(temporary, path);
    if (written) return {};
    ::unlink(temporary.c_str());
    model::Error error = written.error();
    error.place = out;  // not the temporary file's
    return error;
}

Result<Outcome> takeCertificate(const Arguments& arguments) {
    const auto number = wholeNumber(arguments, "--number");
    if (!number) return number.error();
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto pdf = archive->certificateFile(*number);
    if (!pdf) return pdf.error();
    const std::string& out = *arguments.value("--out");
    if (auto written = writeCertificate(out, *pdf); !written) return written.error();
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
