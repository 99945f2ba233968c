// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "archive/archive_access.h"
#include "archive/holdings_store.h"
#include "archive/presentation_store.h"
#include "archive/signed_record_store.h"
#include "archive/table_store.h"

namespace model {
namespace {

using Sentences = std::vector<std::string>;

Result<void> addChangedRecords(const Connection& connection, const std::string& serial,
                               const Basis& basis, Sentences& sentences) {
    const auto records = loadRecordsOf(connection, serial);
    if (!records) return records.error();
    const auto ids = examinationIds(connection, serial);
    if (!ids) return ids.error();
    std::vector<std::int64_t> standing;
    std::vector<std::int64_t> invalid;
    for (const SignedRecord* record : standingAmong(*records)) {
        standing.push_back(record->id);
        if (record->invalid) invalid.push_back(record->id);
    }
    if (ids->size() > standing.size())
        sentences.emplace_back("The casting " + serial + " has an examination that is not signed.");
    if (standing != basis.records)
        sentences.emplace_back("The casting " + serial +
                               " has other signed examinations than it was judged by.");
    else if (invalid != basis.invalid)
        sentences.emplace_back("An examination of the casting " + serial +
                               " was declared invalid since it was judged.");
    return {};
}

Result<void> addChangedVersions(const Connection& connection, const std::string& serial,
                                const Basis& basis, Sentences& sentences) {
    SqlStatement versions(connection,
                          "SELECT casting.version, part.version, customer_order.version, "
                          "casting.part_number, "
                          "casting.order_number FROM casting JOIN part ON part.number = "
                          "casting.part_number "
                          "JOIN customer_order ON customer_order.number = casting.order_number "
                          "WHERE casting.serial = ?");
    const auto row = versions.first(serial);
    if (!row) return row.error();
    if (!*row) return inputError(connection.place(), "has no casting %1", {serial});
    if (versions.whole(0) != basis.castingVersion)
        sentences.emplace_back("The casting " + serial + " was changed since it was judged.");
    if (versions.whole(1) != basis.partVersion)
        sentences.emplace_back("The part " + versions.text(3) +
                               " was changed since the casting was judged.");
    if (versions.whole(2) != basis.orderVersion)
        sentences.emplace_back("The order " + versions.text(4) +
                               " was changed since the casting was judged.");
    return {};
}

Result<void> addNewerTables(const Connection& connection, const Basis& basis,
                            Sentences& sentences) {
    const auto tables = loadTableSet(connection);
    if (!tables) return tables.error();
    for (const auto& entry : basis.tables) {
        const std::string& digest = entry.first;
        const auto current = tables->all();
        const bool isCurrent = std::ranges::any_of(
            current, [&](const LimitTable* table) { return table->digest == digest; });
        if (isCurrent) continue;
        const auto stored = loadLimitTable(connection, digest);
        if (!stored) return stored.error();
        sentences.emplace_back("The limit table " + stored->id +
                               " has a newer revision than the casting was judged by.");
    }
    return {};
}

Result<void> addChangedRegisters(const Connection& connection, const std::string& serial,
                                 const Basis& basis, Sentences& sentences) {
    const auto dossier = loadDossier(connection, serial);
    if (!dossier) return dossier.error();
    if (canonicalOf(*dossier) != basis.dossier)
        sentences.emplace_back("What the registers hold of the casting " + serial +
                               " was changed since it was judged.");
    return {};
}

class Obstacles {
public:
    Obstacles(const Connection& connection, const StoredPresentation& presentation,
              const std::string& today)
        : connection_(connection), presentation_(presentation), today_(today) {}

    Result<std::vector<Obstacle>> take(const Person* person) {
        const Presented& shown = presentation_.shown;
        if (shown.state() != CertificateState::Waiting)
            add(Obstacle::Kind::NotWaiting, "The certificate " + std::to_string(shown.number) +
                                                " is " + std::string(word(shown.state())) + ".");
        if (person)
            if (auto done = addPerson(*person); !done) return done.error();
        if (auto done = addTables(); !done) return done.error();
        for (const std::string& test : shown.missingTests)
            add(Obstacle::Kind::RequiredTest, "Zone plan and order require " + test + ".");
        for (const std::string& examination : presentation_.notJudged)
            add(Obstacle::Kind::NotJudged, examination + " is not judged.");
        for (const std::string& sentence : presentation_.unreadable)
            add(Obstacle::Kind::NotJudged, sentence);
        addRepairs();
        const bool said = !shown.missingTests.empty() || !presentation_.notJudged.empty() ||
                          !presentation_.unreadable.empty();
        if (shown.facts.verdict == Word::NotJudged && !said)
            add(Obstacle::Kind::NotJudged, "The casting is not judged.");
        const auto changes = changesSince(connection_, shown.facts.serial, presentation_.basis);
        if (!changes) return changes.error();
        for (const std::string& sentence : *changes)
            add(Obstacle::Kind::Changed, sentence + " It has to be returned.");
        return std::move(found_);
    }

private:
    void add(Obstacle::Kind kind, std::string sentence) {
        found_.push_back({kind, std::move(sentence)});
    }

