// SPDX-License-Identifier: Apache-2.0
#include "write_demo.h"

#include "demo_db/demonstration.h"
#include "qt_core.h"

namespace app {
namespace {

model::Result<Outcome> writeDemo(const Arguments& arguments) {
    const QtCore qt;
    const std::string& file = *arguments.value("--db");
    if (const auto written = demo::writeDemonstration(file); !written) return written.error();
    return Outcome{ExitCode::Done, "wrote " + file + "\n"};
}

}  // namespace

Command demoCommand() {
    return {.name = "demo",
            .operand = "",
            .summary = "writes the demonstration archive",
            .details =
                "Writes an archive with invented castings and findings, to try the program\n"
                "with. It is marked as a demonstration for ever.\n",
            .options = {{"--db", "FILE", "the archive to write; must not exist yet", true}},
            .run = &writeDemo};
}

}  // namespace app
