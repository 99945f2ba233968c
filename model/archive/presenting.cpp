// SPDX-License-Identifier: Apache-2.0
// Preparing a certificate and presenting it; see lifecycle.h.
#include <algorithm>

#include "archive/archive_access.h"
#include "archive/casting_store.h"
#include "archive/certificate_store.h"
#include "archive/holdings_store.h"
#include "archive/lifecycle.h"
#include "archive/lifecycle_actions.h"
#include "archive/presentation_store.h"
#include "archive/record_content.h"
#include "archive/signed_record_store.h"
#include "archive/stored_file.h"
#include "archive/table_store.h"
#include "exchange/json_text.h"
#include "exchange/sheet_json.h"
#include "exchange/verdict_json.h"
#include "judge/judge.h"
#include "judge/sheet_words.h"
#include "limits/words.h"
#include "record/coverage.h"
#include "repair/repair_case.h"

namespace model {
namespace {

/// "Z1 MT as cast"
std::string nameOf(const std::string& zone, Method method, Stage stage) {
    return zone + " " + std::string(word(method)) + " " + std::string(word(stage));
}

Error conflict(const Connection& connection, std::string reason,
               std::vector<std::string> arguments) {
    return {ErrorKind::Conflict, connection.place(), std::move(reason), std::move(arguments)};
}

/// The certificate that the next one of a casting replaces: its last one.
Result<std::optional<std::int64_t>> lastCertificate(const Connection& connection,
                                                    const std::string& serial) {
    SqlStatement statement(connection,
                           "SELECT max(number) FROM certificate WHERE "
                           "casting_serial = ? AND NOT EXISTS "
                           "(SELECT 1 FROM certificate AS later WHERE "
                           "later.supersedes = certificate.number)");
    const auto row = statement.first(serial);
    if (!row) return row.error();
    return statement.wholeOrNone(0);
}

/// Conflict where the casting waits already; Input where it is certified by these records.
Result<void> checkPresentable(const Connection& connection, const std::string& serial,
                              const std::vector<std::int64_t>& records) {
    const auto before = loadPresentationsOf(connection, serial);
    if (!before) return before.error();
    for (const StoredPresentation& presentation : *before) {
        const Presented& shown = presentation.shown;
        const std::string number = std::to_string(shown.number);
        if (shown.state() == CertificateState::Waiting)
            return conflict(connection, "has the casting %1 waiting for release as number %2",
                            {serial, number});
        if (shown.state() == CertificateState::Released && shown.records == records)
            return inputError(connection.place(),
                              "has the casting %1 certified as it stands, by certificate %2; for a "
                              "correction a QA manager reopens it",
                              {serial, number});
    }
    return {};
}

std::vector<std::string> missingTests(const CastingFile& file, const Verdict& verdict) {
    std::vector<std::string> missing;
    for (const CoveredTest& covered : coverageOf(file, verdict)) {
        if (covered.state == CoveredTest::State::Made) continue;
        const std::string test =
            nameOf(covered.zone->name, covered.test.method, covered.test.stage) +
            (covered.ordered ? ", as ordered," : "");
        missing.push_back(covered.state == CoveredTest::State::Missing
                              ? test + " by " + covered.test.table + ", which was not made"
                              : test + " by " + covered.test.table +
                                    ", but it was made to other criteria");
    }
    for (const CoveredOther& covered : otherCoverageOf(file)) {
        if (covered.word != Word::NotJudged) continue;
        missing.push_back(covered.zone->name + " " + covered.test +
                          (covered.result ? ", of which the result is no verdict"
                                          : ", of which there is no result"));
    }
    return missing;
}

/// Every serial number that it stands for; empty: its own alone.
std::string seriesOf(const Casting& casting) {
    std::vector<std::string> serials = itemsOf(casting.series);
    if (!serials.empty() && std::ranges::find(serials, casting.serial) == serials.end())
        serials.insert(serials.begin(), casting.serial);
    return listOf(serials);
}

/// What is still to be done after each nonconformance, and what leads nowhere.
std::vector<std::string> openRepairs(const CastingFile& file, const Verdict& verdict,
                                     const std::string& today) {
    std::vector<std::string> open;
    for (const RepairCase& one : repairCasesOf(file, verdict, today)) {
        if (one.closed) continue;
        std::string sentence = "The nonconformance " + one.opened->number +
                               " is not closed: " + std::string(one.state);
        for (const Error& what : one.open) sentence += "; " + what.message();
        open.push_back(sentence + ".");
    }
    for (const Error& end : looseEndsOf(file, verdict)) open.push_back(end.message() + ".");
    return open;
}

std::vector<std::string> unreadable(const CastingFile& file) {
    std::vector<std::string> sentences;
    for (const Error& error : requiredTestsOf(file).errors)
        sentences.push_back("The order cannot be read: " + error.message() + ".");
    return sentences;
}

std::vector<std::string> notJudged(const Verdict& verdict) {
    std::vector<std::string> names;
    for (const ExaminationVerdict& examination : verdict.examinations)
        if (!examination.superseded && examination.word == Word::NotJudged)
            names.push_back(nameOf(examination.zone, examination.method, examination.stage));
    return names;
}

}  // namespace

/// Makes a Prepared, and what is stored of it.
struct Preparing {
    static Result<Prepared> read(const Archive& archive, const std::string& serial,
                                 const SignedIn& inspector);
    static Result<void> judge(Prepared& prepared);
    static StoredPresentation presentationOf(const Prepared& prepared, std::string_view pdf,
                                             const std::string& today);

