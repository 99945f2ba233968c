// SPDX-License-Identifier: Apache-2.0
#include "judge_castings.h"

#include <algorithm>
#include <filesystem>
#include <vector>

#include "archive/archive.h"
#include "base/clock.h"
#include "certificate/certificate.h"
#include "check_text.h"
#include "columns.h"
#include "issuing/printed_pictures.h"
#include "judge/judge.h"
#include "judge/sheet_words.h"
#include "judge_sheet.h"
#include "limits/words.h"
#include "pdf/render.h"
#include "pdf/write_file.h"
#include "qt_core.h"

namespace app {
namespace {

using model::Result;

std::string levelsText(const std::map<std::string, std::string>& levels) {
    std::string text;
    for (const auto& [key, level] : levels) {
        if (!text.empty()) text += ", ";
        text.append(key).append(" ").append(level);
    }
    return text;
}

std::string stageText(const model::ExaminationVerdict& verdict) {
    std::string text(model::word(verdict.stage));
    if (verdict.repairCycle > 0) text += ", repair cycle " + std::to_string(verdict.repairCycle);
    if (verdict.repeat > 0) text += ", repeat " + std::to_string(verdict.repeat);
    return text;
}

/// A file name that no other serial number gives: what is not plain is written as %XX.
std::string certificateName(const std::string& serial) {
    constexpr char kHex[] = "0123456789ABCDEF";
    std::string name;
    for (const char c : serial) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                           (c >= '0' && c <= '9') || c == '-' || c == '_' ||
                           (c == '.' && !name.empty());
        const auto byte = static_cast<unsigned char>(c);
        if (plain)
            name += c;
        else
            ((name += '%') += kHex[byte >> 4]) += kHex[byte & 15];
    }
    return name + ".pdf";
}

/// What a casting's verdict adds to the output and to the exit code.
struct JudgedCasting {
    std::string lines;
    ExitCode code = ExitCode::NotJudged;
};

class CastingJudge {
public:
    CastingJudge(const model::Archive& archive, model::TableSet tables, const Arguments& arguments)
        : archive_(archive), tables_(std::move(tables)), arguments_(arguments) {}

    Result<JudgedCasting> judge(const std::string& serial) {
        const Result<model::CastingFile> file = archive_.casting(serial);
        if (!file) return file.error();
        // A draft that cannot be judged as it stands is no failure of the call.
        const Result<model::Sheet> sheet = model::sheetOf(*file);
        if (!sheet) return notJudged(serial, sheet.error());
        const Result<model::Verdict> verdict = model::judge(*sheet, tables_);
        if (!verdict) return notJudged(serial, verdict.error());

        JudgedCasting judged;
        for (const model::ExaminationVerdict& zone : verdict->examinations) {
            if (zone.superseded) continue;
            judged.lines += lineOf({serial, zone.zone, std::string(model::word(zone.method)),
                                    stageText(zone), levelsText(zone.levels),
                                    std::string(model::word(zone.word)), decidingText(zone)});
        }
        model::Verdict result = *verdict;
        result.word = reports::resultOf(*file, *verdict);
        judged.code = exitCodeOf(result, arguments_.has("--unattested"));
        std::string where;
        if (const std::string* folder = arguments_.value("--out")) {
            const Result<std::string> written = writeCertificate(*file, *verdict, *folder);
            if (!written) return written.error();
            where = *written;
        }
        const bool incomplete = result.word != verdict->word;
        judged.lines +=
            lineOf({serial, "result", "", "", "", std::string(model::word(result.word)),
                    incomplete ? "the zone plan requires more than was examined" : "", where});
        return judged;
    }

private:
    static Result<JudgedCasting> notJudged(const std::string& serial, const model::Error& cause) {
        if (cause.kind != model::ErrorKind::Input) return cause;
        return JudgedCasting{
            lineOf({serial, "result", "", "", "", std::string(model::word(model::Word::NotJudged)),
                    cause.message(), ""}),
            ExitCode::NotJudged};
    }

