// SPDX-License-Identifier: Apache-2.0
#include "rebuild_search.h"

#include "archive/search.h"
#include "qt_core.h"

namespace app {
namespace {

model::Result<Outcome> rebuild(const Arguments& arguments) {
    const QtCore qt;
    auto archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    if (auto done = model::rebuildSearchIndex(*archive, model::Actor{"Fettlemark"}); !done)
        return done.error();
    return Outcome{ExitCode::Done, "the search index was made anew\n"};
}

}  // namespace

Command rebuildSearchCommand() {
    return {.name = "rebuild-search",
            .operand = "",
            .summary = "makes the search index of an archive anew",
            .details =
                "Makes the index of the words by which certificates are found anew, from the\n"
                "certificates. It holds no evidence; verify says where it is damaged.\n",
            .options = {{"--db", "FILE", "the archive", true}},
            .run = &rebuild};
}

}  // namespace app
