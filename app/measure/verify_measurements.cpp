// SPDX-License-Identifier: Apache-2.0
#include "measure/verify_measurements.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <limits>
#include <optional>
#include <thread>

#include "archive/archive_access.h"
#include "archive/archive_key.h"
#include "archive/history_store.h"
#include "measure/peak_memory.h"
#include "measure/record_crowd.h"
#include "measure/stopwatch.h"
#include "trust/chain.h"
#include "trust/seal_key.h"

namespace app {
namespace {

using model::Result;

struct Row {
    std::string bytes;
    model::Digest before{};
    model::Digest hash{};
    std::string seal;
    bool isSigned = false;
};

Result<std::vector<Row>> rowsOf(const model::Connection& connection) {
    std::vector<Row> rows;
    model::Digest before = model::kGenesis;
    auto read = model::readHistoryWithProofs(
        connection, [&](const model::HistoryEntry& entry, const model::Proofs& proofs) {
            rows.push_back({entry.bytes, before, entry.hash, proofs.seal.value_or(""),
                            proofs.signature.has_value()});
            before = entry.hash;
            return true;
        });
    if (!read) return read.error();
    return rows;
}

/// Whether every hash and every seal from `first` to before `last` fits.
bool fits(const std::vector<Row>& rows, std::size_t first, std::size_t last,
          const std::string& publicKey) {
    const auto key = model::SealCheck::read(publicKey);
    if (!key) return false;
    bool all = true;
    for (std::size_t i = first; i < last; ++i) {
        const Row& row = rows[i];
        const model::Digest hash = model::chained(row.before, row.bytes);
        for (int check = 0; check < (row.isSigned ? 2 : 1); ++check)
            all = key->fits(hash, row.seal) && all;
    }
    return all;
}

bool yardstick(const std::vector<Row>& rows, const std::string& publicKey) {
    const std::size_t threads = std::max(1U, std::thread::hardware_concurrency());
    std::atomic<bool> all = true;
    std::vector<std::jthread> running;
    for (std::size_t i = 0; i < threads; ++i)
        running.emplace_back([&, i] {
            if (!fits(rows, rows.size() * i / threads, rows.size() * (i + 1) / threads, publicKey))
                all = false;
        });
    running.clear();
    return all;
}

Result<Measurement> measureVerify(const std::string& name, std::int64_t count, int runs) {
    Result<std::unique_ptr<RecordCrowd>> crowd = model::inputError("", "");
    const double madeMs = millisecondsOf([&] { crowd = RecordCrowd::make(count); });
    if (!crowd) return crowd.error();
    const model::Archive& archive = (*crowd)->archive();
    const model::Connection& connection = model::ArchiveAccess::connection(archive);
    const auto rows = rowsOf(connection);
    if (!rows) return rows.error();
    const auto keys = model::archivePublicKeys(connection);
    if (!keys) return keys.error();

    double program = std::numeric_limits<double>::infinity();
    double bare = program;
    std::optional<double> peakMb;
    for (int run = 0; run < runs; ++run) {
        Result<model::Verification> verified = model::Verification();
        const PeakMemory peak;
        program = std::min(program, millisecondsOf([&] { verified = archive.verify(); }));
        if (const auto held = peak.megabytes()) peakMb = std::max(peakMb.value_or(0), *held);
        if (!verified) return verified.error();
        if (!verified->findings.empty()) return verified->findings.front();
        if (verified->records != count || verified->signatures < count)
            return model::inputError(name, "not everything was checked");
        bool fitted = false;
        bare = std::min(
            bare, millisecondsOf([&] { fitted = yardstick(*rows, keys->front().publicKey); }));
        if (!fitted) return model::inputError(name, "the program and the bare checks disagree");
    }
    Measurement line;
    line.name = name;
    line.size = static_cast<std::size_t>(count);
    line.value = program;
    line.yardstick = bare;
    line.peakMb = peakMb;
    line.note = std::to_string(rows->size()) + " rows of the history; shortest of " +
                std::to_string(runs) + " runs, both on " +
                std::to_string(std::max(1U, std::thread::hardware_concurrency())) +
                " cores; the archive took " + std::to_string((*crowd)->bytesOnDisk() / 1'000'000) +
                " MB on disk and " + std::to_string(std::lround(madeMs / 1000)) + " s to make";
    return line;
}

}  // namespace

Result<std::vector<Measurement>> measureVerifyArchive() {
    const auto few = measureVerify("verify-archive-small", 1'000, 5);
    if (!few) return few.error();
    const auto many = measureVerify("verify-archive", 10'000, 3);
    if (!many) return many.error();
    return std::vector<Measurement>{*few, *many};
}

Result<std::vector<Measurement>> measureVerifyArchiveLarge() {
    const auto line = measureVerify("verify-archive-large", 100'000, 1);
    if (!line) return line.error();
    return std::vector<Measurement>{*line};
}

}  // namespace app
