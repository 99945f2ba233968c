// SPDX-License-Identifier: Apache-2.0
#include "measure/certificate_crowd.h"

#include <array>
#include <cstdio>
#include <filesystem>
#include <sqlite3.h>

#include "measure/random_indications.h"

namespace app {
namespace {

using model::CertificateSearch;
using model::Result;

const model::Actor kActor{"Measurement"};

// A certificate every 315 seconds: ten years for a million. 37 of a heat, 113 of an order, 211
// customers, 997 parts; one in 997 is not acceptable.
constexpr char kRows[] =
    "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %1) "
    "INSERT INTO certificate (number, casting_serial, heat, part_number, order_number, customer, "
    "customer_reference, certificate_type, language, verdict, issued_at, issued_by, file_sha256, "
    "file_bytes) SELECT i, printf('QF-%07d', i), printf('H %d', 100000 + i / 37), "
    "printf('P-%d', 1000 + (i * 7919) % 997), printf('O-%d', 20000 + i / 113), "
    "printf('Harrow Pumps %d', (i * 31) % 211), printf('PO %d/%d', 4500000 + i / 113, i % 113), "
    "'3.1', 'en', CASE WHEN i % 997 = 0 THEN 'not acceptable' ELSE 'acceptable' END, "
    "strftime('%Y-%m-%dT%H:%M:%SZ', 1480000000 + i * 315, 'unixepoch'), 'Measurement', "
    "lower(hex(randomblob(32))), 200000 FROM n";

/// Nothing is lost if this breaks off, so there is no journal. The index of the words is made at
/// once afterwards, with more memory than it has at work.
std::vector<std::string> fillingStatements(std::int64_t count) {
    std::string rows = kRows;
    rows.replace(rows.find("%1"), 2, std::to_string(count));
    const std::string words = "INSERT INTO certificate_words (certificate_words, rank) VALUES ";
    return {"PRAGMA journal_mode = OFF",
            "PRAGMA synchronous = OFF",
            "PRAGMA cache_size = -200000",
            "DROP TRIGGER certificate_words_follow",
            rows,
            words + "('hashsize', 16777216)",
            words + "('rebuild', NULL)",
            words + "('hashsize', 1048576)"};
}

/// Day `i` of every certificate, as in kRows.
std::string dateOf(std::int64_t i) {
    const auto day = std::chrono::floor<std::chrono::days>(
        std::chrono::sys_seconds(std::chrono::seconds(1480000000 + i * 315)));
    const std::chrono::year_month_day date(day);
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "%04d-%02u-%02u", static_cast<int>(date.year()),
                  static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
    return text.data();
}

std::string serialOf(std::int64_t i) {
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "QF-%07lld", static_cast<long long>(i));
    return text.data();
}

}  // namespace

Result<std::unique_ptr<CertificateCrowd>> CertificateCrowd::make(std::int64_t count) {
    std::unique_ptr<CertificateCrowd> crowd(new CertificateCrowd(count));
    if (auto done = crowd->fill(); !done) return done.error();
    return crowd;
}

std::string CertificateCrowd::path() const {
    return folder_.filePath("crowd.fettlemark").toStdString();
}

Result<void> CertificateCrowd::fill() {
    if (!folder_.isValid())
        return model::refusal(folder_.path().toStdString(), "cannot be made: %1",
                              {folder_.errorString().toStdString()});
    {
        const auto empty =
            model::Archive::create(path(), model::ArchiveKind::Demonstration, kActor);
        if (!empty) return empty.error();
    }
    sqlite3* raw = nullptr;
    bool filled = sqlite3_open(path().c_str(), &raw) == SQLITE_OK;
    for (const std::string& sql : fillingStatements(count_))
        filled = filled && sqlite3_exec(raw, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK;
    const std::string message = sqlite3_errmsg(raw);
    sqlite3_close(raw);
    if (!filled) return model::refusal(path(), "cannot be filled: %1", {message});
    auto archive = model::Archive::open(path());
    if (!archive) return archive.error();
    archive_ = std::move(archive).value();
    return {};
}

std::int64_t CertificateCrowd::bytesOnDisk() const {
    std::int64_t bytes = 0;
    std::error_code ignored;
    for (const auto& entry :
         std::filesystem::directory_iterator(folder_.path().toStdString(), ignored))
        if (entry.is_regular_file(ignored))
            bytes += static_cast<std::int64_t>(entry.file_size(ignored));
    return bytes;
}

std::vector<CertificateSearch> CertificateCrowd::searches() const {
    constexpr int kOfEach = 20;
    constexpr std::int64_t kManyLater = 17280;  // some two months of them
    SteadyRandom random(11);
    std::vector<CertificateSearch> all;
    for (int round = 0; round < kOfEach; ++round) {
        const auto i = static_cast<std::int64_t>(random.between(1, static_cast<double>(count_)));
        const std::string serial = serialOf(i);
        const std::string heat = "H " + std::to_string(100000 + i / 37);
        const std::string part = "P-" + std::to_string(1000 + (i * 7919) % 997);
        const std::string order = "O-" + std::to_string(20000 + i / 113);
        const std::string customer = "Harrow Pumps " + std::to_string((i * 31) % 211);
        const std::string pumps = std::string("pumps").substr(0, 1 + round % 5);
        const std::string date = dateOf(i);
        const std::string later = dateOf(i + kManyLater);
        constexpr auto kRare = model::Word::NotAcceptable;
        // One thing.
        all.push_back({.words = serial.substr(0, 4 + round % 6)});
        all.push_back({.words = serial + " "});
        all.push_back({.words = pumps});
        all.push_back({.words = order});
        all.push_back({.words = "harrow nowhere"});
        all.push_back({.serial = serial});
        all.push_back({.heat = heat});
        all.push_back({.customer = customer});
        all.push_back({.verdict = kRare});
        all.push_back({.from = date, .to = date});
        // Something common beside something rare.
        all.push_back({.words = "pumps " + part});
        all.push_back({.words = pumps, .verdict = kRare});
        all.push_back({.words = "harrow " + pumps, .from = date, .to = later});
        all.push_back({.words = order, .from = date, .to = later});
        all.push_back({.words = pumps, .customer = customer});
        all.push_back({.part = part, .verdict = kRare});
        all.push_back({.customer = customer, .from = date, .to = later});
        all.push_back({.customer = customer, .verdict = kRare});
        all.push_back({.from = date, .verdict = kRare});
        all.push_back({.words = heat.substr(0, 5), .part = part, .from = date});
    }
    return all;
}

}  // namespace app
