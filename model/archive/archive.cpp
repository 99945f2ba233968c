// SPDX-License-Identifier: Apache-2.0
#include "archive/archive.h"

#include <QCoreApplication>
#include <cerrno>
#include <fcntl.h>
#include <filesystem>
#include <system_error>
#include <unistd.h>

#include "archive/archive_access.h"
#include "archive/casting_store.h"
#include "archive/certificate_store.h"
#include "archive/dialect.h"
#include "archive/draft_store.h"
#include "archive/history_store.h"
#include "archive/migration.h"
#include "archive/opening.h"
#include "archive/plan_store.h"
#include "archive/record_store.h"
#include "archive/stored_file.h"
#include "archive/table_store.h"
#include "archive/transaction.h"
#include "archive/verify.h"

namespace model {
namespace {

namespace fs = std::filesystem;

/// Makes an empty file that was not there; of two programs that try, one succeeds.
Result<void> claim(const std::string& path) {
    const int descriptor = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0644);
    if (descriptor >= 0) {
        ::close(descriptor);
        return {};
    }
    if (errno == EEXIST) return inputError(path, "exists already; a new archive needs a new name");
    if (errno == ENOSPC || errno == EDQUOT)
        return refusal(path, "cannot be written: the disk is full");
    return refusal(path, "cannot be made: %1", {std::generic_category().message(errno)});
}

Result<void> fill(const Connection& connection, ArchiveKey& key, ArchiveKind kind,
                  const Actor& actor, const Clock& clock) {
    auto begun = WriteTransaction::beginUnsealed(connection, clock, actor);
    if (!begun) return begun.error();
    WriteTransaction& transaction = **begun;
    for (const Migration& step : migrations())
        if (auto done = dialect::runScript(connection, step.script); !done) return done;
    if (auto done = dialect::setApplicationId(connection); !done) return done;
    if (auto done = dialect::setSchemaVersion(connection, migrations().back().version); !done)
        return done;
    const auto seal = key.make();
    if (!seal) return seal.error();
    transaction.sealWith(**seal);
    const char* word = wordOf(kind);
    SqlStatement add(connection, "INSERT INTO archive (id, kind, created_at) VALUES (1, ?, ?)");
    if (auto done = add.run(word, transaction.time()); !done) return done;
    Canonical::Object content;
    content["kind"] = word;
    if (auto done = transaction.record(action::kArchiveCreated, "", std::move(content)); !done)
        return done;
    if (auto done = addArchiveKey(transaction, **seal, 1); !done) return done;
    return transaction.commit();
}

template <class T>
Result<std::vector<T>> values(Result<std::vector<Stored<T>>> stored) {
    if (!stored) return stored.error();
    std::vector<T> all;
    all.reserve(stored->size());
    for (auto& one : *stored) all.push_back(std::move(one.value));
    return all;
}

}  // namespace

struct Archive::State {
    State(std::string given, const std::string& absolute, ArchiveKind itsKind,
          const Clock* itsClock, std::unique_ptr<Connection> itsConnection)
        : path(std::move(given)),
          folder(absolute + ".files"),
          kind(itsKind),
          clock(itsClock),
          connection(std::move(itsConnection)),
          key(absolute) {}

    std::string path;    ///< as the caller gave it
    std::string folder;  ///< of the certificates' files
    ArchiveKind kind = ArchiveKind::Working;
    const Clock* clock = nullptr;
    std::unique_ptr<Connection> connection;
    ArchiveKey key;
    /// The draft that was saved or loaded last: the next save need not read it again.
    std::optional<ExaminationDraft> draft;

    template <class Body>
    auto write(const Actor& actor, Body body) {
        return writing(*connection, key, *clock, actor, std::move(body));
    }
};

const Connection& ArchiveAccess::connection(const Archive& archive) {
    return *archive.state_->connection;
}

const Clock& ArchiveAccess::clock(const Archive& archive) {
    return *archive.state_->clock;
}

ArchiveKey& ArchiveAccess::key(const Archive& archive) {
    return archive.state_->key;
}

const std::string& ArchiveAccess::folder(const Archive& archive) {
    return archive.state_->folder;
}

