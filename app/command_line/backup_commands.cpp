// SPDX-License-Identifier: Apache-2.0
#include "backup_commands.h"

#include <cstdio>
#include <unistd.h>

#include "archive/backup.h"
#include "qt_core.h"

namespace app {
namespace {

using model::BackupContent;
using model::Result;

/// Per cent on standard error while somebody looks at it; the line is taken away at the end.
class ShownProgress {
public:
    ShownProgress() = default;
    ShownProgress(const ShownProgress&) = delete;
    ShownProgress& operator=(const ShownProgress&) = delete;
    ~ShownProgress() {
        if (shown_ >= 0) std::fputs("\r     \r", stderr);
    }

    model::Progress progress() {
        if (::isatty(STDERR_FILENO) == 0) return {};
        return [this](std::int64_t done, std::int64_t total) {
            const auto percent = total > 0 ? 100 * done / total : 0;
            if (percent != shown_) std::fprintf(stderr, "\r%3d %%", static_cast<int>(percent));
            shown_ = percent;
            return true;
        };
    }

private:
    std::int64_t shown_ = -1;
};

std::string contentText(const BackupContent& content) {
    std::string text = "certificates: " + std::to_string(content.certificates) +
                       "\nhistory: " + model::toText(content.head) + ", to " + content.headTime +
                       "\n";
    if (!content.hasKey)
        text +=
            "The archive's own key was not there: an archive restored from this can be read, but "
            "not written.\n";
    return text;
}

Result<Outcome> makeBackup(const Arguments& arguments) {
    const QtCore qt;
    const std::string& folder = *arguments.value("--out");
    ShownProgress shown;
    const auto made =
        model::backUp(*arguments.value("--db"), folder, model::systemClock(), shown.progress());
    if (!made) return made.error();
    return Outcome{ExitCode::Done, "backup: " + folder + "\n" + contentText(*made)};
}

Result<Outcome> restoreBackup(const Arguments& arguments) {
    const QtCore qt;
    const std::string& file = *arguments.value("--db");
    ShownProgress shown;
    const auto done =
        model::restore(*arguments.value("--from"), file, model::systemClock(), shown.progress());
    if (!done) return done.error();
    return Outcome{ExitCode::Done,
                   "restored: " + file + "\nbackup of: " + done->made + "\n" + contentText(*done) +
                       "What was done after the backup is not in it. Certificate numbers from " +
                       std::to_string(done->lastNumber + 1) +
                       " on would be given out a second time where they were given out since.\n"};
}

}  // namespace

Command backupCommand() {
    return {
        .name = "backup",
        .operand = "",
        .summary = "makes a verified copy of an archive, while it is in use",
        .details =
            "Makes the folder DIR with a copy of the archive as of one moment: its database,\n"
            "the files of its certificates, its own key (readable for its owner only), and a\n"
            "list that \"sha256sum -c manifest\" reads. Then checks every byte of the copy and\n"
            "all that verify checks; there is no folder unless all of it succeeded.\n"
            "\n"
            "Prints the head of the history: noted elsewhere, it shows later that an archive\n"
            "still contains what this backup holds (verify --head).\n",
        .options = {{"--db", "FILE", "the archive", true},
                    {"--out", "DIR", "the folder to make; must not exist yet", true}},
        .run = &makeBackup};
}

Command restoreCommand() {
    return {.name = "restore",
            .operand = "",
            .summary = "makes an archive from a backup",
            .details =
                "Checks the backup against its list, makes the archive FILE from it, and checks\n"
                "that as verify does; nothing is there unless all of it succeeded. A backup of an\n"
                "older schema is brought up to date when the archive is first opened.\n",
            .options = {{"--from", "DIR", "the folder that backup made", true},
                        {"--db", "FILE", "the archive to make; must not exist yet", true}},
            .run = &restoreBackup};
}

}  // namespace app
