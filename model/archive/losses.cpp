// SPDX-License-Identifier: Apache-2.0
#include "archive/losses.h"

#include <cstdlib>
#include <filesystem>
#include <map>
#include <tuple>

#include "archive/archive_access.h"
#include "archive/certificate_store.h"
#include "archive/dialect.h"
#include "archive/draft_store.h"
#include "archive/history_store.h"
#include "archive/lifecycle_actions.h"
#include "archive/plan_store.h"
#include "archive/record_store.h"
#include "archive/register_replay.h"
#include "archive/register_store.h"
#include "archive/retention_store.h"
#include "archive/stored_file.h"
#include "trust/canonical.h"

namespace model {
namespace {

constexpr char kUnreadable[] = "cannot be read";

/// Fewer bytes than any row of the history takes, so that no more than so many can be in a file.
constexpr std::uintmax_t kSmallestHistoryRow = 200;

enum class What { Order, Part, Plan, Casting, Entry, Examination, Certificate };

/// Something that should be stored; ordered as it is reported.
struct Thing {
    What what = What::Order;
    std::int64_t number = 0;        ///< of an examination or certificate; a plan's revision
    std::string key;                ///< of the others; the part of a plan
    std::string registerName = {};  ///< of an entry

    friend bool operator<(const Thing& a, const Thing& b) {
        return std::tie(a.what, a.registerName, a.key, a.number) <
               std::tie(b.what, b.registerName, b.key, b.number);
    }
};

class LossFinder {
public:
    LossFinder(const Connection& connection, const std::string& folder, const Progress& progress)
        : connection_(connection), folder_(folder), progress_(progress) {}

    Result<std::vector<Error>> run() {
        for (const auto step :
             {&LossFinder::readHistoryRows, &LossFinder::readThings, &LossFinder::readTables})
            if (auto done = (this->*step)(); !done) return done.error();
        return std::move(losses_);
    }

private:
    void lose(std::string what, std::string reason, std::vector<std::string> arguments = {}) {
        losses_.push_back({ErrorKind::Damaged, connection_.place() + ": " + std::move(what),
                           std::move(reason), std::move(arguments)});
    }

    Result<void> advance() {
        ++done_;
        if (!progress_ || done_ % 64 != 0 || progress_(done_, std::max(done_, total_))) return {};
        return refusal(connection_.place(), "was not read to the end: it was stopped");
    }

    void loseRows(std::int64_t first, std::int64_t last) {
        if (first > last) return;
        if (first == last)
            lose("history row " + std::to_string(first), kUnreadable);
        else
            lose("history rows " + std::to_string(first) + " to " + std::to_string(last),
                 kUnreadable);
    }

    /// Row by row, as one bad page must not hide what lies behind it.
    Result<void> readHistoryRows() {
        SqlStatement highest(connection_, "SELECT max(sequence) FROM history");
        const auto found = highest.first();
        const bool lastIsKnown = found && *found;
        std::int64_t last = lastIsKnown ? highest.whole(0) : 0;
        if (!lastIsKnown) {
            std::error_code ignored;
            last = static_cast<std::int64_t>(
                std::filesystem::file_size(connection_.place(), ignored) / kSmallestHistoryRow);
        }
        total_ = last;
        SqlStatement statement(connection_,
                               "SELECT action, subject, bytes FROM history WHERE sequence = ?");
        std::int64_t lastRead = 0;
        for (std::int64_t sequence = 1; sequence <= last; ++sequence) {
            if (auto done = advance(); !done) return done;
            const auto row = statement.first(sequence);
            if (!row || !*row) continue;
            loseRows(lastRead + 1, sequence - 1);
            lastRead = sequence;
            expect(statement.text(0), statement.text(1), statement.blob(2));
        }
        if (lastIsKnown)
            loseRows(lastRead + 1, last);
        else
            lose("history rows from " + std::to_string(lastRead + 1) + " on",
                 "cannot be read; how many there were is not known");
        return {};
    }

    /// What a row of the history says was stored.
    void expect(const std::string& action, const std::string& subject, const std::string& bytes) {
        const std::int64_t number = std::atoll(subject.c_str());
        if (action == action::kCertificateDisposed)
            expected_.erase({What::Certificate, number, ""});
        if (action == action::kOrderSaved) expected_[{What::Order, 0, subject}];
        if (action == action::kPartSaved) expected_[{What::Part, 0, subject}];
        if (action == action::kCastingSaved) expected_[{What::Casting, 0, subject}];
        if (action != action::kZonePlanAdded && action != action::kExaminationSaved &&
            action != action::kCertificateAdded && action != action::kCertificateReleased &&
            !RegisterReplay::follows(action))
            return;
        const auto row = parseCanonical(bytes);
        const Canonical* content = row ? row.value().member("content") : nullptr;
        if (!content) return;
        if (action == action::kCertificateAdded || action == action::kCertificateReleased) {
            const Canonical* digest = content->member("file_sha256");
            expected_[{What::Certificate, number, ""}] =
                digest && digest->text() ? *digest->text() : "";
        } else if (RegisterReplay::follows(action)) {
            if (const Canonical* name = content->member("register"); name && name->text())
                expected_[{What::Entry, 0, subject, *name->text()}];
        } else if (action == action::kExaminationSaved) {
            const Canonical* header = content->member("header");
            const Canonical* casting = header ? header->member("casting") : nullptr;
            if (casting && casting->text())
                expected_[{What::Examination, number, ""}] = *casting->text();
        } else if (const Canonical* revision = content->member("revision");
                   revision && revision->whole()) {
            expected_[{What::Plan, *revision->whole(), subject}];
        }
    }