    /// Reserves the number, where all is still as it was read.
    static Result<void> reserve(WriteTransaction& transaction, Prepared& prepared,
                                const SignedIn& inspector);
    static Result<void> check(const Connection& connection, const Prepared& prepared);
};

Result<Prepared> Preparing::read(const Archive& archive, const std::string& serial,
                                 const SignedIn& inspector) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    auto casting = loadCastingFile(connection, serial);
    if (!casting) return casting.error();
    const auto records = loadRecordsOf(connection, serial);
    if (!records) return records.error();
    auto tables = loadTableSet(connection);
    if (!tables) return tables.error();
    Prepared prepared;
    prepared.file_ = std::move(casting->file);
    prepared.tables_ = std::move(*tables);
    prepared.orderVersion_ = casting->orderVersion;
    prepared.partVersion_ = casting->partVersion;
    prepared.castingVersion_ = casting->castingVersion;
    if (prepared.file_.examinations.empty())
        return inputError(connection.place(), "has no examination of the casting %1", {serial});
    bool isTheirs = false;
    for (const ExaminationDraft& draft : prepared.file_.examinations) {
        const SignedRecord* record = standingOf(*records, draft.id);
        if (!record)
            return inputError(
                connection.place(),
                "has an examination of the casting %1 that is not signed yet: %2",
                {serial, nameOf(draft.header.zone, draft.header.method, draft.header.stage)});
        isTheirs = isTheirs || record->recorded.person == inspector.person().id;
        prepared.records_.push_back(*record);
        auto test = signedTest(archive, record->id);
        if (!test) return test.error();
        prepared.tests_.push_back(std::move(*test));
    }
    // What the registers said then, not what they say by now.
    prepared.file_.used = {};
    for (const SignedTest& test : prepared.tests_) addHoldings(prepared.file_.used, test.used);
    if (!isTheirs)
        return refusal(connection.place(),
                       "lets only an inspector of the casting %1 present it; %2 "
                       "recorded none of "
                       "its examinations",
                       {serial, inspector.person().name});
    const auto supersedes = lastCertificate(connection, serial);
    if (!supersedes) return supersedes.error();
    prepared.facts_.supersedes = *supersedes;
    return prepared;
}

Result<void> Preparing::judge(Prepared& prepared) {
    const CastingFile& file = prepared.file_;
    const auto sheet = sheetOf(file);
    if (!sheet) return sheet.error();
    auto verdict = model::judge(*sheet, prepared.tables_);
    if (!verdict) return verdict.error();
    prepared.verdict_ = std::move(*verdict);
    prepared.sheetJson_ = writeJson(sheetToJson(*sheet));
    prepared.verdictJson_ = writeJson(verdictToJson(prepared.verdict_));
    IssueFacts& facts = prepared.facts_;
    facts.serial = file.casting.serial;
    facts.heat = file.casting.heat;
    facts.part = file.part.number;
    facts.order = file.order.number;
    facts.customer = file.order.customer;
    facts.customerOrder = file.order.customerOrder;
    facts.type = file.order.certificateType;
    facts.language = file.order.language;
    facts.verdict = castingWord(file, prepared.verdict_);
    facts.series = seriesOf(file.casting);
    for (const ExaminationVerdict& examination : prepared.verdict_.examinations)
        facts.tableDigests.insert(examination.tableDigest);
    return {};
}

