// SPDX-License-Identifier: Apache-2.0
#include "write_demo.h"

#include "archive/people.h"
#include "demo_db/staff.h"
#include "issuing/demonstration.h"
#include "qt_core.h"

namespace app {
namespace {

model::Result<Outcome> writeDemo(const Arguments& arguments) {
    const QtCore qt;
    const std::string& file = *arguments.value("--db");
    if (const auto written = writeDemonstration(file, FETTLEMARK_VERSION); !written)
        return written.error();
    std::string text = "wrote " + file + "\n";
    for (const model::Person& person : demo::staff()) {
        text += person.id + "\t" + person.name;
        for (const model::Role role : person.roles) text += "\t" + std::string(model::word(role));
        text += "\n";
    }
    text += std::string("everybody's passphrase, invented and public: ") + demo::kPassphrase + "\n";
    return Outcome{ExitCode::Done, text};
}

}  // namespace

Command demoCommand() {
    return {.name = "demo",
            .operand = "",
            .summary = "writes the demonstration archive",
            .details =
                "Writes an archive with invented castings and findings, to try the program\n"
                "with. It is marked as a demonstration for ever. Some castings are released, with\n"
                "signed certificates, one waits for release and one was returned. Prints who can\n"
                "sign in, and the passphrase that all of them share.\n",
            .options = {{"--db", "FILE", "the archive to write; must not exist yet", true}},
            .run = &writeDemo};
}

}  // namespace app
