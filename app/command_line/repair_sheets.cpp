// SPDX-License-Identifier: Apache-2.0
#include "repair_sheets.h"

#include "archive/archive.h"
#include "base/clock.h"
#include "judge/judge.h"
#include "new_file.h"
#include "pdf/render.h"
#include "qt_core.h"
#include "sheets/marking_out.h"
#include "sheets/weld_map.h"

namespace app {
namespace {

using model::Result;

/// Makes a sheet of the casting, as it stands in the archive, and writes it.
template <class Make>
Result<Outcome> writeSheet(const Arguments& arguments, const Make& make) {
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto file = archive->casting(*arguments.value("--serial"));
    if (!file) return file.error();
    const auto tables = archive->tables();
    if (!tables) return tables.error();
    const auto sheet = model::sheetOf(*file);
    if (!sheet) return sheet.error();
    const auto verdict = model::judge(*sheet, *tables);
    if (!verdict) return verdict.error();

    reports::SheetInput input{*file, *verdict};
    input.printedOn = model::toText(model::systemClock().now()).substr(0, 10);
    if (const std::string* works = arguments.value("--works")) input.worksName = *works;
    input.programVersion = FETTLEMARK_VERSION;
    input.demonstration = archive->kind() == model::ArchiveKind::Demonstration;
    const Result<reports::Document> document = make(input);
    if (!document) return document.error();
    const auto pdf = reports::renderPdf(*document);
    if (!pdf) return pdf.error();
    const std::string& out = *arguments.value("--out");
    if (auto written = writeNewWholeFile(out, pdf->bytes, "a sheet is not written over anything");
        !written)
        return written.error();
    return Outcome{ExitCode::Done, "wrote " + out + "\n"};
}

Result<Outcome> writeMarkingOut(const Arguments& arguments) {
    const std::string* zone = arguments.value("--zone");
    return writeSheet(arguments, [&](const reports::SheetInput& input) {
        return reports::markingOutOf(input, zone == nullptr ? std::string() : *zone);
    });
}

Result<Outcome> writeWeldMap(const Arguments& arguments) {
    return writeSheet(arguments, &reports::weldMapOf);
}

}  // namespace

Command markingOutCommand() {
    return {
        .name = "marking-out",
        .operand = "",
        .summary = "writes the sheet by which a casting is ground",
        .details =
            "Writes a PDF for whoever takes metal out: zone by zone to scale the indications,\n"
            "their coordinates from the datum, which of them are to be taken out, and how much\n"
            "wall has to stay. What nobody has decided is marked to be left. A casting in which\n"
            "nothing is to be taken out or decided is refused. An existing file is not\n"
            "overwritten. The sheet certifies nothing.\n",
        .options = {{"--db", "FILE", "the archive", true},
                    {"--serial", "S", "the casting's serial number", true},
                    {"--zone", "Z", "this zone only; else all that need it"},
                    {"--works", "NAME", "the works' name on the sheet"},
                    {"--out", "FILE.pdf", "the file to write; must not exist yet", true}},
        .run = &writeMarkingOut};
}

Command weldMapCommand() {
    return {
        .name = "weld-map",
        .operand = "",
        .summary = "writes the map of a casting's excavations and welds",
        .details =
            "Writes a PDF with every excavation and weld of the casting, zone by zone to scale:\n"
            "size, wall left, welding procedure, welder, filler, heat treatment, examination\n"
            "after it, and for every nonconformance what is still open. A casting that nothing\n"
            "was taken out of is refused. An existing file is not overwritten. The map certifies\n"
            "nothing.\n",
        .options = {{"--db", "FILE", "the archive", true},
                    {"--serial", "S", "the casting's serial number", true},
                    {"--works", "NAME", "the works' name on the map"},
                    {"--out", "FILE.pdf", "the file to write; must not exist yet", true}},
        .run = &writeWeldMap};
}

}  // namespace app
