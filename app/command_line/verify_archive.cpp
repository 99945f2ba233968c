// SPDX-License-Identifier: Apache-2.0
#include "verify_archive.h"

#include <chrono>
#include <cstdio>
#include <unistd.h>

#include "checking/check_archive.h"
#include "qt_core.h"
#include "streams.h"
#include "trust/chain.h"

namespace app {
namespace {

using model::Result;

/// How far it is, on one line of standard error, where a person sees it.
class ProgressLine {
public:
    ProgressLine() : shown_(::isatty(STDERR_FILENO) == 1) {}
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;
    ~ProgressLine() {
        if (written_) std::fputs("\r\033[K", stderr);
    }

    bool show(CheckStep step, std::int64_t done, std::int64_t total) {
        using namespace std::chrono;
        const auto now = steady_clock::now();
        if (!shown_ || now - last_ < milliseconds(100)) return true;
        last_ = now;
        written_ = true;
        const int percent = total > 0 ? static_cast<int>(done * 100 / total) : 0;
        std::fprintf(stderr, "\r%s: %d %%\033[K", nameOf(step), percent);
        std::fflush(stderr);
        return true;
    }

private:
    static const char* nameOf(CheckStep step) {
        switch (step) {
            case CheckStep::Archive:
                return "history and files";
            case CheckStep::Certificates:
                return "signatures in certificates";
            case CheckStep::Verdicts:
                break;
        }
        return "judging again";
    }

    bool shown_;
    bool written_ = false;
    std::chrono::steady_clock::time_point last_{};
};

std::string line(const std::string& text) {
    return asOneLine(text) + "\n";
}

std::string counted(std::int64_t count, const std::string& what) {
    return "checked: " + std::to_string(count) + " " + what + "\n";
}

std::string checkedText(const ArchiveCheck& check) {
    std::string text =
        counted(check.archive.head.sequence, "rows of the history") +
        counted(check.archive.seals, "seals of the archive") +
        counted(check.archive.signatures, "signatures of people in the history") +
        counted(check.archive.records, "signed records") +
        counted(check.archive.certificates, "certificates and their files") +
        counted(check.pdfSignatures, "signatures in " + std::to_string(check.pdfs) + " PDFs") +
        counted(check.archive.limitTables, "limit tables") + "checked: the search index\n";
    if (check.verdicts) text += counted(*check.verdicts, "verdicts, judged again");
    return text;
}

Outcome outcomeOf(const std::string& file, const ArchiveCheck& check) {
    Outcome outcome{check.intact() ? ExitCode::Done : ExitCode::NotAcceptable, ""};
    outcome.text = line(file + ": " + (check.intact() ? "intact" : "ALTERED: do not rely on it"));
    for (const model::Error& finding : check.findings)
        outcome.text += line("altered: " + finding.message());
    for (const std::string& unnamed : check.unnamedFiles)
        outcome.text += line("note: " + unnamed + ": belongs to nothing in the archive; no harm");
    if (check.unsignedPdfs > 0)
        outcome.text += "note: " + std::to_string(check.unsignedPdfs) +
                        " certificates were issued unsigned, before this archive knew people\n";
    outcome.text += checkedText(check);
    outcome.text += "head: " + model::toText(check.archive.head) + "\n";
    return outcome;
}

/// Damaged: it is there, and what can be read of it is not an intact archive.
Result<Outcome> altered(const std::string& file, const model::Error& error) {
    if (error.kind != model::ErrorKind::Damaged) return error;
    return Outcome{ExitCode::NotAcceptable, line(file + ": ALTERED: do not rely on it") +
                                                line("altered: " + error.message())};
}

}  // namespace

Result<Outcome> verifyArchiveFile(const Arguments& arguments) {
    const std::string& file = *arguments.value("--db");
    CheckRequest request;
    request.rejudge = arguments.has("--rejudge");
    if (const std::string* text = arguments.value("--head")) {
        const auto head = model::parseHead(*text);
        if (!head) return model::inputError("--head", head.error().message());
        request.held = *head;
    }
    const QtCore qt;
    const auto archive = model::Archive::openForReading(file);
    if (!archive) return altered(file, archive.error());
    ProgressLine progress;
    const auto check =
        checkArchive(*archive, request, [&](CheckStep step, std::int64_t done, std::int64_t total) {
            return progress.show(step, done, total);
        });
    if (!check) return altered(file, check.error());
    return outcomeOf(file, *check);
}

}  // namespace app
