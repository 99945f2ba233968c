// SPDX-License-Identifier: Apache-2.0
#include "exporting/export_certificate.h"

#include <algorithm>
#include <filesystem>
#include <unistd.h>

#include "archive/disk.h"
#include "archive/lifecycle.h"
#include "archive/search.h"
#include "base/digest.h"
#include "exchange/json_text.h"
#include "exchange/record_csv.h"
#include "exporting/readings_json.h"
#include "exporting/record_json.h"

namespace app {
namespace {

using model::JsonValue;
using model::Result;

constexpr char kManifest[] = "SHA256SUMS";

Result<model::FoundCertificate> foundCertificate(const model::Archive& archive,
                                                 std::int64_t number) {
    model::CertificateSearch search;
    search.before = number + 1;
    search.pageSize = 1;
    auto page = model::findCertificates(archive, search);
    if (!page) return page.error();
    if (page->certificates.empty() || page->certificates.front().number != number)
        return model::inputError(archive.path(), "has no certificate %1", {std::to_string(number)});
    return std::move(page->certificates.front());
}

std::string factsText(const model::FoundCertificate& found, const model::Certificate& certificate) {
    JsonValue::Members members = statedMembers(found, certificate);
    members.insert(members.begin(), {"format", JsonValue::string("fettlemark-certificate/1")});
    return model::writeJson(JsonValue::object(std::move(members)));
}

/// The files of an export, and a line of the manifest for each.
class Exported {
public:
    explicit Exported(std::string folder) : folder_(std::move(folder)) {}

    Result<void> add(const std::string& name, std::string_view bytes) {
        manifest_ += model::toHex(model::sha256(bytes)) + "  " + name + "\n";
        return model::writeNewFile(folder_ + "/" + name, bytes);
    }
    Result<void> finish() { return model::writeNewFile(folder_ + "/" + kManifest, manifest_); }

private:
    std::string folder_;
    std::string manifest_;
};

/// What was judged and how, as it was stored when the casting was presented.
Result<void> addRecord(const model::Archive& archive, std::int64_t number, Exported& files) {
    const auto sheet = model::presentedSheet(archive, number);
    if (!sheet) return sheet.error();
    const auto verdict = model::presentedVerdict(archive, number);
    if (!verdict) return verdict.error();
    const auto indications = model::indicationsCsv(*sheet, *verdict);
    if (!indications) return indications.error();
    const auto checks = model::checksCsv(*verdict);
    if (!checks) return checks.error();
    const std::pair<const char*, const std::string&> all[] = {{"sheet.json", *sheet},
                                                              {"verdict.json", *verdict},
                                                              {"indications.csv", *indications},
                                                              {"checks.csv", *checks}};
    for (const auto& [name, bytes] : all)
        if (auto done = files.add(name, bytes); !done) return done;
    return {};
}

/// All of it together, and as tables.
Result<void> addWhole(const model::Archive& archive, const model::FoundCertificate& listed,
                      const model::Certificate& certificate, const model::Presented& presented,
                      Exported& files) {
    const auto record = recordJson(archive, listed, certificate, presented);
    if (!record) return record.error();
    const auto records = model::recordsCsv(*record);
    if (!records) return records.error();
    const auto conditions = model::conditionsCsv(*record);
    if (!conditions) return conditions.error();
    const auto registers = model::registersCsv(*record);
    if (!registers) return registers.error();
    const std::pair<const char*, const std::string&> all[] = {{"record.json", *record},
                                                              {"records.csv", *records},
                                                              {"conditions.csv", *conditions},
                                                              {"registers.csv", *registers}};
    for (const auto& [name, bytes] : all)
        if (auto done = files.add(name, bytes); !done) return done;
    return {};
}

/// What was read by ultrasound, where anything was.
Result<void> addReadings(const model::Archive& archive, const model::Presented& presented,
                         Exported& files) {
    const auto readings = readingsJson(archive, presented.records);
    if (!readings) return readings.error();
    if (!*readings) return {};
    const auto settings = model::settingsCsv(**readings);
    if (!settings) return settings.error();
    const auto lines = model::readingsCsv(**readings);
    if (!lines) return lines.error();
    const std::pair<const char*, const std::string&> all[] = {
        {"readings.json", **readings}, {"settings.csv", *settings}, {"readings.csv", *lines}};
    for (const auto& [name, bytes] : all)
        if (auto done = files.add(name, bytes); !done) return done;
    return {};
}

Result<void> writeFiles(const model::Archive& archive, std::int64_t number,
                        const std::string& folder) {
    const auto listed = foundCertificate(archive, number);
    if (!listed) return listed.error();
    const auto certificate = archive.certificate(number);
    if (!certificate) return certificate.error();
    const auto pdf = archive.certificateFile(number);
    if (!pdf) return pdf.error();
    const std::string name = "certificate-" + std::to_string(number);
    Exported files(folder);
    if (auto done = files.add(name + ".pdf", *pdf); !done) return done;
    if (auto done = files.add(name + ".json", factsText(*listed, *certificate)); !done) return done;
    // A certificate of the first schema was released without one.
    const auto presented = model::presentedOf(archive, listed->serial);
    if (!presented) return presented.error();
    const auto found = std::ranges::find(*presented, number, &model::Presented::number);
    if (found != presented->end()) {
        if (auto done = addRecord(archive, number, files); !done) return done;
        if (auto done = addReadings(archive, *found, files); !done) return done;
        if (auto done = addWhole(archive, *listed, *certificate, *found, files); !done) return done;
    }
    return files.finish();
}

}  // namespace

Result<void> exportCertificate(const model::Archive& archive, std::int64_t number,
                               const std::string& out) {
    std::string path = std::filesystem::absolute(out).lexically_normal().string();
    while (path.size() > 1 && path.ends_with('/')) path.pop_back();
    if (auto nothing = model::expectNothing(path, "an export needs a folder of a new name");
        !nothing)
        return nothing;
    auto staging = model::Staging::make(path + ".new-" + std::to_string(::getpid()));
    if (!staging) return staging.error();
    if (auto done = writeFiles(archive, number, staging->path()); !done) return done.error();
    // Made for its owner alone, but meant to be handed on.
    std::error_code failure;
    std::filesystem::permissions(staging->path(), std::filesystem::perms(0755), failure);
    if (failure) return model::refusal(out, "cannot be written: %1", {failure.message()});
    if (auto done = model::syncTree(staging->path()); !done) return done.error();
    return staging->become(path);
}

}  // namespace app
