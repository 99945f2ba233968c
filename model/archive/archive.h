// SPDX-License-Identifier: Apache-2.0
// The database of a foundry: what was ordered, cast, examined and certified, and the history of
// everything that was done.
//
// Several programs may use one archive at the same time. A write waits up to five seconds for
// another program's, then fails with ErrorKind::Refused; it is stored whole or not at all, and
// with it, in the same transaction, its row of the history. A value that somebody else has
// changed since it was loaded is not overwritten: ErrorKind::Conflict, and what is stored can be
// loaded and shown beside the caller's own.
//
// Errors of every function: Input (no such thing, or a value that cannot be stored, such as text
// that is not UTF-8), Conflict, Refused (locked, disk full, no permission, unreadable), Damaged
// (what is stored is not what was written).
//
// Files: FILE, beside it FILE-wal and FILE-shm while in use, and the folder FILE.files with the
// certificates. An Archive is used from the thread that made it; a second thread opens its own.
// A QCoreApplication must exist, as Qt loads its database driver as a plugin.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "judge/verdict.h"
#include "limits/table_set.h"
#include "record/records.h"
#include "trust/chain.h"

namespace model {

/// A demonstration archive stays one for ever, and its certificates say so.
enum class ArchiveKind { Demonstration, Working };

/// Who does it; the name is written into the history.
struct Actor {
    std::string name;
};

/// A stored value with its version, which rises with every save.
template <class T>
struct Stored {
    T value;
    std::int64_t version = 0;
};

/// Where a draft stands after a save: to be put into the draft before its next save.
struct SavedDraft {
    std::int64_t id = 0;
    std::int64_t version = 0;
};

/// What a certificate states, frozen at its issue.
struct IssueFacts {
    std::string serial;  ///< of a stored casting
    std::string heat;
    std::string part;
    std::string order;
    std::string customer;
    std::string customerOrder;
    std::string type;      ///< EN 10204:2004 type: "2.2", "3.1" or "3.2"
    std::string language;  ///< "en"
    Word verdict = Word::NotJudged;
    std::set<std::string> tableDigests;      ///< SHA-256 of every limit table it was judged by; the
                                             ///< archive keeps their texts
    std::optional<Head> printedHead;         ///< the head of the history that is printed on it
    std::optional<std::int64_t> supersedes;  ///< number of the certificate it replaces
    /// Every serial number that it stands for, parted by commas; empty: `serial` alone.
    std::string series = {};
};

/// A stored certificate.
struct Certificate {
    std::int64_t number = 0;
    IssueFacts facts;
    std::string issuedAt;  ///< UTC, 2026-11-25T09:30:00Z
    std::string issuedBy;
    std::string fileDigest;     ///< SHA-256 of the PDF's bytes, hexadecimal
    std::int64_t fileSize = 0;  ///< bytes
};

/// One row of the history.
struct HistoryEntry {
    std::int64_t sequence = 0;  ///< 1, 2, 3 ...
    std::string time;           ///< UTC, 2026-11-25T09:30:00Z
    std::string person;
    std::string action;   ///< "order saved"; see HISTORY.md
    std::string subject;  ///< what it was done to: an order's number, a serial ...
    std::string bytes;    ///< canonical bytes of all this and of what was written
    Digest hash{};        ///< SHA-256 over the row before's hash and `bytes`
};

/// What verify() looked at, and everything that was found altered.
struct Verification {
    Head head;
    std::int64_t certificates = 0;
    std::int64_t seals = 0;       ///< of the archive itself, one for each row from the first sealed
    std::int64_t signatures = 0;  ///< of people, one for each signing act
    std::int64_t records = 0;
    std::int64_t limitTables = 0;
    std::vector<Error> findings;  ///< ErrorKind::Damaged, each with its place; empty: intact
};

/// Called now and then with work done and work in all; false stops.
using Progress = std::function<bool(std::int64_t done, std::int64_t total)>;

class Archive {
public:
    /// Makes a new, empty archive. Refuses a path where anything exists already (Input) and a
    /// folder that does not (Input).
    static Result<Archive> create(const std::string& path, ArchiveKind kind, const Actor& actor,
                                  const Clock& clock = systemClock());

    /// Opens an archive. One of an older schema is first copied to FILE.schema-N.backup, the copy
    /// checked, and then brought up to date. Input: no such file, not an archive, or written by a
    /// newer program. Refused: there but unreadable, read-only or locked. Damaged: its database is
    /// broken. `clock` outlives the archive.
    static Result<Archive> open(const std::string& path, const Clock& clock = systemClock());

