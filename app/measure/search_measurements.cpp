// SPDX-License-Identifier: Apache-2.0
#include "measure/search_measurements.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <sqlite3.h>

#include "measure/certificate_crowd.h"
#include "measure/stopwatch.h"

namespace app {
namespace {

using model::Result;

constexpr std::int64_t kSmall = 100'000;
constexpr std::int64_t kLarge = 1'000'000;

/// The database without the program.
class PlainDatabase {
public:
    explicit PlainDatabase(const std::string& path) {
        sqlite3_open_v2(path.c_str(), &database_, SQLITE_OPEN_READONLY, nullptr);
    }
    PlainDatabase(const PlainDatabase&) = delete;
    PlainDatabase& operator=(const PlainDatabase&) = delete;
    ~PlainDatabase() {
        sqlite3_finalize(statement_);
        sqlite3_close(database_);
    }

    bool prepare(const model::SearchStatement& statement) {
        sqlite3_finalize(statement_);
        statement_ = nullptr;
        if (sqlite3_prepare_v2(database_, statement.sql.c_str(), -1, &statement_, nullptr) !=
            SQLITE_OK)
            return false;
        int index = 0;
        for (const auto& value : statement.values) {
            ++index;
            if (const auto* text = std::get_if<std::string>(&value))
                sqlite3_bind_text(statement_, index, text->data(), static_cast<int>(text->size()),
                                  SQLITE_TRANSIENT);
            else
                sqlite3_bind_int64(statement_, index, std::get<std::int64_t>(value));
        }
        return true;
    }

    /// Reads every column of every row; returns the first columns.
    std::vector<std::int64_t> run() {
        std::vector<std::int64_t> numbers;
        while (sqlite3_step(statement_) == SQLITE_ROW) {
            numbers.push_back(sqlite3_column_int64(statement_, 0));
            for (int column = 1; column < sqlite3_column_count(statement_); ++column)
                bytes_ += sqlite3_column_bytes(statement_, column);
        }
        sqlite3_reset(statement_);
        return numbers;
    }

private:
    sqlite3* database_ = nullptr;
    sqlite3_stmt* statement_ = nullptr;
    std::int64_t bytes_ = 0;
};

/// Of every search of a mix, ms, rising.
struct SearchTimes {
    std::vector<double> program;
    std::vector<double> database;
    double fillSeconds = 0;
    std::int64_t bytes = 0;
};

/// The page that the database alone gives: one row fewer than it was asked for.
bool isSamePage(const model::CertificatePage& page, const std::vector<std::int64_t>& rows) {
    return page.certificates.size() + (page.next ? 1 : 0) == rows.size() &&
           std::equal(
               page.certificates.begin(), page.certificates.end(), rows.begin(),
               [](const auto& found, std::int64_t number) { return found.number == number; });
}

Result<SearchTimes> timeSearches(std::int64_t count) {
    constexpr int kRuns = 5;
    SearchTimes times;
    Result<std::unique_ptr<CertificateCrowd>> crowd = model::inputError("", "");
    times.fillSeconds = millisecondsOf([&] { crowd = CertificateCrowd::make(count); }) / 1000;
    if (!crowd) return crowd.error();
    const CertificateCrowd& made = **crowd;
    times.bytes = made.bytesOnDisk();
    PlainDatabase plain(made.path());
    for (const model::CertificateSearch& search : made.searches()) {
        const auto statement = model::searchStatement(search);
        if (!statement) return statement.error();
        if (!plain.prepare(*statement))
            return model::refusal(made.path(), "cannot be read beside the program");
        double program = std::numeric_limits<double>::infinity();
        double database = program;
        for (int run = 0; run < kRuns; ++run) {
            Result<model::CertificatePage> page = model::CertificatePage();
            std::vector<std::int64_t> rows;
            program = std::min(program, millisecondsOf([&] {
                                   page = model::findCertificates(made.archive(), search);
                               }));
            database = std::min(database, millisecondsOf([&] { rows = plain.run(); }));
            if (!page) return page.error();
            if (!isSamePage(*page, rows))
                return model::inputError("search", "the program and the database alone disagree");
        }
        times.program.push_back(program);
        times.database.push_back(database);
    }
    std::ranges::sort(times.program);
    std::ranges::sort(times.database);
    return times;
}

/// Made once for both measurements.
const Result<SearchTimes>& timesOf(std::int64_t count) {
    static const Result<SearchTimes> small = timeSearches(kSmall);
    static const Result<SearchTimes> large = timeSearches(kLarge);
    return count == kSmall ? small : large;
}

/// The time that `share` of the searches keep.
double keptBy(const std::vector<double>& rising, double share) {
    const auto index =
        static_cast<std::size_t>(std::lround(share * static_cast<double>(rising.size() - 1)));
    return rising[index];
}

Result<std::vector<Measurement>> measureShare(const std::string& name, double share) {
    std::vector<Measurement> lines(1);
    for (const std::int64_t count : {kSmall, kLarge}) {
        const auto& times = timesOf(count);
        if (!times) return times.error();
        Measurement line;
        line.name = name + (count == kSmall ? "-small" : "-large");
        line.size = static_cast<std::size_t>(count);
        line.value = keptBy(times->program, share);
        line.yardstick = keptBy(times->database, share);
        line.note = "first page of " + std::to_string(times->program.size()) +
                    " searches, shortest of 5 runs each; longest " +
                    std::to_string(times->program.back()) + " ms; the archive took " +
                    std::to_string(times->bytes / 1'000'000) + " MB on disk and " +
                    std::to_string(std::lround(times->fillSeconds)) + " s to make";
        lines.push_back(std::move(line));
    }
    lines.front() = lines.back();
    lines.front().name = name;
    return lines;
}

}  // namespace

Result<std::vector<Measurement>> measureSearchMedian() {
    return measureShare("search-median", 0.5);
}

Result<std::vector<Measurement>> measureSearchP99() {
    return measureShare("search-p99", 0.99);
}

}  // namespace app