    Result<std::string> writeCertificate(const model::CastingFile& file,
                                         const model::Verdict& verdict, const std::string& folder) {
        const Result<model::Head> head = archive_.head();
        if (!head) return head.error();
        reports::Issue issue;
        issue.date = model::toText(model::systemClock().now()).substr(0, 10);
        if (const std::string* works = arguments_.value("--works")) issue.worksName = *works;
        issue.demonstration = archive_.kind() == model::ArchiveKind::Demonstration;
        issue.historyHead = model::toText(*head);
        issue.programVersion = FETTLEMARK_VERSION;
        const auto pictures = printedPictures(archive_, file);
        if (!pictures) return pictures.error();
        const Result<reports::Document> document =
            reports::certificateOf({file, verdict, tables_, issue, {}, {}, &*pictures});
        if (!document) return document.error();
        const Result<reports::Rendered> pdf = reports::renderPdf(*document);
        if (!pdf) return pdf.error();
        std::string path = folder + "/" + certificateName(file.casting.serial);
        if (const auto written = reports::writeFile(path, pdf->bytes); !written)
            return written.error();
        return path;
    }

    const model::Archive& archive_;
    model::TableSet tables_;
    const Arguments& arguments_;
};

/// Of two exit codes the one that says more: 1 before 3 before 0.
ExitCode worse(ExitCode a, ExitCode b) {
    if (a == ExitCode::NotAcceptable || b == ExitCode::NotAcceptable)
        return ExitCode::NotAcceptable;
    return std::max(a, b);
}

Result<void> makeFolder(const std::string& folder) {
    std::error_code failure;
    std::filesystem::create_directory(folder, failure);
    if (std::filesystem::is_directory(folder)) return {};
    if (failure == std::errc::no_such_file_or_directory)
        return model::inputError(folder, "cannot be made: the folder above it is not there");
    if (!failure || failure == std::errc::file_exists || failure == std::errc::not_a_directory)
        return model::inputError(folder, "is not a folder");
    return model::refusal(folder, "cannot be made: %1", {failure.message()});
}

Result<Outcome> judgeCastings(const Arguments& arguments) {
    const QtCore qt;
    const Result<model::Archive> archive = model::Archive::open(*arguments.value("--db"));
    if (!archive) return archive.error();
    const Result<std::vector<model::Casting>> castings = archive->castings();
    if (!castings) return castings.error();
    Result<model::TableSet> tables = archive->tables();
    if (!tables) return tables.error();
    if (const std::string* folder = arguments.value("--out"))
        if (const auto made = makeFolder(*folder); !made) return made.error();

    CastingJudge judge(*archive, std::move(tables).value(), arguments);
    Outcome outcome;
    for (const model::Casting& casting : *castings) {
        const Result<JudgedCasting> judged = judge.judge(casting.serial);
        if (!judged) return judged.error();
        outcome.text += judged.value().lines;
        outcome.code = worse(outcome.code, judged.value().code);
    }
    return outcome;
}

}  // namespace

Command castingsCommand() {
    return {
        .name = "castings",
        .operand = "",
        .summary = "judges every casting of an archive",
        .details =
            "Prints a line for every examination that counts, with columns separated by tabs:\n"
            "serial number, zone, method, stage, levels, verdict, what decided; and a line for\n"
            "every casting: serial number, \"result\", the verdict, what is missing, and with\n"
            "--out the certificate's file. A column without content holds \"-\". A certificate\n"
            "written here has no number and is marked as not released.\n"
            "\n"
            "The exit code is that of judge, for all castings together.\n",
        .options = {{"--db", "FILE", "the archive", true},
                    {"--out", "DIR", "writes a certificate (PDF) of every casting that is judged"},
                    {"--works", "NAME", "the works' name on the certificates"},
                    {"--unattested", "", "gives 0 for acceptable castings, whoever attested"}},
        .run = &judgeCastings};
}

}  // namespace app
