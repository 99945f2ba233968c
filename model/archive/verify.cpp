// SPDX-License-Identifier: Apache-2.0
#include "archive/verify.h"

#include <algorithm>
#include <filesystem>

#include "archive/certificate_store.h"
#include "archive/dialect.h"
#include "archive/dialect_search.h"
#include "archive/history_store.h"
#include "archive/losses.h"
#include "archive/migration.h"
#include "archive/presented_files.h"
#include "archive/proofs.h"
#include "archive/replay.h"
#include "archive/retention_store.h"
#include "archive/stored_file.h"
#include "archive/stored_words.h"
#include "archive/transaction.h"

namespace model {
namespace {

class Verifier {
public:
    Verifier(const Connection& connection, const std::string& folder,
             const std::optional<Head>& held, const Progress& progress)
        : connection_(connection), folder_(folder), held_(held), progress_(progress) {}

    Result<Verification> run() {
        const auto reading = ReadTransaction::begin(connection_);
        if (!reading) return reading.error();
        // The history first: other threads check its seals and signatures during the rest.
        for (const auto step :
             {&Verifier::countWork, &Verifier::checkHistory, &Verifier::checkHeldHead,
              &Verifier::checkDatabase, &Verifier::checkSchema, &Verifier::checkStored,
              &Verifier::checkCertificates, &Verifier::checkUnreleased, &Verifier::checkEntryFiles,
              &Verifier::checkDisposed, &Verifier::checkSearchIndex, &Verifier::checkProofs}) {
            const auto done = (this->*step)();
            if (done) continue;
            // Whatever can be read at all is checked.
            if (done.error().kind != ErrorKind::Damaged) return done.error();
            find(done.error());
        }
        if (databaseIsBroken_)
            if (auto done = nameLosses(); !done) return done.error();
        return std::move(result_);
    }

private:
    void find(Error error) { result_.findings.push_back(std::move(error)); }
    void find(std::string what, std::string reason) {
        find(connection_.damaged(std::move(what), std::move(reason)));
    }

    Result<void> advance() {
        ++done_;
        if (!progress_ || (done_ % 64 != 0 && done_ != total_) || progress_(done_, total_))
            return {};
        return refusal(connection_.place(), "was not checked to the end: it was stopped");
    }

    Result<void> countWork() {
        SqlStatement statement(connection_,
                               "SELECT (SELECT count(*) FROM history) + "
                               "(SELECT count(*) FROM certificate) + "
                               "(SELECT count(*) FROM presentation WHERE NOT EXISTS (SELECT 1 FROM "
                               "certificate WHERE certificate.number = presentation.number)) + "
                               "(SELECT count(DISTINCT file_sha256) FROM register_entry), "
                               "(SELECT count(*) FROM record), (SELECT count(*) FROM limit_table)");
        const auto row = statement.first();
        if (!row) return row.error();
        total_ = statement.whole(0);
        result_.records = statement.whole(1);
        result_.limitTables = statement.whole(2);
        return {};
    }

    Result<void> checkDatabase() {
        auto broken = dialect::brokenThings(connection_);
        databaseIsBroken_ = !broken || !broken->empty();
        if (!broken) return broken.error();
        for (std::string& text : *broken) find("database", std::move(text));
        return {};
    }

    /// What the database says of its pages tells nobody which casting is concerned.
    Result<void> nameLosses() {
        auto losses = findLosses(connection_, folder_, progress_);
        if (!losses) return losses.error();
        for (Error& loss : *losses) {
            const bool isKnown = std::ranges::any_of(result_.findings, [&](const Error& finding) {
                return finding.message() == loss.message();
            });
            if (!isKnown) find(std::move(loss));
        }
        return {};
    }

    Result<void> checkSchema() {
        std::vector<std::string_view> scripts;
        for (const Migration& step : migrations()) scripts.push_back(step.script);
        const auto expected = dialect::schemaObjectsOf(scripts);
        if (!expected) return expected.error();
        const auto stored = dialect::schemaObjects(connection_);
        if (!stored) return stored.error();
        for (const auto& [name, sql] : *expected) {
            const auto found = stored->find(name);
            if (found == stored->end())
                find(name, "is missing from the database");
            else if (found->second != sql)
                find(name, "is not the one that Fettlemark made");
        }
        for (const auto& [name, sql] : *stored)
            if (!expected->contains(name)) find(name, "was not made by Fettlemark");
        schemaIsWhole_ = *stored == *expected;
        return {};
    }

    /// The row, where the columns say the same as its bytes.
    std::optional<Canonical> readRow(const HistoryEntry& entry) {
        auto row = parseCanonical(entry.bytes);
        if (!row || !saysTheSame(*row, entry)) return std::nullopt;
        return std::move(*row);
    }