    /// What the archive's own lists name, as far as they can be read.
    void expectListed(What what, const char* sql) {
        SqlStatement statement(connection_, sql);
        if (!statement.run()) return;
        while (true) {
            const auto row = statement.next();
            if (!row || !*row) return;
            const bool isNumbered = what == What::Examination || what == What::Certificate;
            expected_.try_emplace(isNumbered ? Thing{what, statement.whole(0), ""}
                                             : Thing{what, 0, statement.text(0)});
        }
    }

    Result<void> readThings() {
        expectListed(What::Order, "SELECT number FROM customer_order");
        expectListed(What::Part, "SELECT number FROM part");
        expectListed(What::Casting, "SELECT serial FROM casting");
        expectListed(What::Examination, "SELECT id FROM examination");
        expectListed(What::Certificate, "SELECT number FROM certificate");
        total_ += static_cast<std::int64_t>(expected_.size());
        for (const auto& [thing, hint] : expected_) {
            if (auto done = advance(); !done) return done;
            readThing(thing, hint);
        }
        return {};
    }

    /// ErrorKind::Input says that there is no such entry.
    void report(const std::string& name, const Error& error) {
        lose(name, error.kind == ErrorKind::Input ? "is gone" : kUnreadable);
    }

    template <class T>
    void reportUnless(const Result<T>& loaded, const std::string& name) {
        if (!loaded) report(name, loaded.error());
    }

    void readThing(const Thing& thing, const std::string& hint) {
        const std::string number = std::to_string(thing.number);
        switch (thing.what) {
            case What::Order:
                return reportUnless(
                    onlyOne(connection_, loadOrders(connection_, thing.key), "order", thing.key),
                    "order " + thing.key);
            case What::Part:
                return reportUnless(
                    onlyOne(connection_, loadParts(connection_, thing.key), "part", thing.key),
                    "part " + thing.key);
            case What::Casting:
                return reportUnless(onlyOne(connection_, loadCastings(connection_, thing.key),
                                            "casting", thing.key),
                                    "casting " + thing.key);
            case What::Plan:
                return reportUnless(
                    loadZonePlan(connection_, thing.key, static_cast<int>(thing.number)),
                    "zone plan of " + thing.key + " revision " + number);
            case What::Entry:
                return readEntry(thing);
            case What::Examination:
                return reportUnless(
                    loadDraft(connection_, thing.number),
                    "examination " + number + (hint.empty() ? "" : " of casting " + hint));
            case What::Certificate:
                return readCertificate(thing.number, hint);
        }
    }

    void readEntry(const Thing& thing) {
        const std::string name = thing.registerName + " " + thing.key;
        const auto found = loadEntries(
            connection_, {.registerName = thing.registerName, .key = thing.key, .byKey = true});
        if (!found || found->empty()) lose(name, found ? "is gone" : kUnreadable);
    }

    void readCertificate(std::int64_t number, const std::string& digestInHistory) {
        const std::string name = "certificate " + std::to_string(number);
        const auto stored = loadCertificate(connection_, number);
        const std::string digest = stored ? stored.value().fileDigest : digestInHistory;
        if (digest.empty()) return report(name, stored.error());
        const auto file = loadStoredFile(folder_, digest);
        if (!stored && file)
            lose(name, "cannot be read, but its PDF is whole: %1",
                 {storedFilePath(folder_, digest)});
        else if (!stored)
            report(name, stored.error());
        if (!file)
            lose(name + ": " + file.error().place, file.error().reason, file.error().arguments);
    }

    Result<void> readTables() {
        const auto objects = dialect::schemaObjects(connection_);
        if (!objects) return objects.error();
        for (const auto& [name, sql] : *objects) {
            if (!name.starts_with("table ")) continue;
            if (auto done = advance(); !done) return done;
            SqlStatement statement(connection_, "SELECT * FROM " + name.substr(6));
            auto row = statement.first();
            while (row && *row) row = statement.next();
            if (!row) lose(name, "holds entries that cannot be read");
        }
        return {};
    }

    const Connection& connection_;
    const std::string& folder_;
    const Progress& progress_;
    /// What should be stored; with a certificate's SHA-256, or an examination's casting, where the
    /// history says it.
    std::map<Thing, std::string> expected_;
    std::vector<Error> losses_;
    std::int64_t done_ = 0;
    std::int64_t total_ = 0;
};

}  // namespace

Result<std::vector<Error>> whatIsLost(const Archive& archive, const Progress& progress) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    return findLosses(connection, ArchiveAccess::folder(archive), progress);
}

Result<std::vector<Error>> findLosses(const Connection& connection, const std::string& folder,
                                      const Progress& progress) {
    return LossFinder(connection, folder, progress).run();
}

}  // namespace model