Archive::Archive(std::unique_ptr<State> state) : state_(std::move(state)) {}
Archive::Archive(Archive&&) noexcept = default;
Archive& Archive::operator=(Archive&&) noexcept = default;
Archive::~Archive() = default;

Result<Archive> Archive::create(const std::string& path, ArchiveKind kind, const Actor& actor,
                                const Clock& clock) {
    const auto absolute = absolutePath(path);
    if (!absolute) return absolute.error();
    if (auto checked = checkNothingThere(*absolute); !checked) return checked.error();
    if (auto claimed = claim(*absolute); !claimed) return claimed.error();
    ArchiveKey key(*absolute);
    const auto filled = [&]() -> Result<void> {
        const auto connection = dialect::openDatabase(*absolute);
        if (!connection) return connection.error();
        if (auto done = dialect::checkForeignKeys(**connection, true); !done) return done;
        if (auto done = fill(**connection, key, kind, actor, clock); !done) return done;
        return dialect::settle(**connection);
    }();
    if (!filled) {
        for (const char* suffix : {"-wal", "-shm", "-journal", ""})
            ::unlink((*absolute + suffix).c_str());
        key.discard();
        return filled.error();
    }
    return open(path, clock);
}

Result<Archive> Archive::open(const std::string& path, const Clock& clock) {
    assert(QCoreApplication::instance());
    const auto absolute = absolutePath(path);
    if (!absolute) return absolute.error();
    if (auto there = checkThere(*absolute); !there) return there.error();
    auto connection = openToRead(*absolute);
    if (!connection) return connection.error();
    if (const auto version = knownSchema(**connection, migrations()); !version)
        return version.error();
    if (auto writable = checkWritable(*absolute); !writable) return writable.error();
    ArchiveKey key(*absolute);
    if (auto done = migrate(**connection, migrations(), key, clock); !done) return done.error();
    if (auto done = dialect::settle(**connection); !done) return done.error();
    const auto kind = kindIn(**connection);
    if (!kind) return kind.error();
    return Archive(std::make_unique<State>(path, *absolute, *kind, &clock, std::move(*connection)));
}

Result<Archive> Archive::openForReading(const std::string& path, const Clock& clock) {
    assert(QCoreApplication::instance());
    const auto absolute = absolutePath(path);
    if (!absolute) return absolute.error();
    if (auto there = checkThere(*absolute); !there) return there.error();
    auto connection = openToRead(*absolute);
    if (!connection) return connection.error();
    const auto version = knownSchema(**connection, migrations());
    if (!version) return version.error();
    if (*version < migrations().back().version) {
        connection->reset();
        auto archive = open(path, clock);
        if (!archive) return archive;
        connection = std::move(archive->state_->connection);
    }
    if (auto done = (*connection)->keepFromWriting(); !done) return done.error();
    const auto kind = kindInAnyCase(**connection);
    if (!kind) return kind.error();
    return Archive(std::make_unique<State>(path, *absolute, *kind, &clock, std::move(*connection)));
}

ArchiveKind Archive::kind() const {
    return state_->kind;
}

const std::string& Archive::path() const {
    return state_->path;
}

Result<std::int64_t> Archive::save(const Order& order, std::int64_t knownVersion,
                                   const Actor& actor) {
    return state_->write(actor, [&](WriteTransaction& transaction) {
        return saveOrder(transaction, order, knownVersion);
    });
}

Result<std::int64_t> Archive::save(const Part& part, std::int64_t knownVersion,
                                   const Actor& actor) {
    return state_->write(actor, [&](WriteTransaction& transaction) {
        return savePart(transaction, part, knownVersion);
    });
}

Result<std::int64_t> Archive::save(const Casting& casting, std::int64_t knownVersion,
                                   const Actor& actor) {
    return state_->write(actor, [&](WriteTransaction& transaction) {
        return saveCasting(transaction, casting, knownVersion);
    });
}

Result<Stored<Order>> Archive::order(const std::string& number) const {
    const Connection& connection = *state_->connection;
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    return onlyOne(connection, loadOrders(connection, number), "order", number);
}