StoredPresentation Preparing::presentationOf(const Prepared& prepared, std::string_view pdf,
                                             const std::string& today) {
    StoredPresentation presentation;
    presentation.shown.number = prepared.number_;
    presentation.shown.facts = prepared.facts_;
    presentation.shown.missingTests = missingTests(prepared.file_, prepared.verdict_);
    presentation.shown.programVersion = programVersion();
    presentation.notJudged = notJudged(prepared.verdict_);
    presentation.openRepairs = openRepairs(prepared.file_, prepared.verdict_, today);
    presentation.unreadable = unreadable(prepared.file_);
    Basis& basis = presentation.basis;
    for (const SignedRecord& record : prepared.records_) {
        basis.records.push_back(record.id);
        if (record.invalid) basis.invalid.push_back(record.id);
    }
    std::ranges::sort(basis.records);
    std::ranges::sort(basis.invalid);
    presentation.shown.records = basis.records;
    for (const ExaminationVerdict& examination : prepared.verdict_.examinations)
        basis.tables[examination.tableDigest] = examination.attested;
    basis.orderVersion = prepared.orderVersion_;
    basis.partVersion = prepared.partVersion_;
    basis.castingVersion = prepared.castingVersion_;
    basis.dossier = canonicalOf(prepared.file_.dossier);
    presentation.firstFileSize = static_cast<std::int64_t>(pdf.size());
    return presentation;
}

Result<void> Preparing::check(const Connection& connection, const Prepared& prepared) {
    const StoredPresentation presentation = presentationOf(prepared, "", "");
    const std::string& serial = prepared.facts_.serial;
    if (auto checked = checkPresentable(connection, serial, presentation.basis.records); !checked)
        return checked;
    const auto changes = changesSince(connection, serial, presentation.basis);
    if (!changes) return changes.error();
    if (changes->empty()) return {};
    return conflict(connection, "is no longer as it was read: %1 Prepare the certificate again.",
                    {changes->front()});
}

Result<void> Preparing::reserve(WriteTransaction& transaction, Prepared& prepared,
                                const SignedIn& inspector) {
    const Connection& connection = transaction.connection();
    if (auto may = checkMaySign(connection, inspector, transaction.moment()); !may) return may;
    for (const std::string& digest : prepared.facts_.tableDigests)
        if (auto kept = keepLimitTable(transaction, digest); !kept) return kept;
    if (auto checked = check(connection, prepared); !checked) return checked;
    const auto number = reserveNumber(transaction);
    if (!number) return number.error();
    prepared.number_ = *number;
    prepared.facts_.printedHead = transaction.head();
    return {};
}

Result<Prepared> prepare(Archive& archive, const std::string& serial, const SignedIn& inspector) {
    if (auto checked = checkRole(inspector, Role::Inspector); !checked) return checked.error();
    auto prepared = Preparing::read(archive, serial, inspector);
    if (!prepared) return prepared.error();
    if (auto judged = Preparing::judge(*prepared); !judged) return judged.error();
    auto reserved = ArchiveAccess::write(archive, inspector.actor(), [&](WriteTransaction& t) {
        return Preparing::reserve(t, *prepared, inspector);
    });
    if (!reserved) return reserved.error();
    return prepared;
}

Result<void> present(Archive& archive, const Prepared& prepared, std::string_view pdf,
                     const SignedIn& inspector) {
    if (auto checked = checkRole(inspector, Role::Inspector); !checked) return checked;
    const auto isTheirs = [&](const SignedRecord& record) {
        return record.recorded.person == inspector.person().id;
    };
    if (!pdf.starts_with("%PDF-"))
        return inputError("", "what was handed over for certificate %1 is no PDF",
                          {std::to_string(prepared.number())});
    if (std::ranges::none_of(prepared.records(), isTheirs))
        return refusal("", "%1 recorded none of the casting's examinations",
                       {inspector.person().name});
    const std::string& folder = ArchiveAccess::folder(archive);
    return ArchiveAccess::write(
        archive, inspector.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const Connection& connection = transaction.connection();
            if (auto checked = Preparing::check(connection, prepared); !checked) return checked;
            if (auto checked = checkFreeNumber(connection, prepared.number()); !checked)
                return checked;
            StoredPresentation presentation =
                Preparing::presentationOf(prepared, pdf, transaction.time().substr(0, 10));
            const auto bytes = canonicalBytes(canonicalOf(presentation));
            if (!bytes) return bytes.error();
            return withStoredFile(folder, pdf, [&](const std::string& digest) -> Result<void> {
                presentation.firstFileDigest = digest;
                Canonical::Object content;
                content["casting"] = prepared.facts().serial;
                content["content_sha256"] = toHex(sha256(*bytes));
                content["sheet_sha256"] = toHex(sha256(prepared.sheetJson()));
                content["verdict_sha256"] = toHex(sha256(prepared.verdictJson()));
                content["file_sha256"] = digest;
                content["file_bytes"] = presentation.firstFileSize;
                if (auto done = transaction.recordSigned(action::kCastingPresented,
                                                         std::to_string(prepared.number()),
                                                         std::move(content), inspector);
                    !done)
                    return done;
                presentation.shown.presented.sequence = transaction.head().sequence;
                presentation.shown.presented.person = inspector.person().id;
                return addPresentation(connection, presentation, *bytes, prepared.sheetJson(),
                                       prepared.verdictJson());
            });
        });
}

}  // namespace model
