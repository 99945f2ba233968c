// SPDX-License-Identifier: Apache-2.0
#include "archive/leaving.h"

#include <algorithm>
#include <iterator>
#include <set>

#include "archive/canonical_records.h"
#include "archive/certificate_store.h"
#include "archive/presentation_store.h"

namespace model {
namespace {

/// Its records that no other presentation of the casting was made from.
Result<std::vector<std::int64_t>> recordsOfThisAlone(const Connection& connection,
                                                     const Leaving& leaving) {
    const auto presentations = loadPresentationsOf(connection, leaving.serial);
    if (!presentations) return presentations.error();
    std::set<std::int64_t> records;
    std::set<std::int64_t> others;
    for (const StoredPresentation& one : *presentations) {
        auto& used = one.shown.number == leaving.number ? records : others;
        used.insert(one.basis.records.begin(), one.basis.records.end());
    }
    std::vector<std::int64_t> alone;
    std::ranges::set_difference(records, others, std::back_inserter(alone));
    return alone;
}

/// What was presented for it, if anything was.
Result<void> addPresented(const Connection& connection, Leaving& leaving) {
    SqlStatement statement(connection,
                           "SELECT presentation.file_sha256, endorsement.file_sha256, content, "
                           "sheet, verdict FROM presentation LEFT JOIN endorsement "
                           "ON endorsement.number = presentation.number "
                           "WHERE presentation.number = ?");
    const auto row = statement.first(leaving.number);
    if (!row) return row.error();
    if (!*row) return {};
    if (auto endorsed = statement.textOrNone(1)) leaving.files.push_back(std::move(*endorsed));
    leaving.files.push_back(statement.text(0));
    leaving.said["content_sha256"] = toHex(sha256(statement.blob(2)));
    leaving.said["sheet_sha256"] = toHex(sha256(statement.text(3)));
    leaving.said["verdict_sha256"] = toHex(sha256(statement.text(4)));
    auto records = recordsOfThisAlone(connection, leaving);
    if (!records) return records.error();
    leaving.records = std::move(*records);
    return {};
}

Result<void> addRecords(const Connection& connection, Leaving& leaving) {
    SqlStatement statement(connection, "SELECT content FROM record WHERE id = ?");
    Canonical::Array records;
    for (const std::int64_t id : leaving.records) {
        const auto row = statement.first(id);
        if (!row) return row.error();
        if (!*row) return connection.damaged("record " + std::to_string(id), "is gone");
        Canonical::Object record;
        record["record"] = id;
        record["content_sha256"] = toHex(sha256(statement.blob(0)));
        records.emplace_back(std::move(record));
    }
    leaving.said["records"] = std::move(records);
    return {};
}

Result<Leaving> fromCertificate(const Connection& connection, std::int64_t number) {
    const auto certificate = loadCertificate(connection, number);
    if (!certificate) return certificate.error();
    const auto facts = canonicalBytes(canonicalOf(*certificate));
    if (!facts) return facts.error();
    Leaving leaving;
    leaving.number = number;
    leaving.order = certificate->facts.order;
    leaving.serial = certificate->facts.serial;
    leaving.type = certificate->facts.type;
    leaving.at = certificate->issuedAt;
    leaving.files.push_back(certificate->fileDigest);
    leaving.said["certificate_type"] = leaving.type;
    leaving.said["issued_at"] = leaving.at;
    leaving.said["certificate_sha256"] = toHex(sha256(*facts));
    return leaving;
}

/// None where the number was not presented, or was released.
Result<std::optional<Leaving>> fromReturned(const Connection& connection, std::int64_t number) {
    SqlStatement statement(connection,
                           "SELECT casting.order_number FROM presentation JOIN casting "
                           "ON casting.serial = casting_serial WHERE presentation.number = ?");
    const auto row = statement.first(number);
    if (!row) return row.error();
    if (!*row) return std::optional<Leaving>();
    const auto presentation = loadPresentation(connection, number);
    if (!presentation) return presentation.error();
    const Presented& shown = presentation->shown;
    if (shown.state() == CertificateState::Waiting)
        return refusal("certificate " + std::to_string(number),
                       "stays: it waits for release; release or return it first");
    if (!shown.returned) return std::optional<Leaving>();
    Leaving leaving;
    leaving.number = number;
    leaving.order = statement.text(0);
    leaving.serial = shown.facts.serial;
    leaving.type = shown.facts.type;
    leaving.at = shown.returned->time;
    leaving.returned = true;
    leaving.said["certificate_type"] = leaving.type;
    leaving.said["returned_at"] = leaving.at;
    return std::optional(std::move(leaving));
}

}  // namespace

Result<void> checkIsDue(const Connection& connection, const Leaving& leaving,
                        const Retention& stated, const std::string& day) {
    const std::string place = "certificate " + std::to_string(leaving.number);
    if (stated.hold)
        return refusal(place, "stays: its order %1 is on hold: %2", {stated.order, *stated.hold});
    if (!stated.keepUntil)
        return refusal(place,
                       "stays for ever: no day is stated for its order %1 until which its "
                       "certificates are kept",
                       {stated.order});
    if (day <= *stated.keepUntil)
        return refusal(place, "stays: its order %1 is to be kept until %2",
                       {stated.order, *stated.keepUntil});
    SqlStatement statement(connection, "SELECT min(number) FROM certificate WHERE supersedes = ?");
    const auto row = statement.first(leaving.number);
    if (!row) return row.error();
    if (const auto newer = statement.wholeOrNone(0))
        return refusal(place, "stays: certificate %1 supersedes it; dispose of that first",
                       {std::to_string(*newer)});
    return {};
}

Result<Leaving> leavingOf(const Connection& connection, std::int64_t number) {
    auto returned = fromReturned(connection, number);
    if (!returned) return returned.error();
    auto found =
        *returned ? Result<Leaving>(std::move(**returned)) : fromCertificate(connection, number);
    if (!found) return found.error();
    Leaving leaving = std::move(*found);
    if (auto added = addPresented(connection, leaving); !added) return added.error();
    if (auto added = addRecords(connection, leaving); !added) return added.error();
    Canonical::Array files;
    for (const std::string& digest : leaving.files) files.emplace_back(digest);
    leaving.said["files"] = std::move(files);
    return leaving;
}

}  // namespace model