Result<Stored<Part>> Archive::part(const std::string& number) const {
    const Connection& connection = *state_->connection;
    return onlyOne(connection, loadParts(connection, number), "part", number);
}

Result<Stored<Casting>> Archive::castingEntry(const std::string& serial) const {
    const Connection& connection = *state_->connection;
    return onlyOne(connection, loadCastings(connection, serial), "casting", serial);
}

Result<std::vector<Order>> Archive::orders() const {
    const auto reading = ReadTransaction::begin(*state_->connection);
    if (!reading) return reading.error();
    return values(loadOrders(*state_->connection, std::nullopt));
}

Result<std::vector<Part>> Archive::parts() const {
    return values(loadParts(*state_->connection, std::nullopt));
}

Result<std::vector<Casting>> Archive::castings() const {
    return values(loadCastings(*state_->connection, std::nullopt));
}

Result<void> Archive::add(const ZonePlan& plan, const Actor& actor) {
    return state_->write(
        actor, [&](WriteTransaction& transaction) { return addZonePlan(transaction, plan); });
}

Result<ZonePlan> Archive::zonePlan(const std::string& part, int revision) const {
    const auto reading = ReadTransaction::begin(*state_->connection);
    if (!reading) return reading.error();
    return loadZonePlan(*state_->connection, part, revision);
}

Result<std::vector<int>> Archive::zonePlanRevisions(const std::string& part) const {
    return loadZonePlanRevisions(*state_->connection, part);
}

Result<CastingFile> Archive::casting(const std::string& serial) const {
    const Connection& connection = *state_->connection;
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    auto stored = loadCastingFile(connection, serial);
    if (!stored) return stored.error();
    return std::move(stored->file);
}

Result<SavedDraft> Archive::save(const ExaminationDraft& draft, const Actor& actor) {
    auto& last = state_->draft;
    const bool isKnown = last && last->id == draft.id && last->version == draft.version;
    auto saved = state_->write(actor, [&](WriteTransaction& transaction) {
        return saveDraft(transaction, draft, isKnown ? &*last : nullptr);
    });
    if (!saved) return saved;
    last = draft;
    last->id = saved->id;
    last->version = saved->version;
    return saved;
}

Result<ExaminationDraft> Archive::draft(std::int64_t id) const {
    const auto reading = ReadTransaction::begin(*state_->connection);
    if (!reading) return reading.error();
    auto loaded = loadDraft(*state_->connection, id);
    if (loaded) state_->draft = *loaded;
    return loaded;
}

Result<void> Archive::addTable(const std::string& text, const std::string& name,
                               const Actor& actor) {
    return state_->write(actor, [&](WriteTransaction& transaction) {
        return addLimitTable(transaction, text, name);
    });
}

Result<TableSet> Archive::tables() const {
    const auto reading = ReadTransaction::begin(*state_->connection);
    if (!reading) return reading.error();
    return loadTableSet(*state_->connection);
}

Result<std::int64_t> Archive::reserveCertificateNumber(const Actor& actor) {
    return state_->write(actor,
                         [](WriteTransaction& transaction) { return reserveNumber(transaction); });
}

Result<Certificate> Archive::certificate(std::int64_t number) const {
    return loadCertificate(*state_->connection, number);
}

Result<std::string> Archive::certificateFile(std::int64_t number) const {
    const auto stored = certificate(number);
    if (!stored) return stored.error();
    return loadStoredFile(state_->folder, stored->fileDigest);
}

Result<std::vector<HistoryEntry>> Archive::history(std::int64_t from, std::int64_t atMost) const {
    std::vector<HistoryEntry> entries;
    if (atMost <= 0) return entries;
    const auto read = readHistory(*state_->connection, from, [&](HistoryEntry entry) {
        entries.push_back(std::move(entry));
        return static_cast<std::int64_t>(entries.size()) < atMost;
    });
    if (!read) return read.error();
    return entries;
}

Result<Head> Archive::head() const {
    return historyHead(*state_->connection);
}

Result<Verification> Archive::verify(const std::optional<Head>& held,
                                     const Progress& progress) const {
    return verifyArchive(*state_->connection, state_->folder, held, progress);
}

}  // namespace model