    /// Opens an archive that is not written: one on a read-only disk, beside which nothing is made,
    /// or one whose database is broken, as far as it can be read at all; whatIsLost() of losses.h
    /// names the rest. Every write fails with Refused. One of an older schema is first brought up
    /// to date as by open(); Refused where that cannot be done.
    static Result<Archive> openForReading(const std::string& path,
                                          const Clock& clock = systemClock());

    Archive(Archive&&) noexcept;
    Archive& operator=(Archive&&) noexcept;
    ~Archive();

    [[nodiscard]] ArchiveKind kind() const;
    [[nodiscard]] const std::string& path() const;

    // Orders, parts, castings. save(): `knownVersion` 0 adds a new one and refuses an existing
    // number (Conflict); else it changes the one that has this version. Returns the new version.
    Result<std::int64_t> save(const Order& order, std::int64_t knownVersion, const Actor& actor);
    Result<std::int64_t> save(const Part& part, std::int64_t knownVersion, const Actor& actor);
    Result<std::int64_t> save(const Casting& casting, std::int64_t knownVersion,
                              const Actor& actor);
    [[nodiscard]] Result<Stored<Order>> order(const std::string& number) const;
    [[nodiscard]] Result<Stored<Part>> part(const std::string& number) const;
    [[nodiscard]] Result<Stored<Casting>> castingEntry(const std::string& serial) const;
    [[nodiscard]] Result<std::vector<Order>> orders() const;      ///< by number
    [[nodiscard]] Result<std::vector<Part>> parts() const;        ///< by number
    [[nodiscard]] Result<std::vector<Casting>> castings() const;  ///< by serial

    /// Adds a revision of a part's zone plan: 1, or the highest stored one plus 1 (else Conflict
    /// where it exists, Input where it skips). A stored revision never changes.
    Result<void> add(const ZonePlan& plan, const Actor& actor);
    [[nodiscard]] Result<ZonePlan> zonePlan(const std::string& part, int revision) const;
    /// Stored revisions, rising; empty: none.
    [[nodiscard]] Result<std::vector<int>> zonePlanRevisions(const std::string& part) const;

    /// A casting with its part, order, zone plan and examinations (by id), read as of one moment.
    /// Signed examinations carry what was stated against them (signed_record.h).
    [[nodiscard]] Result<CastingFile> casting(const std::string& serial) const;

    /// Stores a draft as typed, half-typed rows included: a new one where `draft.id` is 0, else
    /// over the stored version `draft.version`. Conflict: somebody else has saved it meanwhile, or
    /// the casting has another examination of the same zone, method, stage, cycle and repeat.
    /// Input: it is signed (signed_record.h). What is stated against it is not part of it.
    Result<SavedDraft> save(const ExaminationDraft& draft, const Actor& actor);
    [[nodiscard]] Result<ExaminationDraft> draft(std::int64_t id) const;

    /// Keeps the text of a limit table; `name` is its file's. Nothing happens where the archive
    /// has it already. Input: broken, or the same id and revision is stored with another digest.
    Result<void> addTable(const std::string& text, const std::string& name, const Actor& actor);
    /// The program's own tables and the archive's, with its attestations (attestation.h).
    [[nodiscard]] Result<TableSet> tables() const;

    /// Gives out the next certificate number, for printing it before the certificate is stored. A
    /// number that is never used stays free and is explained by its row in the history.
    Result<std::int64_t> reserveCertificateNumber(const Actor& actor);
    /// Many are found by findCertificates() (search.h).
    [[nodiscard]] Result<Certificate> certificate(std::int64_t number) const;
    /// The PDF, byte for byte. Damaged: its bytes are not those that were stored, or it is gone.
    [[nodiscard]] Result<std::string> certificateFile(std::int64_t number) const;

    /// The history's rows from number `from` on, at most `atMost` of them, rising.
    [[nodiscard]] Result<std::vector<HistoryEntry>> history(std::int64_t from = 1,
                                                            std::int64_t atMost = 1000) const;
    [[nodiscard]] Result<Head> head() const;

    /// Checks the database, the whole history, that what is stored is what the history says was
    /// written, every certificate's file, and that `held`, a head noted elsewhere, is in the
    /// history. Refused where it was stopped.
    [[nodiscard]] Result<Verification> verify(const std::optional<Head>& held = std::nullopt,
                                              const Progress& progress = {}) const;

private:
    friend struct ArchiveAccess;
    struct State;
    explicit Archive(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

}  // namespace model