    Result<void> checkHistory() {
        ChainVerifier chain;
        auto begun = ProofCheck::begin(connection_);
        if (!begun && begun.error().kind != ErrorKind::Damaged) return begun.error();
        if (begun)
            proving_.emplace(std::move(*begun));
        else
            find(begun.error());
        Result<void> outcome;
        const auto take = [&](const HistoryEntry& entry, const Proofs& proofs) {
            if (auto added = chain.add(entry.sequence, entry.bytes, entry.hash); !added) {
                outcome =
                    Error{ErrorKind::Damaged, connection_.place() + ": " + added.error().place,
                          added.error().reason, added.error().arguments};
                return false;
            }
            const auto row = readRow(entry);
            const std::string name = "history row " + std::to_string(entry.sequence);
            if (!row)
                find(name, "has columns that differ from its bytes");
            else if (!replay_.take(entry, *row))
                find(name, "has a content that this program does not understand");
            if (row && proving_) proving_->add(entry, proofs, *row);
            if (held_ && held_->sequence == entry.sequence) heldFits_ = held_->hash == entry.hash;
            outcome = advance();
            return outcome.ok();
        };
        auto read = readHistoryWithProofs(connection_, take);
        result_.head = chain.head();
        historyIsWhole_ = read.ok() && outcome.ok();
        if (!read) return read;
        return outcome;
    }

    Result<void> checkProofs() {
        if (!proving_) return {};
        for (Error& error : proving_->finish()) find(std::move(error));
        result_.seals = proving_->seals();
        result_.signatures = proving_->signatures();
        return {};
    }

    Result<void> checkHeldHead() {
        if (!held_ || heldFits_ || *held_ == Head()) return {};
        if (held_->sequence > result_.head.sequence)
            find("history",
                 "ends before the row of the head that was noted elsewhere: rows are "
                 "missing");
        else
            find("history", "has another row where the head that was noted elsewhere should be");
        return {};
    }

    Result<void> checkStored() {
        // A broken history says nothing about what should be stored.
        if (!historyIsWhole_) return {};
        auto findings = replay_.compare(connection_);
        if (!findings) return findings.error();
        for (Error& error : *findings) find(std::move(error));
        return {};
    }

    Result<void> checkCertificates() {
        return eachCertificate(connection_, [&](const Certificate& certificate) -> Result<void> {
            ++result_.certificates;
            const auto bytes = loadStoredFile(folder_, certificate.fileDigest);
            if (!bytes && bytes.error().kind != ErrorKind::Damaged) return bytes.error();
            if (!bytes)
                find("certificate " + std::to_string(certificate.number) + ": " +
                         bytes.error().place,
                     bytes.error().reason);
            const auto whole = bytes ? std::optional<std::string_view>(*bytes) : std::nullopt;
            if (auto done = checkPresented(certificate.number, whole); !done) return done;
            return advance();
        });
    }

    Result<void> checkPresented(std::int64_t number, std::optional<std::string_view> certificate) {
        auto findings = presentedFiles_.check(number, certificate);
        if (!findings) return findings.error();
        for (Error& error : *findings) find(std::move(error));
        return {};
    }

    Result<void> checkUnreleased() {
        const auto numbers = presentedFiles_.unreleased();
        if (!numbers) return numbers.error();
        for (const std::int64_t number : *numbers) {
            if (auto done = checkPresented(number, std::nullopt); !done) return done;
            if (auto done = advance(); !done) return done;
        }
        return {};
    }

    /// Of photos, charts and reports that entries of the registers name.
    Result<void> checkEntryFiles() {
        SqlStatement statement(connection_,
                               "SELECT file_sha256, min(register || ' ' || entry) "
                               "FROM register_entry WHERE file_sha256 IS NOT NULL "
                               "GROUP BY file_sha256 ORDER BY min(history_sequence)");
        if (auto done = statement.run(); !done) return done;
        return eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
            const auto bytes = loadStoredFile(folder_, row.text(0));
            if (!bytes && bytes.error().kind != ErrorKind::Damaged) return bytes.error();
            if (!bytes) find(row.text(1) + ": " + bytes.error().place, bytes.error().reason);
            return advance();
        });
    }

    Result<void> checkDisposed() {
        const auto files = disposedFiles(connection_, std::nullopt);
        if (!files) return files.error();
        for (const DisposedFile& file : *files) {
            const std::string path = storedFilePath(folder_, file.digest);
            std::error_code ignored;
            if (!std::filesystem::exists(path, ignored)) continue;
            Error error = connection_.damaged(
                "certificate " + std::to_string(file.number),
                "was disposed of, but its file %1 is still there; dispose of it again");
            error.arguments = {path};
            find(std::move(error));
        }
        return {};
    }

    /// No evidence, but what it leaves out is not found.
    Result<void> checkSearchIndex() {
        if (databaseIsBroken_ || !schemaIsWhole_) return {};
        const auto agree = dialect::wordsAgree(connection_);
        if (!agree) return agree.error();
        if (!*agree)
            find("search index",
                 "does not agree with the certificates, which are not concerned; make it anew by "
                 "\"fettlemark-cli rebuild-search\"");
        return {};
    }

    const Connection& connection_;
    const std::string& folder_;
    const std::optional<Head>& held_;
    const Progress& progress_;
    Verification result_;
    PresentedFiles presentedFiles_{connection_, folder_};
    Replay replay_;
    std::optional<ProofCheck> proving_;
    std::int64_t done_ = 0;
    std::int64_t total_ = 0;
    bool heldFits_ = false;
    bool historyIsWhole_ = false;
    bool schemaIsWhole_ = false;
    bool databaseIsBroken_ = false;
};

}  // namespace

Result<Verification> verifyArchive(const Connection& connection, const std::string& folder,
                                   const std::optional<Head>& held, const Progress& progress) {
    return Verifier(connection, folder, held, progress).run();
}

}  // namespace model