    Result<void> addPerson(const Person& person) {
        const Presented& shown = presentation_.shown;
        const std::string& type = shown.facts.type;
        if (!person.roles.contains(Role::QaManager))
            add(Obstacle::Kind::NoQaManager, person.name + " is no QA manager.");
        std::string did;
        for (const std::int64_t id : shown.records) {
            const auto record = loadRecord(connection_, id);
            if (!record) return record.error();
            if (record->recorded.person == person.id) did = "recorded one of its examinations";
        }
        if (did.empty() && shown.presented.person == person.id) did = "presented it";
        if (did.empty() && shown.endorsed && shown.endorsed->person == person.id)
            did = "signed it as the third party";
        if (!did.empty())
            add(Obstacle::Kind::RecordedByPerson,
                person.name + " " + did + ": somebody else has to release it.");
        if (person.manufacturing && (type == "3.1" || type == "3.2"))
            add(Obstacle::Kind::Manufacturing,
                person.name +
                    " belongs to the manufacturing department: a certificate of "
                    "type " +
                    type + " is released independently of it (EN 10204:2004).");
        if (type == "3.2" && !shown.endorsed)
            add(Obstacle::Kind::ThirdPartyMissing,
                "A certificate of type 3.2 needs the third party's signature first.");
        return {};
    }

    void addRepairs() {
        for (const std::string& sentence : presentation_.openRepairs)
            add(Obstacle::Kind::RepairOpen, sentence);
        const auto dossier = dossierFrom(presentation_.basis.dossier);
        if (!dossier) return;
        for (const Concession& concession : dossier->concessions)
            if (!concession.until.empty() && concession.until < today_)
                add(Obstacle::Kind::RepairOpen, "The concession " + concession.number +
                                                    " held until " + concession.until + ".");
    }

    Result<void> addTables() {
        const auto attestedNow = attestedDigests(connection_);
        if (!attestedNow) return attestedNow.error();
        for (const auto& [digest, attested] : presentation_.basis.tables) {
            if (attested && attestedNow->contains(digest)) continue;
            const auto table = loadLimitTable(connection_, digest);
            if (!table) return table.error();
            const std::string name =
                "The limit table " + table->id + " revision " + std::to_string(table->revision);
            if (attested) {
                add(Obstacle::Kind::TableNotAttested,
                    "The attestation of the " + name.substr(4) +
                        " was withdrawn since the casting was presented.");
                continue;
            }
            add(Obstacle::Kind::TableNotAttested,
                attestedNow->contains(digest)
                    ? name +
                          " was attested only after the casting was presented: "
                          "return it and "
                          "present it again."
                    : name + " is not attested.");
        }
        return {};
    }

    const Connection& connection_;
    const StoredPresentation& presentation_;
    const std::string& today_;
    std::vector<Obstacle> found_;
};

}  // namespace

Result<std::vector<std::string>> changesSince(const Connection& connection,
                                              const std::string& serial, const Basis& basis) {
    Sentences sentences;
    if (auto done = addChangedRecords(connection, serial, basis, sentences); !done)
        return done.error();
    if (auto done = addChangedVersions(connection, serial, basis, sentences); !done)
        return done.error();
    if (auto done = addChangedRegisters(connection, serial, basis, sentences); !done)
        return done.error();
    if (auto done = addNewerTables(connection, basis, sentences); !done) return done.error();
    return sentences;
}

Result<std::vector<Obstacle>> obstaclesTo(const Connection& connection,
                                          const StoredPresentation& presentation,
                                          const Person* person, const std::string& today) {
    return Obstacles(connection, presentation, today).take(person);
}

Result<std::vector<Obstacle>> obstacles(const Archive& archive, std::int64_t number,
                                        const Person& person) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    const auto presentation = loadPresentation(connection, number);
    if (!presentation) return presentation.error();
    const std::string today = toText(ArchiveAccess::clock(archive).now()).substr(0, 10);
    return obstaclesTo(connection, *presentation, &person, today);
}

}  // namespace model
